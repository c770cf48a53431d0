namespace WheelDraft.Engineering;

// The chapter "Bench": what a timer did on the bench. ContactTracker turns rows into spells, TurnFinder finds the turn time, TurnWalk tells every
// edge its place in the turn, BenchTurns averages; BenchComparison holds that against a design. Nothing here knows a file.

/// <summary>What a bench log says: when each contact was closed.</summary>
/// <param name="Contacts">The contacts in the order of the log.</param>
/// <param name="FromS">Time of the first row, s.</param>
/// <param name="ToS">Time of the last row, s.</param>
internal sealed record BenchRecord(IReadOnlyList<LoggedContact> Contacts, double FromS, double ToS)
{
    /// <summary>Usual time between two rows, s; 0 for a list of changes.</summary>
    public double StepS { get; init; }

    /// <summary>Longest gap that was taken for bounce, s.</summary>
    public double BounceS { get; init; }

    /// <summary>Rows read.</summary>
    public long Rows { get; init; }

    /// <summary>How far, at most, an interval may be off by what a log cannot see at both of its ends, s.</summary>
    public double SlackS => (2.5 * StepS) + BounceS;
}

/// <summary>A contact in a log.</summary>
/// <param name="Name">Name of its column.</param>
/// <param name="Spells">When it was closed, by time, bounce joined.</param>
internal sealed record LoggedContact(string Name, IReadOnlyList<ContactSpell> Spells)
{
    /// <summary>Gaps that were joined as bounce, or as the gaps of an alternating voltage.</summary>
    public long Joined { get; init; }

    /// <summary>Closures shorter than a bounce that stand alone and were left out.</summary>
    public long Blips { get; init; }
}

/// <summary>A stretch in which a contact was closed.</summary>
/// <param name="Make">Its first touch.</param>
/// <param name="Break">Its last.</param>
internal readonly record struct ContactSpell(LoggedEdge Make, LoggedEdge Break)
{
    /// <summary>From make to break, s.</summary>
    public double OnS => Break.AtS - Make.AtS;

    /// <summary>Whether the log holds both of its ends.</summary>
    public bool IsWhole => Make.IsSeen && Break.IsSeen;
}

/// <summary>An edge in a log.</summary>
/// <param name="AtS">When, s.</param>
/// <param name="HalfWidthS">It lies within so much of that, s: half the time between the two rows round it.</param>
/// <param name="IsSeen">Whether the log holds it; else the contact was closed already when the log began, or still when it ended.</param>
internal readonly record struct LoggedEdge(double AtS, double HalfWidthS, bool IsSeen);
