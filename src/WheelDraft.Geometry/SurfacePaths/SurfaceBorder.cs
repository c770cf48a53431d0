namespace WheelDraft.Geometry;

/// <summary>A region that no path crosses, made ready for cutting legs: its pieces with their bounds.</summary>
internal sealed class SurfaceBorder
{
    private readonly Piece[] _pieces;
    private readonly Bounds[] _bounds;

    internal SurfaceBorder(SurfaceRegion region, bool blocksOutside)
    {
        Region = region;
        BlocksOutside = blocksOutside;
        _pieces = [.. region.Outline.Pieces];
        _bounds = [.. _pieces.Select(p => p.Bounds.Grown(SurfaceTolerances.OnBorderMm))];
    }

    internal SurfaceRegion Region { get; }

    /// <summary>Whether it is the outline of the surface itself: what lies outside is no surface.</summary>
    internal bool BlocksOutside { get; }

    internal IReadOnlyList<Piece> Pieces => _pieces;

    internal Side SideOf(Point p) => BorderCuts.SideOf(Region.Outline, p);

    /// <summary>The stretches of a leg by side, in order; a stretch along the border is left out.</summary>
    /// <param name="leg">The leg.</param>
    /// <param name="legBounds">Its bounds.</param>
    /// <param name="leastMm">A stretch no longer than this counts for nothing.</param>
    /// <param name="runsAlong">Set when part of the leg runs along the border.</param>
    internal IReadOnlyList<Stretch> Stretches(Piece leg, Bounds legBounds, double leastMm, ref bool runsAlong)
    {
        List<double> cuts = [0, 1];
        for (int i = 0; i < _pieces.Length; i++)
        {
            if (_bounds[i].Overlaps(legBounds))
            {
                BorderCuts.Add(leg, _pieces[i], cuts);
            }
        }

        cuts.Sort();
        List<Stretch> stretches = [];
        double length = leg.Length;
        for (int i = 1; i < cuts.Count; i++)
        {
            if ((cuts[i] - cuts[i - 1]) * length <= leastMm)
            {
                continue;
            }

            Side side = SideOf(leg.PointAt((cuts[i] + cuts[i - 1]) / 2));
            if (side != Side.Border)
            {
                stretches.Add(new(cuts[i - 1], cuts[i], side == Side.Inside));
            }
            else if ((cuts[i] - cuts[i - 1]) * length > SurfaceTolerances.AlongMm)
            {
                runsAlong = true;
            }
        }

        return stretches;
    }
}

/// <summary>A stretch of a leg on one side of a border.</summary>
/// <param name="FromShare">Where it begins, as a share of the leg.</param>
/// <param name="ToShare">Where it ends.</param>
/// <param name="Inside">Whether it lies in the region.</param>
internal readonly record struct Stretch(double FromShare, double ToShare, bool Inside);
