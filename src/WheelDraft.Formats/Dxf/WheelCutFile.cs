using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>The cutting file of a wheel: copper, marks, part number.</summary>
public static class WheelCutFile
{
    /// <summary>The drawing of a design's wheel, compensated for kerf.</summary>
    public static CutDrawing Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return CutDrawing.Of(design.Brief.DrawingUnit, design.Wheel.Copper);
    }
}
