using System.Text.Json.Nodes;
using CsCheck;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Quadtree;
using WheelDraft.Geometry;
using Xunit;
using Point = WheelDraft.Geometry.Point;

namespace WheelDraft.Tests.Geometry;

/// <summary>Shapes laid on sheets: no overlap, the gap kept, turns kept, the bound on the number of sheets.</summary>
/// <remarks>The oracle of overlap and gap is NetTopologySuite on chords whose error is counted. WHEELDRAFT_NEST_PARTS=FILE writes the fifty parts for
/// bottom-left-fill.py of the benchmarks.</remarks>
public sealed class NestingTests
{
    // Less than usual, so that the tests take no second each.
    private const long LittleWork = 2_000_000;

    private static readonly double[] Quarters = [0, Math.PI / 2, Math.PI, 3 * Math.PI / 2];
    private static readonly double[] HalfTurns = [0, Math.PI];

    private static Outline Box(double width, double height) => new(Contour.Rectangle(Point.Origin, new(width, height)));

    private static Outline Disc(double radius) => new(Contour.Circle(Point.Origin, radius));

    private static Outline Angle(double a, double b) => new(Contour.Polygon(new(0, 0), new(a, 0), new(a, b / 4), new(a / 4, b / 4), new(a / 4, b), new(0, b)));

    /// <summary>A blank that tapers, with a round tip: like a strip's.</summary>
    private static Outline Taper(double length, double wide, double narrow) => new(new Contour(
    [
        new Segment(new(0, -wide / 2), new(length, -narrow / 2)),
        Arc.FromBulge(new(length, -narrow / 2), new(length, narrow / 2), 1),
        new Segment(new(length, narrow / 2), new(0, wide / 2)),
        new Segment(new(0, wide / 2), new(0, -wide / 2)),
    ]));

    /// <summary>Fifty parts of eleven shapes, strips that keep their grain among them.</summary>
    internal static IReadOnlyList<NestItem> Fifty =>
    [
        new("wheel", Disc(31), 5, Quarters),
        new("small wheel", Disc(18.5), 4, Quarters),
        new("disc", Disc(9), 4, Quarters),
        new("strip 1", Taper(61, 8, 3), 6, HalfTurns),
        new("strip 2", Taper(58, 8, 4), 6, HalfTurns),
        new("strip 3", Taper(71, 10, 3), 5, HalfTurns),
        new("strip 4", Taper(40, 6, 2), 5, HalfTurns),
        new("angle", Angle(50, 36), 5, Quarters),
        new("small angle", Angle(24, 30), 4, Quarters),
        new("plate", Box(42, 17), 3, Quarters),
        new("cam", new(Contour.Polygon(new(20, 0), new(14, 16), new(-4, 19), new(-18, 8), new(-12, -13), new(6, -17))), 3, Quarters),
    ];

    private static NestStock Sheet => new(300, 200, 2);

    /// <summary>By NetTopologySuite: shapes as near as the gap and no nearer, to each other and to the edge.</summary>
    private static void AssertApart(IReadOnlyList<NestItem> items, NestStock stock, NestResult result)
    {
        Assert.Equal(items.Select(i => i.Count), items.Select((_, i) => result.Sheets.Sum(s => s.Items.Count(n => n.Item == i))));
        foreach (NestedSheet sheet in result.Sheets)
        {
            (Polygon Shape, double ErrorMm)[] laid = [.. sheet.Items.Select(n => items[n.Item].Shape.Placed(n.Place)).Select(o => (Flattened.Polygon(o), Flattened.ErrorMm(o)))];
            Quadtree<int> tree = new();
            for (int i = 0; i < laid.Length; i++)
            {
                Envelope box = laid[i].Shape.EnvelopeInternal;
                Assert.True(
                    box.MinX >= stock.GapMm - laid[i].ErrorMm - 1e-9 && box.MinY >= stock.GapMm - laid[i].ErrorMm - 1e-9
                    && box.MaxX <= stock.WidthMm - stock.GapMm + 1e-9 && box.MaxY <= stock.HeightMm - stock.GapMm + 1e-9);
                Envelope near = box.Copy();
                near.ExpandBy(stock.GapMm);
                foreach (int other in tree.Query(near))
                {
                    // Chords lie inside convex arcs, by some micrometres here: the shapes are no farther apart than their chords, and nearer by that at most.
                    double mm = laid[i].Shape.Distance(laid[other].Shape);
                    Assert.True(mm >= stock.GapMm - 1e-9, FormattableString.Invariant($"{items[sheet.Items[i].Item].Name} and {items[sheet.Items[other].Item].Name} are {mm} mm apart."));
                }

                tree.Insert(box, i);
            }
        }
    }

    [Fact]
    public void Of_FiftyParts_KeepTheGap()
    {
        NestResult result = Nesting.Of(Fifty, Sheet, LittleWork);
        AssertApart(Fifty, Sheet, result);
        Assert.Equal(50, result.Sheets.Sum(s => s.Items.Count));
        Assert.InRange(result.Sheets.Count, result.LeastSheets, result.LeastSheets + 1);
        Dump(result);
    }

    [Fact]
    public void Of_Strips_KeepTheirTurns()
    {
        foreach (NestedItem laid in Nesting.Of(Fifty, Sheet, LittleWork).Sheets.SelectMany(s => s.Items))
        {
            Assert.Contains(Fifty[laid.Item].TurnsRad, t => Math.Abs(Math.IEEERemainder(t - laid.Place.TurnRad, Angles.TurnRad)) < 1e-12);
            Assert.False(laid.Place.Mirrors);
            Assert.Equal(1, laid.Place.Scale);
        }
    }

    [Fact]
    public void Of_Twice_IsTheSame()
    {
        NestResult one = Nesting.Of(Fifty, Sheet, LittleWork), other = Nesting.Of(Fifty, Sheet, LittleWork);
        Assert.Equal(one.Sheets.Select(s => s.Items.Count), other.Sheets.Select(s => s.Items.Count));
        Assert.Equal(one.Sheets.SelectMany(s => s.Items).Select(i => (i.Item, i.Place.TurnRad, i.Place.Shift)), other.Sheets.SelectMany(s => s.Items).Select(i => (i.Item, i.Place.TurnRad, i.Place.Shift)));
    }

    // Squares of 48 mm, 2 mm apart, want 50 mm each and 2 mm more: 4 by 3 on a sheet of 203 by 153 mm, so 25 of them three sheets.
    [Fact]
    public void Of_Squares_FillTheSheetAsByHand()
    {
        NestItem[] items = [new("square", Box(48, 48), 25, Quarters)];
        NestStock stock = new(203, 153, 2);
        NestResult result = Nesting.Of(items, stock, LittleWork);
        AssertApart(items, stock, result);
        Assert.Equal([12, 12, 1], result.Sheets.Select(s => s.Items.Count));
        Assert.Equal(25 * 48 * 48, result.AreaMm2, 1e-6);

        // By hand: 25 squares with round corners of 1 mm, 50² − (4 − π), over 201 × 151.
        Assert.Equal((int)Math.Ceiling(25 * ((50 * 50) - (4 - Math.PI)) / (201 * 151)), result.LeastSheets);
    }

    [Fact]
    public void Of_TooLarge_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Nesting.Of([new("bar", Box(250, 10), 1, [Math.PI / 2])], Sheet, LittleWork));

    private static Gen<Outline> AnyShape => Gen.Select(Gen.Int[0, 3], Gen.Double[4, 40], Gen.Double[4, 40]).Select((kind, a, b) => kind switch
    {
        0 => Box(a, b),
        1 => Disc(a / 2),
        2 => Angle(a, b),
        _ => Taper(a + b, (a / 8) + 2, 2),
    });

    [Fact]
    public void Of_AnyShapes_KeepAnyGap() =>
        Gen.Select(AnyShape.Array[1, 6], Gen.Double[0.1, 6], Gen.Int[1, 5]).Sample(
            (shapes, gap, count) =>
            {
                NestItem[] items = [.. shapes.Select((s, i) => new NestItem(FormattableString.Invariant($"shape {i}"), s, count, i % 2 == 0 ? Quarters : HalfTurns))];
                NestStock stock = new(160, 120, gap);
                AssertApart(items, stock, Nesting.Of(items, stock, 50_000));
            },
            15);

    private static void Dump(NestResult result)
    {
        if (Environment.GetEnvironmentVariable("WHEELDRAFT_NEST_PARTS") is not string file)
        {
            return;
        }

        double top = result.Sheets[^1].Items.Max(n => Fifty[n.Item].Shape.Placed(n.Place).Bounds.MaxY);
        JsonObject all = new()
        {
            ["width"] = Sheet.WidthMm,
            ["height"] = Sheet.HeightMm,
            ["gap"] = Sheet.GapMm,
            ["ours"] = new JsonObject { ["sheets"] = result.Sheets.Count, ["top_mm"] = top, ["least_sheets"] = result.LeastSheets },
            ["items"] = new JsonArray([.. Fifty.Select(i => new JsonObject
            {
                ["name"] = i.Name,
                ["count"] = i.Count,
                ["turns"] = new JsonArray([.. i.TurnsRad.Select(t => (JsonNode)Angles.DegFromRad(t))]),
                ["points"] = new JsonArray([.. Flattened.Ring(i.Shape.Outer).Coordinates.SkipLast(1).Select(c => new JsonArray(c.X, c.Y))]),
            })]),
        };
        File.WriteAllText(file, all.ToJsonString());
    }
}
