using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The contacts of a wheel as its circuit sees them.</summary>
internal static class WheelContacts
{
    /// <summary>Edges exactly where they are asked for: before any wheel is set out.</summary>
    public static IReadOnlyList<ContactSchedule> Exact(Brief brief, Programme programme) =>
        [.. brief.Outputs.Zip(programme.Outputs, (o, p) => ContactSchedule.Exact(
            o.Name, o.Net, brief.OtherNetOf(o), p.IsAlways ? [CircleArc.Full] : [.. p.Periods.Select(a => a.Arc)]))];

    /// <summary>Edges within their worst-case bands on a wheel.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="wheel">The wheel.</param>
    /// <param name="woundMm">How far friction moves the wiper of an output along the motion at most, mm, so that its edges come later.</param>
    public static IReadOnlyList<ContactSchedule> OnWheel(Brief brief, WheelLayout wheel, Func<int, double>? woundMm = null) =>
        [.. brief.Outputs.Select((o, i) => OfRing(brief, o, wheel.Rings[i], (woundMm?.Invoke(i) ?? 0) / wheel.Rings[i].PathFromMm))];

    private static ContactSchedule OfRing(Brief brief, OutputBrief output, RingLayout ring, double laterRad)
    {
        EdgeBand Wound(EdgeBand band) => band with { LaterRad = band.LaterRad + laterRad };
        return ring.IsWhole
            ? ContactSchedule.Exact(output.Name, output.Net, brief.OtherNetOf(output), CircleArc.Full)
            : new ContactSchedule(output.Name, output.Net, brief.OtherNetOf(output), [.. ring.Periods.Select(p => new MadePeriod(p.Wanted.Arc, Wound(p.Bands.Make), Wound(p.Bands.Break)))]);
    }
}
