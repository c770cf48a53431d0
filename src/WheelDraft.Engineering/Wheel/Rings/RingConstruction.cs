namespace WheelDraft.Engineering;

/// <summary>What distinguishes one construction of wheel from another when its rings are put side by side.</summary>
internal abstract class RingConstruction
{
    /// <summary>Least distance between the bands of two rings, mm.</summary>
    public abstract double ApartMm { get; }

    /// <summary>Whether what lies between two rings is judged again with all spacing, so that a warning is enough here.</summary>
    public virtual bool IsWebJudgedElsewhere => false;

    /// <summary>What lies between two rings: copper or carrier.</summary>
    public abstract string Between { get; }

    /// <summary>What asks for <see cref="ApartMm"/>, in words.</summary>
    public abstract string ApartAsked { get; }

    /// <summary>Sets a ring at a radius.</summary>
    public abstract RingTrial At(RingDemand ring, double radiusMm);

    /// <summary>How far a ring's band reaches beyond its patch path, mm.</summary>
    public abstract double ReachMm(RingDemand ring);

    /// <summary>By how much a band must reach further for the trial to stand, mm; 0 when it stands.</summary>
    public virtual double LackMm(RingDemand ring, RingTrial trial) => 0;

    /// <summary>What asks for <see cref="LackMm"/>, in words.</summary>
    public virtual string LackWhy(RingDemand ring, RingTrial trial) => "";

    /// <summary>Whether the last ring may end where its patch does, and not where its band does.</summary>
    public virtual bool IsLastOpen => false;

    /// <summary>How far the wheel reaches at least beyond its last band, mm, unless that is open.</summary>
    /// <param name="apartMm">The distance used between rings.</param>
    public abstract double BeyondLastMm(double apartMm);

    /// <summary>The outer radius of the wheel, all rings in place.</summary>
    /// <param name="placed">The rings.</param>
    /// <param name="outermostMm">Where the last band ends.</param>
    /// <param name="apartMm">The distance used between rings.</param>
    /// <param name="hubMm">Where the hub ends.</param>
    public abstract double OuterRadiusMm(IReadOnlyList<PackedRing> placed, double outermostMm, double apartMm, double hubMm);

    /// <summary>The distance between rings below which a wheel cannot be cut at all, mm, where so much is needed.</summary>
    /// <remarks>Between it and what is needed a ring with a radius of its own stays, and the design has a finding.</remarks>
    public virtual double LeastCutMm(double neededMm) => neededMm;

    /// <summary>Whether a ring with a radius of its own that does not meet a rule stays all the same, and the design has a finding.</summary>
    /// <param name="code">The rule, as its finding is coded.</param>
    public virtual bool MissesInsteadOfRefusing(string code) => false;

    /// <summary>The place of a ring beside the one before it, in words.</summary>
    public abstract string Beside(double apartMm, RingDemand ring);
}
