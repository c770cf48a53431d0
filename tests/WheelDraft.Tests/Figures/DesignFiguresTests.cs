using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;
using WheelDraft.Tests.Sheets;
using Xunit;

namespace WheelDraft.Tests.Figures;

/// <summary>Every figure of a design at several widths, measured from the SVG as it is written.</summary>
/// <remarks>Two demos in a usual run; <c>WHEELDRAFT_FIGURE_DESIGNS=200</c> measures every demo at every width and that many random designs.
/// 2 to 2.5 mm for letters, 0.18 mm for lines and 0.13 mm for hatching are what the figures promise; ISO 3098-1 (letters of 1.8 mm and more) and ISO 128-2
/// (lines of 0.13 mm and more), from memory, are met with room.</remarks>
public sealed partial class DesignFiguresTests
{
    private const double LeastLetterMm = 2;
    private const double MostLetterMm = 2.5;
    private const double LeastLineMm = 0.18;
    private const double LeastHatchMm = 0.13;

    private static readonly double[] Widths = [80, 160, 240];

    private static int Designs => int.Parse(Environment.GetEnvironmentVariable("WHEELDRAFT_FIGURE_DESIGNS") ?? "0", CultureInfo.InvariantCulture);

    public static TheoryData<string, double> Shown => Designs > 0
        ? [.. Demos.Names.SelectMany(_ => Widths, (n, w) => (n, w))]
        : [("propagation-bench", 160), ("propagation-bench", 80), ("seed-drier", 160), ("seed-drier", 240)];

    [Theory]
    [MemberData(nameof(Shown))]
    public void Of_ADemo_KeepsToItsMeasures(string demo, double widthMm)
    {
        Design design = Demos.Of(demo);
        List<string> left = [];
        SheetOptions moment = new() { Moment = design.Circuit.At(2.2, 0) };
        IReadOnlyList<Sheet> figures = DesignFigures.Of(design, widthMm, null, left.Add);
        IEnumerable<Sheet> states = DesignFigures.Of(design, widthMm, moment, left.Add).Where(f => f.Words.Name is "assembly" or "timing" or "circuit" or "moment");
        string[] faults = [.. figures.Concat(states).SelectMany(f => Faults(f, widthMm)), .. left];
        Assert.True(faults.Length == 0, string.Join('\n', faults));
        Assert.Equal(figures.Count, figures.Select(f => f.Words.Name).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Of_RandomDesigns_KeepToTheirMeasures()
    {
        ConcurrentBag<string> faults = [];
        Parallel.For(0, Math.Max(3, Designs), number =>
        {
            Design design;
            try
            {
                design = Design.Of(SheetDesigns.Numbered(number));
            }
            catch (DesignRefusedException)
            {
                return;
            }

            double width = Widths[number % Widths.Length];
            List<string> left = [];
            // What has no room is told, so warnings are no faults here.
            foreach (string fault in DesignFigures.Of(design, width, null, left.Add).SelectMany(f => Faults(new Sheet(f.Words, f.Size, f.Groups, []), width)).Concat(left.Where(l => l.Contains("fault of the program", StringComparison.Ordinal))))
            {
                faults.Add(FormattableString.Invariant($"design {number} at {width}: {fault}"));
            }
        });
        Assert.True(faults.IsEmpty, string.Join('\n', faults.Order(StringComparer.Ordinal).Take(60)) + FormattableString.Invariant($"\n{faults.Count} faults"));
    }

    // Names of 40 letters in German, Greek and Chinese.
    [Fact]
    public void Of_LongNames_KeepToTheirMeasures()
    {
        ConcurrentBag<string> faults = [];
        Parallel.For(0, Math.Max(4, Designs / 4), number =>
        {
            if (LongNamesTests.DesignOf(number) is not Design design)
            {
                return;
            }

            double width = Widths[(number + 1) % Widths.Length];
            List<string> left = [];
            foreach (string fault in DesignFigures.Of(design, width, null, left.Add).SelectMany(f => Faults(new Sheet(f.Words, f.Size, f.Groups, []), width).Concat(Lost(design, f))).Concat(left.Where(l => l.Contains("fault of the program", StringComparison.Ordinal))))
            {
                faults.Add(FormattableString.Invariant($"design {number} at {width}: {fault}"));
            }
        });
        Assert.True(faults.IsEmpty, string.Join('\n', faults.Order(StringComparer.Ordinal).Take(60)) + FormattableString.Invariant($"\n{faults.Count} faults"));
    }

    // A ring that is all copper has no edge. A name that stands shortened in a figure is whole in its alternative text; blanks and hyphens apart, for a name over several lines is one.
    private static IEnumerable<string> Lost(Design design, Sheet figure)
    {
        static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '-'));
        string told = Bare(string.Concat(figure.Texts.Select(t => t.Text)) + string.Concat(figure.Warnings) + figure.Words.Description);
        return figure.Words.Name is "timing" or "circuit" or "moment" or "wheel" or "wheel-edges" or "section"
            ? design.Wheel.Rings.Where(r => figure.Words.Name is not "wheel-edges" || !r.IsWhole).Where(r => !told.Contains(Bare(r.Name), StringComparison.Ordinal)).Select(r => $"{figure.Words.Name}: '{r.Name}' is nowhere")
            : [];
    }

    [Theory]
    [InlineData("propagation-bench")]
    [InlineData("tank-doser")]
    public void Of_EveryView_IsThere(string demo)
    {
        Design design = Demos.Of(demo);
        string[] names = [.. DesignFigures.Of(design, 160).Select(f => f.Words.Name)];
        string[] slugs = [.. FileSlugs.Of(design.Strips.Strips.Select(s => s.Form.Strip.Name))];
        string[] wanted =
        [
            "wheel", "wheel-edges", "section", "timing", "circuit", "spacing", "moment",
            .. slugs.SelectMany(s => new[] { $"strip-{s}-blank", $"strip-{s}-side" }),
            .. slugs.Length > 0 ? ["assembly", "assembly-side"] : (string[])[],
            .. FileSlugs.Of(design.Brief.Scenarios.Select(s => s.Name)).Select(s => $"run-{s}"),
            .. TightPlaces.Of(design).Numbered.Where(p => p.Path.Count > 0).Select((_, i) => $"spacing-{SpacingDetails.LetterOf(i).ToLowerInvariant()}"),
        ];
        Assert.Superset(new HashSet<string>(wanted, StringComparer.Ordinal), new HashSet<string>(names, StringComparer.Ordinal));
    }

    // "Legend only for what is shown": the bench demo has no ribs, lands or undecided loads, and its run's chart no net.
    [Fact]
    public void Of_TheLegendOfAFigure_NamesWhatIsSeenAlone()
    {
        IReadOnlyList<Sheet> figures = DesignFigures.Of(Demos.Of("propagation-bench"), 160);
        string[] Legend(string name) => [.. figures.Single(f => string.Equals(f.Words.Name, name, StringComparison.Ordinal)).AllGroups.Where(g => g.Id is "legend").SelectMany(g => g.Items).OfType<SheetText>().Select(t => t.Text)];
        Assert.DoesNotContain("load undecided: between drop-out and pull-in", Legend("run-one-dry-hour-begins"), StringComparer.Ordinal);
        Assert.Equal(["net L", "net stir", "carrier and other insulation", "shortest gap or path", "required, round its first point"], Legend("spacing-a"), StringComparer.Ordinal);
    }

    [Fact]
    public void Of_AFigureThatHasNoRoom_IsLeftOutByName()
    {
        List<string> left = [];
        IReadOnlyList<Sheet> figures = DesignFigures.Of(Design.Of(LongNames()), DesignFigures.LeastWidthMm, null, left.Add);
        Assert.NotEmpty(figures);
        Assert.All(left, l => Assert.Matches("^Figure '.+' is left out: .+ Everything else is made all the same\\.$", l));
    }

    [Theory]
    [InlineData(59)]
    [InlineData(401)]
    public void Of_AWidthOutOfRange_IsRefused(double widthMm) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DesignFigures.Of(Demos.Of("tank-doser"), widthMm));

    [Fact]
    public void Faults_OfASheet_AreFound()
    {
        SheetBuilder sheet = new(new("test", "Test", "Test."), PaperSize.A4);
        sheet.Group("bad", "Bad", "bad").Text("low", new(new(20, 20)), new TextStyle(1.8)).Text("high", new(new(20, 40)), TextStyle.Label).Text("twice", new(new(60, 20)), TextStyle.Small)
            .Text("twice", new(new(60, 21)), TextStyle.Small).Text("off", new(new(208, 60)), TextStyle.Small).Line(new(20, 60), new(40, 60), LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.13));
        Assert.Equal(6, Faults(sheet.Build(), 160).Count()); // the width, two heights, an overlap, an item off the paper, a thin line
    }

    private static Brief LongNames() => SheetDesigns.Numbered(4, i => FormattableString.Invariant($"Umwälzpumpenvorlauftemperaturüberwachung {i}"));

    private static IEnumerable<string> Faults(Sheet figure, double widthMm)
    {
        string svg = SvgWriter.Write(figure, new SvgOptions { Text = SvgText.Live });
        IEnumerable<string> faults =
        [
            .. Measured(svg, widthMm),
            .. SheetAudit.OverlappingTexts(figure).Select(p => $"'{p.First.Text}' overlaps '{p.Second.Text}'"),
            .. SheetAudit.ItemsOffPaper(figure).Select(i => i is SheetText t ? $"'{t.Text}' leaves the figure" : $"a {i.GetType().Name} leaves the figure"),
            .. figure.Warnings,
            .. figure.Words.Title.Length == 0 || figure.Words.Description.Length == 0 ? (string[])["has no words"] : [],
        ];
        return faults.Select(f => $"{figure.Words.Name}: {f}");
    }

    // Width, letters and lines as they stand in the SVG: user units are millimetres.
    private static IEnumerable<string> Measured(string svg, double widthMm)
    {
        XElement root = XElement.Parse(svg);
        if (!string.Equals(root.Attribute("width")!.Value, widthMm.ToString(CultureInfo.InvariantCulture) + "mm", StringComparison.Ordinal))
        {
            yield return $"is {root.Attribute("width")!.Value} wide";
        }

        foreach (Match rule in Rule().Matches(svg))
        {
            string name = rule.Groups["name"].Value;
            if (Number(rule.Value, "font-size") is double font && font * LiveWidths.CapitalShare is double high and (< LeastLetterMm - 1e-3 or > MostLetterMm + 1e-3))
            {
                yield return FormattableString.Invariant($"letters of {high:0.##} mm ({name})");
            }

            double least = name.Contains("pattern-", StringComparison.Ordinal) ? LeastHatchMm : LeastLineMm;
            if (Number(rule.Value, "stroke-width") is double width && width < least - 1e-9)
            {
                yield return FormattableString.Invariant($"lines of {width} mm ({name})");
            }
        }
    }

    private static double? Number(string rule, string property) =>
        Regex.Match(rule, $"{property}:(?<number>[0-9.]+)", RegexOptions.ExplicitCapture, TimeSpan.FromMinutes(1)) is { Success: true } found
            ? double.Parse(found.Groups["number"].Value, CultureInfo.InvariantCulture)
            : null;

    [GeneratedRegex(@"^\.(?<name>[^{]+)\{[^}]*\}", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex Rule();
}
