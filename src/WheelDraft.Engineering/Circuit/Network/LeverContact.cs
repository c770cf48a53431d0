namespace WheelDraft.Engineering;

/// <summary>A lever's contact in the numbered circuit: a contact of the turn, and what can hold it as inputs of their own that join nothing.</summary>
/// <param name="Schedule">What was asked.</param>
/// <param name="Contact">Index of its contact.</param>
/// <param name="BlockedInput">Index of the input that says that something is in its way, or −1.</param>
/// <param name="LatchedInput">Index of the input that says that it is hooked up, or −1.</param>
internal sealed record LeverContact(LeverSchedule Schedule, int Contact, int BlockedInput, int LatchedInput)
{
    /// <summary>What the name of an input adds to that of a cam: the lever is in something's way.</summary>
    public const string Blocked = " blocked";

    /// <summary>The lever is hooked up.</summary>
    public const string Latched = " latched";

    /// <summary>What holds the contact at an input position; the latch before the obstacle, because it holds the lever higher.</summary>
    public LeverHold Hold(int inputs) => Has(inputs, LatchedInput) ? Schedule.Latched!.Value : Has(inputs, BlockedInput) ? Schedule.Blocked!.Value : LeverHold.AsFree;

    /// <summary>What the input means at an input position: what the contact would be with the cam out of the way.</summary>
    public bool Means(int inputs) => Hold(inputs) switch
    {
        LeverHold.Open => false,
        LeverHold.Closed => true,
        _ => Schedule.ClosedAtRest,
    };

    private static bool Has(int inputs, int input) => input >= 0 && (inputs >> input & 1) != 0;
}
