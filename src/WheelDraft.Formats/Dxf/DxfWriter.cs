namespace WheelDraft.Formats.Dxf;

/// <summary>Writes a drawing for a cutting machine.</summary>
internal interface ICutFileWriter
{
    /// <summary>The whole file as text; ASCII, lines end in a line feed.</summary>
    /// <param name="drawing">What it holds.</param>
    string Write(CutDrawing drawing);
}

/// <summary>Writes DXF: the smallest subset of R2000 or R12 that every reader takes.</summary>
/// <remarks>A contour is one closed polyline with bulges, or a circle; an arc of over half a turn is split into equal
/// parts. Never a chord for an arc, a spline, an elevation or an extrusion. Same drawing, same bytes.</remarks>
internal sealed class DxfWriter : ICutFileWriter
{
    private readonly DxfVersion _version;

    /// <summary>A writer of one version.</summary>
    public DxfWriter(DxfVersion version) => _version = version;

    /// <summary>The whole file as text.</summary>
    public static string Write(CutDrawing drawing, DxfVersion version) => new DxfWriter(version).Write(drawing);

    /// <inheritdoc/>
    public string Write(CutDrawing drawing)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        CutPlan plan = CutPlan.Of(drawing);
        return _version == DxfVersion.R12 ? R12File.Write(plan) : R2000File.Write(plan);
    }
}

/// <summary>A version of the DXF format.</summary>
public enum DxfVersion
{
    /// <summary>R2000, AC1015: handles, units, lightweight polylines.</summary>
    R2000,

    /// <summary>R12, AC1009: for old readers; states no unit.</summary>
    R12,
}
