using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>A corner of a polyline and the width of the run that follows.</summary>
internal readonly record struct WideCorner(Point At, double Bulge, double StartWidth, double EndWidth);

/// <summary>Polylines with a width as the areas that they cover.</summary>
/// <remarks>The areas together contain what any program draws: each run with ends square to it, and at each corner the mitre up to where the
/// borders meet. Straight and evenly wide bent runs are exact; a bent run that tapers is taken in steps, too wide by up to a
/// thousandth of the change of its width. A corner that turns back on itself, whose mitre has no end, is refused.</remarks>
internal static class WidePolyline
{
    private const int TaperSteps = 500;

    // Sharper than about a degree from turning back: no two programs draw the same.
    private const double Sharpest = 0.02;

    internal static AreaShape Shape(DxfRecord record, IReadOnlyList<WideCorner> corners, bool closed, Placement frame)
    {
        List<Run> runs = [.. Runs(record, corners, closed)];
        List<IReadOnlyList<Piece>> loops = [.. runs.Select(Covered).OfType<IReadOnlyList<Piece>>()];
        for (int i = closed ? 0 : 1; i < runs.Count; i++)
        {
            loops.AddRange(Join(record, runs[(i + runs.Count - 1) % runs.Count], runs[i]));
        }

        return loops.Count > 0
            ? new(record.Layer, record.Source, frame, [.. loops.Select(l => Loops.Region(record, frame, l))])
            : throw record.Fault("it has a width and no length, so it covers nothing");
    }

    private static IEnumerable<Run> Runs(DxfRecord record, IReadOnlyList<WideCorner> corners, bool closed)
    {
        for (int i = 0; i < (closed ? corners.Count : corners.Count - 1); i++)
        {
            WideCorner from = corners[i];
            Point to = corners[(i + 1) % corners.Count].At;
            if (from.StartWidth < 0 || from.EndWidth < 0)
            {
                throw record.Fault("a width is below 0");
            }

            if (from.At == to)
            {
                continue;
            }

            if (from.StartWidth == 0 && from.EndWidth == 0)
            {
                throw record.Fault("part of it has a width and part of it has none, so it is not clear what it covers");
            }

            yield return new(from.Bulge == 0 ? new Segment(from.At, to) : PolylineReader.Bulged(record, (from.At, from.Bulge), to), from.StartWidth / 2, from.EndWidth / 2);
        }
    }

    private static IReadOnlyList<Piece>? Covered(Run run) => run.Middle is Arc arc
        ? Sector(arc, run.HalfStart, run.HalfEnd)
        : Loops.Polygon(run.Border(1, 0), run.Border(1, 1), run.Border(-1, 1), run.Border(-1, 0));

    /// <summary>What a bent run covers; where its inner border would pass the centre, the whole disc.</summary>
    private static List<Piece> Sector(Arc arc, double halfStart, double halfEnd)
    {
        double widest = Math.Max(halfStart, halfEnd);
        if (arc.RadiusMm - widest <= 1e-9 * arc.RadiusMm)
        {
            return [new Arc(arc.Centre, arc.RadiusMm + widest, 0, Angles.TurnRad)];
        }

        int steps = halfStart == halfEnd ? 1 : TaperSteps;
        List<Piece> outer = [];
        List<Piece> inner = [];
        double sweep = arc.SweepRad / steps;
        for (int i = 0; i < steps; i++)
        {
            double half = Math.Max(HalfAt(i), HalfAt(i + 1));
            outer.Add(new Arc(arc.Centre, arc.RadiusMm + half, arc.StartRad + (i * sweep), sweep));
            inner.Add(new Arc(arc.Centre, arc.RadiusMm - half, arc.StartRad + ((i + 1) * sweep), -sweep));
        }

        inner.Reverse();
        return Linked([.. outer, .. inner]);

        double HalfAt(int step) => halfStart + ((halfEnd - halfStart) * step / steps);
    }

    /// <summary>Pieces one after the other with straight links where they stand apart.</summary>
    private static List<Piece> Linked(IReadOnlyList<Piece> pieces)
    {
        List<Piece> linked = [];
        for (int i = 0; i < pieces.Count; i++)
        {
            linked.Add(pieces[i]);
            Point next = pieces[(i + 1) % pieces.Count].Start;
            if (pieces[i].End.DistanceTo(next) > Tolerances.ShortestPieceMm)
            {
                linked.Add(new Segment(pieces[i].End, next));
            }
        }

        return linked;
    }

    /// <summary>What the corner between two runs covers beyond them.</summary>
    private static IEnumerable<IReadOnlyList<Piece>> Join(DxfRecord record, Run before, Run after)
    {
        Vector arrives = before.Middle.TangentAt(1);
        Vector leaves = after.Middle.TangentAt(0);
        double turn = arrives.Cross(leaves);
        if (arrives.Dot(leaves) < 0 && Math.Abs(turn) < Sharpest)
        {
            throw record.Fault("it has a width and turns back on itself, and programs draw such a corner differently");
        }

        const double straight = 1e-12;
        if (Math.Abs(turn) < straight)
        {
            yield break;
        }

        int outside = turn > 0 ? -1 : 1;
        Point at = after.Middle.Start;
        (Point a, Point b) = (before.Border(outside, 1), after.Border(outside, 0));
        Point? mitre = Mitre(before, after, outside);
        if (Loops.Polygon(mitre is Point m && (m - a).Dot(arrives) >= 0 && (m - b).Dot(leaves) <= 0 ? [at, a, m, b] : [at, a, b]) is { } wedge)
        {
            yield return wedge;
        }

        // On the inside of a corner the borders meet further back than a short run is long: some programs fill up to there.
        if (Mitre(before, after, -outside) is Point back
            && ((at - back).Dot(arrives) > before.Middle.Length || (back - at).Dot(leaves) > after.Middle.Length)
            && before.Middle is Segment && after.Middle is Segment
            && Loops.Polygon(Loops.Hull([.. before.Corners, .. after.Corners, back, .. mitre is Point tip ? [tip] : Array.Empty<Point>()])) is { } hull)
        {
            yield return hull;
        }
    }

    private static Point? Mitre(Run before, Run after, int side)
    {
        Point a = before.Border(side, 1);
        Point b = after.Border(side, 0);
        Vector first = before.Along(side, 1);
        Vector second = after.Along(side, 0);
        double across = first.Cross(second);
        return Math.Abs(across) < 1e-9 ? null : a + (first * ((b - a).Cross(second) / across));
    }

    /// <summary>A run of a polyline and half its width at both ends.</summary>
    private sealed record Run(Piece Middle, double HalfStart, double HalfEnd)
    {
        internal IEnumerable<Point> Corners => [Border(1, 0), Border(1, 1), Border(-1, 0), Border(-1, 1)];

        /// <summary>A corner of the run: on its left (1) or right (-1), at its start (0) or end (1).</summary>
        internal Point Border(int side, int end) =>
            (end == 0 ? Middle.Start : Middle.End) + (Middle.TangentAt(end).Left * (side * (end == 0 ? HalfStart : HalfEnd)));

        /// <summary>Which way a border runs at one of its ends.</summary>
        internal Vector Along(int side, int end) => Middle is Segment ? (Border(side, 1) - Border(side, 0)).Unit() : Middle.TangentAt(end);
    }
}
