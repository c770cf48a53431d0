using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The programme frame of a station: a wheel point lies in it at the programme angle at which it passes the station.</summary>
internal sealed record StationFrame(double StationRad, Motion Motion)
{
    /// <summary>From the programme frame to the wheel.</summary>
    public Placement ToWheel => (Motion.Sigma < 0 ? Placement.Identity : Placement.MirrorInX).Then(Placement.Turn(StationRad));

    /// <summary>The copper between two programme angles as wheel angles.</summary>
    public CircleArc Copper(double beginsRad, double endsRad) =>
        CircleArc.Sweep(Motion.WheelRad(StationRad, Motion.Sigma < 0 ? beginsRad : endsRad), endsRad - beginsRad);

    /// <summary>One on-period of a trial as the layout has it.</summary>
    public RingPeriod Period(RingDemand ring, RingTrial trial, RingAccount account, int index)
    {
        (OnPeriod wanted, PeriodCut cut) = (ring.Periods[index], trial.Cuts[index]);
        return new(wanted, cut.Make, cut.Break, Copper(cut.Make.AngleAt(trial.RadiusMm), cut.Break.AngleAt(trial.RadiusMm)))
        {
            Limits = account.Limits(wanted, cut),
            Bands = account.Bands(wanted, cut),
        };
    }
}
