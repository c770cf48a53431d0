using System.Collections.Concurrent;
using System.Globalization;
using System.Xml.Linq;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;
using WheelDraft.Tests.Drawing;
using WheelDraft.Tests.Moments;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>All sheets of demos and of random designs.</summary>
/// <remarks>50 random designs in a usual run; <c>WHEELDRAFT_SHEET_DESIGNS=200</c> draws that many.</remarks>
public sealed class DesignSheetsTests(ITestOutputHelper output)
{
    private static int Designs => int.Parse(Environment.GetEnvironmentVariable("WHEELDRAFT_SHEET_DESIGNS") ?? "50", CultureInfo.InvariantCulture);

    // Of the numbered briefs some ask for what cannot be built (an adjusting edge too steep, a pair of nets without a rule).
    private const double LeastShareBuilt = 0.7;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Demos => [.. SheetDesigns.Demos];

    [Fact]
    public void Demos_AreThere() => Assert.True(SheetDesigns.Demos.Count >= 3);

    [Theory]
    [MemberData(nameof(Demos))]
    public void Of_Demo_IsTidyCompleteAndReadable(string name)
    {
        Design design = SheetDesigns.Demo(name);
        IReadOnlyList<Sheet> sheets = Tests.Demos.SheetsOf(name);
        Assert.Equal(sheets.Count, sheets.Select(s => s.Words.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.All(sheets, Check);
        Assert.All(TemplateSheets.Parts(design), PaperTests.AssertTidy);
        AssertEdgesAreListed(design, sheets[0]);
        Assert.All(sheets, s => Assert.Empty(s.Warnings));

        // Legible at A4: nothing of these demos' timing needs larger paper. A wheel with its set-out is at home on A3.
        Assert.Equal("A4", sheets.Single(s => s.Words.Name is "timing").Size.Name);
        Assert.Contains(sheets[0].Size.Name, (string[])["A4", "A3"], StringComparer.Ordinal);
    }

    [Fact]
    public void Of_RandomDesigns_AreTidyAndComplete()
    {
        int built = 0;
        ConcurrentBag<string> faults = [];
        Parallel.For(0, Designs, number =>
        {
            if (DesignOf(number) is Design design)
            {
                Interlocked.Increment(ref built);
                foreach (string fault in Faults(design, number))
                {
                    faults.Add(FormattableString.Invariant($"design {number}: {fault}"));
                }
            }
        });
        Assert.True(faults.IsEmpty, string.Join('\n', faults.Order(StringComparer.Ordinal)));
        output.WriteLine(FormattableString.Invariant($"{built} of {Designs} designs were built."));
        Assert.InRange(built, LeastShareBuilt * Designs, Designs);
    }

    private static IEnumerable<string> Faults(Design design, int number)
    {
        IReadOnlyList<Sheet> sheets = DesignSheets.Of(design);
        SheetOptions state = new() { Moment = design.Circuit.At(number, number % 2), Callouts = (CalloutMarks)(number / 2 % 2) };
        Sheet[] all = [.. sheets, .. MomentSheetTests.WithState(design, state), .. TemplateSheets.Parts(design), TemplateSheets.Instructions(design, number % 2 == 0 ? PaperSize.A4 : PaperSize.Letter)];
        return
        [
            .. all.SelectMany(Untidy),
            .. Fault(() => AssertEdgesAreListed(design, sheets[0])),
            .. Fault(() => AssertPeriodsAreListed(design, sheets.Single(s => s.Words.Name is "timing"))),
            .. number % 10 == 0 ? sheets.SelectMany(s => Fault(() => Check(s))) : [],
        ];
    }

    private static IEnumerable<string> Untidy(Sheet sheet) =>
    [
        .. SheetAudit.OverlappingTexts(sheet).Select(p => $"{sheet.Words.Name}: '{p.First.Text}' overlaps '{p.Second.Text}'"),
        .. SheetAudit.TextsOffPaper(sheet).Select(t => $"{sheet.Words.Name}: '{t.Text}' leaves the paper"),
        .. SheetAudit.ItemsOffPaper(sheet).Select(i => $"{sheet.Words.Name}: {i.GetType().Name} at {i.Bounds} leaves the paper"),
    ];

    private static IEnumerable<string> Fault(Action check)
    {
        try
        {
            check();
            return [];
        }
        catch (Exception fault)
        {
            return [fault.Message];
        }
    }

    [Fact]
    public void Of_SheetsOfASet_AreNumbered()
    {
        IReadOnlyList<Sheet> sheets = DesignSheets.Of(Design.Of(Briefs.Worked()));
        for (int i = 0; i < sheets.Count; i++)
        {
            Assert.Contains(sheets[i].Texts, t => string.Equals(t.Text, FormattableString.Invariant($"{i + 1} / {sheets.Count}"), StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Instructions_AnyDesign_SayTrueSizeCheckLinesAndCautions()
    {
        Sheet sheet = TemplateSheets.Instructions(Design.Of(Briefs.Worked()), PaperSize.A4);
        PaperTests.AssertTidy(sheet);
        string words = string.Join(' ', sheet.Texts.Select(t => t.Text));
        Assert.Contains("100 %", words, StringComparison.Ordinal);
        Assert.Contains("100 mm", words, StringComparison.Ordinal);
        Assert.Contains("Mains voltage kills", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_Wheel_IsAtTrueSize()
    {
        Design design = Design.Of(Briefs.Worked());
        SheetArea cut = TemplateSheets.Parts(design)[0].Groups.Single(g => g.Id is "cut").Items.OfType<SheetArea>().Single();
        Assert.Equal(design.Wheel.OuterDiameterMm, cut.Shapes[0].Bounds.Width, 1e-9);
        Assert.Equal(design.Wheel.OuterDiameterMm, cut.Shapes[0].Bounds.Height, 1e-9);
    }

    private static Design? DesignOf(int number)
    {
        try
        {
            return Design.Of(SheetDesigns.Numbered(number));
        }
        catch (DesignRefusedException)
        {
            return null;
        }
    }

    private static void Check(Sheet sheet)
    {
        PaperTests.AssertTidy(sheet);
        foreach (SvgText text in Enum.GetValues<SvgText>())
        {
            // Parsing refuses what is not well formed.
            XElement svg = XDocument.Parse(SvgWriter.Write(sheet, new() { Text = text })).Root!;
            Assert.Equal(sheet.Words.Title, svg.Element(Svg + "title")!.Value);
            Assert.Equal(sheet.Words.Description, svg.Element(Svg + "desc")!.Value);
            string[] ids = [.. svg.DescendantsAndSelf().Attributes("id").Select(a => a.Value)];
            Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
            Assert.Equal(text == SvgText.Live, svg.Descendants(Svg + "text").Any());
        }
    }

    /// <summary>Both ends of every ring's copper stand on the sheet, as near as a tenth of the cut's tolerance on the ring, and every period has its row.</summary>
    private static void AssertEdgesAreListed(Design design, Sheet wheel)
    {
        RingPeriod[] periods = [.. design.Wheel.AllRings.SelectMany(r => r.Periods)];
        // Where leaders to the edges find room, their angles stand there and nowhere else.
        double[] leaders = [.. wheel.Texts.Where(t => (t.Text.Contains(" make ", StringComparison.Ordinal) || t.Text.Contains(" break ", StringComparison.Ordinal)) && t.Text.EndsWith('°')).Select(t => double.Parse(t.Text[(t.Text.LastIndexOf(' ') + 1)..^1], CultureInfo.InvariantCulture))];
        double[] figures = [.. leaders, .. Figures(wheel, decimals: 1), .. Figures(wheel, decimals: 2), .. Figures(wheel, decimals: 3)];
        foreach (RingLayout ring in design.Wheel.AllRings)
        {
            double half = design.Brief.Process.ToleranceMm / 10 / ring.RadiusMm * 180 / Math.PI;
            Assert.All(ring.Periods, p =>
            {
                AssertNear(figures, p.CopperRad.StartRad, half);
                AssertNear(figures, p.CopperRad.StartRad + p.CopperRad.SweepRad, half);
            });
        }

        int rows = wheel.Groups.Where(g => g.Name.Role is "table").SelectMany(g => g.Items).OfType<SheetText>().Count(t => t.Text.EndsWith("make", StringComparison.Ordinal));
        Assert.InRange(rows, periods.Length, int.MaxValue);
    }

    private static void AssertPeriodsAreListed(Design design, Sheet timing)
    {
        double[] figures = Figures(timing, decimals: 2);
        Assert.All(design.Wheel.Rings.SelectMany(r => r.Periods), p =>
        {
            AssertListed(figures, p.Wanted.StartRad, 2);
            AssertListed(figures, p.Wanted.StartRad + p.Wanted.SweepRad, 2);
        });
    }

    /// <summary>A figure of the sheet is the angle in [0, 360), rounded. A make a hair before home was written as 360.00.</summary>
    private static void AssertListed(double[] figures, double rad, int decimals)
    {
        AssertNear(figures, rad, 0.5 * Math.Pow(10, -decimals));
    }

    private static void AssertNear(double[] figures, double rad, double offDeg)
    {
        double wanted = ((rad * 180 / Math.PI) % 360 + 360) % 360;
        double half = offDeg + 1e-7;
        Assert.True(
            figures.Any(f => f < 360 && (Math.Abs(f - wanted) <= half || Math.Abs(f + 360 - wanted) <= half)),
            FormattableString.Invariant($"{wanted}° is missing among {string.Join(' ', figures.Where(f => Math.Abs(f - wanted) < 1))}."));
    }

    private static double[] Figures(Sheet sheet, int decimals) =>
        [.. sheet.Texts.Select(t => t.Text)
            .Where(t => t.Length > decimals && t[^(decimals + 1)] == '.')
            .Select(t => double.TryParse(t, CultureInfo.InvariantCulture, out double figure) ? figure : double.NaN)
            .Where(double.IsFinite)];
}
