using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How far a search has come.</summary>
/// <param name="Designs">Designs worked out.</param>
/// <param name="Errors">Errors of the best so far.</param>
public readonly record struct SearchNews(int Designs, int Errors);

/// <summary>How a search is made.</summary>
public sealed record SearchRequest
{
    /// <summary>How much work.</summary>
    public SearchEffort Effort { get; init; } = SearchEffort.Usual;

    /// <summary>Whether a search that is stopped gives the best that it has; else it throws.</summary>
    public bool KeepsBest { get; init; }

    /// <summary>Called now and then, from the thread that searches; null for nobody.</summary>
    public Action<SearchNews>? Tell { get; init; }

    /// <summary>Cores that share the work at most; −1 for all. It changes nothing but the time.</summary>
    public int MostCores { get; init; } = -1;

    /// <summary>Whether it is told, where nothing meets, which wishes contradict each other also where nothing was left to be chosen.</summary>
    public bool AlwaysExplains { get; init; }

    /// <summary>Who attends to what takes long in the design that comes out; null for nobody.</summary>
    public LongWork? Attend { get; init; }

    /// <summary>Stops it.</summary>
    public CancellationToken Stop { get; init; }
}

/// <summary>A brief with nothing left to the program.</summary>
/// <param name="Brief">The brief.</param>
/// <param name="Told">What was chosen and how, as notes; empty where nothing was left.</param>
public sealed record SettledBrief(Brief Brief, IReadOnlyList<Finding> Told);

/// <summary>Chooses what a brief leaves to the program: stations, approaches, whole strips, the motor.</summary>
/// <remarks>A pattern search over whole degrees from several beginnings. Candidates are worked out side by side and compared in a fixed order, and the work is counted in
/// designs, never in seconds: the result is the same whatever the number of cores. Orders of rings are no part of it (<see cref="OrderSearch"/>).</remarks>
public static class SettingOut
{
    // Approaches that are tried to begin with, and beyond which an arm would reach back over the wheel; degrees.
    private static readonly int[] Begun = [90, 60, 35, 110];
    private const int MostApproachDeg = 150;
    private const int FirstStepDeg = 24;

    // Orders of rings that are tried one after the other where they go with stations; none more was ever needed.
    private const int MostOrders = 4;

    /// <summary>Whether a brief leaves anything to be chosen here.</summary>
    public static bool IsNeeded(Brief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        return LeavesPlaces(brief) || brief.Drive.ChoosesMotor;
    }

    /// <summary>Which wishes of a brief that nothing meets contradict each other, as an error; null where something meets, or where asking for less does not help.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="request">How the search was made.</param>
    public static Finding? Contradictions(Brief brief, SearchRequest request)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(request);
        return Contradiction.Of(brief, request) is { Together.Count: > 0 } found ? found.Finding(brief) : null;
    }

    /// <summary>The brief with everything chosen.</summary>
    /// <exception cref="DesignRefusedException">No candidate can be built at all: the reasons of the best.</exception>
    /// <exception cref="OperationCanceledException">It was stopped, and nobody asked for the best so far.</exception>
    public static SettledBrief Of(Brief brief, SearchRequest? request = null)
    {
        ArgumentNullException.ThrowIfNull(brief);
        request ??= new SearchRequest();
        List<Finding> told = [];
        if (LeavesPlaces(brief))
        {
            brief = Searched(brief, request, told);
        }

        return brief.Drive.ChoosesMotor ? MotorChoice.Of(brief, told) : new(brief, told);
    }

    // A station matters by the strip that stands there, and on a wheel of lands by how long it makes its lands.
    private static bool LeavesPlaces(Brief brief) => WiperSlot.Of(brief).Any(s => s.Free.Any || (s.FreeStation && (s.Strip >= 0 || brief.Wheel.Construction == WheelConstruction.Lands)));

    private static Brief Searched(Brief brief, SearchRequest request, List<Finding> told)
    {
        CandidateDesigns designs = new(brief);
        List<Candidate> beginnings = Beginnings(designs);
        if (brief.Wheel.Construction == WheelConstruction.Lands)
        {
            Candidate smallest = new LandApart(designs, request).From(beginnings[^1]);
            designs = designs.InBestOrder(smallest) ?? designs;
            beginnings.Insert(0, smallest);
        }

        PatternSearch search = new(designs, request);
        Candidate best = search.Run(beginnings);

        // Lands are as long as stations make them, and their best order goes with that: in turn until neither gets better.
        for (int round = 0; round < MostOrders && !search.WasStopped && designs.InBestOrder(best) is CandidateDesigns other; round++)
        {
            PatternSearch again = new(other, request) { Before = search.Designs };
            Candidate next = again.Run([best]);
            if (again.Best.Against(search.Best) >= 0)
            {
                break;
            }

            (designs, search, best) = (other, again, next);
        }

        Brief settled = designs.BriefOf(best);
        told.AddRange(designs.OrderNotes(best));
        told.Add(Finding.Note("setting-out.chosen", Aims(brief, search), brief.PlaceOf(brief.StripRecipe is null ? "wheel" : "strips")));
        return settled;
    }

    private static string Aims(Brief brief, PatternSearch search)
    {
        Merit standing = search.Best;
        string stopped = search.WasStopped ? ", stopped before its end" : "";
        string errors = standing.Errors == 0 ? "none" : standing.Errors >= Merit.Refused ? "cannot be built" : FormattableString.Invariant($"{standing.Errors} left");
        string size = brief.Wheel.OuterDiameterMm is null ? FormattableString.Invariant($"the smallest wheel ({standing.DiameterMm:0.###} mm)") : "with the diameter given, the largest least ratio of measured to required";
        return standing.StripsMm > 0
            ? FormattableString.Invariant($"Set out by the program, {search.Designs} designs worked out{stopped}. Aims in this order: no error ({errors}); {size}; the largest least ratio of distances, forces and factors ({standing.LeastRatio:0.###}); the shortest strips ({standing.StripsMm:0.#} mm in all); whole degrees. A good choice, not a proved optimum.")
            : FormattableString.Invariant($"Set out by the program, {search.Designs} designs worked out{stopped}. Aims in this order: no error ({errors}); {size}; the largest least ratio of distances; whole degrees. A good choice, not a proved optimum.");
    }

    // Stations spread evenly in file order and in the order of radii, as the wheel alone spreads them, each with arms of one approach.
    private static List<Candidate> Beginnings(CandidateDesigns designs)
    {
        List<Candidate> all = [];
        WheelLayout wheel = designs.First;
        int count = designs.Slots.Count;
        int[] byRadius = [.. Enumerable.Range(0, count).OrderBy(i => designs.Slots[i].Ring(wheel).RadiusMm)];
        int[] own = [.. designs.Slots.Select(s => Whole(s.StationRad(wheel)))];
        foreach (int approach in designs.Slots.Any(s => s.Free.Approach) ? Begun : Begun[..1])
        {
            int[] approaches = [.. Enumerable.Repeat(designs.Sense * approach, count)];
            all.Add(new(Spread(designs, own, [.. Enumerable.Range(0, count)]), approaches));
            all.Add(new(Spread(designs, own, byRadius), approaches));
            all.Add(new(own, approaches));
        }

        return all;
    }

    private static int[] Spread(CandidateDesigns designs, int[] own, int[] order)
    {
        int[] stations = [.. own];
        int[] free = [.. order.Where(i => designs.Slots[i].FreeStation)];
        int[] taken = [.. Enumerable.Range(0, own.Length).Where(i => !designs.Slots[i].FreeStation).Select(i => own[i])];
        int[] places = [.. Enumerable.Range(0, own.Length).Select(i => (int)Math.Round(360.0 * i / own.Length))];

        // Places of an even spread; those nearest to stations that are given are theirs.
        List<int> left = [.. places];
        foreach (int at in taken)
        {
            left.Remove(left.MinBy(p => Math.Abs((((p - at) % 360) + 540) % 360 - 180)));
        }

        for (int i = 0; i < free.Length; i++)
        {
            stations[free[i]] = left[i];
        }

        return stations;
    }

    private static int Whole(double rad) => (int)Math.Round(Angles.DegFromRad(rad)) % 360;

    /// <summary>The steps of a search: the first that is tried in each direction, degrees, and the greatest approach.</summary>
    internal static (int FirstDeg, int MostApproachDeg) Steps => (FirstStepDeg, MostApproachDeg);
}
