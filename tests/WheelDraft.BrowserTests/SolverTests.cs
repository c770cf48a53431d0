using System.Text;
using System.Text.Json;
using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Formats.Page;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>The page's own solver against the real one; the oracle is the circuit chapter, itself tested against a tableau.</summary>
public sealed class SolverTests(Chromium chromium)
{
    private static readonly string[] Nets = ["L", "N", "E", "a", "b", "c", "d"];
    private static readonly string[] NetsOfThree = ["L", "N", "E", "a", "L2", "L3", "d"];

    private static readonly Gen<CircuitBuilder> Circuits =
        from edges in Gen.Shuffle(Enumerable.Range(1, 35).Select(i => i * 10).ToArray(), 6)
        from feed in Gen.Int[0, 3]
        from rings in Gen.Select(Gen.Int[1, 6], Gen.Bool).Array[1, 3]
        from loads in Gen.Select(Gen.Int[0, 6], Gen.Int[0, 6], Gen.Int[0, 3], Gen.Int[-1, 1]).Array[1, 6]
        from inputs in Gen.Select(Gen.Int[0, 6], Gen.Int[0, 6]).Array[0, 2]
        from motor in Gen.Int[0, 6]
        from bridge in Gen.Select(Gen.Int[0, 6], Gen.Int[0, 6])
        from isThree in Gen.Bool
        select Build(new(edges, feed, rings, loads, inputs, motor, bridge, isThree));

    // For every fault (none first), every interval and every input position: the states of all loads, and whether the fuse opens.
    private const string SolveAll = """
        circuits => circuits.map(({ network, faults, times }) => [[], ...faults.map(f => [f])].map(switched => times.map(t =>
          Array.from({ length: 1 << network.inputs.length }, (_, mask) => {
            const hand = wheelCircuit.handed(network.inputs.map((_, i) => (mask >> i & 1) === 1), switched);
            const state = wheelCircuit.at(network, hand, t);
            return state.loads.map(l => ({ on: "o", off: "f", undecided: "u" })[l]).join("") + (state.short ? "!" : "");
          }).join(" ")).join("/")).join("\n"))
        """;

    [Fact]
    public async Task PageSolver_RandomCircuitsUnderEverySingleFault_EqualsTheRealOne()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, ShownDesign.Demos[0]);
        List<CircuitModel> models = [];
        Circuits.Sample(circuit => models.Add(new CircuitModel(circuit.Request())), iter: 150, threads: 1);
        JsonElement? solved = await shown.Page.EvaluateAsync(
            $"text => ({SolveAll})(JSON.parse(text))",
            Json(models));
        string[] pages = [.. solved!.Value.EnumerateArray().Select(s => s.GetString()!)];
        Assert.Equal(models.Count, pages.Length);
        for (int c = 0; c < models.Count; c++)
        {
            string real = Real(models[c]);
            Assert.True(string.Equals(real, pages[c], StringComparison.Ordinal), $"{Json([models[c]])}\nreal:\n{real}\npage:\n{pages[c]}");
        }

        Assert.Contains(pages, p => p.Contains('u', StringComparison.Ordinal));
        Assert.Contains(pages, p => p.Contains('!', StringComparison.Ordinal));
    }

    // With up to three faults at once, drawn by a fixed rule from all of them: everything that the whole network's solver says, to the last bit; and the states over the turn, whose
    // keys stay only while nothing in them changes.
    private const string DifferencesOfSections = """
        circuits => circuits.flatMap(({ network, faults, times }, c) => {
          const spans = { name: 1, closed: times.map(t => wheelCircuit.closedAt(network, t)) };
          const keyed = new Map();
          const exact = value => JSON.stringify(value, (_, v) => (typeof v === "number" && !Number.isFinite(v) ? String(v) : Object.is(v, -0) ? "-0" : v));
          return Array.from({ length: 60 }, (_, k) => k).flatMap(k => {
            const set = [0, 1, 2].filter(n => n <= k % 4 - 1).map(n => faults[(k * 31 + n * 17 + c) % faults.length]);
            const hand = wheelCircuit.handed(network.inputs.map((_, i) => (k >> i & 1) === 1), set);
            const circuit = wheelSections.under(network, hand);
            const whole = times.map(t => wheelCircuit.at(network, hand, t));
            const over = circuit.over(spans);
            const wrong = times.filter((t, i) => exact(circuit.at(t)) !== exact(whole[i])).map(t => `circuit ${c}, try ${k}, at ${t}: ${exact(circuit.at(t))} for ${exact(wheelCircuit.at(network, hand, t))}`);
            over.forEach(({ key, states }, load) => {
              const expected = whole.map(state => state.loads[load]).join();
              if (states.join() !== expected) { wrong.push(`circuit ${c}, try ${k}, load ${load} over the turn: ${states.join()} for ${expected}`); }
              const before = keyed.get(`${load} ${key}`);
              if (before !== undefined && before !== expected) { wrong.push(`circuit ${c}, try ${k}: the key of load ${load} stayed`); }
              keyed.set(`${load} ${key}`, expected);
            });
            return wrong;
          });
        })
        """;

    [Fact]
    public async Task Sections_RandomCircuitsUnderSeveralFaults_SayWhatTheWholeSays()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, ShownDesign.Demos[0]);
        List<CircuitModel> models = [];
        Circuits.Sample(circuit => models.Add(new CircuitModel(circuit.Request())), iter: 150, threads: 1);
        string[] wrong = await shown.Page.EvaluateAsync<string[]>($"text => ({DifferencesOfSections})(JSON.parse(text))", Json(models));
        Assert.Empty(wrong);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public async Task PageSolver_VoltagesOfDemo_EqualTheRealOnes(string demo)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, demo);
        CircuitAnalysis circuit = shown.Design.Circuit;
        for (int i = 0; i < circuit.Intervals.Count; i++)
        {
            double middle = shown.Design.Motion.SecondsFromRad(Angles.InTurn(circuit.Intervals[i].FromRad + (circuit.Intervals[i].LengthRad / 2)));
            for (int inputs = 0; inputs < 1 << circuit.Inputs.Count; inputs++)
            {
                double?[] volts = await shown.Page.EvaluateAsync<double?[]>(
                    """
                    ([t, mask]) => { const n = JSON.parse(document.getElementById("design").textContent).network;
                      return wheelCircuit.at(n, wheelCircuit.handed(n.inputs.map((_, i) => (mask >> i & 1) === 1), []), t).volts; }
                    """,
                    new[] { middle, inputs });
                CircuitState state = circuit.State(i, inputs);
                for (int l = 0; l < volts.Length; l++)
                {
                    Assert.Equal(state.VoltsV[l], volts[l] ?? double.NaN, 1e-9 * circuit.Network.SupplyV);
                }
            }
        }
    }

    public static TheoryData<string> Demos => [.. ShownDesign.Demos];

    private static string Real(CircuitModel model)
    {
        StateSheet sheet = new(model);
        NetworkSplit split = new(model);
        SectionSolver solver = new(model);
        return string.Join('\n', Switchable(model).Prepend(new CircuitFault(CircuitFaultKind.None)).Select(fault =>
        {
            sheet.Fill(new FaultCase(model, fault), split, solver);
            return string.Join('/', model.Turn.Intervals.Select(interval => string.Join(' ', Enumerable.Range(0, model.InputPositions).Select(inputs =>
                string.Concat(Enumerable.Range(0, model.Loads.Count).Select(l => Letter(sheet.StateOf(inputs, l, interval.Position))))
                    + (BitRow.Has(sheet.Short(inputs), interval.Position) ? "!" : "")))));
        }));
    }

    private static char Letter(Engineering.LoadState state) => state switch { Engineering.LoadState.On => 'o', Engineering.LoadState.Off => 'f', _ => 'u' };

    private static CircuitFault[] Switchable(CircuitModel model) => [.. SingleFaults.Of(model)
        .Where(f => f.Kind is not (CircuitFaultKind.SupplyLost or CircuitFaultKind.WheelSlipped or CircuitFaultKind.MotorStalled or CircuitFaultKind.MotorReversed))];

    private static string Json(IReadOnlyList<CircuitModel> models)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes))
        {
            json.WriteStartArray();
            foreach (CircuitModel model in models)
            {
                CircuitNetwork network = CircuitNetwork.Of(model);
                json.WriteStartObject();
                json.WritePropertyName("network");
                ShowData.Network(json, network, 360);
                json.WriteStartArray("faults");
                foreach (CircuitFault fault in Switchable(model))
                {
                    ShowData.Fault(json, fault, network);
                }

                json.WriteEndArray();
                json.WriteStartArray("times");
                foreach (TurnInterval interval in model.Turn.Intervals)
                {
                    json.WriteNumberValue(Angles.DegFromRad(Angles.InTurn(interval.FromRad + (interval.LengthRad / 2))));
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static CircuitBuilder Build(Draw draw)
    {
        CircuitBuilder circuit = new() { FeedNet = draw.Feed == 0 ? "a" : "L", Lines = draw.IsThree ? ["L", "L2", "L3"] : ["L"] };
        string[] nets = draw.IsThree ? NetsOfThree : Nets;
        for (int r = 0; r < draw.Rings.Length; r++)
        {
            (int net, bool passesHome) = draw.Rings[r];
            (int first, int second) = (draw.Edges[2 * r], draw.Edges[(2 * r) + 1]);
            (int least, int most) = (Math.Min(first, second), Math.Max(first, second));
            circuit.Ring($"ring{(char)('a' + r)}", nets[net], 0, passesHome ? (most, least) : (least, most));
        }

        for (int l = 0; l < draw.Loads.Length; l++)
        {
            (int from, int to, int size, int reactive) = draw.Loads[l];
            circuit.Ohms($"load{(char)('a' + l)}", nets[from], nets[to], 50 * (1 + (size * 4)), 60 * reactive);
        }

        for (int i = 0; i < draw.Inputs.Length; i++)
        {
            circuit.Input($"input{(char)('a' + i)}", nets[draw.Inputs[i].From], nets[draw.Inputs[i].To]);
        }

        if (draw.Motor > 0)
        {
            circuit.Motor(nets[draw.Motor - 1], "N", 300);
        }

        return circuit.Bridge(nets[draw.Bridge.A], nets[draw.Bridge.B]);
    }

    private sealed record Draw(
        int[] Edges,
        int Feed,
        (int Net, bool PassesHome)[] Rings,
        (int From, int To, int Size, int Reactive)[] Loads,
        (int From, int To)[] Inputs,
        int Motor,
        (int A, int B) Bridge,
        bool IsThree);
}
