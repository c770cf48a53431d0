using System.Globalization;
using CsCheck;
using WheelDraft.Cli;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Geometry;
using WheelDraft.Tests.Drawing;
using Xunit;

namespace WheelDraft.Tests.Sheets;

public sealed class SpacingSheetTests
{
    [Fact]
    public void Of_PartTooNear_IsNumberedWithItsGapAndTheRequiredCircle()
    {
        // Further than X = 1.5 mm from the carrier's edge: nearer the rail would bridge onto it, and creepage decide.
        Design design = Near(gapMm: 1.6);
        SpacingRow row = design.Spacing.Rows.First(r => r.Verdict == SpacingVerdict.Misses && r.Kind == SpacingKind.Clearance);
        Sheet sheet = SpacingSheet.Of(design);
        PaperTests.AssertTidy(sheet);
        SheetGroup place = sheet.AllGroups.Single(g => g.Id is "place-1");
        double scale = Scale(sheet, design);
        SheetLine gap = place.Items.OfType<SheetLine>().Single(l => l.Pieces.All(p => p is Segment) && l.Style.Ink == Ink.Error);
        Assert.Equal(row.OnFirst.Plan.DistanceTo(row.OnSecond.Plan) * scale, gap.Pieces.Sum(p => p.Length), 1e-6);

        // The rail spans the wheel's height, so the circle is the whole required distance.
        Arc circle = place.Items.OfType<SheetLine>().Where(l => l.Style.Ink != Ink.Paper).SelectMany(l => l.Pieces).OfType<Arc>().Single(a => Math.Abs(Math.Abs(a.SweepRad) - Angles.TurnRad) < 1e-9);
        Assert.Equal(row.Required.RequiredMm * scale, circle.RadiusMm, 1e-6);
        Assert.Contains(sheet.Groups.Single(g => g.Id is "numbers").Items.OfType<SheetText>(), t => t.Text is "1 misses");
        Assert.Contains(sheet.AllGroups, g => g.Id is "detail-1");
        Assert.Contains("misses", sheet.Words.Description, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Drawn))]
    public void Details_OfADesign_AreLetteredFilledAndAtTheScaleThatShowsTheGap(string name)
    {
        // Details were edges alone, so that copper and window looked alike, at 2:1 for a gap of 2.4 mm, and without a sign on the plan.
        Design design = Named(name);
        Sheet sheet = SpacingSheet.Of(design);
        PaperTests.AssertTidy(sheet);
        TightPlace[] shown = [.. TightPlaces.Of(design).Numbered.Where(p => sheet.AllGroups.Any(g => IsDetail(g, p)))];
        Assert.NotEmpty(shown);
        SheetGroup circles = sheet.Groups.Single(g => g.Id is "circles");
        Assert.Equal(shown.Length, circles.Items.OfType<SheetText>().Count());
        foreach ((TightPlace place, int i) in shown.Select((p, i) => (p, i)))
        {
            SheetGroup detail = sheet.AllGroups.Single(g => IsDetail(g, place));
            string letter = SpacingDetails.LetterOf(i);
            Assert.Contains(circles.Items.OfType<SheetText>(), t => Same(t.Text, letter));
            SheetText caption = detail.Items.OfType<SheetText>().Single(t => t.Text.StartsWith($"{letter} (", StringComparison.Ordinal));
            double factor = double.Parse(caption.Text.Split('(', ':')[1], CultureInfo.InvariantCulture) / double.Parse(caption.Text.Split(':', ')')[1], CultureInfo.InvariantCulture);
            double gap = place.First.DistanceTo(place.Second);
            Assert.True(factor >= 50 || (factor * gap >= 15 && factor * gap <= 15 * 2.5), FormattableString.Invariant($"{name} {letter}: {gap * factor:0.0} mm"));
            Assert.Contains(detail.Items.OfType<SheetArea>(), a => a.Fill.Pattern.Kind != PatternKind.None || a.Fill.Kind == FillKind.Copper);
            AssertNamesStandOnTheirOwn(detail, NetLooks.Of(design), place);
        }
    }

    public static TheoryData<string> Drawn => [.. Demos.Names.Where(n => TightPlaces.Of(Demos.Of(n)).Numbered.Any(p => p.Path.Count > 0)), "folded-strips"];

    [Theory]
    [InlineData(0, "A")]
    [InlineData(8, "J")]
    [InlineData(22, "Z")]
    [InlineData(23, "AA")]
    [InlineData(46, "BA")]
    public void LetterOf_Places_LeavesOutLettersLikeFigures(int index, string letter) => Assert.Equal(letter, SpacingDetails.LetterOf(index));

    // Oracle: the items of the detail in drawing order; what lies topmost under a name is an area of its net, and it crosses no edge.
    private static void AssertNamesStandOnTheirOwn(SheetGroup detail, NetLooks looks, TightPlace place)
    {
        SheetItem[] items = [.. detail.Items];
        foreach (string net in place.Nets.Distinct(StringComparer.Ordinal))
        {
            int at = Array.FindIndex(items, i => i is SheetText t && (Same(t.Text, net) || Same(t.Text, $"{net}, hidden") || t.Text.EndsWith('…')));
            Assert.True(at >= 0, $"{detail.Id} does not name {net}");
            SheetText name = (SheetText)items[at];
            Bounds circle = items.OfType<SheetLine>().SelectMany(l => l.Pieces).OfType<Arc>().Where(a => Math.Abs(a.SweepRad) > Angles.TurnRad - 1e-9).MaxBy(a => a.RadiusMm)!.Bounds;
            if (name.Box.Bounds.MinY > circle.MaxY - 1e-6)
            {
                continue;
            }

            foreach (Point corner in name.Box.Corners.Append(name.Box.Centre))
            {
                SheetArea under = items.Take(at).OfType<SheetArea>().Last(a => a.Fill.Kind is not (FillKind.Paper or FillKind.Solid) && a.Shapes.Any(s => s.Contains(corner)));
                Assert.Equal(looks.FillOf(net), under.Fill);
            }

            Assert.DoesNotContain(
                items.OfType<SheetLine>().Where(l => l.Style.Ink != Ink.Paper).SelectMany(l => l.Pieces).SelectMany(TextRegistry.Chords),
                c => name.Box.MeetsLine(c.From, c.To));
        }
    }

    private static bool IsDetail(SheetGroup group, TightPlace place) => Same(group.Id, FormattableString.Invariant($"detail-{place.Number}"));

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);

    private static Design Named(string name) => name is "folded-strips" ? Starter(name) : Demos.Of(name);

    [Fact]
    public void Details_ThatFindNoRoom_AreCountedInWords()
    {
        // Those beyond one row were dropped in silence, with room below.
        PartBrief[] parts = [.. Enumerable.Range(0, 40).Select(i => new PartBrief(
            FormattableString.Invariant($"pin {i}"), PartKind.Live, FormattableString.Invariant($"net {i}"),
            new Outline(Contour.Circle(Point.Polar(60, i * Angles.TurnRad / 40), 4.3)), -1, 3))];
        Design design = Design.Of(Briefs.Plain(Quiet()) with { Parts = parts });
        Sheet sheet = SpacingSheet.Of(design);
        TightPlaces places = TightPlaces.Of(design);
        int shown = sheet.AllGroups.Count(g => g.Name.Role is "detail");
        int flat = places.Numbered.Count(p => p.Path.Count == 0);
        string words = Assert.Single(sheet.Groups.Single(g => g.Id is "detail-words").Items.OfType<SheetText>()).Text;
        Assert.Contains(FormattableString.Invariant($"show the {shown} tightest of {places.Numbered.Count + places.Unnumbered}"), words, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"{places.Numbered.Count + places.Unnumbered - flat - shown} more have no room"), words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_NothingTight_SaysSoInWords()
    {
        Sheet sheet = SpacingSheet.Of(Near(gapMm: 20));
        PaperTests.AssertTidy(sheet);
        Assert.StartsWith("Nothing is tight or missing. Nearest:", string.Join(' ', sheet.Groups.Single(g => g.Id is "none").Items.OfType<SheetText>().Select(t => t.Text)), StringComparison.Ordinal);
        Assert.DoesNotContain(sheet.AllGroups, g => g.Name.Role is "place");
    }

    [Fact]
    public void Of_PartUnderTheCarrier_IsHidden()
    {
        // Was filled over the carrier, as if it were seen through it.
        Brief brief = Briefs.Plain(Quiet()) with { Parts = [new("motor case", PartKind.Earthed, "E", new Outline(Contour.Circle(Point.Origin, 20)), -40, -14)] };
        Sheet sheet = SpacingSheet.Of(Design.Of(brief));
        SheetGroup[] parts = [.. sheet.AllGroups.Where(g => g.Name.Role is "part")];
        Assert.True(Array.FindIndex(parts, p => p.Name.Title is "motor case") < Array.FindIndex(parts, p => p.Name.Title is "carrier"));
        Assert.Equal(LineKind.DashedNarrow, Assert.Single(sheet.Groups.Single(g => g.Id is "hidden").Items.OfType<SheetLine>()).Style.Kind);
    }

    [Theory]
    [InlineData("folded-strips")]
    [InlineData("damp-mains")]
    public void Of_StripOfManyPrisms_IsDrawnAsAStripWithoutTheLadderOfItsSolids(string starter)
    {
        Design design = Starter(starter);
        Sheet sheet = SpacingSheet.Of(design);
        foreach (PlacedStrip strip in design.Strips.Strips)
        {
            SheetGroup part = sheet.AllGroups.Single(g => g.Name.Role is "part" && Same(g.Name.Title, strip.Form.Strip.Name));
            Assert.True(strip.Solids.Count > 10);
            Assert.Single(Assert.Single(part.Items.OfType<SheetArea>()).Shapes);
            int folds = strip.Form.Pieces.Count(p => p.Kind == FormedKind.Fold);
            Assert.Equal(folds, part.Items.OfType<SheetLine>().Count(l => l.Pieces.All(p => p is Segment)));
        }

        Assert.DoesNotContain(sheet.Groups, g => g.Id is "hidden");
    }

    // Oracle: the prisms that are measured, by points; they reach beyond the metal by their mould lines and by 0.05 mm.
    [Fact]
    public void Working_StripsOfTheStarters_CoverWhatTheirPrismsCover()
    {
        const double slackMm = 0.3;
        foreach (PlacedStrip strip in Starter("folded-strips").Strips.Strips.Concat(Starter("damp-mains").Strips.Strips))
        {
            Outline[] ribbons = [.. StripRibbon.Working(strip).Ribbons.Select(r => new Outline(r))];
            Outline[] prisms = [.. strip.Solids.Where(s => strip.Form.Nose?.Rivet is null || !s.IsNose).Select(s => s.Outline)];
            Bounds all = prisms.Select(p => p.Bounds).Aggregate((a, b) => a.With(b)).Grown(1);
            for (double x = all.MinX; x < all.MaxX; x += 0.41)
            {
                for (double y = all.MinY; y < all.MaxY; y += 0.41)
                {
                    Point at = new(x, y);
                    bool isMetal = prisms.Any(p => p.Contains(at));
                    Assert.True(
                        ribbons.Any(r => r.Contains(at)) == isMetal || ribbons.Min(r => Distances.ToEdge(at, r).DistanceMm) < slackMm,
                        FormattableString.Invariant($"{strip.Form.Strip.Name} at {x:0.00}, {y:0.00}: a prism is there: {isMetal}"));
                }
            }
        }
    }

    [Fact]
    public void Of_FarTooManyTightPlaces_NumbersTheWorstAndSaysHowManyAreLeft()
    {
        PartBrief[] parts = [.. Enumerable.Range(0, 40).Select(i => new PartBrief(
            FormattableString.Invariant($"pin {i}"), PartKind.Live, FormattableString.Invariant($"net {i}"),
            new Outline(Contour.Circle(Point.Polar(60, i * Angles.TurnRad / 40), 4.3)), -1, 3))];
        Sheet sheet = SpacingSheet.Of(Design.Of(Briefs.Plain(Quiet()) with { Parts = parts }));
        PaperTests.AssertTidy(sheet);
        Assert.Equal(30, sheet.AllGroups.Count(g => g.Name.Role is "place"));
        Assert.Contains("not numbered here", string.Join(' ', sheet.Texts.Select(t => t.Text)), StringComparison.Ordinal);
    }

    // Oracle: points along the piece, counted.
    [Fact]
    public void Within_RandomPieces_KeepsWhatLiesInTheCircle()
    {
        Gen<Piece> segments = Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-3, 3])
            .Where((a, b, c, d) => Math.Abs(a - c) + Math.Abs(b - d) > 0.1).Select((a, b, c, d) => (Piece)new Segment(new(a, b), new(c, d)));
        Gen<Piece> arcs = Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[0.2, 3], Gen.Double[0, 6], Gen.Double[0.1, Angles.TurnRad])

            // An arc along the circle itself is neither inside nor outside.
            .Where((x, y, r, _, _) => Math.Abs(x) + Math.Abs(y) + Math.Abs(r - 1.5) > 0.01)
            .Select((x, y, r, from, sweep) => (Piece)new Arc(new(x, y), r, from, sweep));
        Arc disc = new(Point.Origin, 1.5, 0, Angles.TurnRad);
        Gen.OneOf(segments, arcs).Sample(
            piece =>
            {
                const int points = 4000;
                double inside = Enumerable.Range(0, points).Count(i => piece.PointAt((i + 0.5) / points).DistanceTo(Point.Origin) < 1.5) * piece.Length / points;
                Piece[] kept = [.. CircleClip.Inside(piece, disc)];
                Assert.Equal(inside, kept.Sum(k => k.Length), 4 * piece.Length / points);
                Assert.All(kept, k => Assert.True(k.PointAt(0.5).DistanceTo(Point.Origin) <= 1.5 + 1e-9));
            },
            iter: 2000);
    }

    private static Design Starter(string name) =>
        Design.Of(ParameterReader.Read(TemplateShelf.All.Single(t => Same(t.Name, name)).Bytes()).Brief!);

    private static OutputBrief Quiet() => Briefs.Output("fan", 3, (10, 60)) with { OverOpenContact = null };

    /// <summary>A live rail beside the wheel, as high as its copper and higher.</summary>
    private static Design Near(double gapMm)
    {
        Brief plain = Briefs.Plain(Quiet());
        double edge = Design.Of(plain).Wheel.OuterDiameterMm / 2;
        Outline rail = new(Contour.Rectangle(new(edge + gapMm, -10), new(edge + gapMm + 5, 10)));
        return Design.Of(plain with { Parts = [new("rail", PartKind.Live, "N", rail, -1, 3)] });
    }

    private static double Scale(Sheet sheet, Design design) =>
        sheet.AllGroups.Single(g => g.Name.Role is "part" && g.Name.Title is "carrier").Items.OfType<SheetArea>().Single().Shapes[0].Bounds.Width / design.Wheel.OuterDiameterMm;
}
