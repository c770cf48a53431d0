using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Report;

namespace WheelDraft.Formats.Outputs;

// Which files a design becomes, by kind and name. How each is written is the business of the folder of its format.

/// <summary>A kind of output.</summary>
public enum OutputKind
{
    /// <summary>report.json and report.md.</summary>
    Report,

    /// <summary>Cutting files.</summary>
    Cut,

    /// <summary>Drawings as SVG.</summary>
    Draw,
}

/// <summary>What is wanted of the outputs.</summary>
public sealed record OutputRequest
{
    /// <summary>The kinds.</summary>
    public IReadOnlyList<OutputKind> Kinds { get; init; } = Enum.GetValues<OutputKind>();

    /// <summary>Whether cutting files are written in spite of findings of severity error.</summary>
    public bool DespiteFindings { get; init; }

    /// <summary>The version of cutting files.</summary>
    public DxfVersion Dxf { get; init; } = DxfVersion.R2000;
}

/// <summary>One file of a set.</summary>
/// <param name="Name">Name below the folder, parted by forward slashes.</param>
/// <param name="Bytes">Its content.</param>
public sealed record OutputFile(string Name, byte[] Bytes);

/// <summary>The files that a design becomes.</summary>
public static class OutputFiles
{
    /// <summary>The folder of cutting files.</summary>
    public const string CutFolder = "cut";

    /// <summary>Whether the cutting files of a design are withheld.</summary>
    public static bool Withheld(Design design, OutputRequest request)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(request);
        return !design.Meets && !request.DespiteFindings;
    }

    /// <summary>Whether a name in the folder of cutting files is one that this program gives.</summary>
    public static bool IsCutFile(string fileName)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        return fileName is "wheel.dxf" or "sheet.dxf" or "carrier.dxf"
            || (fileName.StartsWith("strip-", StringComparison.Ordinal) && fileName.EndsWith(".dxf", StringComparison.Ordinal));
    }

    /// <summary>The files, in the order of their kinds.</summary>
    public static IEnumerable<OutputFile> Of(Design design, OutputRequest request)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(request);
        foreach (OutputKind kind in request.Kinds.Distinct().Order())
        {
            foreach (OutputFile file in Of(design, request, kind))
            {
                yield return file;
            }
        }
    }

    private static IEnumerable<OutputFile> Of(Design design, OutputRequest request, OutputKind kind) => kind switch
    {
        OutputKind.Report => [new("report.json", ReportJson.Write(design)), new("report.md", ReportMarkdown.Write(design))],
        OutputKind.Cut => Withheld(design, request) ? [] : [.. CutFiles(design).Select(c => new OutputFile($"{CutFolder}/{c.Name}.dxf", Encoding.ASCII.GetBytes(DxfWriter.Write(c.Drawing, request.Dxf))))],
        _ => [],
    };

    /// <summary>The cutting files by name; the carrier's only where it bears lands.</summary>
    private static IEnumerable<(string Name, CutDrawing Drawing)> CutFiles(Design design)
    {
        yield return ("wheel", WheelCutFile.Of(design));
        if (design.Wheel.Feed is null)
        {
            yield return ("carrier", CarrierCutFile.Of(design));
        }
    }
}
