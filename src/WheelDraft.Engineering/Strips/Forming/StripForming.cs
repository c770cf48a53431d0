using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Forms a strip from its brief: lengths, allowances, frames, the straight "auto", and every reason why it cannot be made.</summary>
internal sealed partial class StripForming
{
    // A fold that must be bent a quarter turn too far does not come out as wanted.
    private const double MostOverbendRad = Math.PI / 2;

    private readonly Brief _brief;
    private readonly int _index;
    private readonly StripBrief _strip;
    private readonly List<Finding> _reasons;
    private readonly List<Finding> _findings = [];
    private Material _material = MaterialTable.All[0];
    private StripOutlay _outlay = null!;

    private StripForming(Brief brief, int index, List<Finding> reasons)
    {
        _brief = brief;
        _index = index;
        _strip = brief.Strips[index];
        _reasons = reasons;
    }

    private bool IsWiper => _strip.Task is not ServesNet;

    internal static StripForm? Form(Brief brief, int index, List<Finding> reasons) => new StripForming(brief, index, reasons).Run();

    private StripForm? Run()
    {
        int before = _reasons.Count;
        MaterialSearch search = MaterialTable.Find(_strip.Material);
        _material = search.Found ?? _material;
        if (search.Found is null)
        {
            Refuse("material", $"{search.Message}");
        }

        _outlay = StripOutlay.Of(_strip, _brief, _index, _reasons);
        double? seat = SeatLevel();
        CheckPieces();
        CheckKeys();
        if (_reasons.Count > before || seat is null)
        {
            return null;
        }

        List<FormedPiece> chain = Chain(0);
        if (Clamped(chain) is not StripClamp clamp)
        {
            return null;
        }

        double? auto = null;
        if (_strip.Shape.Any(p => p is StripStraight { LengthMm: null }))
        {
            auto = SolveAuto(chain, clamp, seat.Value);
            if (auto is null)
            {
                return null;
            }

            chain = Chain(auto.Value);
            if (Clamped(chain) is not StripClamp again)
            {
                return null;
            }

            clamp = again;
        }

        chain = Seated(chain, clamp, seat.Value, _strip.ThicknessMm);
        StripNose? nose = IsWiper ? Nose(chain) : null;
        if (IsWiper && !Touches(nose, clamp))
        {
            return null;
        }

        return Finish(chain, clamp, seat.Value, nose, auto);
    }

    private StripForm? Finish(List<FormedPiece> chain, StripClamp clamp, double seat, StripNose? nose, double? auto)
    {
        int before = _reasons.Count;
        StripFold[] folds = Folds(chain);
        TabDimensions? tab = _strip.Shape[0] is StripTab t ? TabDimensions.Find(t.Size) : null;
        BlankCutting cutting = new(_strip, chain, _brief.Process.InsideRadiusMm, Refuse);
        StripBlank? blank = cutting.Cut(folds, nose);
        if (blank is null || _reasons.Count > before)
        {
            return null;
        }

        if (_material.Caution is string caution)
        {
            _findings.Add(Finding.Warning("strip.material", $"Strip \"{_strip.Name}\": {caution}", Place("material")));
        }

        return new StripForm
        {
            Index = _index,
            Strip = _strip,
            Material = _material,
            Pieces = chain,
            Folds = folds,
            Blank = blank,
            Clamp = clamp,
            SeatLevelMm = seat,
            Nose = nose,
            AutoLengthMm = auto,
            Tab = tab,
            Findings = _findings,
        };
    }

    private double? SeatLevel()
    {
        if (_strip.SeatedOn is not string name)
        {
            Refuse("seated_on", $"strip \"{_strip.Name}\" has no seated_on: the surface that its clamped part lies on, which decides its height; e.g. seated_on = \"floor\"");
            return null;
        }

        SurfaceBrief? surface = _brief.Surfaces.FirstOrDefault(s => string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase));
        if (surface is null)
        {
            Refuse("seated_on", $"strip \"{_strip.Name}\" is seated on \"{name}\", but the surfaces are {(_brief.Surfaces.Count == 0 ? "none" : string.Join(", ", _brief.Surfaces.Select(s => $"\"{s.Name}\"")))}");
        }

        return surface?.LevelMm;
    }

    // The chain from its terminal end at the origin, level, along x; the straight "auto" has the given length.
    private List<FormedPiece> Chain(double autoMm)
    {
        List<FormedPiece> chain = [];
        StripFrame frame = new(default, new(1, 0, 0), SpaceVector.Upward);
        double at = 0;
        for (int i = 0; i < _strip.Shape.Count; i++)
        {
            FormedPiece? piece = _strip.Shape[i] switch
            {
                StripTab tab => new(i, FormedKind.Straight, frame) { DevelopedMm = TabLength(tab) },
                StripStraight s => new(i, FormedKind.Straight, frame) { DevelopedMm = s.LengthMm ?? autoMm },
                StripBend b => new(i, FormedKind.Fold, frame)
                {
                    DevelopedMm = BendRule.AllowanceMm(b.AngleRad, b.RadiusMm, _strip.ThicknessMm, K(b).Value),
                    AngleRad = b.AngleRad,
                    RadiusMm = b.RadiusMm + (_strip.ThicknessMm / 2),
                },
                StripSweep s => new(i, FormedKind.Sweep, frame) { DevelopedMm = Math.Abs(s.AngleRad) * s.RadiusMm, AngleRad = s.AngleRad, RadiusMm = s.RadiusMm },
                _ => null,
            };
            if (piece is not null)
            {
                piece = piece with { FromMm = at, WidthMm = _outlay.Widths[i].FromMm, WidthEndMm = _outlay.Widths[i].ToMm };
                chain.Add(piece);
                frame = piece.End;
                at = piece.ToMm;
            }
        }

        return chain;
    }

    private double TabLength(StripTab tab)
    {
        TabDimensions size = TabDimensions.Find(tab.Size)!;
        const double wider = 1e-6;
        bool shoulder = _outlay.Widths.Count > 1 && _outlay.Widths[1].FromMm > size.WidthMm + wider;
        return shoulder ? size.ToShoulderMm : size.BladeMm;
    }

    private MaterialValue K(StripBend bend) =>
        _strip.KFactor is double given ? new(given, "given in the parameter file") : BendRule.K(_material, bend.RadiusMm, _strip.ThicknessMm);

    // The clamp, checked: between its two positions the strip must be flat.
    private StripClamp? Clamped(List<FormedPiece> chain)
    {
        double length = chain[^1].ToMm;
        StripClamp clamp = _strip.Clamp ?? new(0, chain.TakeWhile(p => p.Kind != FormedKind.Fold).LastOrDefault()?.ToMm ?? 0);
        if (clamp.FromMm < 0 || clamp.ToMm <= clamp.FromMm || clamp.ToMm > length + 1e-9)
        {
            Refuse("clamp", $"strip \"{_strip.Name}\" is clamped from {clamp.FromMm:0.###} to {clamp.ToMm:0.###} mm, but it is developed {length:0.###} mm long; the two positions lie on it, the first before the second");
            return null;
        }

        if (chain.FirstOrDefault(p => p.Kind == FormedKind.Fold && p.FromMm < clamp.ToMm - 1e-9 && p.ToMm > clamp.FromMm + 1e-9) is FormedPiece fold)
        {
            Refuse("clamp", $"strip \"{_strip.Name}\" is clamped from {clamp.FromMm:0.###} to {clamp.ToMm:0.###} mm, but its fold (piece {fold.ShapeIndex + 1}) takes {fold.FromMm:0.###} to {fold.ToMm:0.###} mm of the blank; a clamp holds a flat part, so e.g. clamp up to {Math.Floor(fold.FromMm * 10) / 10:0.#} mm");
            return null;
        }

        return clamp;
    }

    private static StripFrame FrameAt(List<FormedPiece> chain, double atMm)
    {
        FormedPiece piece = chain.FirstOrDefault(p => atMm <= p.ToMm + 1e-9) ?? chain[^1];
        return piece.FrameAt(piece.DevelopedMm > 0 ? Math.Clamp((atMm - piece.FromMm) / piece.DevelopedMm, 0, 1) : 0);
    }

    // Turned so that the seated part is level, its underside on its surface, and the end of the clamp at x = y = 0, pointing along x.
    internal static List<FormedPiece> Seated(List<FormedPiece> chain, StripClamp clamp, double seatMm, double thicknessMm)
    {
        StripFrame at = FrameAt(chain, clamp.ToMm);
        SpaceVector Turned(SpaceVector v) => new(v.Dot(at.Along), v.Dot(at.Left), v.Dot(at.Up));
        SpaceVector lift = new(0, 0, seatMm + (thicknessMm / 2));
        return [.. chain.Select(p => p with
        {
            Start = new StripFrame(Turned(p.Start.Origin - at.Origin) + lift, Turned(p.Start.Along), Turned(p.Start.Up)),
        })];
    }

    // The height of the nose changes with the length of the straight "auto" by its slope, and by nothing else: one division.
    private double? SolveAuto(List<FormedPiece> chain, StripClamp clamp, double seatMm)
    {
        int shape = _strip.Shape.ToList().FindIndex(p => p is StripStraight { LengthMm: null });
        List<FormedPiece> seated = Seated(chain, clamp, seatMm, _strip.ThicknessMm);
        FormedPiece auto = seated.Single(p => p.ShapeIndex == shape);
        StripNose? nose = Nose(seated);
        if (nose is null)
        {
            return null;
        }

        if (auto.FromMm < clamp.ToMm - 1e-9 || auto.FromMm >= nose.AtMm)
        {
            Refuse(Piece(shape), $"the straight \"auto\" of strip \"{_strip.Name}\" lies {(auto.FromMm >= nose.AtMm ? "beyond the contact" : "before the end of the clamp")}, where its length does not move the contact; it must lie between the two");
            return null;
        }

        double rise = auto.Start.Along.Z;
        double missing = nose.RadiusMm - _strip.DeflectionMm!.Value - nose.Centre.Z;
        const double levelBelow = 1e-6;
        if (Math.Abs(rise) < levelBelow)
        {
            Refuse(Piece(shape), $"the straight \"auto\" of strip \"{_strip.Name}\" is level, so its length does not change the height of the contact, which is {nose.RadiusMm - nose.Centre.Z:0.###} mm below the copper face whatever its length; make a rising straight \"auto\", or leave deflection out");
            return null;
        }

        double length = missing / rise;
        if (!(length > 0))
        {
            Refuse(Piece(shape), $"the straight \"auto\" of strip \"{_strip.Name}\" would need a length of {length:0.###} mm for a deflection of {_strip.DeflectionMm.Value:0.###} mm: with length 0 the contact already lies {nose.RadiusMm - nose.Centre.Z:0.###} mm below the copper face (surface at {seatMm:0.###} mm); lower the surface, shorten the contact or turn the fold the other way");
            return null;
        }

        return length;
    }

    private StripFold[] Folds(List<FormedPiece> chain)
    {
        FormedPiece[] folds = [.. chain.Where(p => p.Kind == FormedKind.Fold)];
        StripFold[] table = new StripFold[folds.Length];
        for (int i = 0; i < folds.Length; i++)
        {
            StripBend bend = (StripBend)_strip.Shape[folds[i].ShapeIndex];
            SpringbackSetting setting = BendRule.Springback(bend.AngleRad, bend.RadiusMm, _strip.ThicknessMm, _material);
            table[i] = new StripFold(folds[i].ShapeIndex, folds[i].FromMm + (folds[i].DevelopedMm / 2), folds[i].DevelopedMm, bend.AngleRad, bend.RadiusMm)
            {
                K = K(bend),
                Setting = setting,
                Order = folds.Length - i,
                IsContact = bend.IsContact,
                LeastRadius = LeastRadius(),
            };
            const double formulaUpTo = 0.25;
            double overbend = Math.Abs(setting.AngleRad) - Math.Abs(bend.AngleRad);
            if (!(overbend < MostOverbendRad))
            {
                Refuse(Piece(folds[i].ShapeIndex), $"the fold of strip \"{_strip.Name}\" (piece {folds[i].ShapeIndex + 1}) would have to be bent {Angles.DegFromRad(overbend):0.#}° further than its {Angles.DegFromRad(Math.Abs(bend.AngleRad)):0.#}°, because stock of {_strip.ThicknessMm:0.####} mm {_material.Designation} springs back all but wholly from an inside radius of {bend.RadiusMm:0.###} mm; a smaller radius or thicker stock keeps its fold");
            }
            else if (setting.X > formulaUpTo)
            {
                _findings.Add(Finding.Warning("strip.springback", string.Create(CultureInfo.InvariantCulture, $"Fold {i + 1} of strip \"{_strip.Name}\" springs back more than the formula covers (Rᵢ Y/(E t) = {setting.X:0.###}, sound to {formulaUpTo}): find the over-bend with a test strip."), Place(Piece(folds[i].ShapeIndex))));
            }
        }

        return table;
    }

    private static string Piece(int index) => string.Create(CultureInfo.InvariantCulture, $"shape[{index}]");

    private TextPlace Place(string key) => _brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"strip[{_index}].{key}"));

    private void Refuse(string key, FormattableString message) =>
        _reasons.Add(Finding.Error("strip.form", FormattableString.Invariant(message), Place(key)));
}
