using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>All pairs of a surface, whose beams are shared, against each pair searched for by itself (<see cref="PairSearch"/>).</summary>
public sealed class SharedBeamsTests
{
    private const double LinkMm = 1.5;

    // Among its conductors one is seen from a bend, but further away than the first pair asks: the next pair must not take it for unseen.
    private const int FurtherThanAsked = 6830;

    [Fact]
    public void Shortest_RandomSurfaces_IsToTheBitWhatEachPairByItselfGives() => Compare([.. Enumerable.Range(0, 120), FurtherThanAsked], seed => new WalledScene(new RandomShapes(seed), WalledScene.Order.None));

    // Wherever two ways are equally long the same one must be shown.
    [Fact]
    public void Shortest_SquareAndMirroredSurfaces_IsToTheBitWhatEachPairByItselfGives() => Compare([.. Enumerable.Range(0, 90)], seed => new WalledScene(new RandomShapes(seed), WalledScene.Order.Mirrored));

    // It was 18.87, over a rib and round the near end: legs of up to 10 mm had been looked for, and added up to more than that.
    [Fact]
    public void Shortest_TheNearEndBeyondARibAndTheFarEndFree_GoesRoundTheFarEnd()
    {
        // A slot under a round conductor, one more below it: from a corner to both corners of the far end, and square onto the circle.
        WalledScene scene = new(new RandomShapes(64), WalledScene.Order.None);
        Point corner = new(-11.103777365947039, -5.232233314138015), low = new(-19.852196545023002, -4.68713166289185), high = new(-19.90913664699929, -2.922629061776248);
        Bounds round = scene.Conductors[4][0].Outline.Bounds;
        double way = corner.DistanceTo(low) + low.DistanceTo(high) + high.DistanceTo(round.Centre) - (round.Width / 2);
        Assert.Equal(17.118, way, 1e-3);
        Assert.Equal(way, new SurfacePaths(scene.Surface, scene.Regions, scene.Conductors, LinkMm).Shortest(0, 4)!.LengthMm, 1e-6);
    }

    // No outside oracle needed. Without links: with them a wall beside a conductor is a step to the next one.
    [Fact]
    public void Shortest_AllPairsWithOneSlotMoreOrFewer_IsNeverShorterOrLonger()
    {
        int longer = 0;
        for (int seed = 1000; seed < 1060; seed++)
        {
            WalledScene scene = new(new RandomShapes(seed), WalledScene.Order.None);
            SurfaceRegion slot = SurfaceRegion.Through("one more", new WalledScene(new RandomShapes(seed + 1), WalledScene.Order.None).Regions[0].Outline);
            SurfacePaths without = new(scene.Surface, scene.Regions, scene.Conductors, 0), with = new(scene.Surface, [.. scene.Regions, slot], scene.Conductors, 0);
            foreach ((int a, int b) in scene.Pairs)
            {
                double before = Length(without.Shortest(a, b)), after = Length(with.Shortest(a, b));
                Assert.True(after >= before - 1e-9, FormattableString.Invariant($"seed {seed}, {a} to {b}: {before} and with the slot {after}"));
                longer += after > before + 1e-3 ? 1 : 0;
            }
        }

        Assert.True(longer > 20);
    }

    private static double Length(SurfacePath? path) => path?.LengthMm ?? double.PositiveInfinity;

    private static void Compare(int[] seeds, Func<int, WalledScene> make)
    {
        List<string> failures = [];
        int compared = 0;
        foreach (int seed in seeds)
        {
            WalledScene scene = make(seed);
            SurfacePaths paths = new(scene.Surface, scene.Regions, scene.Conductors, LinkMm);
            PairByItself alone = new(scene, LinkMm);
            foreach ((int a, int b) in scene.Pairs.Where(p => !alone.Touch(p.A, p.B)))
            {
                compared++;
                string shared = Words(paths.Shortest(a, b)), own = Words(alone.Shortest(a, b));
                if (!string.Equals(shared, own, StringComparison.Ordinal))
                {
                    failures.Add(FormattableString.Invariant($"seed {seed}, {a} to {b}: {shared} and by itself {own}"));
                }
            }
        }

        Assert.True(failures.Count == 0, string.Join("\n", failures));
        Assert.True(compared > 5 * seeds.Length);
    }

    private static string Words(SurfacePath? path) => path is null ? "none" : string.Join("; ", path.Legs.Select(Words).Prepend(FormattableString.Invariant($"{path.LengthMm:R}")));

    private static string Words(SurfaceLeg leg) => FormattableString.Invariant(
        $"{leg.Piece.Start.X:R} {leg.Piece.Start.Y:R} {leg.Piece.End.X:R} {leg.Piece.End.Y:R} {leg.LengthMm:R} over {string.Join(", ", leg.Crossed.Select(c => FormattableString.Invariant($"{c.Region} {c.At.X:R} {c.At.Y:R} {c.AddedMm:R} {c.Bridged}")))}");

    /// <summary>The search as it was, on a surface of its own.</summary>
    private sealed class PairByItself
    {
        private readonly Relief _relief;
        private readonly RecessLinks _links;
        private readonly SurfaceConductor[] _conductors;

        internal PairByItself(WalledScene scene, double linkMm)
        {
            _relief = new Relief(scene.Surface, scene.Regions, linkMm, linkMm);
            _links = new RecessLinks(_relief, linkMm);
            Piece[] cutting = [.. _relief.Edges.Select(e => new Segment(e.From, e.To))];
            _conductors = [.. scene.Conductors.Select(c => new SurfaceConductor(c, cutting))];
        }

        internal bool Touch(int a, int b) => _conductors[a].Touches(_conductors[b]);

        internal SurfacePath? Shortest(int a, int b) => PairSearch.Shortest(_relief, _links, _conductors[a], _conductors[b]);
    }
}
