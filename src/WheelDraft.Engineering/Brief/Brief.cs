namespace WheelDraft.Engineering;

// The chapter "Brief": what the person asked for, already valid, in base units (mm, s, rad, V, A, W, N, N m, l/s, Hz).
// Nothing here computes; nothing here knows a file. Everything engineered from it lives in the other chapters.

/// <summary>Everything that one parameter file asks for.</summary>
/// <remarks>Made by the reader of parameter files, which has checked form, ranges and names; tests make their own.
/// Lengths in mm, times in s, angles in rad, everything else SI unless the name says so.</remarks>
public sealed record Brief
{
    /// <summary>Title of the design.</summary>
    public required string Title { get; init; }

    /// <summary>Drawing number, or null.</summary>
    public string? DrawingNumber { get; init; }

    /// <summary>Unit of drawings and cutting files.</summary>
    public DrawingUnit DrawingUnit { get; init; } = DrawingUnit.Millimetre;

    /// <summary>The only date that ever appears in an output, or null.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Who answers for the drawing.</summary>
    public DrawingOfficeBrief Office { get; init; } = new();

    /// <summary>SHA-256 of the file's bytes, lower-case hexadecimal.</summary>
    public string InputSha256 { get; init; } = "";

    /// <summary>The first eight digits of the hash, which every part, drawing and page carries, so that those of two designs are not mixed up; empty without a hash.</summary>
    public string InputMark => (SettledSha256 ?? InputSha256) is { Length: >= 8 } hash ? hash[..8] : "";

    /// <summary>SHA-256 of the file with every "auto" replaced by what was chosen, lower-case hexadecimal; null where nothing was. The mark is its: what is
    /// made of a file and of the same file settled is the same.</summary>
    public string? SettledSha256 { get; init; }

    /// <summary>The supply.</summary>
    public required SupplyBrief Supply { get; init; }

    /// <summary>The surroundings.</summary>
    public required EnvironmentBrief Environment { get; init; }

    /// <summary>The drive.</summary>
    public required DriveBrief Drive { get; init; }

    /// <summary>The spacing rules.</summary>
    public required SpacingBrief Spacing { get; init; }

    /// <summary>How exactly the fixed parts are made.</summary>
    public Housing Housing { get; init; } = Housing.Exact;

    /// <summary>The wheel.</summary>
    public required WheelBrief Wheel { get; init; }

    /// <summary>The insulating body under the copper.</summary>
    public required CarrierBrief Carrier { get; init; }

    /// <summary>How the copper is cut.</summary>
    public required ProcessBrief Process { get; init; }

    /// <summary>The feed wiper; null for a lands wheel.</summary>
    public FeedBrief? Feed { get; init; }

    /// <summary>The outputs in file order; at least one.</summary>
    public required IReadOnlyList<OutputBrief> Outputs { get; init; }

    /// <summary>The electrical loads in file order.</summary>
    public IReadOnlyList<LoadBrief> Loads { get; init; } = [];

    /// <summary>Sensors and switches in file order.</summary>
    public IReadOnlyList<InputBrief> Inputs { get; init; } = [];

    /// <summary>The drive motor as a load named "motor", or null.</summary>
    public LoadBrief? DriveMotor { get; init; }

    /// <summary>Safety claims in file order.</summary>
    public IReadOnlyList<InterlockBrief> Interlocks { get; init; } = [];

    /// <summary>How the tolerance draws are made.</summary>
    public MonteCarloBrief MonteCarlo { get; init; } = new();

    /// <summary>Histories to play, in file order.</summary>
    public IReadOnlyList<ScenarioBrief> Scenarios { get; init; } = [];

    /// <summary>Fixed insulating surfaces.</summary>
    public IReadOnlyList<SurfaceBrief> Surfaces { get; init; } = [];

    /// <summary>How exactly strips are made.</summary>
    public FormingBrief Forming { get; init; } = new();

    /// <summary>What strips set out by the program are made of; null when the file does not say.</summary>
    public StripsBrief? StripRecipe { get; init; }

    /// <summary>Formed copper strips; with a recipe one for every wiper.</summary>
    public IReadOnlyList<StripBrief> Strips { get; init; } = [];

    /// <summary>Other conductive or touchable things.</summary>
    public IReadOnlyList<PartBrief> Parts { get; init; } = [];

    /// <summary>Raised insulating walls.</summary>
    public IReadOnlyList<RibBrief> Ribs { get; init; } = [];

    /// <summary>Slots and grooves.</summary>
    public IReadOnlyList<SlotBrief> Slots { get; init; } = [];

    /// <summary>Cams on the wheel's shaft, in file order.</summary>
    public IReadOnlyList<CamBrief> Cams { get; init; } = [];

    /// <summary>Sheets that parts are nested on.</summary>
    public IReadOnlyList<SheetBrief> Sheets { get; init; } = [];

    /// <summary>Where each key stands in the file, by path: <c>supply.voltage</c>, <c>output[1].on[0].for</c>, <c>strip[0].shape[3]</c>.</summary>
    public IReadOnlyDictionary<string, TextPlace> Places { get; init; } = new Dictionary<string, TextPlace>(StringComparer.Ordinal);

    /// <summary>Whether the file says what the timer feeds: a load, or the drive motor.</summary>
    internal bool FeedsAnything => Loads.Count > 0 || DriveMotor is not null;

    /// <summary>The other side of an output's contact: the feed's net, or that of the second wiper of a lands wheel.</summary>
    internal string OtherNetOf(OutputBrief output) => output.ReturnNet ?? Feed?.Net ?? Supply.Lines[0];

    /// <summary>Where a key stands, or the nearest table round it; 1:1 when nothing is known.</summary>
    /// <param name="path">A path as in <see cref="Places"/>.</param>
    public TextPlace PlaceOf(string path)
    {
        for (string at = path; at.Length > 0;)
        {
            if (Places.TryGetValue(at, out TextPlace place))
            {
                return place;
            }

            int cut = at.LastIndexOfAny(['.', '[']);
            at = cut > 0 ? at[..cut] : "";
        }

        return new TextPlace(1, 1);
    }
}

/// <summary>The unit that drawings and cutting files use.</summary>
public enum DrawingUnit
{
    /// <summary>Millimetres.</summary>
    Millimetre,

    /// <summary>Inches of 25.4 mm.</summary>
    Inch,
}
