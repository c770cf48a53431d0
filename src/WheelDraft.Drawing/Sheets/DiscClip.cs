using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What of a shape lies inside a circle, for enlarged views: exact lines and arcs, closed by arcs of the circle.</summary>
internal static class DiscClip
{
    // Ends of pieces that were cut by the same circle meet within this, mm.
    private const double JoinMm = 1e-6;

    /// <summary>The parts of a contour's inside that lie inside a circle, each a contour of its own.</summary>
    /// <param name="shape">The contour; its turning does not matter.</param>
    /// <param name="disc">The whole circle.</param>
    /// <param name="contains">Whether the contour's inside has a point: asked only where the contour does not cross the circle.</param>
    public static IReadOnlyList<Contour> Inside(Contour shape, Arc disc, Func<Point, bool> contains)
    {
        List<List<Piece>> runs = Runs(shape.Travelled(Turning.Anticlockwise), disc);
        if (runs.Count == 0)
        {
            return contains(disc.Centre) ? [Contour.Circle(disc.Centre, disc.RadiusMm)] : [];
        }

        if (runs.Count == 1 && runs[0][0].Start.DistanceTo(runs[0][^1].End) < JoinMm)
        {
            return [new Contour(runs[0])];
        }

        List<Contour> parts = [];
        while (runs.Count > 0)
        {
            parts.Add(Loop(runs, disc));
        }

        return parts;
    }

    // From where a run leaves the circle's inside, the border goes on along the circle, anticlockwise, to the next run that enters.
    private static Contour Loop(List<List<Piece>> runs, Arc disc)
    {
        List<Piece> loop = [];
        List<Piece> first = runs[0];
        List<Piece> at = first;
        while (true)
        {
            runs.Remove(at);
            loop.AddRange(at);
            double from = (at[^1].End - disc.Centre).AngleRad;
            double To(List<Piece> run) => Angles.InTurn((run[0].Start - disc.Centre).AngleRad - from);
            List<Piece> next = runs.Append(first).MinBy(To)!;
            if (To(next) * disc.RadiusMm > JoinMm)
            {
                loop.Add(new Arc(disc.Centre, disc.RadiusMm, from, To(next)));
            }

            if (ReferenceEquals(next, first))
            {
                return new Contour(loop);
            }

            at = next;
        }
    }

    // The contour's stretches inside the circle, each from where it enters to where it leaves.
    private static List<List<Piece>> Runs(Contour shape, Arc disc)
    {
        List<List<Piece>> runs = [];
        foreach (Piece part in shape.Pieces.SelectMany(p => SpacingDetails.Within(p, disc)))
        {
            if (runs.Count > 0 && runs[^1][^1].End.DistanceTo(part.Start) < JoinMm)
            {
                runs[^1].Add(part);
            }
            else
            {
                runs.Add([part]);
            }
        }

        if (runs.Count > 1 && runs[^1][^1].End.DistanceTo(runs[0][0].Start) < JoinMm)
        {
            runs[0].InsertRange(0, runs[^1]);
            runs.RemoveAt(runs.Count - 1);
        }

        return runs;
    }
}
