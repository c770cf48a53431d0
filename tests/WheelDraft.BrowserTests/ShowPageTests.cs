using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using WheelDraft.Engineering;
using WheelDraft.Formats.Page;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>What the page shows, and how it is worked.</summary>
public sealed partial class ShowPageTests(Chromium chromium)
{
    public static TheoryData<string> Demos => [.. ShownDesign.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Write_Demo_IsSmallAndTheSameTwice(string demo)
    {
        byte[] page = ShowPage.Write(ShownDesign.Work(demo));
        Assert.InRange(page.Length, 10_000, 300 * 1024);
        Assert.Equal(page, ShowPage.Write(ShownDesign.Work(demo)));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public async Task Slider_200Instants_LampsAreThoseOfTheCircuit(string demo)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, demo);
        CircuitAnalysis circuit = shown.Design.Circuit;
        double turn = shown.Design.Motion.TurnTimeS;
        List<(double TimeS, int Inputs)> instants = [];
        for (int k = 0; k < 200; k++)
        {
            instants.Add(((k + 0.37) / 200 * turn, k * 7 % (1 << circuit.Inputs.Count)));
        }

        // And every make and break itself: a make belongs to its instant, a break does not.
        foreach (CircuitInterval interval in circuit.Intervals)
        {
            instants.AddRange(Enumerable.Range(0, 1 << circuit.Inputs.Count).Select(u => (Math.Round(shown.Design.Motion.SecondsFromRad(interval.FromRad), 9), u)));
        }

        string[] lamps = await shown.Page.EvaluateAsync<string[]>(
            """
            instants => {
              const slider = document.getElementById("time");
              const boxes = [...document.querySelectorAll("[data-input][type=checkbox]")];
              return instants.map(([t, mask]) => {
                boxes.forEach((box, i) => { if (box.checked !== ((mask >> i & 1) === 1)) { box.click(); } });
                slider.value = t;
                slider.dispatchEvent(new Event("input", { bubbles: true }));
                return [...document.querySelectorAll("[role=status]")].map(l => l.getAttribute("aria-label")).join("; ");
              });
            }
            """,
            instants.Select(i => new[] { i.TimeS, i.Inputs }).ToArray());
        for (int k = 0; k < instants.Count; k++)
        {
            CircuitState state = circuit.State(IntervalAt(circuit, shown.Design.Motion.RadFromSeconds(instants[k].TimeS)), instants[k].Inputs);
            string expected = string.Join("; ", circuit.Loads.Zip(state.Loads, (name, on) => $"{name} {on.ToString().ToLowerInvariant()}"));
            Assert.True(string.Equals(expected, lamps[k], StringComparison.Ordinal), string.Create(CultureInfo.InvariantCulture, $"at {instants[k]}: real {expected}, page {lamps[k]}"));
        }
    }

    private static int IntervalAt(CircuitAnalysis circuit, double angleRad)
    {
        // An edge found again from rounded seconds may lie a rounding before itself.
        const double roundingRad = 1e-9;
        return Enumerable.Range(0, circuit.Intervals.Count).First(i =>
            Angles.InTurn(angleRad + roundingRad - circuit.Intervals[i].FromRad) < circuit.Intervals[i].LengthRad);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public async Task Wheel_MiddleOfEachPeriod_HasCopperOrWindowUnderTheWiper(string demo)
    {
        // The picture by itself: the browser is asked whether the point under each wiper lies in the copper as drawn and turned.
        await using ShownDesign shown = await ShownDesign.Open(chromium, demo);
        int asked = 0;
        foreach (RingLayout ring in shown.Design.Wheel.Rings.Where(r => !r.IsWhole))
        {
            for (int p = 0; p < ring.Periods.Count; p++)
            {
                OnPeriod on = ring.Periods[p].Wanted;
                OnPeriod next = ring.Periods[(p + 1) % ring.Periods.Count].Wanted;
                double offSweep = Angles.InTurn(next.StartRad - on.EndRad);
                double[] stations = ring.Return is ReturnWiper other ? [ring.StationRad, other.StationRad] : [ring.StationRad];
                int[] onPieces = await PiecesUnder(shown, ring, stations, on.StartRad + (on.SweepRad * NearMiddle));
                Assert.True(onPieces[0] >= 0 && onPieces[^1] == onPieces[0], $"{ring.Name} is on: copper");
                int[] offPieces = await PiecesUnder(shown, ring, stations, on.EndRad + (offSweep * NearMiddle));
                Assert.True(offPieces[0] < 0 || (ring.Return is not null && offPieces[1] != offPieces[0]), $"{ring.Name} is off: window, or no land under both");
                asked++;
            }
        }

        Assert.True(asked >= 2);
    }

    // Not the middle itself: a wheel that stands square puts points of its outline level with the point asked about, and there the
    // browser's own count of crossings has been seen to err.
    private const double NearMiddle = 0.47;

    /// <summary>The piece of copper under each station, by index; −1 for none.</summary>
    private static async Task<int[]> PiecesUnder(ShownDesign shown, RingLayout ring, double[] stationsRad, double programmeRad)
    {
        await shown.MoveTo(shown.Design.Motion.SecondsFromRad(Angles.InTurn(programmeRad)));
        return await shown.Page.EvaluateAsync<int[]>(
            """
            points => {
              const svg = document.getElementById("wheel");
              const pieces = [...svg.querySelectorAll(".copper")];
              const toWheel = pieces[0].getScreenCTM().inverse().multiply(svg.getScreenCTM());
              return points.map(([x, y]) => pieces.findIndex(p => p.isPointInFill(new DOMPoint(x, -y).matrixTransform(toWheel))));
            }
            """,
            stationsRad.Select(s => Point.Polar(ring.RadiusMm, s)).Select(p => new[] { p.X, p.Y }).ToArray());
    }

    [Fact]
    public async Task Page_Opened_IsPausedAtZeroWithEverythingNamed()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        string tree = await shown.Page.Locator("body").AriaSnapshotAsync();
        foreach (string part in (string[])
        [
            "slider \"Time in the turn\"", "button \"Play\"", "checkbox \"humidity switch closed\"", "checkbox \"lid closed\"",
            "status \"mist valve off\"", "status \"fan off\"", "status \"motor off\"", "switch \"mist contact welded\"", "switch \"lid stuck closed\"",
            "combobox \"Speed\"", "heading \"Propagation bench controller\"",
        ])
        {
            Assert.Contains(part, tree, StringComparison.Ordinal);
        }

        Assert.Equal("0", await shown.Page.Locator("#time").InputValueAsync());
        string before = await Turned(shown);
        await Task.Delay(300, TestContext.Current.CancellationToken);
        Assert.Equal(before, await Turned(shown));
    }

    [Fact]
    public async Task Keyboard_Alone_WorksEverything()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        IPage page = shown.Page;
        List<string> met = await TabThrough(page, "humidity switch closed");
        Assert.Contains("To the controls", met, StringComparer.Ordinal);
        await page.Keyboard.PressAsync("Space");
        Assert.Contains("motor on", await shown.Lamps(), StringComparer.Ordinal);
        met = await TabThrough(page, "Time in the turn");
        Assert.Contains("Play", met, StringComparer.Ordinal);
        await page.Keyboard.PressAsync("ArrowRight");
        double step = await Time(shown);
        Assert.Equal(1, step);
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        Assert.Equal(step + 0.1, await Time(shown), 1e-9);
        await page.Keyboard.PressAsync("PageUp");
        Assert.Equal(step + 10.1, await Time(shown), 1e-9);
        Assert.Contains("arrow keys move by 1 s, Page Up and Page Down by 10 s, Shift with an arrow by 0.1 s", await page.Locator("#keys").InnerTextAsync(), StringComparison.Ordinal);
        await page.Keyboard.PressAsync("End");
        Assert.Equal(180, await Time(shown));
        await page.Keyboard.PressAsync("Home");
        Assert.Equal(0, await Time(shown));
        await TabThrough(page, "lid stuck closed");
        await page.Keyboard.PressAsync("Space");
        Assert.True(await page.GetByRole(AriaRole.Switch, new() { Name = "lid stuck closed" }).IsCheckedAsync());
        Assert.Empty(shown.Noise);
    }

    private static async Task<List<string>> TabThrough(IPage page, string wanted)
    {
        List<string> met = [];
        for (int k = 0; k < 80; k++)
        {
            await page.Keyboard.PressAsync("Tab");
            string name = await page.EvaluateAsync<string>("(e => e.getAttribute('aria-label') ?? e.labels?.[0]?.textContent ?? e.textContent)(document.activeElement)");
            met.Add(name);
            if (string.Equals(name, wanted, StringComparison.Ordinal))
            {
                return met;
            }
        }

        throw new Xunit.Sdk.XunitException($"The Tab key never came to '{wanted}', only to {string.Join(", ", met)}");
    }

    [Fact]
    public async Task Play_ThenSlider_RunsThenPauses()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "kiln-room");
        await shown.Page.Locator("#speed").SelectOptionAsync("60");
        await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Play" }).ClickAsync();
        await shown.Page.WaitForFunctionAsync("() => Number(document.getElementById('time').value) > 12");
        Assert.Equal(1, await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Pause" }).CountAsync());
        Assert.Contains("forward winding on", await shown.Lamps(), StringComparer.Ordinal);
        await shown.MoveTo(300);
        Assert.Equal(1, await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Play" }).CountAsync());
        string before = await Turned(shown);
        await Task.Delay(200, TestContext.Current.CancellationToken);
        Assert.Equal(before, await Turned(shown));
        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task Drive_MotorLetsGo_WheelParksAtTheBreak()
    {
        // Started by the humidity switch, held by its own ring from 3 s to 179 s; the switch opens meanwhile.
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        await shown.Page.GetByLabel("Turn only while the motor is on").CheckAsync();
        await shown.MoveTo(100);
        await shown.Page.Locator("#speed").SelectOptionAsync("60");
        await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Play" }).ClickAsync();
        await shown.Page.WaitForFunctionAsync("() => Number(document.getElementById('time').value) >= 179");
        await Task.Delay(200, TestContext.Current.CancellationToken);
        Assert.Equal(179, await Time(shown), 1e-6);
        Assert.Contains("motor off", await shown.Lamps(), StringComparer.Ordinal);
        await shown.Page.GetByLabel("humidity switch closed").CheckAsync();
        await shown.Page.WaitForFunctionAsync("() => Number(document.getElementById('time').value) < 170");
    }

    [Fact]
    public async Task Fault_ThatBreaksAnInterlock_ShowsIt()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        await shown.MoveTo(124);
        Assert.Contains("mist valve off", await shown.Lamps(), StringComparer.Ordinal);
        ILocator interlock = shown.Page.Locator(".interlock").First;
        Assert.Contains("is kept", await interlock.InnerTextAsync(), StringComparison.Ordinal);
        await shown.Page.GetByRole(AriaRole.Switch, new() { Name = "net lid side joined to E" }).CheckAsync();
        Assert.Contains("mist valve on", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Contains("is broken", await interlock.InnerTextAsync(), StringComparison.Ordinal);
        await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Mend everything" }).ClickAsync();
        Assert.Contains("mist valve off", await shown.Lamps(), StringComparer.Ordinal);
    }

    [Fact]
    public async Task Interlock_OnAMeaning_IsBrokenByASwitchThatSticks()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench");
        await shown.MoveTo(124);
        ILocator interlock = shown.Page.Locator(".interlock").First;
        await shown.Page.GetByRole(AriaRole.Switch, new() { Name = "lid stuck closed" }).CheckAsync();
        Assert.Contains("mist valve on", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Contains("is broken: on", await interlock.InnerTextAsync(), StringComparison.Ordinal);
        await shown.Page.GetByLabel("lid closed").First.CheckAsync();
        Assert.Contains("asks nothing", await interlock.InnerTextAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public async Task Page_EverythingUsed_AsksNobodyAndSaysNothing(string demo)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, demo);
        foreach (ILocator box in await shown.Page.Locator("input[type=checkbox]").AllAsync())
        {
            await box.ClickAsync();
            await box.ClickAsync();
        }

        await shown.Page.Locator("#on").ClickAsync();
        await shown.Page.Locator("#back").ClickAsync();
        await shown.Page.Locator("#chart").ClickAsync();
        await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Play" }).ClickAsync();
        await Task.Delay(300, TestContext.Current.CancellationToken);
        Assert.Empty(shown.Noise);
        Assert.Equal("none", await shown.Page.EvaluateAsync<string>("performance.getEntriesByType('resource').length ? 'some' : 'none'"));
    }

    [Fact]
    public async Task Policy_ForeignStyleScriptAndRequest_AreRefused()
    {
        // That the policy is there and bites: what the page never does is tried in its place.
        await using ShownDesign shown = await ShownDesign.Open(chromium, "tank-doser");
        string refused = await shown.Page.EvaluateAsync<string>(
            """
            async () => {
              const seen = new Set();
              document.addEventListener("securitypolicyviolation", e => seen.add(e.effectiveDirective));
              const script = document.createElement("script");
              script.textContent = "window.intruder = 1";
              document.body.append(script);
              const style = document.createElement("style");
              style.textContent = "body { color: red }";
              document.body.append(style);
              await fetch("http://127.0.0.1:9/").catch(() => 0);
              new Image().src = "http://127.0.0.1:9/x.png";
              await new Promise(r => setTimeout(r, 200));
              return [...seen].sort().join(" ") + " " + (window.intruder ?? "kept out");
            }
            """);
        Assert.Equal("connect-src img-src script-src-elem style-src-elem kept out", refused);
    }

    [Fact]
    public async Task Motion_Reduced_StepsInsteadOfTurning()
    {
        int turning = await Moves(ReducedMotion.NoPreference);
        int reduced = await Moves(ReducedMotion.Reduce);
        Assert.InRange(reduced, 1, 4);
        Assert.True(turning > 2 * reduced, string.Create(CultureInfo.InvariantCulture, $"{turning} moves while turning, {reduced} reduced"));
    }

    private async Task<int> Moves(ReducedMotion wish)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "kiln-room", new() { ReducedMotion = wish });
        return await shown.Page.EvaluateAsync<int>(
            """
            async () => {
              let moves = 0;
              new MutationObserver(() => moves++).observe(document.getElementById("turning"), { attributes: true });
              document.getElementById("play").click();
              await new Promise(r => setTimeout(r, 1600));
              return moves;
            }
            """);
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Colours_EitherScheme_ReadWell(ColorScheme scheme)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench", new() { ColorScheme = scheme });
        await shown.MoveTo(124);
        await shown.Page.GetByLabel("lid closed", new() { Exact = true }).CheckAsync();
        string ground = await shown.Page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");
        int brightness = Numbers().Matches(ground).Sum(m => int.Parse(m.Value, CultureInfo.InvariantCulture));
        Assert.True(scheme == ColorScheme.Dark ? brightness < 150 : brightness > 600, ground);
        string[] faint = await shown.Page.EvaluateAsync<string[]>(ContrastOfTexts);
        Assert.Empty(faint);
    }

    // Every visible text of the page against what lies behind it: WCAG 2.2, 1.4.3 asks for 4.5 to 1. The motor's letter is left
    // out: it stands on a shape of the drawing, which is no background that a style sheet knows.
    private const string ContrastOfTexts = """
        () => {
          const canvas = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
          const rgba = colour => { canvas.clearRect(0, 0, 1, 1); canvas.fillStyle = colour; canvas.fillRect(0, 0, 1, 1); return [...canvas.getImageData(0, 0, 1, 1).data]; };
          const luminance = ([r, g, b]) => [r, g, b].map(c => c / 255).map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4).reduce((s, c, i) => s + c * [0.2126, 0.7152, 0.0722][i], 0);
          const behind = element => { for (let e = element; e; e = e.parentElement) { const c = rgba(getComputedStyle(e).backgroundColor); if (c[3] > 250) { return c; } } return [255, 255, 255, 255]; };
          const faint = [];
          const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          while (walk.nextNode()) {
            const element = walk.currentNode.parentElement;
            if (!walk.currentNode.textContent.trim() || element.closest("script, title, desc, .skip, option, .letter") || !element.checkVisibility({ visibilityProperty: true })) { continue; }
            const style = getComputedStyle(element);
            const text = rgba(element instanceof SVGElement ? style.fill : style.color);
            const [a, b] = [luminance(text), luminance(behind(element))].sort((x, y) => y - x);
            if ((a + 0.05) / (b + 0.05) < 4.5) { faint.push(`${walk.currentNode.textContent.trim()}: ${((a + 0.05) / (b + 0.05)).toFixed(2)}`); }
          }
          return faint;
        }
        """;

    [Theory]
    [InlineData(360, 740)]
    [InlineData(1280, 900)]
    public async Task Layout_AnyWidth_NeverScrollsSideways(int width, int height)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench", new() { ViewportSize = new() { Width = width, Height = height } });
        Assert.Equal(0, await shown.Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth"));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public async Task Print_Demo_IsTwoPages(string demo)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, demo);
        byte[] pdf = await shown.Page.PdfAsync(new() { PreferCSSPageSize = true });
        Assert.Equal(2, PdfPages().Count(System.Text.Encoding.Latin1.GetString(pdf)));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public async Task Frame_Demo_TakesLittleScriptTime(string demo)
    {
        // A frame has 16 ms; the median of many leaves room for a busy machine.
        await using ShownDesign shown = await ShownDesign.Open(chromium, demo);
        double median = await shown.Page.EvaluateAsync<double>(
            """
            () => {
              const slider = document.getElementById("time");
              const times = Array.from({ length: 400 }, (_, k) => {
                slider.value = slider.max * (k * 0.618 % 1);
                const from = performance.now();
                slider.dispatchEvent(new Event("input", { bubbles: true }));
                return performance.now() - from;
              });
              return times.sort((a, b) => a - b)[200];
            }
            """);
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{demo}: {median:0.00} ms of script a frame"));
        Assert.InRange(median, 0, 16);
    }

    private static Task<string> Turned(ShownDesign shown) => shown.Page.EvaluateAsync<string>("document.getElementById('turning').getAttribute('transform')");

    private static Task<double> Time(ShownDesign shown) => shown.Page.EvaluateAsync<double>("Number(document.getElementById('time').value)");

    [GeneratedRegex("[0-9]+", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbers();

    [GeneratedRegex("/Type /Page\\b", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    internal static partial Regex PdfPages();
}
