using System.Globalization;
using Microsoft.Playwright;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>That the page fits where it is shown: small screens, frames, long names, paper.</summary>
public sealed class PageFitTests(Chromium chromium)
{
    /// <summary>Puts the focus on everything that takes it, forward and back as Tab does, and tells what the time card then covers, what is smaller than
    /// a finger needs (24 px, WCAG 2.2, 2.5.8) and whether the card takes more than a third of the height.</summary>
    internal const string Faults = """
        () => {
          const faults = [];
          const bar = document.getElementById("controls");
          const stuck = getComputedStyle(bar).position === "sticky";
          if (stuck && bar.offsetHeight * 3 > innerHeight) { faults.push(`card of ${bar.offsetHeight} px`); }
          const all = [...document.querySelectorAll("a[href], button:not(:disabled), select, input, summary, [tabindex='0']")].filter(e => e.checkVisibility() && !e.closest(".skip"));
          for (const element of [...all, ...all.toReversed()]) {
            element.focus();
            const box = (element.closest("label") && element.type === "checkbox" ? element : element).getBoundingClientRect();
            const name = element.getAttribute("aria-label") || element.textContent.slice(0, 30) || element.labels?.[0]?.textContent;
            if (box.height < 24 || box.width < 24) { faults.push(`${name}: ${box.width} by ${box.height}`); }
            if (!bar.contains(element)) {
              const cover = bar.getBoundingClientRect();
              const behind = Math.min(box.bottom, cover.bottom) - Math.max(box.top, cover.top);
              if (stuck && behind > 1 && box.height <= innerHeight - bar.offsetHeight) { faults.push(`covered: ${name}`); }
              if (box.bottom < 1 || box.top > innerHeight - 1) { faults.push(`out of sight: ${name}`); }
            }
          }
          return [...new Set(faults)].join("; ");
        }
        """;

    [Theory]
    [InlineData(320, 256)]
    [InlineData(390, 844)]
    [InlineData(720, 420)]
    [InlineData(844, 390)]
    [InlineData(896, 660)]
    [InlineData(1280, 720)]
    public async Task TimeCard_AnySize_CoversNoFocus(int width, int height)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench", Size(width, height));
        Assert.Equal("", await shown.Page.EvaluateAsync<string>(Faults));
        Assert.Equal(0, await Sideways(shown));
        Assert.Empty(shown.Noise);
    }

    [Fact]
    public async Task TimeCard_StickingWhereThereIsRoom_AndOnlyThere()
    {
        await using ShownDesign small = await ShownDesign.Open(chromium, "propagation-bench", Size(320, 256));
        Assert.Equal("static", await small.Page.Locator("#controls").EvaluateAsync<string>("e => getComputedStyle(e).position"));
        await using ShownDesign large = await ShownDesign.Open(chromium, "propagation-bench", Size(844, 390));
        Assert.Equal("sticky", await large.Page.Locator("#controls").EvaluateAsync<string>("e => getComputedStyle(e).position"));
    }

    [Fact]
    public async Task Compact_InAFrame_FitsWithoutScrolling()
    {
        // As another page holds it: 720 by 420, whose line the page itself gives.
        await using ShownDesign shown = await ShownDesign.Open(chromium, "propagation-bench", Size(720, 420), "#t=125&closed=lid&view=compact");
        Assert.Equal(0, await Sideways(shown));
        Assert.Equal(0, await shown.Page.EvaluateAsync<int>("document.documentElement.scrollHeight - document.documentElement.clientHeight"));
        Assert.Equal("", await shown.Page.EvaluateAsync<string>(Faults));
        Assert.Contains("mist valve on", await shown.Lamps(), StringComparer.Ordinal);
        Assert.True(await shown.Page.GetByRole(AriaRole.Link, new() { Name = "The whole page, with its cautions" }).IsVisibleAsync());
        Assert.False(await shown.Page.Locator("#chart").IsVisibleAsync());
    }

    // Once the page was 549 px wide at 390 with such names.
    [Theory]
    [InlineData(320, 256)]
    [InlineData(390, 844)]
    [InlineData(720, 420)]
    [InlineData(844, 390)]
    public async Task LongNames_NarrowScreen_NeverScrollSideways(int width, int height)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, LongNames(), Size(width, height));
        Assert.Equal(0, await Sideways(shown));
        await shown.Page.EvaluateAsync("location.hash = '#t=124&fault=lid-side&view=compact'");
        Assert.Equal(0, await Sideways(shown));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(16)]
    [InlineData(40)]
    public async Task Print_ManyRings_IsTwoPages(int rings)
    {
        await using ShownDesign shown = await ShownDesign.Open(chromium, ManyRings(rings));
        byte[] pdf = await shown.Page.PdfAsync(new() { PreferCSSPageSize = true });
        Assert.Equal(2, ShowPageTests.PdfPages().Count(System.Text.Encoding.Latin1.GetString(pdf)));
        await shown.Page.EmulateMediaAsync(new() { Media = Media.Screen });
        Assert.Equal("", await shown.Page.EvaluateAsync<string>("[...document.querySelectorAll('[style]')].map(e => e.style.zoom).join('')"));
        Assert.True(await shown.Page.Locator("#h-truth").IsVisibleAsync());
    }

    internal static BrowserNewContextOptions Size(int width, int height) => new() { ViewportSize = new() { Width = width, Height = height } };

    private static Task<int> Sideways(ShownDesign shown) => shown.Page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");

    /// <summary>The demo with names of forty letters and more, as German makes them.</summary>
    private static Design LongNames()
    {
        string text = ShownDesign.TextOf("propagation-bench");
        foreach ((string old, string with) in ((string, string)[])
        [
            ("\"mist\"", "\"Nebelventilsteuerungskontaktfederstreifen\""), ("\"lid\"", "\"Gewächshausdeckelendlagenschalterkontakt\""),
            ("\"mist valve\"", "\"Nebelwasserzulaufmagnetventilspulenkörper\""), ("\"fan\"", "\"Umluftventilatorantriebswechselstrommotor\""),
            ("\"stir\"", "\"Umluftventilatorsteuerungskontaktstreifen\""), ("\"humidity switch\"", "\"Luftfeuchtigkeitsüberwachungsschaltkontakt\""),
            ("\"no mist while the lid is open\"", "\"KeinNebelwährendderGewächshausdeckeloffensteht\""),
            ("\"one dry hour begins\"", "\"Trockenheitsstundenanfangsbetriebsablauferzählung\""),
            ("\"Propagation bench controller\"", "\"Vermehrungsbeetbewässerungssteuerungsschaltuhrwerk\""),
        ])
        {
            Assert.Contains(old, text, StringComparison.Ordinal);
            text = text.Replace(old, with, StringComparison.Ordinal);
        }

        return ShownDesign.WorkText(text);
    }

    private static Design ManyRings(int rings)
    {
        string rows = string.Concat(Enumerable.Range(0, rings).Select(i => string.Create(
            CultureInfo.InvariantCulture,
            $$"""

            [[output]]
            name = "tray {{i + 1}}"
            on = [ { from = "{{10 + (i * 500 / rings)}} s", for = "20 s" }, { from = "{{40 + (i * 500 / rings)}} s", for = "15 s" } ]
            tolerance = "5 s"
            station = "{{20 + (i * 330 / rings)}} deg"
            contact_length = "0.4 mm"
            contact_width = "2.0 mm"
            side_play = "0.1 mm"

            [[load]]
            name = "valve {{i + 1}}"
            between = ["tray {{i + 1}}", "N"]
            power = "5 W"
            pull_in = "80 %"
            drop_out = "20 %"

            """)));
        return ShownDesign.WorkText(Frame + rows);
    }

    internal const string Frame = """
        format = 1
        title = "Many trays, one wheel"
        drawing_units = "mm"
        [supply]
        voltage = "24 V"
        frequency = "50 Hz"
        frequency_tolerance = "1 %"
        overvoltage_category = "II"
        [environment]
        pollution_degree = 2
        condensation = false
        altitude = "300 m"
        [drive]
        turn_time = "600 s"
        direction = "clockwise"
        [spacing]
        standard = "IEC 60664-1"
        between_live = "functional"
        to_earthed = "basic"
        to_touchable = "functional"
        open_contact = "none"
        margin = "0.2 mm"
        [wheel]
        construction = "windowed"
        outer_diameter = "auto"
        thickness = "0.5 mm"
        material = "C11000-H02"
        bore = { diameter = "6 mm" }
        shaft = "insulating"
        run_out = "0.10 mm"
        face_run_out = "0.10 mm"
        web = "1.2 mm"
        [carrier]
        material_group = "IIIa"
        thickness = "3 mm"
        [process]
        name = "fibre-laser"
        kerf = "0 mm"
        tolerance = "0.05 mm"
        [feed]
        net = "L"
        station = "0 deg"
        contact_length = "0.8 mm"
        contact_width = "2.0 mm"
        side_play = "0.1 mm"

        """;
}
