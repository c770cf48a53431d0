using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The two wipers of a ring of lands, in the order in which a land meets them.</summary>
/// <remarks>A land makes when it reaches the downstream wiper and breaks when it leaves the upstream one, so it is as much longer
/// than the on-period as the wipers stand apart. Of the two ways round the shorter is taken: it gives the shorter land and the
/// wider gap. At exactly half a turn the output's own wiper is upstream.</remarks>
/// <param name="Upstream">Patch of the wiper met first.</param>
/// <param name="Downstream">Patch of the wiper met last.</param>
/// <param name="ApartRad">Programme angle from the first to the last, in (0, π]; 0 when both stand at one station.</param>
/// <param name="ReturnIsUpstream">Whether the second wiper of the file is the first met.</param>
/// <param name="Direction">Which way the wheel turns.</param>
internal sealed record WiperPair(ContactPatch Upstream, ContactPatch Downstream, double ApartRad, bool ReturnIsUpstream, Turning Direction)
{
    // Half a turn found by adding up degrees may be a hair more: the output's own wiper is upstream all the same.
    private const double SameRad = 1e-12;

    /// <summary>The pair of two wipers at their stations.</summary>
    public static WiperPair Of(WiperPlace own, WiperPlace other, Motion motion)
    {
        double later = Angles.InTurn(motion.Sigma * (other.StationRad - own.StationRad));
        return later > Math.PI + SameRad
            ? new(other.Patch, own.Patch, Angles.TurnRad - later, ReturnIsUpstream: true, motion.Direction)
            : new(own.Patch, other.Patch, Math.Min(later, Math.PI), ReturnIsUpstream: false, motion.Direction);
    }

    /// <summary>Programme angle from the output's own wiper to the second one, negative when that is met first.</summary>
    public double ReturnLaterRad => ReturnIsUpstream ? -ApartRad : ApartRad;

    /// <summary>Both at the end of their lives.</summary>
    public WiperPair Worn => this with { Upstream = Upstream.Worn, Downstream = Downstream.Worn };

    /// <summary>How far a patch reaches beyond its station, rad.</summary>
    public double ReachRad(bool isUpstream, EdgeEnd end, double radiusMm) =>
        new ProgrammePatch(isUpstream ? Upstream : Downstream, Direction).ReachRad(end, radiusMm);

    /// <summary>Distance between the two patches on a ring radius, mm; 0 when they overlap.</summary>
    public double PatchGapMm(double radiusMm) =>
        Distances.Between(Upstream.At(radiusMm, 0), Downstream.At(radiusMm, Direction == Turning.Anticlockwise ? ApartRad : -ApartRad)).DistanceMm;
}

/// <summary>A wiper at its station.</summary>
/// <param name="Patch">Its patch.</param>
/// <param name="StationRad">Housing angle.</param>
internal sealed record WiperPlace(ContactPatch Patch, double StationRad);

/// <summary>What the lands of one ring must keep.</summary>
/// <param name="Pair">The two wipers.</param>
/// <param name="GapMm">Between neighbouring lands, tolerances included.</param>
/// <param name="WipersMm">Between the new patches of the two wipers, play and wear included.</param>
/// <param name="Why">What asks for both, in words.</param>
internal sealed record LandDemand(WiperPair Pair, double GapMm, double WipersMm, string Why);
