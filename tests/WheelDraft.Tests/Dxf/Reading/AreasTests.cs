using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Dxf.Reading;

/// <summary>Filled things: what they cover, by closed forms of plane areas and by points that must be covered.</summary>
public class AreasTests
{
    private const string HalfDisc = "0 BLOCK|2 half|10 0|20 0|0 LWPOLYLINE|8 0|90 2|70 1|10 0|20 -2|42 1|10 0|20 2|0 ENDBLK|";

    private static IReadOnlyList<Outline> Areas(string entities, string blocks = "", DxfReadOptions? options = null) =>
        [.. HandWritten.Read(entities, blocks, options).Layers.Single(l => l.Name is "A").Areas.Select(a => a.Outline)];

    private static bool Covered(IReadOnlyList<Outline> areas, double x, double y) => areas.Any(a => a.Contains(new(x, y)));

    [Fact]
    public void Read_Solid_GoesRoundFirstSecondFourthThird()
    {
        // The format's own order: the third corner lies opposite the second. A square of 4 has 16 mm²; taken in order it would be a bow tie of 8.
        Outline square = Assert.Single(Areas("0 SOLID|8 A|10 0|20 0|11 4|21 0|12 0|22 4|13 4|23 4"));
        Assert.Equal(16, square.AreaMm2, 1e-12);
    }

    [Theory]
    [InlineData("10 0|20 0|11 4|21 0|12 4|22 4|13 0|23 4", 2, 1)]
    [InlineData("10 0|20 0|11 0|21 4|12 4|22 4|13 4|23 0", 1, 2)]
    public void Read_SolidWithCornersInARound_IsTheBowTieThatIsDrawn(string corners, double x, double y)
    {
        // Two triangles of 4 mm² each that meet in the middle.
        IReadOnlyList<Outline> tie = Areas("0 SOLID|8 A|" + corners);
        Assert.Equal(8, tie.Sum(t => t.AreaMm2), 1e-12);
        Assert.True(Covered(tie, x, y));
        Assert.False(Covered(tie, y, x));
    }

    [Fact]
    public void Read_SolidSeenFromBelow_IsMirrored() =>
        Assert.True(Covered(Areas("0 SOLID|8 A|10 1|20 0|11 4|21 0|12 1|22 4|210 0|220 0|230 -1"), -1.5, 1));

    [Fact]
    public void Read_Face_GoesRoundInOrder() =>
        Assert.Equal(16, Areas("0 3DFACE|8 A|10 0|20 0|30 0|11 4|21 0|31 0|12 4|22 4|32 0|13 0|23 4|33 0").Sum(a => a.AreaMm2), 1e-12);

    [Fact]
    public void Read_WidePolyline_CoversItsMitres()
    {
        // A right angle of width 2: the outer corner (11, -1) belongs to it, (11.01, -1) does not; its ends are square.
        IReadOnlyList<Outline> areas = Areas("0 LWPOLYLINE|8 A|90 3|70 0|43 2|10 0|20 0|10 10|20 0|10 10|20 10");
        Assert.True(Covered(areas, 10.999, -0.999));
        Assert.False(Covered(areas, 11.001, -1));
        Assert.True(Covered(areas, 0.001, 0.999));
        Assert.False(Covered(areas, -0.001, 0));
        Assert.False(Covered(areas, 5, 1.001));
    }

    [Fact]
    public void Read_ClosedWidePolyline_CoversTheLastCornerToo()
    {
        IReadOnlyList<Outline> areas = Areas("0 LWPOLYLINE|8 A|90 4|70 1|43 2|10 0|20 0|10 10|20 0|10 10|20 10|10 0|20 10");
        Assert.True(Covered(areas, -0.999, -0.999));
        Assert.True(Covered(areas, -0.5, 5));
        Assert.False(Covered(areas, 5, 5));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(-1, -1)]
    public void Read_WideBulge_BendsToItsSide(double bulge, double side)
    {
        // Half a ring about (5, 0), radii 4 and 6, below for a positive bulge: area π (36 - 16) / 2.
        Outline ring = Assert.Single(Areas(FormattableString.Invariant($"0 LWPOLYLINE|8 A|90 2|70 0|43 2|10 0|20 0|42 {bulge}|10 10|20 0")));
        Assert.Equal(10 * Math.PI, ring.AreaMm2, 1e-9);
        Assert.Equal(Whereabouts.Inside, ring.Locate(new(5, -5 * side)));
        Assert.Equal(Whereabouts.Outside, ring.Locate(new(5, 5 * side)));
    }

    [Fact]
    public void Read_TaperingBulge_ContainsWhatIsDrawnAndHardlyMore()
    {
        // Between borders at radius 5 ± w(t)/2, w from 0.5 to 2.5 over half a turn: the area is the integral of 5 w(t) over it, 5 π · 1.5.
        Outline ring = Assert.Single(Areas("0 LWPOLYLINE|8 A|90 2|70 0|10 0|20 0|40 0.5|41 2.5|42 1|10 10|20 0|40 0|41 0"));
        Assert.InRange(ring.AreaMm2, 7.5 * Math.PI, 7.5 * Math.PI * 1.003);
        for (int i = 0; i <= 1000; i++)
        {
            double t = i / 1000.0;
            double half = (0.5 + (2 * t)) / 2;
            foreach (double radius in (double[])[5 - half + 1e-9, 5 + half - 1e-9])
            {
                Assert.NotEqual(Whereabouts.Outside, ring.Locate(new Point(5, 0) + Vector.Polar(radius, Math.PI * (1 + t)), 1e-8));
            }
        }
    }

    [Fact]
    public void Read_TaperToAPoint_IsAnArrowhead() =>
        Assert.Equal(3, Areas("0 LWPOLYLINE|8 A|90 2|70 0|10 0|20 0|40 2|41 0|10 3|20 0|40 0|41 0").Single().AreaMm2, 1e-12);

    [Fact]
    public void Read_OldPolylineWithAWidth_TakesTheWidthOfItsHead() =>
        Assert.Equal(20, Areas("0 POLYLINE|8 A|66 1|70 0|40 2|41 2|0 VERTEX|8 A|10 0|20 0|0 VERTEX|8 A|10 10|20 0|0 SEQEND|8 A").Single().AreaMm2, 1e-12);

    [Fact]
    public void Read_HatchWithClockwiseArc_GoesTheWayItSays()
    {
        // From (0, 0) along the x axis to (4, 0) and back by a clockwise edge from 0° to 180° about (2, 0), which bends below: half a disc, π 2² / 2.
        const string head = "0 HATCH|8 A|10 0|20 0|30 0|2 SOLID|70 1|71 0|91 1|92 1|93 2|72 1|10 0|20 0|11 4|21 0|72 2|10 2|20 0|40 2|50 0|51 180|";
        Outline below = Assert.Single(Areas(head + "73 0|97 0|75 0|76 1|98 0"));
        Assert.Equal(2 * Math.PI, below.AreaMm2, 1e-9);
        Assert.True(below.Contains(new(2, -1)));
        Outline above = Assert.Single(Areas(head + "73 1|97 0|75 0|76 1|98 0"));
        Assert.True(above.Contains(new(2, 1)));
    }

    [Fact]
    public void Read_HatchWithIsland_LeavesItOutUnlessItsStyleSaysOtherwise()
    {
        const string square = "93 4|10 0|20 0|10 9|20 0|10 9|20 9|10 0|20 9|97 0|";
        const string island = "93 4|10 3|20 3|10 6|20 3|10 6|20 6|10 3|20 6|97 0|";
        string hatch = "0 HATCH|8 A|10 0|20 0|30 0|70 0|91 2|92 3|72 0|73 1|" + square + "92 2|72 0|73 1|" + island;
        Assert.Equal(72, Areas(hatch + "75 0|76 1").Sum(a => a.AreaMm2), 1e-9);
        Assert.True(Covered(Areas(hatch + "75 2|76 1"), 4, 4));
    }

    [Fact]
    public void Read_UnevenReference_MakesAnEllipseWithinTheTolerance()
    {
        // A half disc of radius 2 stretched to 3 × 1 is half an ellipse: area π · 6 · 2 / 2.
        DxfReadOptions options = new() { ChordMm = 1e-4 };
        ReadDrawing drawing = HandWritten.Read("0 INSERT|8 A|2 half|10 0|20 0|41 3|42 1", HalfDisc, options);
        ReadContour half = drawing.Layers.Single().Contours.Single();
        Assert.Equal(6 * Math.PI, half.Contour.SignedAreaMm2, 2e-3);
        Assert.True(half.Contour.Bounds.MaxX > 6 - 1e-3);
        Assert.Equal(1e-4, half.OffMm, 1e-12);
        Assert.Contains("(such as --chord", Assert.Throws<DxfReadException>(() => HandWritten.Read("0 INSERT|8 A|2 half|10 0|20 0|41 3|42 1", HalfDisc)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_UnevenReferenceOfLinesOnly_NeedsNoTolerance()
    {
        string block = "0 BLOCK|2 sq|10 0|20 0|" + HandWritten.Square(0, 0, 1, "0") + "0 ENDBLK|";
        Contour box = HandWritten.Read("0 INSERT|8 A|2 sq|10 0|20 0|41 -3|42 2", block).Layers.Single().Contours.Single().Contour;
        Assert.Equal(6, Math.Abs(box.SignedAreaMm2), 1e-12);
        Assert.Equal(-3, box.Bounds.MinX, 1e-12);
    }

    [Fact]
    public void Read_FitPointsWithEndDirections_IsTheCompleteCubicSpline()
    {
        // Three points at chord lengths 0, 5 and 10. De Boor's equation for the slope m in the middle is s0 + 4 m + s2 = 3 (p2 - p0) / 5, and half way
        // to it the Hermite cubic lies at (p0 + p1) / 2 + 5 (s0 - m) / 8.
        ReadDrawing drawing = HandWritten.Read("0 SPLINE|8 A|70 8|71 3|74 3|11 0|21 0|11 4|21 3|11 8|21 0|12 1|22 1|13 1|23 -1", options: new() { ChordMm = 1e-5 });
        double s = 1 / Math.Sqrt(2);
        Point end = new(4, 3);
        double middle = ((3 * 8 / 5.0) - (2 * s)) / 4;
        Point quarter = new((end.X / 2) + (5 * (s - middle) / 8), (end.Y / 2) + (5 * s / 8));
        IReadOnlyList<Piece> pieces = drawing.Layers.Single().OpenPaths.Single().Pieces;
        Assert.InRange(pieces.Min(p => Distances.Between(quarter, p).DistanceMm), 0, 2e-5);
        Assert.Contains("drawing.fit-points", HandWritten.Codes(drawing), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_CurveOfChordsShorterThanTheJoin_StaysWhole()
    {
        // Chords of 1e-6 mm on half an ellipse of 0.2 by 0.1 mm are shorter than the 0.005 mm within which ends are joined.
        ReadDrawing drawing = HandWritten.Read("0 ELLIPSE|8 A|10 0|20 0|11 0.2|21 0|40 0.5|41 0|42 3.141592653589793|" + HandWritten.Line(-0.2, 0, 0.2, 0), options: new() { ChordMm = 1e-6 });
        Assert.Equal(Math.PI * 0.2 * 0.1 / 2, Math.Abs(drawing.Layers.Single().Contours.Single().Contour.SignedAreaMm2), 1e-6);
        Assert.Empty(drawing.Layers.Single().OpenPaths);
    }

    [Fact]
    public void Read_NotUnderstoodOnALayerThatNeedNotBe_IsListedByLayerAndKind()
    {
        DxfReadOptions options = new() { Needs = layer => layer is "A" ? LayerNeed.Everything : LayerNeed.Nothing };
        ReadDrawing drawing = HandWritten.Read("0 CIRCLE|8 A|10 0|20 0|40 1|0 REGION|8 B|1 x|0 REGION|8 B|1 x|0 SPLINE|8 B|71 3|0 MLINE|8 C", options: options);
        Assert.Equal(["layer B: 2 REGION", "layer B: 1 SPLINE", "layer C: 1 MLINE"], drawing.LeftOut.Select(l => l.ToString()), StringComparer.Ordinal);
        Assert.All(drawing.Remarks, r => Assert.Equal(("drawing.unread", FindingSeverity.Warning), (r.Code, r.Severity)));
        string told = Assert.Throws<DxfReadException>(() => HandWritten.Read("0 MLINE|5 2F|8 a|0 TEXT|8 A|1 x", options: new() { Needs = l => l is "a" or "A" ? LayerNeed.Everything : LayerNeed.Nothing })).Message;
        Assert.Contains("MLINE (handle 2F) on layer a: this kind of entity is not understood", told, StringComparison.Ordinal);
        Assert.Contains("TEXT on layer A: words", told, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_NotUnderstoodInABlock_CountsOnlyWhereItIsInserted()
    {
        string block = "0 BLOCK|2 arrow|10 0|20 0|0 MLINE|8 0|0 ENDBLK|";
        DxfReadOptions options = new() { Needs = layer => layer is "A" ? LayerNeed.Everything : LayerNeed.Nothing };
        Assert.Empty(HandWritten.Read("0 CIRCLE|8 A|10 0|20 0|40 1", block, options).LeftOut);
        Assert.Equal("layer B: 1 MLINE", HandWritten.Read("0 CIRCLE|8 A|10 0|20 0|40 1|0 INSERT|8 B|2 arrow|10 0|20 0", block, options).LeftOut.Single().ToString());
        Assert.Throws<DxfReadException>(() => HandWritten.Read("0 INSERT|8 A|2 arrow|10 0|20 0", block, options));
    }

    [Fact]
    public void Read_BlockFromAnotherFile_IsAFaultWhateverItsLayer() =>
        Assert.Contains("lies in another file", Assert.Throws<DxfReadException>(() => HandWritten.Read("0 CIRCLE|8 A|10 0|20 0|40 1|0 INSERT|8 B|2 x|10 0|20 0", "0 BLOCK|2 x|70 4|10 0|20 0|1 other.dwg|0 ENDBLK|", new() { Needs = _ => LayerNeed.Nothing })).Message, StringComparison.Ordinal);
}
