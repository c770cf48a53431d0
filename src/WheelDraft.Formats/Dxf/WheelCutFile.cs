using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>The cutting file of a wheel's copper: one piece with its windows, or all lands in their places.</summary>
public static class WheelCutFile
{
    /// <summary>The drawing of a design's wheel, compensated for kerf.</summary>
    public static CutDrawing Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return CutDrawing.Of(design.Brief.DrawingUnit, [.. design.Wheel.Copper.Select(c => c.Outline)]);
    }
}

/// <summary>The cutting file of the carrier: its edge, bore and fixings.</summary>
/// <remarks>Nominal: the process of the parameter file is that of the copper, and a carrier is cut by another.</remarks>
public static class CarrierCutFile
{
    /// <summary>The drawing of a design's carrier.</summary>
    public static CutDrawing Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return CutDrawing.Of(design.Brief.DrawingUnit, design.Wheel.Carrier);
    }
}
