namespace WheelDraft.Engineering;

/// <summary>How a load is at one instant.</summary>
public enum LoadState
{
    /// <summary>At or below its drop-out voltage, or without supply.</summary>
    Off,

    /// <summary>At or above its pull-in voltage.</summary>
    On,

    /// <summary>Between the two: it may be either.</summary>
    Undecided,
}
