using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

public sealed class TurnPositionsTests
{
    [Fact]
    public void Intervals_EdgesApart_AreTheNominalOnesFromHome()
    {
        TurnPositions turn = new(new CircuitBuilder().Ring("a", (10, 20)).Ring("b", (350, 15)).Contacts);
        Assert.Equal([350, 10, 15, 20], turn.Intervals.Select(i => Math.Round(Angles.DegFromRad(i.FromRad), 9)));
        Assert.Equal([20, 5, 5, 330], turn.Intervals.Select(i => Math.Round(Angles.DegFromRad(i.LengthRad), 9)));
        Assert.Equal("b|ab|a|", string.Join('|', turn.Intervals.Select(i => Closed(turn, i.Position))));
        Assert.Equal(4, turn.Positions.Count);
        Assert.Equal([turn.Intervals[0].Position], turn.AtHome());
    }

    [Fact]
    public void Intervals_EdgesAtOneAngle_AreOneCutWithBothOrders()
    {
        TurnPositions turn = new(new CircuitBuilder().Ring("a", (10, 100)).Ring("b", (100, 200)).Contacts);
        Assert.Equal("|a|b", string.Join('|', turn.Intervals.Select(i => Closed(turn, i.Position))));
        // Besides the three intervals: both closed, and neither.
        Assert.Equal(5, turn.Positions.Count);
        Assert.Equal("|ab", string.Join('|', Enumerable.Range(0, 5).Where(p => turn.Positions[p].Interval < 0).Select(p => Closed(turn, p)).Order(StringComparer.Ordinal)));
    }

    [Theory]
    [InlineData(1, 2)]
    [InlineData(3, 8)]
    [InlineData(6, 64)]
    public void Positions_EdgesInOneBand_AreEverySubset(int rings, int subsets)
    {
        CircuitBuilder circuit = new();
        for (int r = 0; r < rings; r++)
        {
            circuit.Ring($"r{(char)('a' + r)}", $"r{(char)('a' + r)}", 0.5, (100 + (0.1 * r), 200 + (10 * r)));
        }

        // Every subset of the makes, then one more position for each of the breaks but the last.
        Assert.Equal(subsets + rings - 1, new TurnPositions(circuit.Contacts).Positions.Count);
    }

    [Fact]
    public void Positions_EdgesOfOneContact_KeepTheirOrder()
    {
        // A 0.4° period with bands of 0.5°: it still makes before it breaks.
        TurnPositions turn = new(new CircuitBuilder().Ring("a", "a", 0.5, (100, 100.4)).Ring("b", (200, 300)).Contacts);
        Assert.Equal("|a||b", string.Join('|', Enumerable.Range(0, turn.Positions.Count).Select(p => Closed(turn, p))));
    }

    [Fact]
    public void Intervals_BandsWiderThanAPeriod_EachHasThePositionThatItsOwnEdgeOpens()
    {
        // Bands of 30° round periods of 6 and 10°: closed after the first make may still be so at home, where the second period is meant.
        TurnPositions turn = new(new CircuitBuilder().Ring("a", "a", 30, (327, 333), (355, 5)).Contacts);
        Assert.Equal([355, 5, 327, 333], turn.Intervals.Select(i => Math.Round(Angles.DegFromRad(i.FromRad), 9)));
        Assert.Equal("a||a|", string.Join('|', turn.Intervals.Select(i => Closed(turn, i.Position))));

        // By hand: the soonest that the last edge passed may come.
        Assert.Equal(355 - 30, Angles.DegFromRad(turn.Positions[turn.Intervals[0].Position].LowerRad), 1e-9);
        Assert.Equal(327 - 30, Angles.DegFromRad(turn.Positions[turn.Intervals[2].Position].LowerRad), 1e-9);
    }

    [Fact]
    public void Positions_ThirteenEdgesInOneBand_AreRefusedAndSaid()
    {
        CircuitBuilder circuit = new();
        for (int r = 0; r < 13; r++)
        {
            string name = $"r{(char)('a' + r)}";
            circuit.Ring(name, name, 0.5, (100, 200 + (10 * r))).Watts($"load {name}", name, "N", 7);
        }

        circuit.Interlock(new InterlockBrief("trivial", InterlockClaim.NeverOn, ["load ra"]) { Between = CircuitBuilder.Arc(0, 50) });
        CircuitAnalysis analysis = circuit.Analyse();
        Assert.Single(analysis.Unexplored);
        Assert.Contains(analysis.Findings, f => f.Code is "circuit.too-many-orders");
        Assert.Equal(InterlockVerdict.Undecided, analysis.Interlocks[0].Verdict);
    }

    [Fact]
    public void Positions_BandsAllRoundTheTurn_FollowTheNominalOrderAndSaySo()
    {
        TurnPositions turn = new(new CircuitBuilder().Ring("a", "a", 100, (10, 200)).Contacts);
        Assert.NotEmpty(turn.UnexploredGroups);
        Assert.Equal(2, turn.Intervals.Count);
    }

    [Fact]
    public void Positions_BandAcrossHome_MayStandThereOnBothSides()
    {
        TurnPositions turn = new(new CircuitBuilder().Ring("hold", "run", 0.5, (3, 360)).Contacts);
        Assert.Equal("|a", string.Join('|', turn.AtHome().Select(p => Closed(turn, p)).Order(StringComparer.Ordinal)));
        TurnPositions exact = new(new CircuitBuilder().Ring("hold", "run", 0, (3, 360)).Contacts);
        Assert.Equal("", Closed(exact, Assert.Single(exact.AtHome())));
    }

    private static string Closed(TurnPositions turn, int position)
    {
        ulong[] closed = turn.Positions[position].Closed;
        return string.Concat(Enumerable.Range(0, 6).Where(c => BitRow.Has(closed, c)).Select(c => (char)('a' + c)));
    }
}
