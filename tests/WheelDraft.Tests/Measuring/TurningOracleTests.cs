using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>Oracle: NetTopologySuite 2.6 on flattened copies, whose distances are off by no more than the chord error of each shape.</summary>
public sealed class TurningOracleTests
{
    private const double ChordMm = 0.02;
    private const double WithinMm = (2 * ChordMm) + 1e-3;

    [Fact]
    public void Least_FiveThousandPairsWithArcsAndHoles_AgreesWithFlattenedCopies()
    {
        RandomShapes random = new(20260427);
        List<string> failures = [];
        for (int i = 0; i < 5000; i++)
        {
            WheelDraft.Geometry.Outline still = random.WithArcs();
            WheelDraft.Geometry.Outline turning = i % 2 == 0 ? random.Sector() : random.WithArcs();
            double from = random.Between(0, 6), to = from + random.Between(0, 2.5);
            PartTurnGap gap = PartTurn.Least(TurningPieces.Of(still), TurningPieces.Of(turning), [new TurnRange(from, to)])!.Value;
            Polygon flatStill = RandomShapes.Flat(still, ChordMm), flatTurning = RandomShapes.Flat(turning, ChordMm);
            double there = flatStill.Distance(Turned(flatTurning, gap.TurnedRad));
            bool agrees = Math.Abs(there - gap.Bounds.UpperMm) <= WithinMm && gap.Bounds.UpperMm - gap.Bounds.LowerMm <= 1e-3;
            for (int k = 0; k <= 8 && agrees; k++)
            {
                double angle = k == 0 ? from : k == 1 ? to : random.Between(from, to);
                agrees = flatStill.Distance(Turned(flatTurning, angle)) >= gap.Bounds.LowerMm - WithinMm;
            }

            if (!agrees)
            {
                failures.Add(FormattableString.Invariant($"pair {i}: [{gap.Bounds.LowerMm}, {gap.Bounds.UpperMm}] at {gap.TurnedRad}, flattened {there}"));
            }
        }

        Assert.Empty(failures);
    }

    [Fact]
    public void Nearest_FiveThousandPairsOverTheWholeTurn_AgreesWithFlattenedCopies()
    {
        RandomShapes random = new(7);
        List<string> failures = [];
        for (int i = 0; i < 5000; i++)
        {
            WheelDraft.Geometry.Outline still = i % 2 == 0 ? random.Straight() : random.WithArcs();
            WheelDraft.Geometry.Outline turning = i % 3 == 0 ? random.Straight() : random.WithArcs();
            (Nearest plan, double turned) = WholeTurn.Nearest(still, turning);
            Polygon flatStill = RandomShapes.Flat(still, ChordMm), flatTurning = RandomShapes.Flat(turning, ChordMm);
            bool agrees = Math.Abs(flatStill.Distance(Turned(flatTurning, turned)) - plan.DistanceMm) <= WithinMm;
            for (int k = 0; k < 6 && agrees; k++)
            {
                agrees = flatStill.Distance(Turned(flatTurning, random.Between(0, 6.28))) >= plan.DistanceMm - WithinMm;
            }

            if (!agrees)
            {
                failures.Add(FormattableString.Invariant($"pair {i}: {plan.DistanceMm} at {turned}"));
            }
        }

        Assert.Empty(failures);
    }

    [Fact]
    public void Least_TurnedOnTogether_StaysTheSame()
    {
        // Consistency: both shapes turned by the same angle.
        RandomShapes random = new(11);
        for (int i = 0; i < 200; i++)
        {
            WheelDraft.Geometry.Outline still = random.WithArcs(), turning = random.WithArcs();
            Placement turn = Placement.Turn(random.Between(0, 6));
            TurnRange[] range = [new(0.3, 1.7)];
            GapBounds one = PartTurn.Least(TurningPieces.Of(still), TurningPieces.Of(turning), range)!.Value.Bounds;
            GapBounds other = PartTurn.Least(TurningPieces.Of(still.Placed(turn)), TurningPieces.Of(turning.Placed(turn)), range)!.Value.Bounds;
            Assert.Equal(one.UpperMm, other.UpperMm, 1.1e-3);
        }
    }

    [Fact]
    public void Least_ConcentricArcs_AreConstantAndCostNothing()
    {
        // Two ring sectors that face each other over the whole range: 2 mm, exactly, without halving.
        WheelDraft.Geometry.Outline inner = Ring(8, 10, -1, 2), outer = Ring(12, 14, -1, 2);
        PartTurnGap gap = PartTurn.Least(TurningPieces.Of(outer), TurningPieces.Of(inner), [new TurnRange(-0.5, 0.5)])!.Value;
        Assert.Equal(2, gap.Bounds.UpperMm, 1e-12);
        Assert.Equal(2, gap.Bounds.LowerMm, 1e-3);
    }

    [Fact]
    public void Between_ManySolidsOfTwoNets_FindsWhatTryingEveryPairFinds()
    {
        // Oracle: brute force over all pairs, no trees.
        RandomShapes random = new(3);
        for (int i = 0; i < 40; i++)
        {
            Solid[] first = [.. Enumerable.Range(0, 12).Select(k => Random(random, "a", k % 3 == 0))];
            Solid[] second = [.. Enumerable.Range(0, 12).Select(k => Random(random, "b", k % 2 == 0))];
            SolidGap best = LeastGaps.Between(new SolidGroup(first), new SolidGroup(second), ClearanceRibs.None)!;
            double brute = first.SelectMany(a => second.Select(b => Worst(a, b))).Min();
            Assert.Equal(brute, best.WorstMm, 1e-9);
        }
    }

    private static double Worst(Solid a, Solid b)
    {
        double plan = a.Turns == b.Turns
            ? Distances.Between(a.Outline, b.Outline).DistanceMm
            : Distances.Radii(a.Outline, WheelDraft.Geometry.Point.Origin).GapMm(Distances.Radii(b.Outline, WheelDraft.Geometry.Point.Origin));
        return SolidPair.WorstMm(a, b, plan);
    }

    private static Solid Random(RandomShapes random, string net, bool turns)
    {
        double z = random.Between(-20, 20);
        return new Solid(net, net, SolidKind.Live, turns, z, z + random.Between(0, 3), random.WithArcs())
        {
            Tolerance = new(random.Between(0, 0.1), random.Between(0, 0.1), turns ? 0.05 : 0, turns ? 0.05 : 0),
        };
    }

    private static WheelDraft.Geometry.Outline Ring(double inner, double outer, double from, double sweep)
    {
        Arc far = new(WheelDraft.Geometry.Point.Origin, outer, from, sweep), near = new(WheelDraft.Geometry.Point.Origin, inner, from + sweep, -sweep);
        return new(new Contour([far, new Segment(far.End, near.Start), near, new Segment(near.End, far.Start)]));
    }

    private static NetTopologySuite.Geometries.Geometry Turned(Polygon shape, double byRad) =>
        AffineTransformation.RotationInstance(byRad).Transform(shape);
}
