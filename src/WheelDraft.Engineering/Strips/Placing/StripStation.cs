using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What one strip serves, and where.</summary>
internal sealed record StripStation(string Net, StripContact? Contact, RingPlace? Ring)
{
    internal AdjustBrief? Adjust { get; init; }

    internal double SidePlayMm { get; init; }

    /// <summary>How much lower the wiper rides while its output is open, mm.</summary>
    internal double StepMm { get; init; }

    /// <summary>What its net must keep from the wheel's copper, mm.</summary>
    internal double ClearanceMm { get; init; }

    internal Point Tip { get; init; }
}
