namespace WheelDraft.Geometry;

/// <summary>A stretch of a border made straight.</summary>
/// <param name="From">Where it starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="SagittaMm">How far the border itself is away from it at most, mm; 0 for what is straight already.</param>
internal readonly record struct FlatStretch(Point From, Point To, double SagittaMm);

/// <summary>A border of straight stretches only, so that its walls are flat and unfold.</summary>
/// <remarks>Arcs become chords where what they bound is passed on their outside, and tangents where it is passed on their inside: what has to be gone
/// round only shrinks. A wall that is crossed moves by no more than the sagitta, which is taken off where such a wall is crossed.</remarks>
internal sealed class FlatBorder
{
    /// <summary>Most that a stretch of an arc turns, rad.</summary>
    /// <remarks>5.6°: a way along the chords is shorter than along the arc by 0.04 %, a twentieth of what is allowed for walls. An angle and no length,
    /// so that a surface twice as large has paths twice as long.</remarks>
    private const double MostTurnRad = Math.PI / 32;

    private readonly List<FlatStretch[]> _loops = [];

    internal FlatBorder(SurfaceRegion region, bool blocksOutside)
    {
        Region = region;
        BlocksOutside = blocksOutside;
        foreach (Contour contour in region.Outline.Contours)
        {
            _loops.Add([.. contour.Pieces.SelectMany(p => Flat(p, IsHollowPassed(p)))]);
        }

        Bounds = _loops.SelectMany(l => l).Select(s => Bounds.Of(s.From, s.To)).Aggregate((a, b) => a.With(b));
    }

    internal SurfaceRegion Region { get; }

    /// <summary>Whether it is the outline of the surface itself.</summary>
    internal bool BlocksOutside { get; }

    internal Bounds Bounds { get; }

    /// <summary>Whether it is one loop that turns to one side all the way.</summary>
    internal bool IsConvex
    {
        get
        {
            FlatStretch[] loop = _loops[0];
            IEnumerable<double> turns = loop.Select((s, i) => (s.To - s.From).Cross(loop[(i + 1) % loop.Length].To - loop[(i + 1) % loop.Length].From));
            return _loops.Count == 1 && (turns.All(t => t >= 0) || turns.All(t => t <= 0));
        }
    }

    internal IEnumerable<FlatStretch> Stretches => _loops.SelectMany(l => l);

    /// <summary>Whether a point lies inside (its holes left out).</summary>
    internal bool Contains(Point p)
    {
        if (!Bounds.Contains(p))
        {
            return false;
        }

        bool inside = false;
        foreach (FlatStretch[] loop in _loops)
        {
            foreach (FlatStretch s in loop)
            {
                if (s.From.Y > p.Y != s.To.Y > p.Y
                    && p.X < s.From.X + ((p.Y - s.From.Y) / (s.To.Y - s.From.Y) * (s.To.X - s.From.X)))
                {
                    inside = !inside;
                }
            }
        }

        return inside;
    }

    /// <summary>Whether what blocks lies outside the bend of an arc, so that paths run in its hollow.</summary>
    private bool IsHollowPassed(Piece piece) =>
        (BlocksOutside || Region.IsImpassable) && piece is Arc arc && (BlocksOutside ? arc.SweepRad > 0 : arc.SweepRad < 0);

    private static IEnumerable<FlatStretch> Flat(Piece piece, bool outside)
    {
        if (piece is not Arc arc)
        {
            return [new FlatStretch(piece.Start, piece.End, 0)];
        }

        int n = (int)Math.Ceiling(Math.Abs(arc.SweepRad) / MostTurnRad);
        double half = Math.Abs(arc.SweepRad) / n / 2;
        return Between(outside ? Tangents(arc, n, half) : [.. Enumerable.Range(0, n + 1).Select(i => PointOn(arc, (double)i / n))], arc.RadiusMm * (1 - Math.Cos(half)));
    }

    private static Point PointOn(Arc arc, double share) => share == 0 ? arc.Start : share == 1 ? arc.End : arc.PointAt(share);

    private static Point[] Tangents(Arc arc, int n, double half)
    {
        double far = arc.RadiusMm / Math.Cos(half);
        return [arc.Start, .. Enumerable.Range(0, n).Select(i => arc.Centre + Vector.Polar(far, arc.StartRad + (arc.SweepRad * (i + 0.5) / n))), arc.End];
    }

    private static IEnumerable<FlatStretch> Between(Point[] points, double sagittaMm)
    {
        for (int i = 0; i + 1 < points.Length; i++)
        {
            yield return new FlatStretch(points[i], points[i + 1], sagittaMm);
        }
    }
}
