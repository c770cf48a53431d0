namespace WheelDraft.Engineering;

/// <summary>What a lever's contact does while something holds the lever.</summary>
internal enum LeverHold
{
    /// <summary>It goes on as the cam moves it.</summary>
    AsFree,

    /// <summary>It stays open.</summary>
    Open,

    /// <summary>It stays closed.</summary>
    Closed,
}

/// <summary>The contact of a cam's lever as the circuit sees it.</summary>
/// <remarks>The lever is where the cam lifts it, or higher: at an obstacle that is in its way, at its latch. What holds it comes and goes at any time, as a hand
/// or what falls in its way may, so both count as inputs that are free to change. A contact has one place: below it one state, above it the other, so an obstacle
/// either changes nothing or keeps the contact in one state.</remarks>
/// <param name="Cam">Name of the cam.</param>
/// <param name="Input">Name of the input that the contact is.</param>
/// <param name="Free">When it is closed while nothing holds the lever.</param>
internal sealed record LeverSchedule(string Cam, string Input, ContactSchedule Free)
{
    /// <summary>What it does while something is in the lever's way; null where nothing ever is.</summary>
    public LeverHold? Blocked { get; init; }

    /// <summary>What it does while the lever is hooked up; null where it cannot be.</summary>
    public LeverHold? Latched { get; init; }

    /// <summary>Whether it is closed with the lever at rest: what it senses of its own, the cam being out of the way.</summary>
    public bool ClosedAtRest { get; init; }

    /// <summary>Whether it is closed with the lever at its greatest lift.</summary>
    public bool ClosedAtTop { get; init; }
}
