using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

// Where a formed chain touches the wheel, and whether it can.
internal sealed partial class StripForming
{
    private StripNose? Nose(List<FormedPiece> chain)
    {
        int shape = _outlay.ContactPiece!.Value;
        return _strip.Shape[shape] is StripRivet rivet ? RivetNose(chain, rivet, shape) : FoldNose(chain, shape);
    }

    private StripNose? RivetNose(List<FormedPiece> chain, StripRivet rivet, int shape)
    {
        FormedPiece last = chain[^1];
        double at = last.ToMm - (rivet.DiameterMm / 2);
        if (last.Kind == FormedKind.Fold || at < last.FromMm)
        {
            Refuse(Piece(shape), $"the rivet of strip \"{_strip.Name}\" has its axis {rivet.DiameterMm / 2:0.###} mm before the end, but the piece there is {(last.Kind == FormedKind.Fold ? "a fold" : string.Create(CultureInfo.InvariantCulture, $"only {last.DevelopedMm:0.###} mm long"))}; a rivet needs a flat seat of at least its diameter, {rivet.DiameterMm:0.###} mm");
            return null;
        }

        return StripNoses.OnRivet(chain, rivet, _strip.ThicknessMm);
    }

    private StripNose? FoldNose(List<FormedPiece> chain, int shape)
    {
        int index = chain.FindIndex(p => p.ShapeIndex == shape);
        FormedPiece fold = chain[index];
        if (StripNoses.OnFold(chain, index, _strip.ThicknessMm) is not StripNose nose)
        {
            Refuse(Piece(shape), $"the contact fold of strip \"{_strip.Name}\" (piece {shape + 1}, {Angles.DegFromRad(fold.AngleRad):0.##}°) does not face the wheel: the strip comes to it sloping {Angles.DegFromRad(Math.Asin(Math.Clamp(fold.Start.Along.Z, -1, 1))):0.##}° and leaves it sloping {Angles.DegFromRad(Math.Asin(Math.Clamp(fold.End.Along.Z, -1, 1))):0.##}°; its outside is lowest where the strip is level, so it must come down and go up again");
            return null;
        }

        return nose;
    }

    // What the placed nose must fulfil before a spring can be worked out.
    private bool Touches(StripNose? nose, StripClamp clamp)
    {
        if (nose is null)
        {
            return false;
        }

        int before = _reasons.Count;
        if (nose.AtMm <= clamp.ToMm)
        {
            Refuse("clamp", $"strip \"{_strip.Name}\" is clamped up to {clamp.ToMm:0.###} mm but touches at {nose.AtMm:0.###} mm; the contact must lie beyond the clamp");
        }

        if (!(nose.DepthMm > 0))
        {
            Refuse("shape", $"the free contact of strip \"{_strip.Name}\" lies {-nose.DepthMm:0.###} mm above the copper face, so it does not touch; lower it by more than that, or make one rising straight \"auto\" with deflection = \"1.5 mm\"");
        }

        // A deflection beside given lengths is what they are held against, to what a rule measures.
        const double sameMm = 0.005;
        if (_strip.DeflectionMm is double asked && Math.Abs(asked - nose.DepthMm) > sameMm)
        {
            Refuse("deflection", $"strip \"{_strip.Name}\" has a deflection of {asked:0.###} mm, but its lengths give {nose.DepthMm:0.###} mm; make one rising straight \"auto\", which is then solved, or leave the deflection out: it comes from the lengths");
        }

        if (nose.Rivet is StripRivet rivet)
        {
            double tilt = Math.Acos(Math.Clamp(nose.Frame.Up.Z, -1, 1));
            double cap = Math.Asin(Math.Min(1, rivet.DiameterMm / (2 * rivet.DomeRadiusMm)));
            if (tilt > cap)
            {
                Refuse("shape", $"the rivet of strip \"{_strip.Name}\" is tilted {Angles.DegFromRad(tilt):0.##}° when free, past the edge of its dome ({Angles.DegFromRad(cap):0.##}°); fold the arm so that it is level over the wheel");
            }
        }

        return _reasons.Count == before;
    }
}
