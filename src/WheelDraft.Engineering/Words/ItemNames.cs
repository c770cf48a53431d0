namespace WheelDraft.Engineering;

/// <summary>What every design calls its own items, in rows of the report, on drawings and in findings.</summary>
internal static class ItemNames
{
    /// <summary>The one piece of copper of a windowed wheel.</summary>
    public const string Wheel = "wheel";

    /// <summary>A shaft of metal.</summary>
    public const string Shaft = "shaft";

    /// <summary>The carrier: a body, and the surface on which copper and wipers lie.</summary>
    public const string Carrier = "carrier";
}
