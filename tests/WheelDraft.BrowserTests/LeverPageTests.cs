using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>The lever of a cam on the page and in a film, played by a browser. The oracles are the lift of the cam and the circuit of the design.</summary>
public sealed partial class LeverPageTests(Chromium chromium)
{
    private const string Demo = "fry-feeder";

    [Fact]
    public async Task Lever_AllRoundTheTurn_LiesOnItsCamOrIsHeldHigher()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, Demo);
        CamLayout cam = shown.Design.Cams[0];
        double turn = shown.Design.Motion.TurnTimeS;
        foreach ((bool blocked, bool latched) in new[] { (false, false), (true, false), (false, true), (true, true) })
        {
            await Hold(shown, "blocked", blocked);
            await Hold(shown, "latched", latched);
            for (int k = 0; k < 90; k++)
            {
                double share = (k + 0.4) / 90;
                await shown.MoveTo(share * turn);

                // Between two lifts of the page, half a degree apart, a lever that rolls over the corner of a step goes straight.
                double lift = Angles.DegFromRad(cam.PlaceAt(share * Math.Tau, blocked, latched));
                Assert.Equal(lift, await Lift(shown.Page), 0.2);
            }
        }

        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task Hold_BySwitchAndKeyboard_OpensTheContactAsTheCircuitSays()
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, Demo);
        CircuitAnalysis circuit = shown.Design.Circuit;
        await shown.MoveTo(0.5);
        Assert.Contains("motor on", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Equal(0, await Lift(shown.Page), 1e-3);

        // A full tray: the wheel stands at home and does not begin another turn.
        await TabTo(shown.Page, "feeler cam blocked");
        await shown.Page.Keyboard.PressAsync("Space");
        Assert.Equal(8, await Lift(shown.Page), 1e-3);
        Assert.Contains("motor off", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Equal(Engineering.LoadState.Off, circuit.At(shown.Design.Motion.RadFromSeconds(0.5), 1 << circuit.Network.InputOf("feeler cam blocked")).State.Loads[circuit.Network.Motor]);

        // In the middle of a turn a blocked lever does not stop the wheel: its own ring holds it.
        await shown.MoveTo(60);
        Assert.Contains("motor on", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Equal(14, await Lift(shown.Page), 1e-3);
        await shown.Page.Keyboard.PressAsync("Space");
        await TabTo(shown.Page, "feeler cam latched");
        await shown.Page.Keyboard.PressAsync("Space");
        Assert.Equal(20, await Lift(shown.Page), 1e-3);
        await shown.MoveTo(0.5);
        Assert.Contains("motor off", await shown.Lamps(), StringComparer.Ordinal);
        Assert.Empty(shown.Noise);
    }

    [Theory]
    [InlineData("lever of feeler cam stuck up", 14, "motor off")]
    [InlineData("lever of feeler cam stuck down", 0, "motor on")]
    public async Task Fault_LeverStuck_StaysThereAllRoundTheTurn(string fault, double liftDeg, string atHome)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, Demo);
        await shown.Page.GetByRole(AriaRole.Switch, new() { Name = fault }).CheckAsync();
        await shown.MoveTo(0.5);
        Assert.Contains(atHome, await shown.Lamps(), StringComparer.Ordinal);
        foreach (double timeS in (double[])[0.5, 25, 50, 100])
        {
            await shown.MoveTo(timeS);
            Assert.Equal(liftDeg, await Lift(shown.Page), 1e-3);
        }

        await shown.Page.GetByRole(AriaRole.Button, new() { Name = "Mend everything" }).ClickAsync();
        await shown.MoveTo(60);
        Assert.Equal(14, await Lift(shown.Page), 1e-3);
        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task SvgFilm_BetweenTwoPictures_LeverGoesWithItsCam()
    {
        Design design = ShownDesign.Work(Demo);
        OutputFile file = OutputFiles.Of(design, new OutputRequest { Kinds = [], Moving = new(MomentReel.OfTurn(design)) { AsPng = false } }).Single();
        await using IBrowserContext context = await chromium.Browser.NewContextAsync();
        IPage page = await context.NewPageAsync();
        string folder = Directory.CreateTempSubdirectory("wheeldraft-lever-").FullName;
        try
        {
            string name = Path.Combine(folder, "film.svg");
            await File.WriteAllBytesAsync(name, file.Bytes, TestContext.Current.CancellationToken);
            await page.GotoAsync("file://" + name);

            // Where the cam lifts and rides, at times that fall on no picture of the film.
            for (int k = 0; k < 100; k++)
            {
                double share = (k + 0.37) / 100;
                double expected = Angles.DegFromRad(design.Cams[0].LiftAt(share * Math.Tau));
                await page.EvaluateAsync("ms => document.getAnimations().forEach(a => { a.pause(); a.currentTime = ms; })", share * MomentReel.TurnForS * 1000);
                double degrees = await page.EvaluateAsync<double>("(() => { const m = new DOMMatrix(getComputedStyle(document.querySelector('[class*=\"-lever-1\"]')).transform); return Math.atan2(m.b, m.a) * 180 / Math.PI; })()");
                Assert.Equal(expected, -degrees, 0.2);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task Hold(ShownDesign shown, string how, bool on) =>
        await shown.Page.GetByRole(AriaRole.Checkbox, new() { Name = $"feeler cam {how}" }).SetCheckedAsync(on);

    private static async Task TabTo(IPage page, string wanted)
    {
        for (int k = 0; k < 200; k++)
        {
            await page.Keyboard.PressAsync("Tab");
            string name = await page.EvaluateAsync<string>("(e => e.getAttribute('aria-label') ?? e.labels?.[0]?.textContent ?? e.textContent)(document.activeElement)");
            if (name.StartsWith(wanted, StringComparison.Ordinal))
            {
                return;
            }
        }

        Assert.Fail($"The Tab key never came to '{wanted}'.");
    }

    // How far the lever is drawn lifted: anticlockwise, which is negative on a screen.
    private static async Task<double> Lift(IPage page)
    {
        string transform = await page.EvaluateAsync<string>("document.querySelector('.lever[data-cam]').getAttribute('transform')");
        return -double.Parse(Rotation().Match(transform).Groups["deg"].Value, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"rotate\((?<deg>-?[\d.]+) ", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Rotation();
}
