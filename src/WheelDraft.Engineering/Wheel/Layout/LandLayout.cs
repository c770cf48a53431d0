using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

// The folder "Lands": a wheel of separate copper lands on an insulating carrier. What a ring needs in every construction
// (patches, edges, packing, stations) stands one folder up and is used from there.

/// <summary>One land on its ring.</summary>
/// <remarks>A land is joined to each wiper whose patch touches it; under none it floats and splits creepage paths as any
/// floating copper does.</remarks>
/// <param name="Name">As reports call it; also its net, because a land is a net of its own.</param>
/// <param name="Outline">Its outline, wheel frame.</param>
/// <param name="OnWiper">Programme angles over which the output's own wiper touches it.</param>
/// <param name="OnReturn">Programme angles over which the second wiper touches it.</param>
public sealed record LandLayout(string Name, Outline Outline, CircleArc OnWiper, CircleArc OnReturn)
{
    /// <summary>Programme angles over which no wiper touches it, in the order met after the output's own wiper has left it.</summary>
    public IReadOnlyList<CircleArc> Floats => OnWiper.Complement.Intersect(OnReturn.Complement);

    /// <summary>Programme angles over which it joins both wipers.</summary>
    public IReadOnlyList<CircleArc> Joins => OnWiper.Intersect(OnReturn);

    /// <summary>What it is joined to at a programme angle.</summary>
    public LandState StateAt(double programmeRad) => (OnWiper.Contains(programmeRad), OnReturn.Contains(programmeRad)) switch
    {
        (true, true) => LandState.OnBoth,
        (true, false) => LandState.OnWiper,
        (false, true) => LandState.OnReturn,
        _ => LandState.Floating,
    };
}

/// <summary>What a land is joined to.</summary>
public enum LandState
{
    /// <summary>Under no wiper.</summary>
    Floating,

    /// <summary>Under the output's own wiper: on its net.</summary>
    OnWiper,

    /// <summary>Under the second wiper: on the return net.</summary>
    OnReturn,

    /// <summary>Under both: the output is closed.</summary>
    OnBoth,
}

/// <summary>The second wiper on a ring of lands.</summary>
/// <param name="Net">Its net.</param>
/// <param name="StationRad">Its station, housing angle, rad in [0, 2π).</param>
/// <param name="Patch">Its contact patch, wiper frame.</param>
public sealed record ReturnWiper(string Net, double StationRad, ContactPatch Patch)
{
    /// <summary>Programme angle from the wiper that a land meets first to the other, the short way round, rad in (0, π].</summary>
    public required double ApartRad { get; init; }

    /// <summary>Whether a land meets this wiper before the output's own.</summary>
    public required bool IsUpstream { get; init; }

    /// <summary>Distance between the patches of both wipers, mm.</summary>
    public required double PatchGapMm { get; init; }
}
