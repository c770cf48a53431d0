using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A pattern as geometry: hatch lines and dots clipped exactly to shapes.</summary>
/// <remarks>Lines lie on one grid for the whole paper, so that areas side by side are hatched as one. Each grid line is
/// met with every straight and circular piece in closed form, and the stretches inside are kept by the even-odd rule.</remarks>
internal sealed record PatternDrawing(IReadOnlyList<Segment> Lines, IReadOnlyList<Point> Dots)
{
    private static readonly PatternDrawing Nothing = new([], []);

    public static PatternDrawing Of(IReadOnlyList<Outline> shapes, FillPattern pattern) => pattern.Kind switch
    {
        PatternKind.Hatch => new([.. Hatch(shapes, pattern.AngleDeg, pattern.SpacingMm)], []),
        PatternKind.CrossHatch => new([.. Hatch(shapes, pattern.AngleDeg, pattern.SpacingMm), .. Hatch(shapes, pattern.AngleDeg + 90, pattern.SpacingMm)], []),
        PatternKind.Dots => new([], [.. DotsIn(shapes, pattern)]),
        _ => Nothing,
    };

    private static IEnumerable<Segment> Hatch(IReadOnlyList<Outline> shapes, double angleDeg, double spacingMm)
    {
        double turn = Angles.RadFromDeg(angleDeg);
        foreach (Outline shape in shapes)
        {
            Outline level = shape.Placed(Placement.Turn(-turn));
            Placement back = Placement.Turn(turn);
            foreach (double y in Rows(level.Bounds, spacingMm))
            {
                List<double> cuts = Crossings(level, y);
                for (int i = 0; i + 1 < cuts.Count; i += 2)
                {
                    if (cuts[i + 1] - cuts[i] > Tolerances.JoinMm)
                    {
                        yield return new Segment(back.Of(new Point(cuts[i], y)), back.Of(new Point(cuts[i + 1], y)));
                    }
                }
            }
        }
    }

    private static IEnumerable<Point> DotsIn(IReadOnlyList<Outline> shapes, FillPattern pattern)
    {
        double turn = Angles.RadFromDeg(pattern.AngleDeg);
        Placement back = Placement.Turn(turn);
        double clear = pattern.StrokeMm / 2;
        foreach (Outline shape in shapes)
        {
            Outline level = shape.Placed(Placement.Turn(-turn));
            foreach (double y in Rows(level.Bounds, pattern.SpacingMm))
            {
                List<double> cuts = Crossings(level, y);
                for (int i = 0; i + 1 < cuts.Count; i += 2)
                {
                    foreach (double x in Steps(cuts[i], cuts[i + 1], pattern.SpacingMm))
                    {
                        Point dot = new(x, y);
                        if (level.Pieces.All(p => Distance(p, dot) >= clear))
                        {
                            yield return back.Of(dot);
                        }
                    }
                }

            }
        }
    }

    private static IEnumerable<double> Rows(Bounds bounds, double spacingMm) => Steps(bounds.MinY, bounds.MaxY, spacingMm);

    private static IEnumerable<double> Steps(double from, double to, double spacingMm)
    {
        // The grid stands at an odd share of its spacing: edges on round coordinates then never run along a grid line,
        // where rounding alone would decide what is inside.
        const double offset = 0.3717;
        for (double k = Math.Ceiling((from / spacingMm) - offset); (k + offset) * spacingMm < to; k++)
        {
            yield return (k + offset) * spacingMm;
        }
    }

    /// <summary>Where a level line meets the contours, from left to right; an even number.</summary>
    private static List<double> Crossings(Outline shape, double y)
    {
        List<double> cuts = [];
        foreach (Piece piece in shape.Pieces)
        {
            if (piece is Arc arc)
            {
                ArcCrossings(arc, y, cuts);
            }
            else if ((piece.Start.Y <= y) != (piece.End.Y <= y))
            {
                double share = (y - piece.Start.Y) / (piece.End.Y - piece.Start.Y);
                cuts.Add(piece.Start.X + (share * (piece.End.X - piece.Start.X)));
            }
        }

        cuts.Sort();
        return cuts;
    }

    /// <summary>An arc is taken apart where it turns over (top and bottom); each part crosses once if its ends lie on two sides.</summary>
    private static void ArcCrossings(Arc arc, double y, List<double> cuts)
    {
        double low = Math.Min(arc.StartRad, arc.EndRad);
        double high = Math.Max(arc.StartRad, arc.EndRad);
        bool forward = arc.SweepRad > 0;
        double from = low;
        double fromY = (forward ? arc.Start : arc.End).Y;
        double k = Math.Floor((low - (Math.PI / 2)) / Math.PI) + 1;
        while (from < high)
        {
            double turnOver = (Math.PI / 2) + (k * Math.PI);
            bool last = turnOver >= high;
            double to = last ? high : turnOver;
            bool top = ((long)k & 1) == 0;
            double toY = last ? (forward ? arc.End : arc.Start).Y : arc.Centre.Y + (top ? arc.RadiusMm : -arc.RadiusMm);
            if ((fromY <= y) != (toY <= y))
            {
                double h = y - arc.Centre.Y;
                double half = Math.Sqrt(Math.Max(0, (arc.RadiusMm * arc.RadiusMm) - (h * h)));
                cuts.Add(arc.Centre.X + (Math.Cos((from + to) / 2) >= 0 ? half : -half));
            }

            from = to;
            fromY = toY;
            k++;
        }
    }

    private static double Distance(Piece piece, Point p)
    {
        if (piece is Arc arc)
        {
            bool facing = arc.Span.IsFull || arc.Span.Contains((p - arc.Centre).AngleRad);
            return facing
                ? Math.Abs(p.DistanceTo(arc.Centre) - arc.RadiusMm)
                : Math.Min(p.DistanceTo(arc.Start), p.DistanceTo(arc.End));
        }

        Vector along = piece.End - piece.Start;
        double share = Math.Clamp((p - piece.Start).Dot(along) / along.Dot(along), 0, 1);
        return p.DistanceTo(piece.Start + (along * share));
    }
}
