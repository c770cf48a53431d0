using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The contacts of a wheel as its circuit sees them.</summary>
internal static class WheelContacts
{
    /// <summary>Edges exactly where they are asked for: before any wheel is set out.</summary>
    public static IReadOnlyList<ContactSchedule> Exact(Brief brief, Programme programme) =>
        [.. brief.Outputs.Zip(programme.Outputs, (o, p) => ContactSchedule.Exact(
            o.Name, o.Net, OtherNet(brief, o), p.IsAlways ? [CircleArc.Full] : [.. p.Periods.Select(a => a.Arc)]))];

    /// <summary>Edges within their worst-case bands on a wheel.</summary>
    /// <remarks>Frequency moves no edge by an angle. The rest of the worst case of an on-time is what its two edges may move
    /// together, so each edge alone gets the cut of its own and all that acts on both.</remarks>
    public static IReadOnlyList<ContactSchedule> OnWheel(Brief brief, Motion motion, WheelLayout wheel) =>
        [.. brief.Outputs.Select((o, i) => OfRing(brief, motion, o, wheel.Rings[i]))];

    private static ContactSchedule OfRing(Brief brief, Motion motion, OutputBrief output, RingLayout ring) => ring.IsWhole
        ? ContactSchedule.Exact(output.Name, output.Net, OtherNet(brief, output), CircleArc.Full)
        : new ContactSchedule(output.Name, output.Net, OtherNet(brief, output), [.. ring.Periods.Select(p => Period(motion, p))]);

    private static MadePeriod Period(Motion motion, RingPeriod period)
    {
        TimingLimits limits = period.Limits;
        double both = limits.CentreS + limits.SlopeS;
        double worn = limits.WearS / 2;
        EdgeBand Band(double cutS, double earlierS, double laterS) =>
            new(motion.RadFromSeconds(cutS + both + earlierS), motion.RadFromSeconds(cutS + both + laterS));
        return new(period.Wanted.Arc, Band(limits.MakeEdgeS, worn, 0), Band(limits.BreakEdgeS, 0, worn));
    }

    /// <summary>The other side of an output's contact: the feed's net, or that of the second wiper of a lands wheel.</summary>
    public static string OtherNet(Brief brief, OutputBrief output) => output.ReturnNet ?? brief.Feed?.Net ?? brief.Supply.Lines[0];
}
