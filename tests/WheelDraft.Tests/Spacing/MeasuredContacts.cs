using WheelDraft.Engineering;

namespace WheelDraft.Tests.Spacing;

/// <summary>Sets out a wheel under patches of any kind, all outputs alike, and measures its open contacts at supply voltage.</summary>
/// <param name="Brief">What was asked.</param>
/// <param name="Wheel">The wheel.</param>
/// <param name="Open">Its open contacts.</param>
internal sealed record MeasuredContacts(Brief Brief, WheelLayout Wheel, IReadOnlyList<OpenContact> Open)
{
    /// <summary>The only output's.</summary>
    public OpenContact Only => Open.Single();

    /// <summary>With the wheel standing only where it is told to park, at voltage across every contact.</summary>
    public static MeasuredContacts Of(Brief brief, ContactPatch patch, params IReadOnlyList<ParkedPosition> parked)
    {
        IReadOnlyList<StandingStretch> standing = Standing(parked);
        Motion motion = Motion.Of(brief);
        IReadOnlyList<ContactPatch> all = [.. brief.Outputs.Select(_ => patch)];
        bool isLands = brief.Wheel.Construction == WheelConstruction.Lands;
        WiperContacts contacts = new(isLands ? null : ContactPatch.Of(StripContact.OfFeed(brief)), all, isLands ? all : []);
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, _ => brief.Supply.VoltageV);
        WheelLayout wheel = WheelSetter.Of(new WheelTask(brief, motion, Programme.Of(brief, motion), contacts, rules.Distances));
        OpenContactMeter meter = OpenContactMeter.Of(brief, motion, wheel);
        return new(brief, wheel, [.. brief.Outputs.Select((_, i) => meter.Of(i, rules.Outputs[i], brief.Supply.VoltageV, standing)).OfType<OpenContact>()]);
    }

    /// <summary>Positions as stretches, each exactly as long.</summary>
    public static IReadOnlyList<StandingStretch> Standing(IReadOnlyList<ParkedPosition> parked) =>
        [.. parked.Select(p => new StandingStretch(p.FromRad, p.ToRad) { Why = "where it is told to", VoltageAcross = [] })];

    /// <summary>The rectangle under a fold, 2 mm along it.</summary>
    public static ContactPatch Fold(double? noseMm, double angleRad = 0, double halfMm = 0.2) =>
        new() { IsDisc = false, HalfLengthMm = halfMm, HalfWidthMm = 1, WornHalfLengthMm = halfMm, AngleRad = angleRad, NoseRadiusMm = noseMm };

    /// <summary>The disc under a rivet.</summary>
    public static ContactPatch Rivet(double? noseMm, double halfMm = 0.2) =>
        new() { IsDisc = true, HalfLengthMm = halfMm, HalfWidthMm = halfMm, WornHalfLengthMm = halfMm, AngleRad = 0, NoseRadiusMm = noseMm };
}
