namespace WheelDraft.Geometry;

/// <summary>Where a point lies with regard to a shape.</summary>
public enum Whereabouts
{
    /// <summary>Outside, or in a hole.</summary>
    Outside,

    /// <summary>On the edge, within the tolerance.</summary>
    OnEdge,

    /// <summary>Inside.</summary>
    Inside,
}
