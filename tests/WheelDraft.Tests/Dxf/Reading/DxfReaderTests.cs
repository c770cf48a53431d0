using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Dxf.Reading;

public class DxfReaderTests
{
    [Theory]
    [InlineData("ring-sector-r2000.dxf")]
    [InlineData("ring-sector-r12.dxf")]
    public void Read_RingSectorWrittenByHand_HasItsContours(string name)
    {
        // The sector of the file: radii 15 and 20 over 60°, corners rounded to six decimals; a hole of radius 3; an arc of radius 25.
        ReadDrawing drawing = DxfReader.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "cases", "dxf", name)), new() { UnitMm = 1 });
        ReadLayer cut = drawing.Layers.Single(l => l.Name is "CUT");
        Assert.Equal(2, cut.Contours.Count);
        Assert.Equal(((20 * 20) - (15 * 15)) * Math.PI / 6, cut.Contours[0].Contour.SignedAreaMm2, 1e-4);
        Assert.Equal(9 * Math.PI, cut.Contours[1].Contour.SignedAreaMm2, 1e-9);
        Arc arc = Assert.IsType<Arc>(drawing.Layers.Single(l => l.Name is "0").OpenPaths.Single().Pieces.Single());
        Assert.Equal(Angles.RadFromDeg(20), arc.SweepRad, 1e-12);
        Assert.Equal("drawing.open", HandWritten.Codes(drawing));
    }

    [Theory]
    [InlineData(DxfVersion.R2000, DrawingUnit.Millimetre)]
    [InlineData(DxfVersion.R2000, DrawingUnit.Inch)]
    [InlineData(DxfVersion.R12, DrawingUnit.Millimetre)]
    public void Read_OurOwnFile_GivesTheShapesBack(DxfVersion version, DrawingUnit unit)
    {
        CutDrawing written = DxfWriterTests.Sample(unit);
        ReadDrawing drawing = DxfReader.Read(System.Text.Encoding.ASCII.GetBytes(DxfWriter.Write(written, version)), new() { UnitMm = 1 });
        double[] expected = [.. written.Contours.Select(c => Math.Abs(c.Contour.SignedAreaMm2)).Order()];
        double[] read = [.. drawing.Layers.Where(l => l.Name is "WINDOW" or "OUTLINE").SelectMany(l => l.Contours).Select(c => Math.Abs(c.Contour.SignedAreaMm2)).Order()];
        Assert.Equal(expected, read, (a, b) => Math.Abs(a - b) < 1e-6);
    }

    [Fact]
    public void Read_LineEndsOfAnySystemAndComments_MakeNoDifference()
    {
        string text = System.Text.Encoding.ASCII.GetString(HandWritten.File("999 a remark|0 CIRCLE|8 A|10 1|999 another|20 2|40 3"));
        foreach (string file in (string[])[text, text.Replace("\n", "\r\n", StringComparison.Ordinal), "\uFEFF" + text, text.TrimEnd(), text + "\n\u001a"])
        {
            Assert.Equal(9 * Math.PI, DxfReader.Read(System.Text.Encoding.UTF8.GetBytes(file)).Layers.Single().Contours.Single().Contour.SignedAreaMm2, 1e-12);
        }
    }

    [Fact]
    public void Read_LooseLinesAndArcs_JoinIntoOneLoop()
    {
        // A slot with round ends, its four pieces in any order and direction, ends up to 4 µm apart.
        ReadDrawing drawing = HandWritten.Read(
            HandWritten.Line(0, 0.003, 10, 0) + "0 ARC|8 A|5 2F|10 0|20 2|40 2|50 90|51 270|" + HandWritten.Line(10, 4, 0, 4.002) + "0 ARC|8 A|10 10|20 2|40 2|50 270|51 90|");
        Contour slot = drawing.Layers.Single().Contours.Single().Contour;
        Assert.Equal(40 + (4 * Math.PI), Math.Abs(slot.SignedAreaMm2), 0.05);
        Assert.Equal("", HandWritten.Codes(drawing));
    }

    [Fact]
    public void Read_GapAboveTheTolerance_IsToldWithItsSizeAndPlace()
    {
        ReadDrawing drawing = HandWritten.Read(HandWritten.Line(0, 0, 10, 0) + HandWritten.Line(10, 0, 10, 10) + HandWritten.Line(10, 10, 0, 0.02));
        Finding open = drawing.Remarks.Single();
        Assert.Equal(("drawing.open", FindingSeverity.Error), (open.Code, open.Severity));
        Assert.Contains("open from (0, 0) to (0, 0.02) mm; its ends are 0.02 mm apart", open.Message, StringComparison.Ordinal);
        Assert.Equal(26, open.Where!.Value.Line);
        Assert.Empty(HandWritten.Read(HandWritten.Line(0, 0, 10, 0) + HandWritten.Line(10, 0, 10, 10) + HandWritten.Line(10, 10, 0, 0.02), options: new() { JoinMm = 0.03 }).Remarks);
    }

    [Fact]
    public void Read_SquaresThatShareACorner_AreTwoContours()
    {
        ReadDrawing drawing = HandWritten.Read(HandWritten.Square(0, 0, 1) + HandWritten.Square(1, 1, 1));
        Assert.Equal(2, drawing.Layers.Single().Contours.Count);
        Assert.Contains("drawing.crossing", HandWritten.Codes(drawing), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ThreeLinesAtAPoint_CannotBeToldApart()
    {
        ReadDrawing drawing = HandWritten.Read(HandWritten.Square(0, 0, 1) + HandWritten.Line(0, 0, 1, 1));
        Assert.Empty(drawing.Layers.Single().Contours);
        Assert.Contains("three or more lines meet", drawing.Remarks.First(r => r.Code is "drawing.junction").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_DoubledLinesAndContours_AreTakenOnceAndTold()
    {
        string rectangle = "0 LWPOLYLINE|8 A|90 4|70 1|10 0|20 0|10 5|20 0|10 5|20 5|10 0|20 5|";
        ReadDrawing drawing = HandWritten.Read(rectangle + HandWritten.Line(5, 0, 0, 0) + rectangle + "0 CIRCLE|8 A|5 30|10 2|20 2|40 1|0 CIRCLE|8 A|5 31|10 2|20 2|40 1");
        Assert.Equal(2, drawing.Layers.Single().Contours.Count);
        Assert.Equal("drawing.duplicate drawing.duplicate drawing.duplicate", HandWritten.Codes(drawing));
        Assert.Contains(drawing.Remarks, r => r.Message.Contains("(handle 31)", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_BowTie_IsToldWhereItCrosses()
    {
        ReadDrawing drawing = HandWritten.Read("0 LWPOLYLINE|5 A1|8 A|90 4|70 1|10 0|20 0|10 4|20 4|10 4|20 0|10 0|20 4");
        Assert.Contains("line 26 (handle A1) crosses, touches or doubles itself at (2, 2) mm", drawing.Remarks.Single().Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, 25.4)]
    [InlineData(4, 1)]
    [InlineData(6, 1000)]
    [InlineData(9, 0.0254)]
    public void Read_Unit_ComesFromTheHeader(int insUnits, double mm)
    {
        byte[] file = HandWritten.File("0 CIRCLE|8 A|10 1|20 2|40 3", header: string.Create(System.Globalization.CultureInfo.InvariantCulture, $"9 $INSUNITS|70 {insUnits}"));
        ReadDrawing drawing = DxfReader.Read(file);
        Arc circle = Assert.IsType<Arc>(drawing.Layers.Single().Contours.Single().Contour.Pieces.Single());
        Assert.Equal((mm, 3 * mm), (drawing.UnitMm, circle.RadiusMm));
        Assert.Equal(2 * mm, circle.Centre.Y, 1e-12);
    }

    [Fact]
    public void Read_NoUnit_IsAskedFor()
    {
        byte[] file = HandWritten.File("0 CIRCLE|8 A|10 1|20 2|40 3", header: "9 $INSUNITS|70 0");
        Assert.Contains("--unit mm|in|", Assert.Throws<DxfReadException>(() => DxfReader.Read(file)).Message, StringComparison.Ordinal);
        Assert.Equal(25.4, DxfReader.Read(file, new() { UnitMm = 25.4 }).UnitMm);
    }

    [Fact]
    public void Read_LayersOfOtherCaseAndCode_AreOneAndDecoded()
    {
        ReadDrawing drawing = HandWritten.Read(@"0 CIRCLE|8 \U+00D8hole|10 1|20 2|40 3|0 CIRCLE|8 øHOLE|10 9|20 2|40 3");
        Assert.Equal("Øhole", drawing.Layers.Single().Name);
        byte[] utf8 = System.Text.Encoding.UTF8.GetBytes(System.Text.Encoding.Latin1.GetString(HandWritten.File("0 CIRCLE|8 Ø|10 1|20 2|40 3", header: "9 $ACADVER|1 AC1032|9 $INSUNITS|70 4")));
        Assert.Equal("Ø", DxfReader.Read(utf8).Layers.Single().Name);
    }

    [Fact]
    public void Read_WordsAndPaperSpace_AreLeftOutAndTold()
    {
        ReadDrawing drawing = HandWritten.Read("0 TEXT|8 A|10 0|20 0|40 2|1 hello|0 TEXT|8 A|10 0|20 0|40 2|1 you|0 CIRCLE|8 A|67 1|10 1|20 2|40 3|0 CIRCLE|8 A|10 1|20 2|40 3");
        Assert.Single(drawing.Layers.Single().Contours);
        Assert.Equal(["layer A: 1 CIRCLE in paper space", "layer A: 2 TEXT"], drawing.LeftOut.Select(l => l.ToString()), StringComparer.Ordinal);
        Assert.Equal([50, 26], drawing.LeftOut.Select(l => l.Line));
        Assert.Equal("drawing.left-out drawing.left-out", HandWritten.Codes(drawing));
    }
}
