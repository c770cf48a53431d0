namespace WheelDraft.Engineering;

/// <summary>What is asked of the wheel.</summary>
/// <param name="Construction">One copper piece with windows, or separate lands.</param>
/// <param name="ThicknessMm">Copper thickness.</param>
/// <param name="Material">Alloy and temper, e.g. C11000-H02.</param>
/// <param name="Bore">The bore.</param>
/// <param name="Shaft">What the shaft is, electrically.</param>
/// <param name="WebMm">Least copper between windows.</param>
public sealed record WheelBrief(WheelConstruction Construction, double ThicknessMm, string Material, BoreBrief Bore, ShaftKind Shaft, double WebMm)
{
    /// <summary>Outer diameter, mm; null for the smallest that meets every rule.</summary>
    public double? OuterDiameterMm { get; init; }

    /// <summary>Holes for screws or rivets; null for none.</summary>
    public FixingsBrief? Fixings { get; init; }

    /// <summary>Diameter of the metal part inside the bore, mm; null when the shaft is insulating.</summary>
    public double? ShaftDiameterMm { get; init; }

    /// <summary>Net of a live shaft; null otherwise.</summary>
    public string? ShaftNet { get; init; }

    /// <summary>Radial run-out, total indicator reading, mm: the centre is off by half of it.</summary>
    public double RunOutMm { get; init; }

    /// <summary>Axial run-out, total, mm.</summary>
    public double FaceRunOutMm { get; init; }

    /// <summary>Whether a whole ring of copper is kept outside the last window.</summary>
    public bool Rim { get; init; } = true;

    /// <summary>Names of all rings from the inside outwards, the feed's among them as <see cref="FeedBrief.NameInOrder"/>; null for the usual order.</summary>
    public IReadOnlyList<string>? RingOrder { get; init; }

    /// <summary>Whether the order of rings is searched for that gives the smallest wheel.</summary>
    public bool SearchesRingOrder { get; init; }
}

/// <summary>How a wheel is built.</summary>
public enum WheelConstruction
{
    /// <summary>One copper piece, with a window wherever a ring is off.</summary>
    Windowed,

    /// <summary>Separate copper lands on an insulating carrier.</summary>
    Lands,
}

/// <summary>The bore, round or with one flat.</summary>
/// <param name="DiameterMm">Diameter.</param>
/// <param name="FlatMm">From the flat to the opposite side; null for a round bore.</param>
/// <param name="FlatAtRad">Direction of the flat's normal, wheel angle.</param>
public sealed record BoreBrief(double DiameterMm, double? FlatMm, double FlatAtRad)
{
    /// <summary>Its fit or tolerance as it is written beside the diameter, e.g. H7; empty for the cut's own. Nothing is worked out from it.</summary>
    public string Fit { get; init; } = "";
}

/// <summary>Equal holes on a pitch circle.</summary>
/// <param name="Count">How many.</param>
/// <param name="DiameterMm">Diameter of each.</param>
/// <param name="PitchCircleMm">Diameter of the pitch circle; null to put them in the hub.</param>
/// <param name="FirstAtRad">Direction of the first one, wheel angle.</param>
public sealed record FixingsBrief(int Count, double DiameterMm, double? PitchCircleMm, double FirstAtRad)
{
    /// <summary>Width of a head or nut where none is given, as a multiple of the hole (common practice, no source): no usual one is wider.</summary>
    public const double HeadByHole = 2;

    /// <summary>More circles of the same holes, for copper that windows part from the hub.</summary>
    public IReadOnlyList<FixingCircle> More { get; init; } = [];

    /// <summary>Greatest diameter of head and nut as given, mm; null when left out.</summary>
    public double? GivenHeadMm { get; init; }

    /// <summary>Greatest diameter of head and nut, mm.</summary>
    public double HeadMm => GivenHeadMm ?? (HeadByHole * DiameterMm);
}

/// <summary>One more circle of fixings.</summary>
/// <param name="Count">How many holes.</param>
/// <param name="PitchCircleMm">Diameter of the pitch circle.</param>
/// <param name="FirstAtRad">Direction of the first one, wheel angle.</param>
public sealed record FixingCircle(int Count, double PitchCircleMm, double FirstAtRad);

/// <summary>What the shaft is, electrically.</summary>
public enum ShaftKind
{
    /// <summary>No conductor.</summary>
    Insulating,

    /// <summary>On a live net.</summary>
    Live,

    /// <summary>Earthed.</summary>
    Earthed,

    /// <summary>A person can touch it.</summary>
    Touchable,

    /// <summary>Metal, connected to nothing.</summary>
    Floating,
}

/// <summary>The insulating body that the copper is let into or fixed on.</summary>
/// <param name="Group">Material group by comparative tracking index.</param>
/// <param name="ThicknessMm">Thickness.</param>
/// <param name="StepMm">How far the copper face stands proud of the carrier face; 0 for flush; below 0 is refused.</param>
public sealed record CarrierBrief(MaterialGroup Group, double ThicknessMm, double StepMm)
{
    /// <summary>The comparative tracking index, when the group comes from it.</summary>
    public double? Cti { get; init; }

    /// <summary>Diameter, mm; null for the wheel's own.</summary>
    public double? DiameterMm { get; init; }
}

/// <summary>Insulating materials by comparative tracking index (IEC 60664-1).</summary>
public enum MaterialGroup
{
    /// <summary>600 and over.</summary>
    I,

    /// <summary>400 to below 600.</summary>
    II,

    /// <summary>175 to below 400.</summary>
    IIIa,

    /// <summary>100 to below 175.</summary>
    IIIb,
}

/// <summary>How the copper is cut: numbers already resolved from the process list and the person's own.</summary>
/// <param name="Name">Name of the process; null when only own numbers are given.</param>
/// <param name="KerfMm">Width that the cut takes; 0 when the shop compensates.</param>
/// <param name="ToleranceMm">A cut edge, normal to itself, plus and minus, each edge by itself.</param>
/// <param name="LeastSlotMm">Narrowest opening.</param>
/// <param name="LeastWebMm">Narrowest copper.</param>
/// <param name="LeastHoleMm">Smallest hole.</param>
/// <param name="InsideRadiusMm">Radius of re-entrant corners.</param>
public sealed record ProcessBrief(
    string? Name,
    double KerfMm,
    double ToleranceMm,
    double LeastSlotMm,
    double LeastWebMm,
    double LeastHoleMm,
    double InsideRadiusMm)
{
    /// <summary>Holding tabs on every outer contour; 0 for none.</summary>
    public int HoldingTabs { get; init; }

    /// <summary>Width of each, mm.</summary>
    public double TabWidthMm { get; init; }
}

/// <summary>Sheets that everything of one material and thickness is nested on.</summary>
/// <param name="Material">Alloy and temper.</param>
/// <param name="ThicknessMm">Thickness, mm.</param>
/// <param name="WidthMm">Along x, the rolling direction, mm.</param>
/// <param name="HeightMm">Along y, mm.</param>
/// <param name="GapMm">Between parts as they are cut, and to the edge, mm.</param>
/// <param name="Sets">For how many timers.</param>
public sealed record SheetBrief(string Material, double ThicknessMm, double WidthMm, double HeightMm, double GapMm, int Sets);

/// <summary>The wiper that brings the wheel its net.</summary>
/// <param name="Net">Net.</param>
/// <param name="StationRad">Where it touches, housing angle; null for auto.</param>
/// <param name="Contact">Its contact.</param>
/// <param name="SidePlayMm">Radial play, plus and minus.</param>
public sealed record FeedBrief(string Net, double? StationRad, ContactBrief Contact, double SidePlayMm)
{
    /// <summary>What the feed's ring is called in the order of rings.</summary>
    public const string NameInOrder = "feed";

    /// <summary>Ring radius, mm; null for auto.</summary>
    public double? RadiusMm { get; init; }
}

/// <summary>The contact of a wiper, as far as the file gives it; a strip may give the rest.</summary>
/// <param name="LengthMm">Contact patch along the motion, across the fold; the diameter for a rivet.</param>
/// <param name="WidthMm">Along the fold; null when the strip gives it or with a rivet.</param>
/// <param name="WornLengthMm">Length at the end of its life; the new length when not given.</param>
/// <param name="AngleRad">Fold line from the radial direction; null when the strip gives it or 0.</param>
/// <param name="NoseRadiusMm">Radius of the contact along the motion; null when a strip gives it or unknown.</param>
public sealed record ContactBrief(double LengthMm, double? WidthMm, double WornLengthMm, double? AngleRad, double? NoseRadiusMm);
