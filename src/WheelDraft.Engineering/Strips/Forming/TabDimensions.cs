namespace WheelDraft.Engineering;

/// <summary>A flat quick-connect tab of IEC 61210 as it is drawn: the middle of each pair of limits.</summary>
/// <param name="Size">Size as written in a file, e.g. 4.8x0.5.</param>
/// <param name="Source">The row of the common table of IEC 61210 and UL 310, and whether it was seen.</param>
public sealed record TabDimensions(string Size, string Source)
{
    /// <summary>Width D, mm.</summary>
    public required double WidthMm { get; init; }

    /// <summary>Least and greatest thickness C, mm.</summary>
    public double LeastThicknessMm { get; init; }

    /// <summary>Greatest thickness, mm.</summary>
    public double MostThicknessMm { get; init; }

    /// <summary>Length where the strip goes on no wider: blade length B, least, mm.</summary>
    public required double BladeMm { get; init; }

    /// <summary>Length where the strip behind it is wider: length to the shoulder Q, least, mm.</summary>
    public required double ToShoulderMm { get; init; }

    /// <summary>Chamfer of the two corners of the tip P, mm along each side; drawn at 45°.</summary>
    public required double ChamferMm { get; init; }

    /// <summary>Length A of the bevel that thins the tip, mm; filed after cutting, at 12° (angle J).</summary>
    public required double BevelMm { get; init; }

    /// <summary>From the tip to the centre of hole or dimple E, mm.</summary>
    public required double DetentAtMm { get; init; }

    /// <summary>Diameter of hole or dimple F, mm.</summary>
    public required double DetentDiameterMm { get; init; }

    /// <summary>Whether the detent is a hole, which can be cut; otherwise the table has a dimple only, which is pressed.</summary>
    public required bool IsHole { get; init; }

    private const string Memory = "common table of IEC 61210 and UL 310, row from memory";

    /// <summary>Every size, by width and thickness.</summary>
    public static IReadOnlyList<TabDimensions> All { get; } =
    [
        new("2.8x0.5", "common table of IEC 61210 and UL 310 (UL 310 Table 3, ninth edition), dimple row; the same row with a hole from memory")
        {
            WidthMm = 2.8, LeastThicknessMm = 0.47, MostThicknessMm = 0.54, BladeMm = 7.0, ToShoulderMm = 8.1, ChamferMm = 0.85, BevelMm = 0.45, DetentAtMm = 1.55, DetentDiameterMm = 1.2, IsHole = true,
        },
        new("2.8x0.8", Memory)
        {
            WidthMm = 2.8, LeastThicknessMm = 0.77, MostThicknessMm = 0.84, BladeMm = 7.0, ToShoulderMm = 8.1, ChamferMm = 0.85, BevelMm = 0.45, DetentAtMm = 1.55, DetentDiameterMm = 1.2, IsHole = true,
        },
        new("4.8x0.5", Memory + ", dimple")
        {
            WidthMm = 4.7, LeastThicknessMm = 0.47, MostThicknessMm = 0.54, BladeMm = 6.2, ToShoulderMm = 7.3, ChamferMm = 1.15, BevelMm = 0.75, DetentAtMm = 2.55, DetentDiameterMm = 1.4, IsHole = false,
        },
        new("4.8x0.8", Memory + ", hole")
        {
            WidthMm = 4.785, LeastThicknessMm = 0.77, MostThicknessMm = 0.84, BladeMm = 6.2, ToShoulderMm = 7.3, ChamferMm = 1.25, BevelMm = 0.85, DetentAtMm = 3.2, DetentDiameterMm = 1.4, IsHole = true,
        },
        new("6.3x0.8", Memory + ", hole")
        {
            WidthMm = 6.3, LeastThicknessMm = 0.77, MostThicknessMm = 0.84, BladeMm = 7.8, ToShoulderMm = 8.9, ChamferMm = 1.25, BevelMm = 0.75, DetentAtMm = 4.5, DetentDiameterMm = 1.8, IsHole = true,
        },
    ];

    /// <summary>The tab of a size as written in a file; null when it is not listed.</summary>
    public static TabDimensions? Find(string size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return All.FirstOrDefault(t => string.Equals(t.Size, size.Replace(" ", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Whether it can be cut from stock of a thickness, mm: dimension C of the row of <see cref="Source"/>, both limits included.</summary>
    public bool IsCutFrom(double thicknessMm) => thicknessMm >= LeastThicknessMm && thicknessMm <= MostThicknessMm;
}
