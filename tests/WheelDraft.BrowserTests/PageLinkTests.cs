using System.Globalization;
using Microsoft.Playwright;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Addresses of a moment, stories, screws, and what the page says of the state in words. The oracle is the circuit of the design.</summary>
public sealed class PageLinkTests(Chromium chromium)
{
    [Fact]
    public async Task Link_ToAMoment_RestoresTimeInputsAndFault()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench", null, "#t=125&closed=lid&fault=fan-winding-open");
        Assert.Equal(125, await Time(shown));
        Assert.True(await shown.Page.GetByLabel("lid closed", new() { Exact = true }).IsCheckedAsync());
        Assert.False(await shown.Page.GetByLabel("humidity switch closed").IsCheckedAsync());
        Assert.True(await shown.Page.GetByRole(AriaRole.Switch, new() { Name = "fan winding open" }).IsCheckedAsync());
        Assert.Contains("mist valve on", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Contains("motor on", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Equal(1, await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Play" }).CountAsync());
        Assert.Empty(shown.Noise);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public async Task Link_KeptWhileThingsAreMoved_OpensTheSameState(string demo)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, demo);
        double turn = shown.Design.Motion.TurnTimeS;
        await shown.MoveTo(Math.Round(turn * 0.618, 3));
        await shown.Page.EvaluateAsync("document.querySelectorAll('[data-input][type=checkbox], [data-fault]').forEach((box, i) => i % 4 === 0 && box.click())");
        string before = await State(shown.Page);
        await shown.Page.WaitForFunctionAsync("() => location.hash.includes('fault=') && document.getElementById('link').hash === location.hash");
        string fragment = new Uri(shown.Page.Url).Fragment;
        await using ShownDesign again = await ShownDesign.Open(chromium, demo, null, fragment);
        Assert.Equal(before, await State(again.Page));
        Assert.Empty(shown.Noise);
        Assert.Empty(again.Noise);
    }

    public static TheoryData<string> Demos => [.. ShownDesign.Demos];

    [Fact]
    public async Task Link_ChangedByHand_IsFollowed_AndWhatIsUnknownIsSaid()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        Assert.Equal("", new Uri(shown.Page.Url).Fragment);
        await shown.Page.EvaluateAsync("location.hash = '#t=20&closed=humidity-switch,door&t'");
        await shown.Page.WaitForFunctionAsync("() => document.getElementById('time').value === '20'");
        Assert.Contains("fan on", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Contains("does not have: door", await shown.Page.Locator("#link-note").InnerTextAsync(), StringComparison.Ordinal);
        await shown.Page.EvaluateAsync("location.hash = '#t=-5'");
        await shown.Page.WaitForFunctionAsync("() => document.getElementById('time').value === '0'");
        await shown.Page.EvaluateAsync("location.hash = '#t=nonsense'");
        Assert.Equal(0, await Time(shown));
        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task Embed_LineOfThePage_ShowsTheMomentInAnotherPage()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench", null, "#t=125&closed=lid");
        string line = await shown.Page.Locator("#embed").EvaluateAsync<string>("e => e.textContent");
        Assert.Contains("src=\"index.html#t=125&amp;closed=lid&amp;view=compact\"", line, StringComparison.Ordinal);
        Assert.Contains("width=\"720\" height=\"420\"", line, StringComparison.Ordinal);
        string host = Path.Combine(Path.GetDirectoryName(new Uri(shown.Page.Url).LocalPath)!, "host.html");
        await File.WriteAllTextAsync(host, $"<!DOCTYPE html><title>x</title>{line}", TestContext.Current.CancellationToken);
        IPage page = await shown.Page.Context.NewPageAsync();
        List<string> noise = [];
        page.Console += (_, message) => noise.Add(message.Text);
        await page.GotoAsync("file://" + host);
        IFrameLocator frame = page.FrameLocator("iframe");
        await frame.GetByRole(AriaRole.Status, new() { Name = "mist valve on" }).WaitForAsync();
        Assert.True(await frame.Locator("html").EvaluateAsync<bool>("e => e.classList.contains('compact')"));
        await frame.GetByRole(AriaRole.Button, new() { Name = "To the next change" }).ClickAsync();
        await Task.Delay(600, TestContext.Current.CancellationToken);
        await page.CloseAsync();
        Assert.Empty(noise);
    }

    // Once "proved" and "Meets its rules" stood beside "is broken" when a fault was set.
    [Fact]
    public async Task Fault_Set_ProofsSayThatTheyAreWithoutFaults()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        ILocator badge = shown.Page.Locator(".interlock .badge").First;
        Assert.Equal("✓ proved without faults", await badge.InnerTextAsync());
        await shown.MoveTo(124);
        await shown.Page.GetByRole(AriaRole.Switch, new() { Name = "net lid side joined to E" }).CheckAsync();
        Assert.Equal("proved without faults", await badge.InnerTextAsync());
        Assert.DoesNotContain("meets", await badge.GetAttributeAsync("class") ?? "", StringComparison.Ordinal);
        Assert.Equal("Meets its rules without faults", await shown.Page.Locator("#verdict").InnerTextAsync());
        Assert.Equal("Now, with 1 fault set: “no mist while the lid is open” is broken.", await shown.Page.Locator("#holds").InnerTextAsync());
        await shown.Page.GetByLabel("lid closed", new() { Exact = true }).CheckAsync();
        Assert.Equal("Now, with 1 fault set: no interlock asks anything here.", await shown.Page.Locator("#holds").InnerTextAsync());
        await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Mend everything" }).ClickAsync();
        Assert.Equal("✓ proved without faults", await badge.InnerTextAsync());
        Assert.Equal("✓ Meets its rules", await shown.Page.Locator("#verdict").InnerTextAsync());
        Assert.Equal("", await shown.Page.Locator("#holds").InnerTextAsync());
    }

    [Fact]
    public async Task Tree_AfterEachStep_TellsTheStateOfTheCircuit()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        CircuitAnalysis circuit = shown.Design.Circuit;
        for (int k = 0; k < 24; k++)
        {
            double timeS = Math.Round((k + 0.4) / 24 * shown.Design.Motion.TurnTimeS, 3);
            int inputs = k % (1 << circuit.Inputs.Count);
            string closed = string.Join(',', circuit.Inputs.Where((_, i) => (inputs >> i & 1) != 0).Select(i => i.Replace(' ', '-')));
            await shown.Page.EvaluateAsync("f => { location.hash = f; }", string.Create(CultureInfo.InvariantCulture, $"#t={timeS}&closed={closed}"));
            await shown.Page.WaitForFunctionAsync("t => Number(document.getElementById('time').value) === t", timeS);
            CircuitMoment moment = circuit.At(shown.Design.Motion.RadFromSeconds(timeS), inputs);
            string tree = await shown.Page.Locator("main").AriaSnapshotAsync();
            for (int l = 0; l < circuit.Loads.Count; l++)
            {
                Assert.Contains($"status \"{circuit.Loads[l]} {moment.State.Loads[l].ToString().ToLowerInvariant()}\"", tree, StringComparison.Ordinal);
            }

            // The picture's own words, as a screen reader has them.
            string[] on = [.. circuit.Loads.Where((_, l) => moment.State.Loads[l] == Engineering.LoadState.On)];
            string[] made = [.. circuit.Network.Contacts.Where((_, c) => moment.Contacts[c]).Select(c => c.Name)];
            string words = await shown.Page.Locator("#wheel-desc").EvaluateAsync<string>("e => e.textContent");
            Assert.Contains(on.Length == 0 ? "Nothing is on." : $" On: {string.Join(", ", on)}.", words, StringComparison.Ordinal);
            Assert.Contains(made.Length == 0 ? "Every contact is open." : $"Contacts closed: {string.Join(", ", made)}.", words, StringComparison.Ordinal);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{timeS:F1} seconds after home"), words, StringComparison.Ordinal);
            Assert.Contains(on.Length == 0 ? "Nothing is on." : $"On: {string.Join(", ", on)}.", tree.Split('\n').First(l => l.Contains("Wiring diagram: ", StringComparison.Ordinal)), StringComparison.Ordinal);
        }

        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task Motor_IsNoLamp()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        ILocator motor = shown.Page.GetByRole(AriaRole.Status, new() { Name = "motor off" });
        Assert.Equal(0, await motor.Locator(".glass").CountAsync());
        Assert.Equal("M", await motor.Locator(".letter").TextContentAsync());
    }

    [Fact]
    public async Task Story_EventByEvent_IsTheRunOfTheScenario()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        ScenarioRun run = shown.Design.Circuit.Play(shown.Design.Brief.Scenarios[0]);
        foreach (RunMoment moment in run.Moments)
        {
            await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Next event" }).ClickAsync();
            Assert.Equal(shown.Design.Motion.SecondsFromRad(moment.AngleRad), await Time(shown), 1e-6);
            string expected = string.Join("; ", shown.Design.Circuit.Loads.Zip(moment.Loads, (name, on) => $"{name} {on.ToString().ToLowerInvariant()}"));
            Assert.Equal(expected, string.Join("; ", await shown.Lamps()));
            string told = await shown.Page.Locator("#told").InnerTextAsync();
            Assert.Contains(moment.What is "home" ? "home" : moment.What, told, StringComparison.Ordinal);
            Assert.EndsWith(".", told, StringComparison.Ordinal);
        }

        // A hand on the time ends it.
        await shown.MoveTo(50);
        Assert.Contains("in your hands", await shown.Page.Locator("#told").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Story_Told_RunsThroughItsEventsByItself()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        await shown.Page.Locator("#speed").SelectOptionAsync("60");
        await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Tell the story" }).ClickAsync();
        Assert.StartsWith("The wheel stands at home", await shown.Page.Locator("#told").InnerTextAsync(), StringComparison.Ordinal);
        await shown.Page.WaitForFunctionAsync("() => document.getElementById('event').textContent.startsWith('Event 2 of')", null, new() { Timeout = 15_000 });
        Assert.True(await shown.Page.GetByLabel("lid closed", new() { Exact = true }).IsCheckedAsync());
        await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Pause the story" }).ClickAsync();
        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task Screw_Turned_MovesWiperEdgeAndOnTime()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        RingLayout mist = shown.Design.Wheel.Rings.First(r => r.Adjust is not null);
        AdjustLayout adjust = mist.Adjust!;
        double start = shown.Design.Motion.SecondsFromRad(mist.Periods[0].Wanted.StartRad);
        AdjustStep[] steps = [.. adjust.Steps.OrderBy(s => s.OnS)];
        for (int k = 0; k < steps.Length; k++)
        {
            double turns = ((k / (steps.Length - 1.0)) - 0.5) * adjust.Turns;
            await shown.Page.EvaluateAsync("t => { const s = document.querySelector('[data-screw]'); s.value = t; s.dispatchEvent(new Event('input', { bubbles: true })); }", turns);
            await shown.Page.GetByLabel("lid closed", new() { Exact = true }).SetCheckedAsync(true);

            // On until just before its end, off just after it.
            await shown.MoveTo(start + steps[k].OnS - 0.001);
            Assert.Contains("mist valve on", await shown.Lamps(), StringComparer.Ordinal);
            await shown.MoveTo(start + steps[k].OnS + 0.001);
            Assert.Contains("mist valve off", await shown.Lamps(), StringComparer.Ordinal);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"on for {steps[k].OnS:F2} s"), await shown.Page.Locator("#screw-0-on").InnerTextAsync(), StringComparison.Ordinal);

            // The wiper's own contact, where it is drawn.
            double[] at = await shown.Page.EvaluateAsync<double[]>("i => { const c = document.querySelector(`.wiper[data-contact=\"${i}\"] .spot`); const m = c.getCTM().multiply(document.querySelector('#wheel').getCTM().inverse()); const t = c.parentElement.transform.baseVal.consolidate()?.matrix; return [Number(c.getAttribute('cx')) + (t?.e ?? 0), -(Number(c.getAttribute('cy')) + (t?.f ?? 0))]; }", shown.Design.Circuit.Network.ContactOf(mist.Name));
            Assert.Equal(mist.RadiusMm + steps[k].OffsetMm, Math.Sqrt((at[0] * at[0]) + (at[1] * at[1])), 1e-3);
        }

        Assert.Empty(shown.Noise);
    }

    private static Task<double> Time(ShownDesign shown) => shown.Page.EvaluateAsync<double>("Number(document.getElementById('time').value)");

    private static Task<string> State(IPage page) => page.EvaluateAsync<string>(
        "document.getElementById('time').value + ' ' + [...document.querySelectorAll('[type=checkbox]')].map(b => b.checked ? 1 : 0).join('') + ' ' + [...document.querySelectorAll('[role=status]')].map(l => l.getAttribute('aria-label')).join('; ') + document.getElementById('wheel-desc').textContent");
}
