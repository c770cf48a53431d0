using CsCheck;
using WheelDraft.Engineering;

namespace WheelDraft.Tests;

/// <summary>Random circuits of several parts: some share nothing but lines, N and E, others only look so.</summary>
/// <remarks>Each part has a middle net, rings and inputs that lead to it, and loads from there to N, to E or to L. What may tie parts together: a feed behind an
/// input, an impedance before all of them, a load or an input between two middle nets, a common net that floats, an input across the supply, a bridge fault.</remarks>
internal static class PartedCircuits
{
    /// <summary>Up to three parts, six inputs and eight intervals.</summary>
    public static readonly Gen<CircuitBuilder> Any =
        from parts in Gen.Int[1, 3]
        from feed in Gen.Int[0, 3]
        from ties in Gen.Int[0, 9].Array[2]
        from edges in Gen.Shuffle(Enumerable.Range(1, 35).Select(i => i * 10).ToArray(), 8)
        from band in Gen.Int[0, 3]
        from shapes in Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5], Gen.Int[0, 3], Gen.Int[0, 2]).Array[3]
        from motor in Gen.Int[0, 4]
        from flags in Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool, Gen.Int[0, 2])
        from claims in Gen.Select(Gen.Int[0, 2], Gen.Int[0, 9], Gen.Int[0, 9], Gen.Int[0, 5]).Array[2]
        select Build(parts, feed, ties, edges, band, shapes, motor, flags, claims);

    private static CircuitBuilder Build(
        int parts,
        int feed,
        int[] ties,
        int[] edges,
        int band,
        (int First, int Second, int Size, int Leg)[] shapes,
        int motor,
        (bool ThreeLines, bool IsLands, bool UnderFaults, int Coast) flags,
        (int Claim, int Load, int Other, int Condition)[] claims)
    {
        bool threeLines = flags.ThreeLines && feed == 2;
        CircuitBuilder circuit = new()
        {
            FeedNet = feed == 0 ? "feed" : threeLines ? "L1" : "L",
            Lines = threeLines ? ["L1", "L2", "L3"] : ["L"],
            VoltagesUnderFaults = flags.UnderFaults,
            CoastMostDeg = flags.Coast * 2.5,
        };
        string line = circuit.Lines[0];
        if (feed == 0)
        {
            circuit.Input("door", line, "feed");
        }

        circuit.Ring("run", "run", 0, (Math.Min(edges[6], edges[7]), Math.Max(edges[6], edges[7])));
        for (int p = 0; p < parts; p++)
        {
            AddPart(circuit, p, shapes[p], (edges[2 * p], edges[(2 * p) + 1]), band == 0 ? 6 : 0);
        }

        foreach (int tie in ties)
        {
            AddTie(circuit, tie, parts, line);
        }

        if (motor > 0)
        {
            circuit.Motor(motor == 4 ? "mid0" : "run", "N", 300);
        }

        if (motor is 1 or 2)
        {
            circuit.Input("start", motor == 1 ? line : "mid0", "run");
        }

        foreach ((int claim, int load, int other, int condition) in claims)
        {
            circuit.Interlock(Claim(circuit, (InterlockClaim)claim, load, other, condition));
        }

        return circuit.Bridge("mid0", parts > 1 ? "mid1" : "run");
    }

    private static void AddPart(CircuitBuilder circuit, int p, (int First, int Second, int Size, int Leg) shape, (int From, int To) on, double bandDeg)
    {
        (string ring, string mid, string leg) = (Text($"ring{p}"), Text($"mid{p}"), Text($"leg{p}"));
        string line = circuit.Lines[^1];
        circuit.Ring(ring, ring, bandDeg, on);
        Element(circuit, shape.First, Text($"a{p}"), ring, mid);
        circuit.Ohms(Text($"base{p}"), mid, shape.Size == 3 ? "E" : "N", 50 * (1 + (4 * shape.Size)), shape.Leg == 1 ? 80 : 0);
        Element(circuit, shape.Second, Text($"b{p}"), mid, leg);
        circuit.Ohms(Text($"lamp{p}"), leg, shape.Leg == 2 ? line : "N", 200);
    }

    // An input, or a load that lets through what an input would.
    private static void Element(CircuitBuilder circuit, int kind, string name, string from, string to) =>
        _ = kind < 4 ? circuit.Input(name, from, to) : circuit.Ohms(name, from, to, kind == 4 ? 30 : 300);

    private static void AddTie(CircuitBuilder circuit, int tie, int parts, string line)
    {
        string name = Text($"tie{circuit.Loads.Count + circuit.Inputs.Count}");
        string second = parts > 1 ? "mid1" : "run";
        _ = tie switch
        {
            0 => circuit.Ohms(name, "mid0", second, 120),
            1 => circuit.Input(name, "mid0", second),
            2 => circuit.Ohms(name, "mid0", "common", 90).Ohms($"{name}b", second, "common", 90),
            3 => circuit.Ohms(name, line, "behind", 40).Input($"{name}a", "behind", "mid0").Input($"{name}b", "behind", second),
            4 => circuit.Input(name, line, "N"),
            5 => circuit.Input(name, line, "mid0"),
            _ => circuit,
        };
    }

    private static InterlockBrief Claim(CircuitBuilder circuit, InterlockClaim claim, int load, int other, int condition)
    {
        string[] loads = [.. circuit.Loads.Select(l => l.Name)];
        string[] inputs = [.. circuit.Inputs.Select(i => i.Name)];
        string[] Named(int kind) => inputs.Length > 0 && condition % 3 == kind ? [inputs[condition % inputs.Length]] : [];
        return new InterlockBrief(Text($"claim {load} {other} {condition} {(int)claim}"), claim, [.. new[] { loads[load % loads.Length], loads[other % loads.Length] }.Distinct(StringComparer.Ordinal)])
        {
            WhileOpen = Named(0),
            WhileTrue = Named(1),
            Faults = FaultDepth.Single,
        };
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
