using CsCheck;
using WheelDraft.Drawing;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Rungs of a wiring diagram put in order, against every place tried and everything counted anew.</summary>
public sealed class RungOrderTests
{
    private static readonly string[] Nets = ["L", "N", "a", "b", "c", "d", "E"];

    [Fact]
    public void MoveToBest_RandomRungs_IsTheFirstBestOfAllPlacesCountedAnew()
    {
        Gen.Select(Gen.Select(Gen.Int[0, 6], Gen.Int[0, 6]).Array[1, 12], Gen.Int[0, 4].Array[20], Gen.Int[0, 5].Array[20]).Sample(
            (links, ranks, rungs) =>
            {
                CircuitBuilder circuit = new CircuitBuilder().Ring("a", (10, 20)).Ring("b", (30, 40));
                for (int l = 0; l < links.Length; l++)
                {
                    circuit.Watts($"load {(char)('a' + l)}", Nets[links[l].Item1], Nets[links[l].Item2], 7);
                }

                WiringGraph graph = WiringGraph.Of(circuit.Request());
                int[] used = [.. graph.Links.Select((_, i) => rungs[i % rungs.Length]).Distinct().Order()];
                int[] rungOf = [.. graph.Links.Select((_, i) => Array.IndexOf(used, rungs[i % rungs.Length]))];
                RungOrder order = new(graph, ranks, rungOf);
                List<int> plain = [.. Enumerable.Range(0, used.Length)];
                for (int rung = 0; rung < used.Length; rung++)
                {
                    order.MoveToBest(rung);
                    plain = Best(graph, ranks, rungOf, plain, rung);
                    Assert.Equal(plain, Enumerable.Range(0, used.Length).OrderBy(order.LevelOf));
                    Assert.Equal(Cost(graph, ranks, rungOf, plain), order.Cost);
                }
            },
            iter: 2000,
            threads: 1);
    }

    private static List<int> Best(WiringGraph graph, int[] ranks, int[] rungOf, List<int> order, int rung)
    {
        (List<int> Order, (int Crossings, int Length) Cost) best = (order, Cost(graph, ranks, rungOf, order));
        for (int at = 0; at < order.Count; at++)
        {
            List<int> tried = [.. order.Where(r => r != rung)];
            tried.Insert(at, rung);
            (int Crossings, int Length) cost = Cost(graph, ranks, rungOf, tried);
            best = cost.CompareTo(best.Cost) < 0 ? (tried, cost) : best;
        }

        return best.Order;
    }

    private static (int Crossings, int Length) Cost(WiringGraph graph, int[] ranks, int[] rungOf, List<int> order)
    {
        (int Top, int Bottom)[] spans = [.. Enumerable.Range(0, graph.Nets.Count).Select(n =>
        {
            int[] levels = [.. graph.Links.Select((l, i) => (Link: l, Level: order.IndexOf(rungOf[i]))).Where(l => l.Link.A == n || l.Link.B == n).Select(l => l.Level)];
            return levels.Length == 0 ? (0, 0) : (levels.Min(), levels.Max());
        })];
        int crossings = 0;
        foreach ((WiringLink link, int level) in graph.Links.Select((l, i) => (l, order.IndexOf(rungOf[i]))))
        {
            (int low, int high) = (Math.Min(ranks[link.A], ranks[link.B]), Math.Max(ranks[link.A], ranks[link.B]));
            crossings += Enumerable.Range(0, spans.Length).Count(n => n != link.A && n != link.B && ranks[n] >= low && ranks[n] <= high && spans[n].Top <= level && level <= spans[n].Bottom);
        }

        return (crossings, spans.Sum(s => s.Bottom - s.Top));
    }
}
