using System.Globalization;

namespace WheelDraft.Engineering;

// What can be said of a strip's pieces and keys before anything is formed.
internal sealed partial class StripForming
{
    private void CheckPieces()
    {
        if (_strip.Shape.Count == 0)
        {
            Refuse("shape", $"strip \"{_strip.Name}\" has no shape; it needs at least one straight");
        }

        for (int i = 0; i < _strip.Shape.Count; i++)
        {
            CheckWidth(i);
            switch (_strip.Shape[i])
            {
                case StripTab tab:
                    CheckTab(tab, i);
                    break;
                case StripBend bend:
                    CheckBend(bend, i);
                    break;
                case StripSweep sweep when sweep.RadiusMm <= _outlay.Widths[i].FromMm / 2:
                    Refuse(Piece(i), $"the sweep of strip \"{_strip.Name}\" (piece {i + 1}) has radius {sweep.RadiusMm:0.###} mm on its centre line and is {_outlay.Widths[i].FromMm:0.###} mm wide, so its inner edge would fold over itself; the radius must be over {_outlay.Widths[i].FromMm / 2:0.###} mm");
                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>Refuses a piece of which nothing may be left when both its edges are cut as far in as they may be.</summary>
    private void CheckWidth(int piece)
    {
        double narrowest = Math.Min(_outlay.Widths[piece].FromMm, _outlay.Widths[piece].ToMm);
        double strays = _brief.Process.ToleranceMm;
        if (_strip.Shape[piece] is StripStraight or StripSweep && narrowest <= 2 * strays)
        {
            Refuse(Piece(piece), $"piece {piece + 1} of strip \"{_strip.Name}\" is {narrowest:0.###} mm wide where it is narrowest, and each of its edges may be cut {strays:0.###} mm too far in ([process] tolerance), so nothing may be left of it; it must be wider than {2 * strays:0.###} mm, and wide enough to press");
        }
    }

    private void CheckTab(StripTab tab, int piece)
    {
        if (TabDimensions.Find(tab.Size) is not TabDimensions size)
        {
            Refuse(Piece(piece), $"tab \"{tab.Size}\" of strip \"{_strip.Name}\" is not listed; the tabs are {string.Join(", ", TabDimensions.All.Select(t => $"\"{t.Size}\""))} (IEC 61210)");
            return;
        }

        double t = _strip.ThicknessMm;
        if (!size.IsCutFrom(t))
        {
            string[] fitting = [.. TabDimensions.All.Where(d => d.IsCutFrom(t)).Select(d => $"\"{d.Size}\"")];
            Refuse(Piece(piece), $"tab \"{size.Size}\" of strip \"{_strip.Name}\" needs stock {size.LeastThicknessMm:0.00} to {size.MostThicknessMm:0.00} mm thick (IEC 61210), but the strip is {t:0.###} mm; {(fitting.Length == 0 ? "no tab fits this stock" : $"this stock can be {string.Join(" or ", fitting)}")}");
        }
    }

    private void CheckBend(StripBend bend, int piece)
    {
        double ratio = bend.RadiusMm / _strip.ThicknessMm;
        MaterialValue? least = LeastRadius();
        if (least is null)
        {
            _findings.Add(Finding.Note("strip.radius", string.Create(CultureInfo.InvariantCulture, $"No least bend radius is known for {_material.Designation}: the fold of strip \"{_strip.Name}\" (inside radius {bend.RadiusMm:0.###} mm, {ratio:0.##} × thickness) is not checked; bend a test strip."), Place(Piece(piece))));
        }
        else if (ratio < least.Value - 1e-9)
        {
            string way = _strip.Grain switch
            {
                StripGrain.Along => "bent across the grain",
                StripGrain.Across => "bent along the grain, the bad way",
                _ => "grain not given, so the bad way is taken",
            };
            Refuse(Piece(piece), $"the fold of strip \"{_strip.Name}\" (piece {piece + 1}) has inside radius {bend.RadiusMm:0.###} mm, {ratio:0.##} × thickness; {_material.Designation} needs at least {least.Value:0.##} × thickness = {least.Value * _strip.ThicknessMm:0.###} mm ({way}; {least.SourceInWords})");
        }
    }

    private MaterialValue? LeastRadius() => _strip.Grain switch
    {
        StripGrain.Along => _material.LeastRadiusGoodWay,
        StripGrain.Across => _material.LeastRadiusBadWay,
        _ => _material.LeastRadiusBadWay,
    };

    private void CheckKeys()
    {
        bool hasAuto = _strip.Shape.Any(p => p is StripStraight { LengthMm: null });
        if (IsWiper && _outlay.ContactPiece is null)
        {
            Refuse("shape", $"strip \"{_strip.Name}\" has no contact: a wiper ends in a rivet or has one bend with contact = true");
        }

        if (IsWiper && _strip.Clamp is null)
        {
            Refuse("clamp", $"strip \"{_strip.Name}\" has no clamp: the two developed positions between which it is held; the spring begins at the second; e.g. clamp = [\"8 mm\", \"21 mm\"]");
        }

        if (hasAuto && (!IsWiper || _strip.DeflectionMm is null))
        {
            Refuse("deflection", IsWiper
                ? $"strip \"{_strip.Name}\" has a straight \"auto\" but no deflection to solve it for; e.g. deflection = \"1.5 mm\""
                : (FormattableString)$"strip \"{_strip.Name}\" has a straight \"auto\", but a plain strip has no deflection to solve it for; give the length");
        }

        if (_strip.DeflectionMm is double d && !(d > 0))
        {
            Refuse("deflection", $"deflection of strip \"{_strip.Name}\" is {d:0.###} mm; the wheel must push the contact back, so it is above 0");
        }
    }
}
