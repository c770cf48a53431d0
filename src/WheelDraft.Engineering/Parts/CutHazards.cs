using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What may go wrong at a place of a part while it is cut, though its shape can be cut.</summary>
/// <param name="Part">The part.</param>
/// <param name="Places">Where, worst first, on the part.</param>
/// <param name="Finding">What it is and what helps; a note, because machines differ.</param>
internal sealed record CutHazard(Part Part, IReadOnlyList<Point> Places, Finding Finding);

/// <summary>Looks for pieces that fall through the grate or tip, and thin long webs that warp.</summary>
/// <remarks>Bars of the grate and how slender a web may be are those of the process list, from memory of common practice, no source. A piece turned any
/// way may lie between two bars where it is narrower than they are apart, and rests on one where it is narrower than twice that. Holes near folds are
/// refused as the strips are formed.</remarks>
internal static class CutHazards
{
    // Directions in which a piece is measured across, and the steps along edges at which webs are, mm: both only find places to look at.
    private const int Ways = 36;
    private const double StepMm = 1;

    // A web is thin when it is no wider than so many thicknesses of the stock, or twice what the process can leave.
    private const double ThinThicknesses = 4;
    private const double ThinLeastWebs = 2;

    /// <summary>All hazards of the parts that the file's process cuts.</summary>
    /// <param name="brief">What was asked; without a named process nothing is known of grate and warping.</param>
    /// <param name="wheel">The wheel.</param>
    /// <param name="strips">The strips.</param>
    /// <param name="parts">The parts.</param>
    public static IReadOnlyList<CutHazard> Of(Brief brief, WheelLayout wheel, StripSet strips, PartList parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return [.. parts.Strips.Prepend(parts.Wheel).SelectMany(p => Of(brief, wheel, strips, p))];
    }

    /// <summary>The hazards of one part, the wheel or a strip; none of a part that another process cuts.</summary>
    /// <inheritdoc cref="Of(Brief, WheelLayout, StripSet, PartList)"/>
    /// <param name="brief">What was asked.</param>
    /// <param name="wheel">The wheel.</param>
    /// <param name="strips">The strips.</param>
    /// <param name="part">The part.</param>
    public static IReadOnlyList<CutHazard> Of(Brief brief, WheelLayout wheel, StripSet strips, Part part)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(part);
        if (part.KerfMm is null || brief.Process.Name is not string name || CuttingProcesses.Find(name) is not CuttingProcess process)
        {
            return [];
        }

        List<CutHazard?> all = [];
        if (process.GrateMm is double grate)
        {
            all.Add(HoldingTabs.Of(brief, wheel, strips, part).Count == part.Shapes.Count ? null : Loose(brief, part, grate));
            all.Add(DropOuts(brief, part, grate));
        }

        if (process.WarpsBeyond is double slender)
        {
            all.Add(Webs(brief, part, (process.Name, slender)));
        }

        return [.. all.OfType<CutHazard>()];
    }

    private static CutHazard? Loose(Brief brief, Part part, double grateMm)
    {
        double narrow = part.Shapes.Min(s => Across(s.ToCut.Outer).Least);
        string? how = narrow < grateMm ? "falls through" : narrow < 2 * grateMm ? "may tip into" : null;
        Point at = part.Shapes.MinBy(s => Across(s.ToCut.Outer).Least)!.ToCut.Bounds.Centre;
        return how is null ? null : new(part, [at], Finding.Note(
            narrow < grateMm ? "cut.falls" : "cut.tips",
            $"{part.Name}, {Wording.Mm(Math.Round(narrow, 1))} across, {how} a grate whose bars are {Wording.Mm(grateMm)} apart when it is cut free (common practice, from memory, no source): it may be lost, or be hit by the cutter. [process] holding_tabs keep it in its sheet.",
            brief.PlaceOf("process")));
    }

    // What falls clean through lies nowhere in the way; what rests on two bars stays.
    private static CutHazard? DropOuts(Brief brief, Part part, double grateMm)
    {
        (Contour Hole, double Least, double Most)[] tips =
        [
            .. part.Shapes.SelectMany(s => s.ToCut.Holes).Select(h => (Hole: h, Size: Across(h))).Select(h => (h.Hole, h.Size.Least, h.Size.Most))
                .Where(h => h.Most >= grateMm && h.Least < 2 * grateMm).OrderByDescending(h => Math.Round(h.Most, 6)),
        ];
        return tips.Length == 0 ? null : new(part, [.. tips.Select(t => t.Hole.Centroid)], Finding.Note(
            "cut.tips",
            $"{(tips.Length == 1 ? "1 drop-out" : $"{Wording.Number(tips.Length, 0)} drop-outs")} of {part.Name} may tip up between bars {Wording.Mm(grateMm)} apart and be hit by the cutter (common practice, from memory, no source); the longest, {Wording.Mm(Math.Round(tips[0].Most, 1))}, is round {CutChecks.At(tips[0].Hole.Centroid)}. A shop cuts them up first, or keeps them by tabs.",
            brief.PlaceOf("process")));
    }

    private static (double Least, double Most) Across(Contour contour)
    {
        double[] all = [.. Enumerable.Range(0, Ways).Select(k => contour.Placed(Placement.Turn(Math.PI * k / Ways)).Bounds.Height)];
        return (all.Min(), all.Max());
    }

    private static CutHazard? Webs(Brief brief, Part part, (string Name, double Slender) process)
    {
        double thinMm = Math.Max(ThinThicknesses * (part.Stock.ThicknessMm ?? 0), ThinLeastWebs * brief.Process.LeastWebMm);
        (Point At, double LongMm, double WideMm)[] webs =
        [
            .. part.Shapes.SelectMany(s => ThinStretches(s.Finished, thinMm)).Where(w => w.LongMm > process.Slender * w.WideMm)
                .OrderByDescending(w => Math.Round(w.LongMm / w.WideMm, 6)),
        ];
        return webs.Length == 0 ? null : new(part, [.. webs.Select(w => w.At)], Finding.Note(
            "cut.warp",
            $"A web of {part.Name} {Wording.Mm(Math.Round(webs[0].WideMm, 2))} wide runs on for {Wording.Mm(Math.Round(webs[0].LongMm, 1))} at {CutChecks.At(webs[0].At)}, {Wording.Number(Math.Floor(webs[0].LongMm / webs[0].WideMm), 0)} times its width{(webs.Length > 1 ? FormattableString.Invariant($"; {webs.Length} edges have such webs") : "")}: cut by {process.Name}, webs of more than {Wording.Number(process.Slender, 0)} times their width warp (common practice, from memory, no source). Wider webs, copper bonded to its carrier before it is cut, or a process without heat and force would do.",
            brief.PlaceOf("process")));
    }

    /// <summary>Stretches of edges along which the material is no wider than a limit: their middle, length and mean width.</summary>
    private static IEnumerable<(Point At, double LongMm, double WideMm)> ThinStretches(Outline shape, double thinMm)
    {
        (Piece Piece, Bounds Box)[] all = [.. shape.Pieces.Select(p => (p, p.Bounds.Grown(Tolerances.TouchMm)))];
        foreach ((Piece piece, _) in all)
        {
            int steps = Math.Max(2, (int)Math.Ceiling(piece.Length / StepMm));
            List<(double Share, double WideMm)> run = [];
            for (int i = 0; i <= steps + 1; i++)
            {
                double share = (i + 0.5) / (steps + 1);
                double? wide = i > steps ? null : WidthAt(all, piece, share, thinMm);
                if (wide is double width)
                {
                    run.Add((share, width));
                }
                else if (run.Count > 1)
                {
                    yield return (piece.PointAt((run[0].Share + run[^1].Share) / 2), (run[^1].Share - run[0].Share) * piece.Length, run.Average(r => r.WideMm));
                    run.Clear();
                }
                else
                {
                    run.Clear();
                }
            }
        }
    }

    // Straight in from the edge to the next one; null where none comes within the limit.
    private static double? WidthAt((Piece Piece, Bounds Box)[] all, Piece piece, double share, double thinMm)
    {
        const double offMm = 1e-4;
        Point at = piece.PointAt(share);
        Vector inward = piece.TangentAt(share).Left;
        Segment across = new(at + (inward * offMm), at + (inward * thinMm));
        Bounds box = across.Bounds;
        Point middle = across.PointAt(0.5);
        double? nearest = null;
        foreach ((Piece other, Bounds about) in all)
        {
            // The box of a long arc covers what lies within it; its circle is passed by most.
            bool mayMeet = box.Overlaps(about) && !(other is Arc arc && Math.Abs(arc.Centre.DistanceTo(middle) - arc.RadiusMm) > (thinMm / 2) + Tolerances.JoinMm);
            foreach (CommonPoint common in mayMeet ? Intersections.Of(across, other).Points : [])
            {
                double mm = common.At.DistanceTo(at);
                nearest = nearest is double known && known <= mm ? known : mm;
            }
        }

        return nearest;
    }
}
