using System.Diagnostics;
using System.Text;
using CsCheck;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Dxf.Reading;
using Xunit;

namespace WheelDraft.Tests.Dxf.Reading;

public class BadFilesTests
{
    [Theory]
    [InlineData("", "The file is empty")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n", "cut short")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nLINE\n 10\n", "line 7: The file ends after a group code")]
    [InlineData("  0\nSECTION\n  2\nHEADER\n  0\nENDSEC\n  0\nEOF\n", "no ENTITIES section")]
    [InlineData("<html>\nhello\n", "line 1: '<html>' is no group code")]
    [InlineData("  0\nHELLO\n", "HELLO stands outside any section")]
    [InlineData("  1\nSECTION\n", "line 1: Group 1 stands outside any section")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nENDSEC\n", "ends without EOF")]
    public void Read_NoDxf_SaysWhatIsWrong(string text, string why) =>
        Assert.Contains(why, Refusal(Encoding.ASCII.GetBytes(text)), StringComparison.Ordinal);

    [Theory]
    [InlineData("", "save the drawing again")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n", "ask for it anew")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nLINE\n 10\n", "ask for it anew")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nENDSEC\n", "ask for it anew")]
    [InlineData("  0\nSECTION\n  2\nHEADER\n  0\nENDSEC\n  0\nEOF\n", "Save the drawing again, whole")]
    [InlineData("  0\nHELLO\n", "Save the drawing again")]
    [InlineData("  0\nSECTION\n  5\nENTITIES\n", "group 2 is needed here")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  8\nA\n", "group 0 is needed here")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nCIRCLE\n 10\n0\n 20\n0\n 40\n1,5\n  0\nENDSEC\n  0\nEOF\n", "write one such as 12.5")]
    [InlineData("  0\nSECTION\n  2\nHEADER\n  9\n$INSUNITS\n 70\nmm\n  0\nENDSEC\n", "write one such as 1,")]
    public void Read_NoDxf_SaysWhatWouldDo(string text, string cure) =>
        Assert.Contains(cure, Refusal(Encoding.ASCII.GetBytes(text)), StringComparison.Ordinal);

    [Theory]
    [InlineData("0 CIRCLE|8 A|10 0|20 0|40 nan", "line 34: 'nan' is no finite number (group 40)")]
    [InlineData("0 CIRCLE|8 A|10 0|20 0|40 1e999", "is no finite number")]
    [InlineData("0 CIRCLE|8 A|10 0|20 0|40 1,5", "is no finite number")]
    [InlineData("0 CIRCLE|8 A|10 2e9|20 0|40 1", "beyond 1,000,000,000")]
    [InlineData("0 CIRCLE|8 A|5 4B|10 0|20 0|40 0", "line 26: CIRCLE (handle 4B) on layer A: its radius is 0; it must be above 0.")]
    [InlineData("0 CIRCLE|8 A|20 0|40 1", "CIRCLE on layer A: group 10 is missing")]
    [InlineData("0 LINE|8 A|10 0|20 0|30 1|11 1|21 1|31 2", "it climbs from z = 1 to 2")]
    [InlineData("0 LWPOLYLINE|8 A|90 4|70 1|10 0|20 0|10 1|20 0", "states 4 vertices and has 2")]
    [InlineData("0 LWPOLYLINE|8 A|90 3|70 0|43 0.5|10 0|20 0|10 1|20 0|10 0|20 0", "turns back on itself")]
    [InlineData("0 LWPOLYLINE|5 7|8 A|90 3|70 0|10 0|20 0|40 1|41 1|10 1|20 0|10 1|20 1", "LWPOLYLINE (handle 7) on layer A: part of it has a width and part of it has none")]
    [InlineData("0 LWPOLYLINE|8 A|90 2|43 -1|10 0|20 0|10 1|20 0", "a width is below 0")]
    [InlineData("0 SOLID|8 A|10 0|20 0|11 1|21 0|12 2|22 0", "fills nothing")]
    [InlineData("0 HATCH|8 A|10 0|20 0|30 0|70 1|91 1|92 1|93 1|72 1|10 0|20 0|11 5|21 0|97 0|75 0", "does not close")]
    [InlineData("0 HATCH|8 A|10 0|20 0|30 0|70 1|91 1|92 1|93 1|72 9|75 0", "unknown kind 9")]
    [InlineData("0 HATCH|8 A|10 0|20 0|30 0|70 1|91 1|92 3|72 0|73 1|93 9|10 0|20 0|75 0", "group 10 is missing")]
    [InlineData("0 POLYLINE|8 A|66 1|70 1|0 VERTEX|8 A|10 0|20 0|0 LINE|8 A", "SEQEND is missing")]
    [InlineData("0 POLYLINE|8 A|66 1|70 16|0 SEQEND|8 A", "it is a mesh")]
    [InlineData("0 POLYLINE|8 A|66 1|70 4|0 SEQEND|8 A", "smoothed into chords")]
    [InlineData("0 CIRCLE|8 A|10 0|20 0|40 1|210 1|220 0|230 0", "tilted plane")]
    [InlineData("0 REGION|8 A|1 x", "REGION on layer A: this kind of entity is not understood")]
    public void Read_BadEntity_IsToldWithItsLine(string entities, string why) =>
        Assert.Contains(why, Refusal(HandWritten.File(entities)), StringComparison.Ordinal);

    [Fact]
    public void Read_OtherBinaryOrCutShort_IsToldApart()
    {
        Assert.Contains("neither ASCII DXF nor binary DXF", Refusal("PK\u0003\u0004\0\0\0rest"u8.ToArray()), StringComparison.Ordinal);
        Assert.Contains("cut short", Refusal("AutoCAD Binary DXF\r\n\u001a\0\0\0SECTION"u8.ToArray()), StringComparison.Ordinal);
        Assert.Contains("none of the format", Refusal("AutoCAD Binary DXF\r\n\u001a\0\0\0SECTION\0\u00e7\u0003"u8.ToArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_OldVersion_IsRefusedWithTheOnesThatAreRead() =>
        Assert.Contains("AC1006 is not read: save the drawing as R12 to R2018", Refusal(HandWritten.File("", header: "9 $ACADVER|1 AC1006")), StringComparison.Ordinal);

    [Fact]
    public void Read_ManyFaults_AreToldTogetherUpToALimit()
    {
        string bad = string.Concat(Enumerable.Repeat("0 CIRCLE|8 A|10 0|20 0|40 0|", 3));
        Assert.Equal(3, Assert.Throws<DxfReadException>(() => HandWritten.Read(bad)).Reasons.Count);
        string worse = string.Concat(Enumerable.Repeat("0 CIRCLE|8 A|10 0|20 0|40 0|", 1000));
        Assert.Equal(21, Assert.Throws<DxfReadException>(() => HandWritten.Read(worse)).Reasons.Count);
    }

    [Fact]
    public void Read_TooLargeAFile_IsRefusedBeforeItIsRead() =>
        Assert.Contains("at most 1,000 are taken in", Assert.Throws<DxfReadException>(() => DxfReader.Read(new byte[1001], new() { MostBytes = 1000 })).Message, StringComparison.Ordinal);

    [Fact]
    public void Read_ThousandsOfCrossingLines_EndsInTime()
    {
        // 3,000 lines that all cross each other: 4.5 million crossings, of which the first are told.
        StringBuilder lines = new();
        for (int i = 0; i < 3000; i++)
        {
            double a = i * Math.PI / 3000;
            lines.Append(HandWritten.Line(Math.Round(-100 * Math.Cos(a), 6), Math.Round(-100 * Math.Sin(a), 6), Math.Round(100 * Math.Cos(a), 6), Math.Round((100 * Math.Sin(a)) + 1, 6)));
        }

        Stopwatch watch = Stopwatch.StartNew();
        ReadDrawing drawing = HandWritten.Read(lines.ToString());
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(60), watch.Elapsed.ToString());
        Assert.Contains(drawing.Remarks, r => r.Message.Contains("stopped here", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_MutatedFiles_ThrowNothingButTheirOwnException()
    {
        // Oracle: none but the promise; every outcome is a drawing or a located refusal, in time.
        byte[][] seeds =
        [
            Encoding.ASCII.GetBytes(DxfWriter.Write(DxfWriterTests.Sample(), DxfVersion.R2000)),
            Encoding.ASCII.GetBytes(DxfWriter.Write(DxfWriterTests.Sample(), DxfVersion.R12)),
            HandWritten.File(
                "0 INSERT|8 B|2 half|10 10|20 20|41 -2|42 2|50 30|70 2|71 2|44 5|45 6|0 INSERT|8 0|2 half|41 2|42 1|0 SOLID|8 A|10 0|20 0|11 3|21 0|12 0|22 3|13 3|23 3|0 LWPOLYLINE|8 A|90 3|70 1|10 0|20 0|40 1|41 2|42 0.5|10 5|20 0|40 1|41 1|10 0|20 6|40 2|41 1|0 HATCH|8 A|10 0|20 0|30 0|70 1|91 1|92 1|93 2|72 2|10 0|20 0|40 1|50 0|51 180|73 1|72 1|10 -1|20 0|11 1|21 0|97 0|75 0|0 ELLIPSE|8 A|10 5|20 1|11 4|21 3|40 0.5|41 0|42 3|"
                + "0 SPLINE|8 A|70 8|71 2|40 0|40 0|40 0|40 1|40 1|40 1|41 1|41 2|41 1|10 0|20 0|30 0|10 1|20 3|30 0|10 4|20 -3|30 0",
                "0 BLOCK|2 half|10 1|20 0|0 LWPOLYLINE|8 A|90 2|70 1|10 1|20 -2|42 1|10 1|20 2|0 ARC|8 0|10 2|20 0|40 0.5|50 10|51 80|0 ENDBLK|"),
        ];
        string[] values = ["nan", "1e308", "-1e9", "1e9", "0", "-0", "1e-300", "2147483647", "-1", "ENDSEC", "EOF", "SECTION", "INSERT", "POLYLINE", "half", "", "16", "999"];
        Gen.Select(Gen.Int[0, seeds.Length - 1], Gen.Int[0, 3], Gen.Int[0, int.MaxValue], Gen.Int[0, int.MaxValue]).Array[1, 4].Sample(
            changes =>
            {
                List<string> lines = [.. Encoding.ASCII.GetString(seeds[changes[0].Item1]).Split('\n')];
                foreach ((_, int kind, int where, int what) in changes)
                {
                    int at = where % lines.Count;
                    switch (kind)
                    {
                        case 0:
                            lines[at] = values[what % values.Length];
                            break;
                        case 1:
                            lines.RemoveAt(at);
                            lines.Add("");
                            break;
                        case 2:
                            lines.InsertRange(at, [.. lines.Skip(what % lines.Count).Take(1 + (what % 40))]);
                            break;
                        default:
                            lines.RemoveRange(at, Math.Min(1 + (what % 10), lines.Count - at));
                            lines.Add("");
                            break;
                    }
                }

                Stopwatch watch = Stopwatch.StartNew();
                try
                {
                    DxfReader.Read(Encoding.ASCII.GetBytes(string.Join('\n', lines)), new() { UnitMm = 1, ChordMm = 0.01 });
                }
                catch (DxfReadException e)
                {
                    Assert.NotEmpty(e.Reasons);
                    Assert.All(e.Reasons, r => Assert.False(string.IsNullOrWhiteSpace(r.Message)));
                }

                Assert.True(watch.Elapsed < TimeSpan.FromSeconds(60), watch.Elapsed.ToString());
            },
            iter: 6000);
    }

    [Fact]
    public void Read_FlippedBytes_ThrowNothingButTheirOwnException()
    {
        byte[] seed = HandWritten.File("0 LWPOLYLINE|8 A|90 3|70 1|10 1|20 -2|42 1|10 1|20 2|10 5|20 6|0 CIRCLE|8 A|10 2|20 0|40 0.5");
        Gen.Select(Gen.Int[0, seed.Length - 1], Gen.Byte).Array[1, 6].Sample(
            flips =>
            {
                byte[] bytes = [.. seed];
                foreach ((int at, byte value) in flips)
                {
                    bytes[at] = value;
                }

                try
                {
                    DxfReader.Read(bytes);
                }
                catch (DxfReadException e)
                {
                    Assert.NotEmpty(e.Reasons);
                }
            },
            iter: 6000);
    }

    private static string Refusal(byte[] file) => Assert.Throws<DxfReadException>(() => DxfReader.Read(file)).Message;
}
