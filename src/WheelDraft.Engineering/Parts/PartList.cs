namespace WheelDraft.Engineering;

/// <summary>The parts of a design that are cut.</summary>
public sealed record PartList
{
    private PartList(Part wheel, Part carrier, IReadOnlyList<Part> strips) => (Wheel, Carrier, Strips) = (wheel, carrier, strips);

    private Lazy<IReadOnlyList<NestedStock>> _nested = new(() => []);

    /// <summary>The sheets on which parts are nested; worked out when first asked for, because it takes a second or two.</summary>
    internal IReadOnlyList<NestedStock> Nested => _nested.Value;

    /// <summary>The plates that strips are seated on, in file order of their surfaces.</summary>
    public IReadOnlyList<BasePlate> Bases { get; private init; } = [];

    /// <summary>The wheel's copper.</summary>
    public Part Wheel { get; }

    /// <summary>The carrier, whichever construction: between a live wheel and an earthed shaft it alone holds the copper.</summary>
    public Part Carrier { get; }

    /// <summary>The strips' blanks, in the order of <see cref="StripSet.Strips"/>.</summary>
    public IReadOnlyList<Part> Strips { get; }

    /// <summary>The cams, in file order.</summary>
    public IReadOnlyList<Part> Cams { get; private init; } = [];

    /// <summary>All of them, the wheel first.</summary>
    public IEnumerable<Part> All => [Wheel, Carrier, .. Cams, .. Strips, .. Bases.Select(b => b.Part)];

    /// <summary>The parts of a wheel and its strips, compensated for kerf.</summary>
    /// <exception cref="DesignRefusedException">One of them cannot be cut by the process.</exception>
    internal static PartList Of(Brief brief, WheelLayout wheel, StripSet strips, IReadOnlyList<AdjustingScrew> screws, LongWork? attend = null, IReadOnlyList<CamLayout>? cams = null)
    {
        IReadOnlyList<string> slugs = FileSlugs.Of(strips.Strips.Select(s => s.Form.Strip.Name));
        IReadOnlyList<string> camSlugs = FileSlugs.Of((cams ?? []).Select(c => c.Brief.Name));
        PartList parts = new(WheelPart(brief, wheel), CarrierPart(brief, wheel), [.. strips.Strips.Select((s, i) => StripPart(brief, s.Form, i, slugs[i]))])
        {
            Cams = [.. (cams ?? []).Select((c, i) => CamPart(brief, c, camSlugs[i]))],
            Bases = new BasePlates(brief, wheel, strips, screws).All(),
        };
        parts._nested = new(() => SheetNesting.Of(brief, parts, attend ?? LongWork.Unattended));
        return parts;
    }

    /// <summary>The parts as a shop gets them that allows for its kerf itself: files and whatever names them agree.</summary>
    internal PartList Nominal() => new(Wheel.Nominal(), Carrier.Nominal(), [.. Strips.Select(s => s.Nominal())]) { Bases = Bases, _nested = _nested };

    /// <summary>What the shop could not make of them.</summary>
    internal IEnumerable<Finding> Findings(Brief brief) =>
    [
        .. Strips.Prepend(Wheel).SelectMany(p => p.Shapes).SelectMany(s => CutChecks.Of(s, brief.Process)),
        .. Carrier.Recess?.Findings(brief) ?? [],
        .. Bases.SelectMany(b => b.Findings),
        .. SheetNesting.Findings(brief, this),
    ];

    private static Part WheelPart(Brief brief, WheelLayout wheel) => new()
    {
        Role = PartRole.Wheel,
        Name = wheel.Feed is null ? "LANDS" : "WHEEL",
        FileName = "wheel",
        Stock = new(brief.Wheel.Material, brief.Wheel.ThicknessMm, null),
        KerfMm = brief.Process.KerfMm,
        Shapes = [.. wheel.Copper.Select(c => CutShape.Of(c.Outline, brief.Process, wheel.Feed is null ? $"'{c.Name}'" : "the wheel", brief.PlaceOf("process")))],
    };

    // The process of the parameter file is that of the copper, and a carrier is cut by another.
    private static Part CarrierPart(Brief brief, WheelLayout wheel) => new()
    {
        Role = PartRole.Carrier,
        Name = "CARRIER",
        FileName = "carrier",
        Stock = new(null, brief.Carrier.ThicknessMm, null),
        KerfMm = null,
        Shapes = [new(wheel.Carrier, wheel.Carrier, "the carrier", brief.PlaceOf("carrier"))],
        Recess = CarrierRecess.Of(brief, wheel),
    };

    // A cam is as thick as it wants to be and cut by a process of its own.
    private static Part CamPart(Brief brief, CamLayout cam, string slug) => new()
    {
        Role = PartRole.Cam,
        Name = cam.Brief.Name,
        FileName = $"cam-{slug}",
        Stock = new(cam.Brief.Material, cam.Brief.ThicknessMm, null),
        KerfMm = null,
        Shapes = [new(cam.Outline, cam.Outline, $"cam \"{cam.Brief.Name}\"", brief.PlaceOf(FormattableString.Invariant($"cam[{cam.Index}]")))],
    };

    private static Part StripPart(Brief brief, StripForm form, int index, string slug) => new()
    {
        Role = PartRole.Strip,
        Name = form.Strip.Name,
        FileName = $"strip-{slug}",
        Stock = new(form.Strip.Material, form.Strip.ThicknessMm, form.Strip.Grain),
        KerfMm = brief.Process.KerfMm,
        Shapes =
        [
            CutShape.Of(form.Blank.Outline, brief.Process, $"the blank of strip \"{form.Strip.Name}\"", brief.PlaceOf(FormattableString.Invariant($"strip[{form.Index}]"))),
        ],
        StripIndex = index,
        HasFolds = form.Blank.FoldLines.Count > 0,
    };
}
