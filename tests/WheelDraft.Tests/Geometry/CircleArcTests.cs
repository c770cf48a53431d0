using CsCheck;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

/// <summary>Every relation of two arcs of a circle, walked on a circle of eight directions.</summary>
public sealed class CircleArcTests
{
    private const int Steps = 8;
    private const double StepRad = Angles.TurnRad / Steps;

    /// <summary>All arcs whose ends lie on eighths of a turn: 8 starts with sweeps 0 to 8, across zero included.</summary>
    private static IEnumerable<(CircleArc Arc, bool[] Holds)> Every()
    {
        for (int start = 0; start < Steps; start++)
        {
            for (int sweep = 0; sweep <= Steps; sweep++)
            {
                bool[] holds = new bool[Steps];
                for (int i = 0; i < sweep; i++)
                {
                    holds[(start + i) % Steps] = true;
                }

                yield return (CircleArc.Sweep(start * StepRad, sweep * StepRad), holds);
            }
        }
    }

    private static bool[] Held(CircleArc arc) => [.. Enumerable.Range(0, Steps).Select(i => arc.Contains((i + 0.5) * StepRad))];

    [Fact]
    public void FullTurnArcIsNotEmpty()
    {
        CircleArc full = CircleArc.Sweep(1, Angles.TurnRad);
        Assert.True(full.IsFull);
        Assert.False(full.IsEmpty);
        Assert.True(full.Contains(1) && full.Contains(0.999999) && full.Contains(-40));
        Assert.True(CircleArc.Sweep(0, Angles.RadFromDeg(120) + Angles.RadFromDeg(120) + Angles.RadFromDeg(120)).IsFull);
    }

    [Fact]
    public void Default_IsEmpty()
    {
        Assert.True(default(CircleArc).IsEmpty);
        Assert.Equal(CircleArc.Full, CircleArc.Empty.Complement);
        Assert.Equal(CircleArc.Empty, CircleArc.Full.Complement);
    }

    [Fact]
    public void Contains_EveryArc_HoldsItsEighths() =>
        Assert.All(Every(), e => Assert.Equal(e.Holds, Held(e.Arc)));

    [Fact]
    public void Contains_Start_YesEnd_No() =>
        Assert.All(Every().Where(e => !e.Arc.IsEmpty && !e.Arc.IsFull), e =>
        {
            Assert.True(e.Arc.Contains(e.Arc.StartRad));
            Assert.False(e.Arc.Contains(e.Arc.EndRad + 1e-12));
        });

    [Fact]
    public void Complement_EveryArc_HoldsTheRest() =>
        Assert.All(Every(), e => Assert.Equal(e.Holds.Select(h => !h), Held(e.Arc.Complement)));

    [Fact]
    public void Mirrored_EveryArc_HoldsMirroredEighths() =>
        Assert.All(Every(), e => Assert.Equal(e.Holds.Reverse(), Held(e.Arc.Mirrored())));

    [Fact]
    public void Relations_EveryPair_AgreeWithSets()
    {
        foreach ((CircleArc a, bool[] inA) in Every())
        {
            foreach ((CircleArc b, bool[] inB) in Every())
            {
                bool[] both = [.. inA.Zip(inB, (x, y) => x && y)];
                Assert.Equal(both.Any(x => x), a.Overlaps(b.Narrowed()));
                Assert.Equal(inA.Zip(inB, (x, y) => x || !y).All(x => x), a.Covers(b.Narrowed()));
                IReadOnlyList<CircleArc> common = a.Intersect(b);
                bool[] found = [.. Enumerable.Range(0, Steps).Select(i => common.Any(c => c.Contains((i + 0.5) * StepRad)))];
                Assert.Equal(both, found);
                Assert.Equal(both.Count(x => x) * StepRad, common.Sum(c => c.SweepRad), 1e-12);
            }
        }
    }

    /// <summary>Oracle: membership of single directions.</summary>
    [Fact]
    public void Intersect_AnyPair_HoldsWhatBothHold() =>
        Gen.Select(Generators.CircleArcs, Generators.CircleArcs, Generators.AngleRad).Sample(
            (a, b, at) =>
            {
                bool near = new[] { a.StartRad, a.EndRad, b.StartRad, b.EndRad }.Any(e => Math.Abs(Angles.Signed(e - at)) < 1e-9);
                if (!near)
                {
                    Assert.Equal(a.Contains(at) && b.Contains(at), a.Intersect(b).Any(c => c.Contains(at)));
                    Assert.Equal(a.Contains(at), a.Turned(2.5).Contains(at + 2.5));
                    Assert.Equal(a.Contains(at), a.Mirrored().Contains(-at));
                    Assert.NotEqual(a.Contains(at), a.Complement.Contains(at));
                }
            },
            iter: Generators.Samples);

    [Fact]
    public void Sweep_NegativeOrOverOneTurn_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CircleArc.Sweep(0, -0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CircleArc.Sweep(0, 6.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => CircleArc.Sweep(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CircleArc.Between(0, double.NaN));
    }

    [Fact]
    public void InTurn_HairBelowZero_IsZeroAndNotATurn()
    {
        Assert.Equal(0, Angles.InTurn(-1e-17));
        Assert.Equal(0, Angles.InTurn(Angles.TurnRad));
        Assert.Equal(Math.PI, Angles.Signed(-Math.PI));
    }
}

internal static class NarrowedArcs
{
    /// <summary>A hair shorter at both ends, so that rounding of the ends decides nothing.</summary>
    internal static CircleArc Narrowed(this CircleArc arc) =>
        arc.IsEmpty || arc.IsFull ? arc : CircleArc.Sweep(arc.StartRad + 1e-9, arc.SweepRad - 2e-9);
}
