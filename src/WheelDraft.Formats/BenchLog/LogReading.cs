using WheelDraft.Engineering;

namespace WheelDraft.Formats.BenchLog;

// The folder "BenchLog": tables that instruments write, read as they are. LogLayout finds out how a file is laid out, LogScan goes through its rows once
// at constant memory, LogReader puts both together; AnglesReader reads the protractor table of an old wheel; LearnedFile writes a parameter file from either.

/// <summary>What a person says about a log.</summary>
internal sealed record LogOptions
{
    /// <summary>A contact whose joined gaps may be so long, s: contacts of springs on copper chatter for some hundredths of a second (common practice, no source).</summary>
    public const double UsualBounceS = 0.1;

    /// <summary>A column in volts is on above this, V; null when not given.</summary>
    public double? OnAboveV { get; init; }

    /// <summary>A shorter gap is bounce, s, above 0.</summary>
    public double BounceS { get; init; } = UsualBounceS;

    /// <summary>Seconds in a unit of the time column; null to find it in the header.</summary>
    public double? TimeUnitS { get; init; }
}

/// <summary>A log that was read.</summary>
/// <param name="Record">What it says.</param>
/// <param name="Taken">What was taken for what, in sentences.</param>
internal sealed record LogReading(BenchRecord Record, IReadOnlyList<string> Taken);
