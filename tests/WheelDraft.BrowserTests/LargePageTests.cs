using System.Globalization;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>The page of a timer with forty outputs: that it stays small, that a box which is ticked costs little, and that it says what the circuit does. Work is counted, not timed.</summary>
public sealed class LargePageTests(Chromium chromium)
{
    // With a cell for every load in every interval the page had 20,241 elements, 38,867 nodes with the texts and the line breaks between tags.
    private const int MostElements = 7_000;
    private const int MostNodes = 11_000;

    // Changes of the page by a box: text, attribute, bars of a row. Rows of the chart drawn anew made 5,600 to 10,000.
    private const int MostChanges = 250;

    // Magnitudes of complex numbers, one for each load and net that is solved: 5,700 to 6,300 where the whole circuit was solved anew all round the turn.
    private const int MostMagnitudes = 1_000;

    [Fact]
    public async Task Page_FortyOutputs_HasFewNodes()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, ManyOutputs.Work());
        int elements = await shown.Page.EvaluateAsync<int>("document.querySelectorAll('*').length");
        int nodes = await shown.Page.EvaluateAsync<int>("(() => { let count = 0; const walk = document.createTreeWalker(document, NodeFilter.SHOW_ALL); while (walk.nextNode()) { count++; } return count; })()");
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{elements} elements, {nodes} nodes"));
        Assert.InRange(elements, 1_000, MostElements);
        Assert.InRange(nodes, elements, MostNodes);
        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task Checkbox_FortyOutputs_ChangesAndSolvesOnlyItsOwnPart()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, ManyOutputs.Work());
        await shown.MoveTo(1300);

        // Each input on and off; then each contact's and each winding's fault by itself. What is ticked for the first time is counted.
        int[][] counts = await shown.Page.EvaluateAsync<int[][]>(
            """
            () => {
              let magnitudes = 0;
              let wasShort = false;
              const hypot = Math.hypot;
              Math.hypot = (...sides) => { magnitudes++; return hypot(...sides); };
              const watch = new MutationObserver(() => 0);
              watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
              const inputs = [...document.querySelectorAll("[type=checkbox][data-input]")];
              const faults = [...document.querySelectorAll("[data-fault]")].filter(box => /^(tray|valve) \d+ (contact|winding)/.test(box.labels[0].textContent));
              return [...inputs, ...inputs, ...faults.flatMap(box => [box, box])].map(box => {
                magnitudes = 0;
                box.click();
                const changes = watch.takeRecords().reduce((sum, r) => sum + (r.type === "childList" ? r.addedNodes.length + r.removedNodes.length : 1), 0);
                // Where a fuse opens, or opened before, everything goes off and comes on again.
                const isShort = document.getElementById("note").textContent.includes("fuse");
                const touches = wasShort || isShort;
                wasShort = isShort;
                return [changes, magnitudes, touches ? 1 : 0];
              });
            }
            """);
        Assert.InRange(counts.Length, 300, 400);
        Assert.InRange(counts.Where(c => c[2] == 0).Max(c => c[0]), 1, MostChanges);
        Assert.InRange(counts.Count(c => c[2] == 0), 200, counts.Length);
        Assert.InRange(counts.Max(c => c[1]), 1, MostMagnitudes);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"at most {counts.Where(c => c[2] == 0).Max(c => c[0])} changes of the page, {counts.Max(c => c[1])} magnitudes"));
        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task Truth_FortyOutputs_NamesWhatTheCircuitDoes()
    {
        // Oracle: every state of the circuit, at every position of the inputs.
        await using ShownDesign shown = await ShownDesign.Open(chromium, ManyOutputs.Work());
        CircuitAnalysis circuit = shown.Design.Circuit;
        string[][] rows = await shown.Page.EvaluateAsync<string[][]>(
            "[...document.querySelectorAll('.truth [data-from]')].map(row => [row.dataset.from, ...[...row.cells].slice(1).map(c => c.textContent)])");
        Assert.Equal(circuit.Intervals.Count, rows.Length);
        int undecided = 0;
        for (int i = 0; i < rows.Length; i++)
        {
            Assert.Equal(shown.Design.Motion.SecondsFromRad(circuit.Intervals[i].FromRad), double.Parse(rows[i][0], CultureInfo.InvariantCulture), 1e-6);
            undecided += Check(circuit, i, rows[i]);
        }

        Assert.InRange(undecided, 1, int.MaxValue);
        await shown.MoveTo(1300);
        Assert.Equal(
            circuit.Intervals.Select(n => shown.Design.Motion.SecondsFromRad(n.FromRad)).Where(t => t <= 1300).Max(),
            await shown.Page.Locator(".truth tr.now").EvaluateAsync<double>("row => Number(row.dataset.from)"),
            1e-6);
        Assert.Equal(1, await shown.Page.Locator(".truth tr.now").CountAsync());
    }

    /// <summary>Holds one row against the states of its interval; tells how many loads it calls undecided.</summary>
    private static int Check(CircuitAnalysis circuit, int interval, string[] row)
    {
        Assert.Equal(4, row.Length);
        Dictionary<string, string> sure = Named([.. Groups(row[1], "● "), .. Groups(row[2], "◐ ")]);
        Dictionary<string, string> unsure = Named(Groups(row[3], "? "));
        Assert.Empty(sure.Keys.Intersect(unsure.Keys, StringComparer.Ordinal));
        for (int l = 0; l < circuit.Loads.Count; l++)
        {
            string load = circuit.Loads[l];
            Engineering.LoadState[] states = [.. Enumerable.Range(0, 1 << circuit.Inputs.Count).Select(inputs => circuit.State(interval, inputs).Loads[l])];
            bool isUnsure = unsure.TryGetValue(load, out string? condition);
            Assert.Equal(isUnsure, states.Contains(Engineering.LoadState.Undecided));
            bool isNamed = isUnsure ? condition!.Length > 0 : sure.TryGetValue(load, out condition);
            for (int inputs = 0; inputs < states.Length; inputs++)
            {
                bool says = isNamed && Holds(isUnsure ? condition!["on with ".Length..] : condition!, circuit.Inputs, inputs);
                Assert.True(says == (states[inputs] == Engineering.LoadState.On), FormattableString.Invariant($"{load} with inputs {inputs}: {string.Join(" | ", row)}"));
            }
        }

        return unsure.Count;
    }

    private static string[] Groups(string cell, string sign) => cell.StartsWith(sign, StringComparison.Ordinal) ? cell[sign.Length..].Split("; ") : [];

    /// <summary>Loads that groups name, each with what stands before its colon: when it is on, "" for nothing.</summary>
    private static Dictionary<string, string> Named(string[] groups) => groups
        .Select(g => g.Contains(": ", StringComparison.Ordinal) ? g.Split(": ") : ["", g])
        .SelectMany(g => g[1].Split(", ").Select(load => (Load: load, When: g[0])))
        .ToDictionary(n => n.Load, n => n.When, StringComparer.Ordinal);

    private static bool Holds(string condition, IReadOnlyList<string> inputs, int mask) => condition.Length == 0 || condition.Split(" or ").Any(product => product.Split(", ").All(literal =>
    {
        int end = literal.LastIndexOf(' ');
        int input = inputs.ToList().IndexOf(literal[..end]);
        Assert.True(input >= 0, condition);
        return (mask >> input & 1) == (string.Equals(literal[(end + 1)..], "closed", StringComparison.Ordinal) ? 1 : 0);
    }));

    [Fact]
    public Task Page_UsedForAWhile_FortyOutputs_LooksAsOneOpenedAnew() => LooksAsOpenedAnew(ManyOutputs.Work());

    [Theory]
    [MemberData(nameof(Demos))]
    public Task Page_UsedForAWhile_LooksAsOneOpenedAnew(string demo) => LooksAsOpenedAnew(ShownDesign.Work(demo));

    public static TheoryData<string> Demos => [.. ShownDesign.Demos];

    // What is touched only where it changes must come to what is drawn from nothing.
    private async Task LooksAsOpenedAnew(Design design)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, design);
        double turn = design.Motion.TurnTimeS;
        for (int k = 1; k <= 6; k++)
        {
            await shown.Page.EvaluateAsync("k => document.querySelectorAll('[data-input][type=checkbox], [data-fault]').forEach((box, i) => (i * 7 + k * 5) % 23 === 0 && box.click())", k);
            await shown.MoveTo(Math.Round(turn * (k * 0.618 % 1), 3));
            await shown.Page.EvaluateAsync("k => document.querySelectorAll('[data-input][type=checkbox]').forEach((box, i) => (i + k) % 3 === 0 && box.click())", k);
            await shown.Page.EvaluateAsync("dispatchEvent(new Event('pagehide'))");
            await using ShownDesign fresh = await ShownDesign.Open(chromium, design, null, new Uri(shown.Page.Url).Fragment);
            string[] expected = await fresh.Page.EvaluateAsync<string[]>(Look);
            string[] seen = await shown.Page.EvaluateAsync<string[]>(Look);
            Assert.InRange(expected.Length, 100, MostElements);
            Assert.Equal(expected, seen);
            Assert.Empty(fresh.Noise);
        }

        Assert.Empty(shown.Noise);
    }

    // Every element of the page with its attributes and its own text, whatever order they were written in.
    private const string Look = """
        [...document.querySelectorAll("header *, main *")].map(e => [
          e.localName,
          ...[...e.attributes].filter(a => a.value !== "" && a.name !== "aria-live").map(a => `${a.name}=${a.name === "class" ? a.value.split(/\s+/).sort().join(" ") : a.value}`).sort(),
          e.checked ? "checked" : "",
          [...e.childNodes].filter(n => n.nodeType === 3).map(n => n.data.trim()).join("|"),
        ].join(" "))
        """;
}
