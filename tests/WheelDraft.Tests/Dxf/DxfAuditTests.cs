using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using Xunit;

namespace WheelDraft.Tests.Dxf;

/// <summary>The files as another library reads them: ezdxf (Debian package python3-ezdxf).</summary>
[Trait("Needs", "ezdxf")]
public sealed class DxfAuditTests : IDisposable
{
    /// <summary>Prints errors, fixes, and kind, layer and size of every entity.</summary>
    private const string Script = """
        import sys, ezdxf
        from ezdxf.lldxf.encoding import decode_dxf_unicode
        doc = ezdxf.readfile(sys.argv[1]); audit = doc.audit()
        print(len(audit.errors), len(audit.fixes), doc.units, doc.dxfversion)
        for e in doc.modelspace():
            print(e.dxftype(), e.dxf.layer, end=" ")
            if e.dxftype() == "LWPOLYLINE": print(len(e), e.closed)
            elif e.dxftype() == "POLYLINE": print(len(e), e.is_closed)
            elif e.dxftype() == "TEXT": print(ascii(decode_dxf_unicode(e.plain_text())))
            elif e.dxftype() == "LINE": print(round(e.dxf.start.distance(e.dxf.end), 6))
            else: print(round(e.dxf.radius, 6))
        """;

    private readonly OutsideFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(DxfVersion.R2000, DrawingUnit.Millimetre, "0 0 4 AC1015", "LWPOLYLINE")]
    [InlineData(DxfVersion.R2000, DrawingUnit.Inch, "0 0 1 AC1015", "LWPOLYLINE")]
    [InlineData(DxfVersion.R12, DrawingUnit.Millimetre, "0 0 0 AC1009", "POLYLINE")]
    public async Task Write_Sample_PassesTheAuditOfAnotherLibrary(DxfVersion version, DrawingUnit unit, string first, string polyline)
    {
        string file = await _folder.WriteAsync("sample.dxf", DxfWriter.Write(DxfWriterTests.Sample(unit), version));
        string[] lines = await RunAsync(file);
        string mm(double length) => Math.Round(unit == DrawingUnit.Inch ? length / 25.4 : length, 6).ToString("0.0#####", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(
            [
                first,
                $"ARC MARK {mm(1)}", $"{polyline} MARK 3 False", $"CIRCLE MARK {mm(1)}", $"LINE FOLD {mm(2)}",
                $"{polyline} WINDOW 4 True", $"{polyline} WINDOW 6 True", $"CIRCLE WINDOW {mm(3)}", $"CIRCLE OUTLINE {mm(30)}",
            ],
            lines[..9]);
        Assert.Equal("TEXT NOTE '\\xd8 60 \\xb1 0.1, 50 %% ^'", lines[9]);
    }

    private static async Task<string[]> RunAsync(string file)
    {
        // The system's own Python has the Debian packages; another one on the path need not.
        OutsideProgram python = OutsideProgram.OrSkip("/usr/bin/python3", "-c", "import ezdxf");
        return (await python.RunAsync("-c", Script, file)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
