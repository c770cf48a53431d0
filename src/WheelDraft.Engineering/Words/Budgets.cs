namespace WheelDraft.Engineering;

/// <summary>What the program takes at most, so that nothing that a person feeds it runs on for minutes or fills the memory without a word.</summary>
/// <remarks>Each is far above what a rotary timer needs, and was found by trying: up to it a design takes a few seconds on two cores and less than 512 MiB.
/// Whoever raises one tries that again. What is over a budget is refused with its place and a way out, or cut short and told so.</remarks>
internal static class Budgets
{
    private const int Mebi = 1024 * 1024;

    /// <summary>Bytes of a parameter file: the largest demo has 9 kB, ten thousand steps of a scenario 400 kB. Read, it takes up to some four hundred times its size.
    /// A file without end is refused here.</summary>
    public const int ParameterFileBytes = Mebi;

    /// <summary>Faults of one file that are told: nobody reads more at once, and a file of the wrong kind has one at every line.</summary>
    public const int ToldFaults = 500;

    /// <summary>Bytes of a drawing to be checked: about three million group values; read, they take some ten times their size.</summary>
    public const int DrawingBytes = 32 * Mebi;

    /// <summary>Bytes of a font file: the largest with all ideographs have some 25 MiB.</summary>
    public const int FontBytes = 48 * Mebi;

    /// <summary>Seconds in which a file must have been read whole: a pipe into which nobody writes keeps one waiting for ever.</summary>
    public const int ReadingS = 10;

    /// <summary>Milliseconds by the clock after which a search in one text has run away. It takes microseconds; but where others are at work a program may
    /// have to wait for a processor for longer than a second in the midst of it.</summary>
    public const int PatternMs = 60_000;

    /// <summary>Tables of one kind, outputs or parts say: each is solved, measured and drawn against the others. Two hundred parts took 640 MB.</summary>
    public const int TablesOfAKind = 100;

    /// <summary>On-periods of all outputs together: each is a window to measure against every strip and to draw on five sheets. A thousand took 1.6 GB.</summary>
    public const int OnPeriods = 200;

    /// <summary>Draws of all on-periods together where [monte_carlo] does not say how many: a quarter of a second on two cores. Each on-period gets a million, fewer only where
    /// there are more than ten.</summary>
    public const int DrawsOfAll = 10_000_000;

    /// <summary>On-periods set out in all when single changes are tried for a tolerance that is not met: half a second.</summary>
    public const int ToleranceTrials = 2_000;

    /// <summary>Positions of the inputs that matter together, times intervals of the turn: each such state is solved, followed under every single fault, and listed in
    /// the report. 590,000 took half a minute and 75 MB of report.</summary>
    public const int CircuitStates = 65_536;

    /// <summary>Inputs of a circuit, whatever matters together: one bit each of a whole number without sign.</summary>
    public const int CircuitInputs = 30;

    /// <summary>Moments of one played scenario: each is a row of table, chart and CSV. Ten thousand hours of a three-minute wheel would have two million, 4 GB.</summary>
    public const int RunMoments = 5_000;

    /// <summary>Moments that the drawings of all runs of a file show together, bars and tables: more do not find room on an A0 sheet anyway.</summary>
    public const int DrawnMoments = 1_000;

    /// <summary>Scenarios of a file: each is a sheet of its own.</summary>
    public const int Scenarios = 50;

    /// <summary>Cams of a file: each is a part of its own with some hundred arcs, and a lever that every state of the circuit counts.</summary>
    public const int Cams = 4;

    /// <summary>Straight legs of all ribs and slots on one surface: paths over and round them are sought from each to each. Fifty took most of a minute.</summary>
    public const int BarrierLegs = 24;

    /// <summary>Changes tried over surfaces with ribs and slots when remedies are looked for: each measures creepage anew, 40 ms on a ribbed floor
    /// with five strips. A row that misses needs some twenty-five.</summary>
    public const int WalledTrials = 40;

    /// <summary>Wider end of a straight by its narrower end: the spring's chain is integrated over it, and from 1 µm to 1 m that took most of a minute. No strip that is
    /// formed tapers to less than a tenth.</summary>
    public const int TaperRatio = 50;

    /// <summary>Steps of height in which the legs of one strip are cut into prisms: at 0.01 mm a step, legs that rise over 100 mm in all.</summary>
    public const int StripSteps = 10_000;

    /// <summary>Designs of one table of varied keys: at ten milliseconds each two minutes of one core, and more than anyone reads.</summary>
    public const int DesignsVaried = 10_000;
}
