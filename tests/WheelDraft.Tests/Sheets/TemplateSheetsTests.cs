using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Pdf;
using WheelDraft.Geometry;
using WheelDraft.Tests.Drawing;
using WheelDraft.Tests.Raster;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>What a person reads off the true-size template.</summary>
public sealed class TemplateSheetsTests : IDisposable
{
    private readonly OutsideFolder _folder = new();

    public static TheoryData<string> Files => [.. Demos.Names];

    public void Dispose() => _folder.Dispose();

    // "Drill Ø6" took the flat away.
    [Fact]
    public void Words_BoreWithAFlat_AreDrilledUnderSizeAndFiled()
    {
        string words = Words(TemplateSheets.Parts(Demos.Of("propagation-bench"))[0]);
        Assert.Contains("drill Ø3.9, then file to the line", words, StringComparison.Ordinal);
        Assert.DoesNotContain("drill Ø6", words, StringComparison.OrdinalIgnoreCase);
    }

    // 35 µm was printed as 0.04 mm.
    [Fact]
    public void Words_Foil_KeepItsThickness()
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 3, (20, 60)));
        Design design = Design.Of(plain with { Wheel = plain.Wheel with { ThicknessMm = 0.035 } });
        foreach (Sheet sheet in (Sheet[])[TemplateSheets.Parts(design)[0], TemplateSheets.Instructions(design, PaperSize.A4), WheelSheet.Of(design), CarrierSheet.Of(design)])
        {
            Assert.Contains("0.035 mm", Words(sheet), StringComparison.Ordinal);
            Assert.DoesNotContain("0.04 mm", Words(sheet), StringComparison.Ordinal);
        }
    }

    // A cross stood for a hole, for a place to punch and for a join.
    [Fact]
    public void Marks_DrillPunchAndJoin_DifferAndAreExplained()
    {
        string[] looks = [.. ((IEnumerable<SheetItem>[])[TemplateMarks.Drill(Point.Origin, 3, 3), TemplateMarks.Punch(Point.Origin), TemplateMarks.Join(Point.Origin)]).Select(Look)];
        Assert.Equal(["circle, level, upright", "level, level, slanting, slanting, upright, upright", "area, slanting, slanting, slanting, slanting"], looks);
        Sheet page = TemplateSheets.Instructions(Demos.Of("propagation-bench"), PaperSize.A4);
        string words = string.Join(' ', page.Groups.Single(g => g.Id is "key").Items.OfType<SheetText>().Select(t => t.Text));
        Assert.All((string[])["Drill mark", "Punch mark", "Join mark", "anticlockwise"], w => Assert.Contains(w, words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("kiln-room")]
    [InlineData("propagation-bench")]
    public void Parts_Strip_HasADrillMarkAHoleAndAPunchMarkAMark(string file)
    {
        Design design = Demos.Of(file);
        for (int i = 0; i < design.Strips.Strips.Count; i++)
        {
            StripForm form = design.Strips.Strips[i].Form;
            Sheet sheet = TemplateSheets.Parts(design).Single(s => string.Equals(s.Words.Name, FormattableString.Invariant($"template-strip-{i + 1}"), StringComparison.Ordinal));
            SheetItem[] marks = [.. sheet.Groups.Single(g => g.Id is "marks").Items];
            int circles = marks.OfType<SheetLine>().Count(l => l.Pieces is [Arc]);
            int squares = marks.OfType<SheetLine>().Count(l => l.Pieces.Count == 4);
            Assert.Equal((form.Blank.Outline.Holes.Count, form.Blank.Marks.Count), (circles, squares));

            // Every fold is named with its angle and its side, by the sign of the form itself.
            string words = Words(sheet);
            Assert.All(form.Folds, f => Assert.Contains($"{DrawingNumbers.Angle(Math.Abs(f.AngleRad))} {(f.AngleRad > 0 ? "up" : "down")}", words, StringComparison.Ordinal));
        }
    }

    // Lands stood on the paper without the disc that they belong on.
    [Fact]
    public void Parts_Lands_StandOnTheDiscWithItsBoreAndFixings()
    {
        Brief lands = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("fan", 3, (20, 60)), 30, 90));
        Design design = Design.Of(lands with { Wheel = lands.Wheel with { Fixings = new(3, 2.2, null, 1) } });
        Sheet sheet = TemplateSheets.Parts(design)[0];
        Bounds disc = Bounds(sheet, "disc");
        Assert.Equal(design.Wheel.OuterDiameterMm, disc.Width - 0.25, 1e-9);
        SheetArea[] holes = [.. sheet.Groups.Single(g => g.Id is "holes").Items.OfType<SheetArea>()];
        Assert.Equal(4, holes.Length);
        Vector toSheet = disc.Centre - Point.Origin;
        Assert.All(design.Wheel.Fixings, f => Assert.Contains(holes, h => h.Shapes[0].Bounds.Centre.DistanceTo(f + toSheet) < 1e-6));
        Assert.All(sheet.Groups.Single(g => g.Id is "cut").Items.OfType<SheetArea>().Zip(design.Wheel.Copper), p => Assert.Equal(0, p.First.Shapes[0].Bounds.Centre.DistanceTo(p.Second.Outline.Bounds.Centre + toSheet), 1e-6));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Parts_Demo_NameEveryEdgeOnThePartAndFitAPage(string file)
    {
        Design design = Demos.Of(file);
        IReadOnlyList<Sheet> parts = TemplateSheets.Parts(design);
        Assert.All(parts.Concat(ArtworkSheets.Of(design)), PaperTests.AssertTidy);
        string words = Words(parts[0]);
        CutNumbers numbers = CutNumbers.Of(design);
        foreach (SetOutEdge edge in SetOutWords.Edges(design))
        {
            Assert.Contains($"{(edge.End == EdgeEnd.Make ? "make" : "break")} {numbers.Direction(edge.OnRing.WheelRad, edge.OnRing.RadiusMm)}°", words, StringComparison.Ordinal);
        }

        Assert.All(design.Wheel.Rings, r => Assert.Contains(r.Name, words, StringComparison.Ordinal));
        Assert.Contains("home mark, 0°", words, StringComparison.Ordinal);
        Assert.All(parts, p => Assert.True(p.WidthMm <= TemplateSheets.WindowOf(TemplateSheets.PaperOf(design)).Width, p.Words.Name));
        Assert.Contains(parts, p => p.Words.Name is "template-carrier");
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Artwork_MirroredTwice_IsTheDirectOne(string file)
    {
        Design design = Demos.Of(file);
        Outline[][] artworks = [.. ArtworkSheets.Of(design).Select(s => s.Groups.Single(g => g.Id is "artwork").Items.OfType<SheetArea>().Single().Shapes.ToArray())];
        Sheet[] sheets = [.. ArtworkSheets.Of(design)];
        Outline[] Home(int i) => [.. artworks[i].Select(o => o.Placed(Placement.Translation(Point.Origin - Middle(sheets[i]))))];
        Point[] direct = [.. Home(0).SelectMany(o => o.Pieces).Select(p => p.PointAt(0.5)).OrderBy(p => Math.Round(p.X, 6)).ThenBy(p => Math.Round(p.Y, 6))];
        Point[] mirrored = [.. Home(1).SelectMany(o => o.Pieces).Select(p => p.PointAt(0.5)).Select(p => new Point(p.X, -p.Y)).OrderBy(p => Math.Round(p.X, 6)).ThenBy(p => Math.Round(p.Y, 6))];
        Assert.Equal(direct.Length, mirrored.Length);
        Assert.All(direct.Zip(mirrored), p => Assert.Equal(0, p.First.DistanceTo(p.Second), 1e-9));

        // A mirror that did nothing would pass as well: the copper is not its own image.
        Assert.NotEqual(Home(0)[0].Pieces.Select(p => Math.Round(p.PointAt(0.5).Y, 3)).Order(), Home(1)[0].Pieces.Select(p => Math.Round(p.PointAt(0.5).Y, 3)).Order());
    }

    [Fact]
    [Trait("Needs", "pdftoppm")]
    public async Task Artwork_At600Dpi_MeasuresAsTheWheel()
    {
        // A row of pixels through the middle of the disc, from the first black to the last; the page before the last in inches, each on its own.
        Design design = Demos.Of("kiln-room");
        byte[] pdf = TemplateWriter.Write(DesignTemplate.Of(design));
        IReadOnlyList<TemplatePage> pages = TemplateWriter.Pages(DesignTemplate.Of(design));
        int index = pages.Select((p, i) => (p, i)).First(p => p.p.Pieces.Any(q => q.Part.Words.Name is "artwork-direct")).i;
        TemplatePiece piece = pages[index].Pieces[0];
        Picture page = await OutsideRenderers.PopplerAsync(pdf, index + 2, 600, _folder);
        Point middle = Middle(piece.Part) + piece.Shift;
        int row = (int)Math.Round((PaperSize.Letter.HeightMm - middle.Y) * 600 / 25.4);
        int[] black = [.. Enumerable.Range(0, page.Width).Where(x => x * 25.4 / 600 > 22 && page.IsInked(x, row))];
        Assert.Equal(design.Wheel.OuterDiameterMm, (black[^1] - black[0] + 1) * 25.4 / 600, 0.1);
        int[] column = [.. Enumerable.Range(0, page.Height).Where(y => page.Height - y > 24 / 25.4 * 600 && Math.Abs((y - row) * 25.4 / 600) < 45 && page.IsInked((int)Math.Round(middle.X * 600 / 25.4), y))];
        Assert.Equal(design.Wheel.OuterDiameterMm, (column[^1] - column[0] + 1) * 25.4 / 600, 0.1);
    }

    [Fact]
    [Trait("Needs", "pdftoppm")]
    public async Task CheckLines_OfADesignInInches_MeasureFourInchesAt600Dpi()
    {
        Picture page = await OutsideRenderers.PopplerAsync(TemplateWriter.Write(DesignTemplate.Of(Demos.Of("kiln-room"))), 2, 600, _folder);

        // 2.5 mm beside the lines lie only their end ticks, 0.25 mm wide.
        int above = (int)((PaperSize.Letter.HeightMm - 15.5) * 600 / 25.4);
        int[] across = [.. Enumerable.Range(0, page.Width).Where(x => x * 25.4 / 600 is > 20 and < 125.5 && page.IsInked(x, above))];
        Assert.Equal(101.6, ((across[^1] - across[0] + 1) * 25.4 / 600) - 0.25, 0.1);
        int right = (int)(15.5 * 600 / 25.4);
        int[] along = [.. Enumerable.Range(0, page.Height).Where(y => (page.Height - y) * 25.4 / 600 is > 22 and < 127.5 && page.IsInked(right, y))];
        Assert.Equal(101.6, ((along[^1] - along[0] + 1) * 25.4 / 600) - 0.25, 0.1);
    }

    [Fact]
    public void Pages_Artwork_StandsOnPagesOfItsOwn()
    {
        foreach (string file in Demos.Names)
        {
            IReadOnlyList<TemplatePage> pages = TemplateWriter.Pages(DesignTemplate.Of(Demos.Of(file)));
            Assert.All(pages, p => Assert.Single(p.Pieces.Select(q => q.Part.Words.Name.StartsWith("artwork", StringComparison.Ordinal)).Distinct()));
            Assert.Contains(pages[^1].Pieces, p => p.Part.Words.Name is "artwork-mirrored");
        }
    }

    // The middle of the four register crosses is the axis.
    private static Point Middle(Sheet sheet) => sheet.Groups.Single(g => g.Id is "register").Items.Take(8).Select(i => i.Bounds).Aggregate((a, b) => a.With(b)).Centre;

    private static Bounds Bounds(Sheet sheet, string group) => sheet.Groups.Single(g => string.Equals(g.Id, group, StringComparison.Ordinal)).Items.Select(i => i.Bounds).Aggregate((a, b) => a.With(b));

    private static string Words(Sheet sheet) => string.Join(' ', sheet.Texts.Select(t => t.Text));

    private static string Look(IEnumerable<SheetItem> mark) => string.Join(", ", mark.SelectMany(i => i switch
    {
        SheetArea => (string[])["area"],
        SheetLine { Pieces: [Arc] } => ["circle"],
        SheetLine line => [.. line.Pieces.Select(p => Math.Abs(p.Start.X - p.End.X) < 1e-9 ? "upright" : Math.Abs(p.Start.Y - p.End.Y) < 1e-9 ? "level" : "slanting")],
        _ => ["?"],
    }).Order(StringComparer.Ordinal));
}
