namespace WheelDraft.Engineering;

// The chapter "Wheel": from on-periods and patches to radii, edges, stations and one piece of copper.
// Nothing here knows a standard's table: required distances come in, already worked out.

/// <summary>Sets the wheel out, for either construction.</summary>
internal static class WheelSetter
{
    /// <summary>The wheel of a task.</summary>
    /// <exception cref="DesignRefusedException">It cannot be built as asked.</exception>
    public static WheelLayout Of(WheelTask task) => task.Brief.Wheel.Construction switch
    {
        WheelConstruction.Lands => new LandsSetter(task).Set(),
        _ => new WindowedSetter(task).Set(),
    };
}
