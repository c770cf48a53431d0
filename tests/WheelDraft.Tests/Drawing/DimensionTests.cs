using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Drawing;

public sealed class DimensionTests
{
    private static readonly Point Middle = new(190, 160);

    private static readonly Gen<Point> Points = Gen.Select(Gen.Double[120, 260], Gen.Double[90, 230], (x, y) => new Point(x, y));

    private static readonly Gen<string> Sizes = Gen.OneOf(
        Gen.Double[0.1, 400].Select(v => DrawingNumbers.Fixed(v, 3)),
        Gen.Double[0.1, 90].Select(v => "Ø" + DrawingNumbers.Fixed(v, 2) + " +0.05/−0.02"),
        Gen.Const("3 × Ø2.2 on Ø14, countersunk from behind"));

    private static readonly Gen<DimensionMark> Any = Gen.OneOf<DimensionMark>(
        Gen.Select(Points, Points, Gen.Double[-40, 40], Sizes, Gen.Enum<LinearDirection>(), (a, b, o, t, d) => (DimensionMark)new LinearDimension(a, b, o, t) { Direction = d, Subject = "span" }),
        Gen.Select(Points, Gen.Double[0.5, 60], Gen.Double[0, 6.3], Sizes, (c, r, a, t) => (DimensionMark)new RoundDimension(c, r, a, t) { Subject = "hole" }),
        Gen.Select(Points, Gen.Double[-3.2, 3.2], Sizes, (c, a, t) => (DimensionMark)new CalloutDimension(c, a, t) { Subject = "note" }),
        Gen.Select(Gen.Double[0, 6.28], Gen.Double[0.001, 6.28], Gen.Double[10, 70], Sizes, (f, s, r, t) => (DimensionMark)new AngularDimension(Middle, CircleArc.Sweep(f, s), r, t) { EdgeRadiusMm = r * 0.6, Subject = "edge" }));

    // Oracle: rotated rectangles of all texts on the finished sheet, compared pair by pair.
    [Fact]
    public void Add_RandomSets_OverlapNothingStayOnTheSheetAndLoseNothing()
    {
        int asked = 0;
        int found = 0;
        Any.Array[1, 25].Sample(
            dimensions =>
            {
                SheetBuilder sheet = new(new("d", "D", ""), PaperSize.A3);
                SheetFrame.Draw(sheet, new TitleBlock { Title = "a", Subtitle = "b", DocumentType = "c" });
                GroupPen group = sheet.Group("dimensions", "Dimensions", "dimensions");
                DimensionPen pen = new(group);
                Array.ForEach(dimensions, d => pen.Add(d));
                Sheet done = sheet.Build();
                PaperTests.AssertTidy(done);
                int placed = done.Groups.Where(g => g.Id is "dimensions").SelectMany(g => g.Items).OfType<SheetText>().Count();
                Assert.Equal(dimensions.Length, placed + (pen.Table()?.Rows.Count ?? 0));
                AssertNoTextIsStruck(done);
                Assert.All(done.Groups.Where(g => g.Id is "dimensions").SelectMany(g => g.Items), i => Assert.True(SheetFrame.SpaceOf(PaperSize.A3).Contains(i.Bounds.Centre)));
                Interlocked.Add(ref asked, dimensions.Length);
                Interlocked.Add(ref found, placed);
            },
            iter: 200,
            print: set => string.Join("; ", set.Select(Told)));
        Assert.True(found > 0.7 * asked, Invariant.Text($"Only {found} of {asked} found a place on the drawing."));
    }

    [Fact]
    public void Add_OneDimensionOnAnEmptySheet_FindsItsPlace() =>
        Any.Sample(
            dimension =>
            {
                SheetBuilder sheet = new(new("d", "D", ""), PaperSize.A3);
                DimensionPen pen = new(sheet.Group("dimensions", "Dimensions", "dimensions"));
                Assert.True(pen.Add(dimension));
            },
            iter: 300,
            print: Told);

    [Fact]
    public void TryDraw_RandomCallouts_NeitherCrossNorOverlap()
    {
        Gen<RingCallout> callouts = Gen.Select(Gen.Double[0, 6.28], Gen.Double[5, 60], Gen.Int[0, 999], (a, r, n) => new RingCallout(Middle + Vector.Polar(r, a), Invariant.Text($"edge {n}: 123.456°")));
        int drawn = 0;
        callouts.Array[0, 60].Sample(
            set =>
            {
                SheetBuilder sheet = new(new("d", "D", ""), PaperSize.A3);
                GroupPen pen = sheet.Group("callouts", "Callouts", "callouts");
                bool all = new CalloutRing(Bounds.Of(Middle).Grown(64), new Bounds(30, 60, 400, 280)).TryDraw(pen, set);
                Sheet done = sheet.Build();
                PaperTests.AssertTidy(done);
                Assert.Equal(all ? set.Length : 0, done.Texts.Count());
                AssertLeadersDoNotCross([.. done.Items.OfType<SheetLine>().Select(l => l.Pieces)]);
                Interlocked.Add(ref drawn, all && set.Length > 20 ? 1 : 0);
            },
            iter: 200);
        Assert.True(drawn > 50, Invariant.Text($"Only {drawn} crowded sets were drawn."));
    }

    [Fact]
    public void TryDraw_OneSide_SpacesItsTextsEvenly()
    {
        SheetBuilder sheet = new(new("d", "D", ""), PaperSize.A3);
        GroupPen pen = sheet.Group("callouts", "Callouts", "callouts");
        RingCallout[] right = [.. Enumerable.Range(0, 20).Select(i => new RingCallout(Middle + Vector.Polar(55, (i * i * 0.007) - 1.4), "edge"))];
        Assert.True(new CalloutRing(Bounds.Of(Middle).Grown(64), new Bounds(30, 60, 400, 280)).TryDraw(pen, right));
        double[] heights = [.. sheet.Build().Texts.Select(t => t.Place.Anchor.Y)];
        Assert.All(heights.Skip(1).Select((y, i) => heights[i] - y), step => Assert.Equal(heights[0] - heights[1], step, 1e-9));
    }

    [Fact]
    public void TryDraw_MoreThanFit_DrawsNothing()
    {
        SheetBuilder sheet = new(new("d", "D", ""), PaperSize.A3);
        GroupPen pen = sheet.Group("callouts", "Callouts", "callouts");
        CalloutRing ring = new(Bounds.Of(Middle).Grown(64), new Bounds(30, 60, 400, 280));
        RingCallout[] many = [.. Enumerable.Range(0, ring.Capacity + 1).Select(i => new RingCallout(Middle + Vector.Polar(50, i), "x"))];
        Assert.False(ring.TryDraw(pen, many));
        Assert.Empty(sheet.Build().Groups);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(90, 90)]
    [InlineData(91, -89)]
    [InlineData(180, 0)]
    [InlineData(-90, 90)]
    [InlineData(-45, -45)]
    [InlineData(225, 45)]
    public void Readable_AnyDirection_IsReadFromBelowOrFromTheRight(double deg, double readDeg) =>
        Assert.Equal(readDeg, Angles.DegFromRad(DimensionForm.Readable(Angles.RadFromDeg(deg))), 1e-6);

    [Fact]
    public void Head_AtATip_IsNarrowOf15Degrees()
    {
        Contour head = DimensionForm.Head(new(10, 10), new Vector(1, 0)).Shapes[0].Outer;
        Assert.Contains(new Point(10, 10), head.Pieces.Select(p => p.Start));
        Assert.Equal(3 * 2 * Math.Tan(7.5 * Math.PI / 180), head.Bounds.Height, 1e-9);
    }

    private static string Told(DimensionMark dimension) => dimension switch
    {
        AngularDimension a => Invariant.Text($"angle {a.Arc.StartRad} + {a.Arc.SweepRad} R{a.RadiusMm} {a.Text}"),
        LinearDimension l => Invariant.Text($"span {l.From} {l.To} {l.Direction} {l.OffsetMm} {l.Text}"),
        RoundDimension r => Invariant.Text($"round {r.Centre} {r.RadiusMm} {r.AtRad} {r.Text}"),
        _ => dimension.Text,
    };

    private static void AssertNoTextIsStruck(Sheet sheet)
    {
        SheetGroup group = sheet.Groups.FirstOrDefault(g => g.Id is "dimensions") ?? new SheetGroup(new("x", "x", "x"), []);
        Segment[] lines = [.. group.Items.OfType<SheetLine>().SelectMany(l => l.Pieces).OfType<Segment>()];
        foreach (SheetText text in group.Items.OfType<SheetText>())
        {
            Assert.False(lines.Any(l => text.Box.MeetsLine(l.Start, l.End)), text.Text);
        }
    }

    private static void AssertLeadersDoNotCross(IReadOnlyList<IReadOnlyList<Piece>> leaders)
    {
        for (int i = 0; i < leaders.Count; i++)
        {
            for (int k = i + 1; k < leaders.Count; k++)
            {
                Assert.False(leaders[i].Any(a => leaders[k].Any(b => TextRegistry.Crosses(a.Start, a.End, b.Start, b.End))), Invariant.Text($"Leaders {i} and {k} cross."));
            }
        }
    }
}
