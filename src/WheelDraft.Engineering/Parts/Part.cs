namespace WheelDraft.Engineering;

// The chapter "Parts": what leaves for the shop, part by part. It knows wheel and strips, and what the shop can do (Fabrication).

/// <summary>One part that is made for a design.</summary>
public sealed record Part
{
    /// <summary>What it is in the design.</summary>
    public required PartRole Role { get; init; }

    /// <summary>What it is called on drawings and in notes.</summary>
    public required string Name { get; init; }

    /// <summary>What its files are called, without folder and kind; unique in a design.</summary>
    public required string FileName { get; init; }

    /// <summary>What it is made of.</summary>
    public required Stock Stock { get; init; }

    /// <summary>Its shapes, each finished and as it is cut; more than one only for the lands of a wheel.</summary>
    public required IReadOnlyList<CutShape> Shapes { get; init; }

    /// <summary>Kerf that <see cref="CutShape.ToCut"/> is compensated for, mm; 0 when the file is nominal because the cutter has none; null for a part
    /// that another process cuts, nominal too.</summary>
    public required double? KerfMm { get; init; }

    /// <summary>Whether the shop allows for the kerf itself: the shapes are then cut along their finished edges, whatever the kerf.</summary>
    public bool KerfLeftToShop { get; private init; }

    /// <summary>What its cutting file is called, without folder and kind: one that leaves the kerf to the shop says so.</summary>
    public string CutName => KerfLeftToShop ? FileName + "-nominal" : FileName;

    /// <summary>The part along its finished edges, for a shop that compensates by itself; the same part where no kerf was counted.</summary>
    public Part Nominal() => KerfMm is > 0 ? this with { KerfLeftToShop = true, Shapes = [.. Shapes.Select(s => s with { ToCut = s.Finished })] } : this;

    /// <summary>The part compensated for a kerf, 0 for its finished edges; the same part where another process cuts it.</summary>
    /// <exception cref="DesignRefusedException">It cannot be cut with that kerf.</exception>
    internal Part WithKerf(double kerfMm, Brief brief) =>
        KerfMm is not double own || own == kerfMm ? this
        : kerfMm == 0 ? Nominal()
        : this with { KerfMm = kerfMm, Shapes = [.. Shapes.Select(s => CutShape.Of(s.Finished, brief.Process with { KerfMm = kerfMm, InsideRadiusMm = Math.Max(brief.Process.InsideRadiusMm, kerfMm / 2) }, s.What, s.Where))] };

    /// <summary>Whether it is folded after it is cut, so that its grain matters.</summary>
    internal bool HasFolds { get; init; }

    /// <summary>For a strip its place in the order of <see cref="StripSet.Strips"/>; −1 for any other part.</summary>
    public int StripIndex { get; init; } = -1;

    /// <summary>What is sunk into its face to take the copper; null for any part but a carrier, and for one that the copper lies on.</summary>
    internal CarrierRecess? Recess { get; init; }

    /// <summary>The smallest upright rectangle round the shapes as they are cut, mm.</summary>
    public Geometry.Bounds CutBounds => Shapes.Select(s => s.ToCut.Bounds).Aggregate((a, b) => a.With(b));
}

/// <summary>What a part is in a design.</summary>
public enum PartRole
{
    /// <summary>The wheel's copper, or all of its lands.</summary>
    Wheel,

    /// <summary>The insulating body that the copper is let into or lies on.</summary>
    Carrier,

    /// <summary>A strip's blank.</summary>
    Strip,

    /// <summary>The plate that strips are seated on.</summary>
    Base,

    /// <summary>A cam on the wheel's shaft.</summary>
    Cam,
}

/// <summary>What a part is cut from.</summary>
/// <param name="Material">Alloy and temper; null where the parameter file names no material.</param>
/// <param name="ThicknessMm">Thickness, mm; null where the parameter file does not say it.</param>
/// <param name="Grain">Which way the rolling direction lies in the part's own drawing; unknown where it does not matter.</param>
public sealed record Stock(string? Material, double? ThicknessMm, StripGrain? Grain);
