using System.Globalization;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Dxf.Reading;

public sealed class FramesAndBlocksTests : IDisposable
{
    /// <summary>A block about (1, 0): a half disc to the right of x = 1 as a polyline with a bulge, and a hole on layer 0.</summary>
    private const string HalfDisc =
        "0 BLOCK|2 half|10 1|20 0|0 LWPOLYLINE|8 A|90 2|70 1|10 1|20 -2|42 1|10 1|20 2|0 CIRCLE|8 0|10 2|20 0|40 0.5|0 ENDBLK|";

    private readonly OutsideFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Read_ArcSeenFromBelow_IsMirrored()
    {
        // ezdxf's documentation, "upright": an arc about (10, 0) from 0 to 90° with extrusion -z lies at (-10, 0) from 90 to 180°.
        ReadDrawing drawing = HandWritten.Read("0 ARC|8 A|10 10|20 0|40 5|50 0|51 90|210 0|220 0|230 -1");
        Arc arc = Assert.IsType<Arc>(drawing.Layers.Single().OpenPaths.Single().Pieces.Single());
        Assert.Equal(0, arc.Centre.DistanceTo(new(-10, 0)), 1e-12);
        Assert.Equal(0, arc.PointAt(0.5).DistanceTo(new Point(-10, 0) + Vector.Polar(5, Angles.RadFromDeg(135))), 1e-12);
    }

    [Fact]
    public void Read_PolylineSeenFromBelow_ChangesXAndBulge()
    {
        ReadDrawing drawing = HandWritten.Read("0 LWPOLYLINE|8 A|90 2|70 1|210 0|220 0|230 -1|10 1|20 -2|42 1|10 1|20 2");
        Contour half = drawing.Layers.Single().Contours.Single().Contour;
        Assert.Equal(-2 * Math.PI, half.SignedAreaMm2, 1e-9);
        Assert.Equal(-1 - (4 * 2 / (3 * Math.PI)), half.Centroid.X, 1e-9);
    }

    [Fact]
    public void Read_LineSeenFromBelow_StaysWhereItIs()
    {
        ReadDrawing drawing = HandWritten.Read(HandWritten.Line(1, 2, 3, 4) + "210 0|220 0|230 -1");
        Assert.Equal(new Point(1, 2), drawing.Layers.Single().OpenPaths.Single().Pieces.Single().Start);
    }

    [Theory]
    [InlineData("", 4 / 1.5 / Math.PI, 0)]
    [InlineData("50 90|", 0, 4 / 1.5 / Math.PI)]
    [InlineData("41 -1|42 1|", -4 / 1.5 / Math.PI, 0)]
    [InlineData("41 1|42 -1|50 90|", 0, 4 / 1.5 / Math.PI)]
    [InlineData("41 -1|42 -1|", -4 / 1.5 / Math.PI, 0)]
    [InlineData("41 3|42 3|", 4 / 1.5 / Math.PI * 3, 0)]
    [InlineData("230 -1|", -4 / 1.5 / Math.PI, 0)]
    [InlineData("41 -2|42 2|50 90|", 0, -4 / 1.5 / Math.PI * 2)]
    public void Read_Reference_TurnsScalesAndMirrors(string how, double x, double y)
    {
        // The centroid of a half disc of radius 2 lies 4 r / 3π from its straight side (standard tables of plane areas).
        ReadDrawing drawing = HandWritten.Read($"0 INSERT|8 B|2 half|10 10|20 20|{how}", HalfDisc);
        Contour half = drawing.Layers.Single(l => l.Name is "A").Contours.Single().Contour;
        int side = how.Contains("230", StringComparison.Ordinal) ? -1 : 1;
        Assert.Equal(10 * side + x, half.Centroid.X, 1e-9);
        Assert.Equal(20 + y, half.Centroid.Y, 1e-9);
        Assert.Equal("B", drawing.Layers.Single(l => l.Name is not "A").Name);
    }

    [Fact]
    public void Read_MirroredReference_ChangesSidesAndDoesNotTurn()
    {
        // The arc from 0 to 90° about the origin, x mirrored: its middle lies at 135°, where half a turn would put it at 225°.
        const string block = "0 BLOCK|2 quarter|10 0|20 0|0 ARC|8 0|10 0|20 0|40 2|50 0|51 90|0 ENDBLK|";
        Piece arc = HandWritten.Read("0 INSERT|8 B|2 quarter|10 0|20 0|41 -1|42 1", block).Layers.Single().OpenPaths.Single().Pieces.Single();
        Assert.Equal(0, arc.PointAt(0.5).DistanceTo(Point.Origin + Vector.Polar(2, Angles.RadFromDeg(135))), 1e-12);
    }

    [Fact]
    public void Read_RowsAndColumns_AreTurnedWithTheReference()
    {
        ReadDrawing drawing = HandWritten.Read("0 INSERT|8 B|2 half|10 0|20 0|50 90|70 3|71 2|44 10|45 100", HalfDisc);
        Point[] centres = [.. drawing.Layers.Single(l => l.Name is "B").Contours.Select(c => c.Contour.Centroid)];
        Assert.Equal(6, centres.Length);
        Assert.Equal(0, centres[5].DistanceTo(new(-100, 21)), 1e-9);
    }

    [Fact]
    public void Read_NestedReference_TakesTheLayerOfTheOuterOne()
    {
        string nested = HalfDisc + "0 BLOCK|2 outer|10 0|20 0|0 INSERT|8 0|2 half|10 5|20 0|0 ENDBLK|";
        ReadDrawing drawing = HandWritten.Read("0 INSERT|8 TOP|2 OUTER|10 0|20 0|41 2|42 2|66 1|0 ATTRIB|8 A|1 x|0 SEQEND|8 A", nested);
        Assert.Equal(12, drawing.Layers.Single(l => l.Name is "TOP").Contours.Single().Contour.Centroid.X, 1e-9);
    }

    [Theory]
    [InlineData("41 0|42 0|", "leave nothing of it")]
    [InlineData("210 0.1|220 0|230 1|", "tilted plane")]
    [InlineData("70 -1|", "rows or columns")]
    public void Read_ReferenceThatDistorts_IsRefused(string how, string why)
    {
        DxfReadException e = Assert.Throws<DxfReadException>(() => HandWritten.Read($"0 INSERT|8 B|5 77|2 half|10 10|20 20|{how}", HalfDisc));
        Assert.Contains("INSERT (handle 77) on layer B: ", e.Message, StringComparison.Ordinal);
        Assert.Contains(why, e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_MissingBlockOrBlockInItself_IsRefused()
    {
        Assert.Contains("'none', which is not in the file", Assert.Throws<DxfReadException>(() => HandWritten.Read("0 INSERT|8 B|2 none|10 0|20 0")).Message, StringComparison.Ordinal);
        string loop = "0 BLOCK|2 a|10 0|20 0|0 INSERT|8 0|2 b|10 0|20 0|0 ENDBLK|0 BLOCK|2 b|10 0|20 0|0 INSERT|8 0|2 A|10 0|20 0|0 ENDBLK|";
        Assert.Contains("contains itself", Assert.Throws<DxfReadException>(() => HandWritten.Read("0 INSERT|8 B|2 a|10 0|20 0", loop)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ReferencesThatMultiply_AreStopped()
    {
        // Twenty blocks that each refer ten times to the next: 1e20 copies of nothing.
        string blocks = string.Concat(Enumerable.Range(0, 20).Select(i => $"0 BLOCK|2 b{Text(i)}|10 0|20 0|" + string.Concat(Enumerable.Repeat($"0 INSERT|8 0|2 b{Text(i + 1)}|10 0|20 0|", 10)) + "0 ENDBLK|"));
        Assert.Contains("100,000 block references", Assert.Throws<DxfReadException>(() => HandWritten.Read("0 INSERT|8 B|2 b0|10 0|20 0", blocks + "0 BLOCK|2 b20|10 0|20 0|0 ENDBLK|")).Message, StringComparison.Ordinal);
        Assert.Contains("100,000 block references", Assert.Throws<DxfReadException>(() => HandWritten.Read("0 INSERT|8 B|2 half|10 0|20 0|70 2000000000|71 2000000000", HalfDisc)).Message, StringComparison.Ordinal);
        string grow = "0 BLOCK|2 g|10 0|20 0|0 INSERT|8 0|2 half|41 1e8|42 1e8|10 0|20 0|0 ENDBLK|";
        Assert.Contains("from the origin", Assert.Throws<DxfReadException>(() => HandWritten.Read("0 INSERT|8 B|2 g|10 0|20 0|41 1e8|42 1e8", HalfDisc + grow)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [Trait("Needs", "ezdxf")]
    [InlineData("R12")]
    [InlineData("R2000")]
    [InlineData("R2007")]
    [InlineData("R2018")]
    public async Task Read_FileOfAnotherLibrary_LiesWhereThatLibraryPutsIt(string version)
    {
        // ezdxf (whose boxes of arcs are good to 0.002) writes a drawing with mirrored, turned, nested references and prints the extents of what they come to.
        const string script = """
            import sys, ezdxf, math
            from ezdxf import bbox
            from ezdxf.disassemble import recursive_decompose
            doc = ezdxf.new(sys.argv[1]); doc.units = 4; m = doc.modelspace()
            b = doc.blocks.new("part", base_point=(1, 2))
            pts = [(0, 0, 0), (8, 0, 0.7), (8, 5, 0), (3, 6, -0.4)]
            if sys.argv[1] == "R12": b.add_polyline2d([p[:2] for p in pts], format="xy", close=True); [setattr(v.dxf, "bulge", p[2]) for v, p in zip(b[-1].vertices, pts)]
            else: b.add_lwpolyline(pts, format="xyb", close=True)
            b.add_circle((4, 2), 1); b.add_arc((4, 2), 2, 20, 290)
            o = doc.blocks.new("outer"); o.add_blockref("part", (3, 1), {"xscale": -1.5, "yscale": 1.5, "rotation": 25})
            m.add_blockref("outer", (10, 20), {"rotation": 40})
            m.add_blockref("part", (-30, 5), {"xscale": 2, "yscale": -2, "rotation": 77})
            m.add_blockref("part", (60, 5), {"extrusion": (0, 0, -1), "rotation": 15})
            m.add_arc((5, -40), 7, 300, 30, dxfattribs={"extrusion": (0, 0, -1)})
            doc.saveas(sys.argv[2])
            for e in recursive_decompose(m):
                box = bbox.extents([e], flatten=1e-5)
                print(e.dxftype(), *(round(v, 6) for v in (*box.extmin.vec2, *box.extmax.vec2)))
            """;
        OutsideProgram python = OutsideProgram.OrSkip("/usr/bin/python3", "-c", "import ezdxf");
        string file = _folder.At("drawing.dxf");
        double[][] expected = [.. (await python.RunAsync("-c", script, version, file)).Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(l => l.Split(' ')[1..].Select(w => double.Parse(w, CultureInfo.InvariantCulture)).ToArray())];
        ReadDrawing drawing = DxfReader.Read(await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken), new() { UnitMm = 1 });
        ReadLayer layer = drawing.Layers.Single();
        Bounds[] read = [.. layer.Contours.Select(c => c.Contour.Bounds), .. layer.OpenPaths.Select(p => p.Pieces.Select(q => q.Bounds).Aggregate((a, b) => a.With(b)))];
        Assert.Equal(10, expected.Length);
        Assert.Equal(expected.Length, read.Length);
        Assert.All(expected, e => Assert.Contains(read, b => new[] { b.MinX - e[0], b.MinY - e[1], b.MaxX - e[2], b.MaxY - e[3] }.All(d => Math.Abs(d) < 2e-3)));
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
