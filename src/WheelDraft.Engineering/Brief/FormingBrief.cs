using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How exactly strips are cut from stock, folded and set up: what decides how far a contact force may lie from its nominal one.</summary>
/// <remarks>Each limit is plus and minus. A limit that the file leaves out has a usual value and is listed as assumed: common practice, no source.</remarks>
public sealed record FormingBrief
{
    /// <summary>Angle of each fold by itself, rad; usually 1°.</summary>
    public FormingLimit FoldRad { get; init; } = new(Angles.RadFromDeg(1), IsGiven: false);

    /// <summary>Thickness of the stock, as a share of it; usually 5 %.</summary>
    public FormingLimit ThicknessShare { get; init; } = new(0.05, IsGiven: false);

    /// <summary>Height of the free contact against the copper face, mm: seat, rivet and carrier together, folds not counted; usually 0.1 mm.</summary>
    public FormingLimit HeightMm { get; init; } = new(0.1, IsGiven: false);

    /// <summary>Inside radius of each fold by itself, mm; usually 0.1 mm.</summary>
    public FormingLimit RadiusMm { get; init; } = new(0.1, IsGiven: false);

    /// <summary>Strips without any error, for figures that are to be compared with closed forms.</summary>
    public static FormingBrief Exact { get; } = new()
    {
        FoldRad = new(0, IsGiven: true),
        ThicknessShare = new(0, IsGiven: true),
        HeightMm = new(0, IsGiven: true),
        RadiusMm = new(0, IsGiven: true),
    };
}

/// <summary>A limit, plus and minus, in the unit that the property names.</summary>
/// <param name="Value">The limit, at least 0.</param>
/// <param name="IsGiven">Whether the file gives it; else it is assumed from common practice, without a source.</param>
public readonly record struct FormingLimit(double Value, bool IsGiven);
