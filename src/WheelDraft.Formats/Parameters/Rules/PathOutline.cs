using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>The outline of a wall or wire along a path: square ends, a true arc round the outside of each corner, a sharp inside.</summary>
internal static class PathOutline
{
    /// <summary>Sharpest turn of a path, degrees: beyond it the legs lie nearly on each other and the inside corner runs away.</summary>
    private const double SharpestDeg = 150;

    /// <summary>What keeps a path of some width from having such an outline, or null.</summary>
    public static string? Fault(IReadOnlyList<Point> path, double widthMm) =>
        Repeated(path) is not null ? "the same point stands twice in a row" : BandFault(path, widthMm) ?? Touching(path, widthMm);

    /// <summary>The first point that repeats the one before it, or null.</summary>
    public static int? Repeated(IReadOnlyList<Point> path)
    {
        for (int i = 1; i < path.Count; i++)
        {
            if (PlanPoints.Same(path[i], path[i - 1]))
            {
                return i;
            }
        }

        return null;
    }

    /// <summary>What keeps a path without repeated points from having sides all along it, or null; legs that meet elsewhere are no fault of it.</summary>
    public static string? BandFault(IReadOnlyList<Point> path, double widthMm)
    {
        for (int i = 1; i < path.Count - 1; i++)
        {
            if (Math.Abs(Angles.DegFromRad(TurnAt(path, i))) > SharpestDeg)
            {
                return string.Create(CultureInfo.InvariantCulture, $"the path turns by more than {SharpestDeg} deg at point {i + 1}");
            }
        }

        return ShortLeg(path, widthMm);
    }

    /// <summary>The outline of a path without fault.</summary>
    public static Outline Of(IReadOnlyList<Point> path, double widthMm)
    {
        List<Piece> pieces = [];
        Side(pieces, path, widthMm / 2);
        Side(pieces, [.. path.Reverse()], widthMm / 2);
        List<Piece> closed = [];
        for (int i = 0; i < pieces.Count; i++)
        {
            closed.Add(pieces[i]);
            Point end = pieces[i].End;
            Point next = pieces[(i + 1) % pieces.Count].Start;
            if (end.DistanceTo(next) > Tolerances.JoinMm)
            {
                closed.Add(new Segment(end, next));
            }
        }

        return new Outline(new Contour(closed));
    }

    /// <summary>The right-hand side of a path, from its first to its last point.</summary>
    private static void Side(List<Piece> pieces, IReadOnlyList<Point> path, double half)
    {
        Point from = path[0] - (Direction(path, 0).Left * half);
        for (int i = 0; i < path.Count - 1; i++)
        {
            Vector along = Direction(path, i);
            double turn = i + 2 < path.Count ? TurnAt(path, i + 1) : 0;

            // Turning left the right-hand side is the outside and ends square to the leg; turning right it ends on the bisector.
            double back = turn < 0 ? half * Math.Tan(-turn / 2) : 0;
            Point end = path[i + 1] - (along.Left * half) - (along * back);
            pieces.Add(new Segment(from, end));
            from = end;
            if (turn > 0)
            {
                Arc round = new(path[i + 1], half, (along.Left * -1).AngleRad, turn);
                pieces.Add(round);
                from = round.End;
            }
        }
    }

    private static Vector Direction(IReadOnlyList<Point> path, int leg) => (path[leg + 1] - path[leg]).Unit();

    /// <summary>Turn at an inner point, positive to the left.</summary>
    private static double TurnAt(IReadOnlyList<Point> path, int point)
    {
        Vector arrives = Direction(path, point - 1);
        Vector leaves = Direction(path, point);
        double turn = Math.Atan2(arrives.Cross(leaves), arrives.Dot(leaves));

        // Less than this is straight on: over 1 m it moves a side by a nanometre.
        return Math.Abs(turn) < 1e-9 ? 0 : turn;
    }

    private static string? ShortLeg(IReadOnlyList<Point> path, double widthMm)
    {
        for (int i = 0; i < path.Count - 1; i++)
        {
            double first = i > 0 ? Math.Tan(Math.Abs(TurnAt(path, i)) / 2) : 0;
            double second = i + 2 < path.Count ? Math.Tan(Math.Abs(TurnAt(path, i + 1)) / 2) : 0;
            // A nanometre more, so that no piece of the outline comes out as a point.
            double needed = ((first + second) * widthMm / 2) + 1e-6;
            double length = path[i].DistanceTo(path[i + 1]);
            if (!(length > needed))
            {
                return string.Create(CultureInfo.InvariantCulture, $"leg {i + 1} of the path is {length:0.###} mm long, and its corners need more than {needed:0.###} mm at this width");
            }
        }

        return null;
    }

    private static string? Touching(IReadOnlyList<Point> path, double widthMm)
    {
        for (int i = 0; i < path.Count - 1; i++)
        {
            for (int j = i + 2; j < path.Count - 1; j++)
            {
                if (PlanPoints.Apart((path[i], path[i + 1]), (path[j], path[j + 1])) <= widthMm)
                {
                    return string.Create(CultureInfo.InvariantCulture, $"legs {i + 1} and {j + 1} of the path touch at this width");
                }
            }
        }

        return null;
    }
}
