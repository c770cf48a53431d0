using WheelDraft.Geometry;

namespace WheelDraft.Tests.Measuring;

/// <summary>A random surface with ribs, grooves, V grooves and slots that may cross, and conductors that may stand on them.</summary>
internal sealed class WalledScene
{
    private readonly RandomShapes _random;
    private readonly Order _order;

    internal WalledScene(RandomShapes random, Order order)
    {
        (_random, _order) = (random, order);
        Surface = random.Below(3) == 0 ? null : SurfacePathsTests.Box(-20, -14, 20, 14);
        List<SurfaceRegion> regions = [Wall(RegionWall.Raised, Place(1.5 + random.Between(0, 4)))];
        for (int i = random.Below(order == Order.Mirrored ? 3 : 5); i > 0; i--)
        {
            regions.Add(Any());
        }

        Regions = order == Order.Mirrored ? [.. regions, .. regions.Skip(1).Select(Mirrored)] : regions;
        Conductors = [.. Enumerable.Range(0, 5).Select(_ => Conductor())];
    }

    /// <summary>Whether anything of a scene is in line.</summary>
    internal enum Order
    {
        /// <summary>Nothing.</summary>
        None,

        /// <summary>On whole millimetres, and walls on both sides of one axis alike.</summary>
        Mirrored,
    }

    internal Outline? Surface { get; }

    internal IReadOnlyList<SurfaceRegion> Regions { get; }

    internal IReadOnlyList<IReadOnlyList<Footprint>> Conductors { get; }

    internal IEnumerable<(int A, int B)> Pairs =>
        Enumerable.Range(0, Conductors.Count).SelectMany(a => Enumerable.Range(a + 1, Conductors.Count - a - 1).Select(b => (a, b)));

    /// <summary>One more wall.</summary>
    internal SurfaceRegion Any() => _random.Below(4) switch
    {
        0 => Wall(RegionWall.Raised, Place(_random.Between(0.3, 6))),
        1 => Wall(RegionWall.Sunk, Place(_random.Between(0.3, 3))),
        2 => Wall(RegionWall.None, Place(_random.Between(0.3, 3))),
        _ => SurfaceRegion.Through("slot", Shape()),
    };

    private SurfaceRegion Wall(RegionWall wall, double heightMm) => new(FormattableString.Invariant($"{wall} {heightMm}"), Shape(), heightMm, wall);

    /// <summary>A band, straight or bent; one that cannot be bent so is drawn again.</summary>
    private Outline Shape()
    {
        while (true)
        {
            Point from = At(9);
            Vector along = _order == Order.Mirrored ? (_random.Below(2) == 0 ? new Vector(0, Place(3 + _random.Between(0, 6))) : new Vector(Place(3 + _random.Between(0, 6)), 0)) : Vector.Polar(_random.Between(3, 10), _random.Between(0, 6.3));
            List<Point> path = _random.Below(2) == 0 ? [from, from + along] : [from, from + along, from + along + (_order == Order.Mirrored ? along.Left : along.Turned(_random.Between(-1.4, 1.4)))];
            try
            {
                return Band.Along(path, _order == Order.Mirrored ? 1 + _random.Below(2) : _random.Between(0.4, 2.5));
            }
            catch (ArgumentException)
            {
                // Too short for its bend.
            }
        }
    }

    private IReadOnlyList<Footprint> Conductor()
    {
        Point at = At(11);
        double height = _random.Below(3), size = Place(_random.Between(0.6, 2.4));
        Outline plan = _random.Below(3) switch
        {
            0 => new Outline(Contour.Circle(at, size)),
            1 => SurfacePathsTests.Box(at.X - size, at.Y - 1, at.X + size, at.Y + 1),
            _ => Band.Along([at, at + new Vector(0, 2 + size)], 1),
        };
        return [new Footprint(plan, height)];
    }

    private Point At(double mostMm) => new(Place(_random.Between(-mostMm, mostMm) * 1.4), Place(_random.Between(-mostMm, mostMm)));

    private double Place(double mm) => _order == Order.Mirrored ? Math.Max(1, Math.Round(Math.Abs(mm))) * (mm < 0 ? -1 : 1) : mm;

    /// <summary>On the other side of the x axis.</summary>
    private static SurfaceRegion Mirrored(SurfaceRegion region) => region with
    {
        Outline = new Outline(new Contour([.. region.Outline.Outer.Pieces.Reverse().Select(Mirrored)])),
    };

    private static Piece Mirrored(Piece piece) => piece is Arc arc
        ? new Arc(Mirrored(arc.Centre), arc.RadiusMm, -(arc.StartRad + arc.SweepRad), arc.SweepRad)
        : new Segment(Mirrored(piece.End), Mirrored(piece.Start));

    private static Point Mirrored(Point p) => new(p.X, -p.Y);
}
