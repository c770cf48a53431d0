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
    public static IReadOnlyList<ContactSchedule> OnWheel(Brief brief, WheelLayout wheel) =>
        [.. brief.Outputs.Select((o, i) => OfRing(brief, o, wheel.Rings[i]))];

    private static ContactSchedule OfRing(Brief brief, OutputBrief output, RingLayout ring) => ring.IsWhole
        ? ContactSchedule.Exact(output.Name, output.Net, OtherNet(brief, output), CircleArc.Full)
        : new ContactSchedule(output.Name, output.Net, OtherNet(brief, output), [.. ring.Periods.Select(p => new MadePeriod(p.Wanted.Arc, p.Bands.Make, p.Bands.Break))]);

    /// <summary>The other side of an output's contact: the feed's net, or that of the second wiper of a lands wheel.</summary>
    public static string OtherNet(Brief brief, OutputBrief output) => output.ReturnNet ?? brief.Feed?.Net ?? brief.Supply.Lines[0];
}
