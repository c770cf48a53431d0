using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

// The chapter "Strips": blanks, forming, placing, springs, contacts. It reads the brief and materials, and where the wheel layout has
// put the rings; it never places rings or stations itself.
// This file is the stage BEFORE the wheel layout:
//   StripContact.OfFeed(brief), StripContact.OfOutput(brief, output, isReturn)
//     → Shape (FoldLine | Disc), LengthMm, WornLengthMm, WidthMm, AngleRad, NoseRadiusMm, FromStrip, SenseOf(direction)
// A contact on which strip and output differ is a DesignRefusedException with every reason.

/// <summary>The contact of one wiper as the wheel's edges have to be placed for it.</summary>
public sealed record StripContact
{
    /// <summary>A rectangle along a fold, or a disc under a dome.</summary>
    public required ContactShape Shape { get; init; }

    /// <summary>Along the motion, across the fold, mm; the diameter of a disc.</summary>
    public required double LengthMm { get; init; }

    /// <summary>The same at the end of its life, mm; at least <see cref="LengthMm"/>.</summary>
    public required double WornLengthMm { get; init; }

    /// <summary>Along the fold, mm; the diameter of a disc.</summary>
    public required double WidthMm { get; init; }

    /// <summary>Fold line from the radial direction, radians in (−π/2, π/2]; 0 for a disc.</summary>
    public required double AngleRad { get; init; }

    /// <summary>Radius of the nose along the motion: outside radius of the fold or of the dome, mm; null when no strip and no key gives it.</summary>
    public double? NoseRadiusMm { get; init; }

    /// <summary>From the tip back along the arm, from the outward radial, anticlockwise, radians; null without a strip.</summary>
    public double? ApproachRad { get; init; }

    /// <summary>Name of the strip that it comes from; null when the patch stands for the whole nose, with upright sides.</summary>
    public string? FromStrip { get; init; }

    /// <summary>How deep the nose has worn when the patch has its full worn length, from new, mm; null when the nose radius is unknown.</summary>
    public double? WearDepthMm =>
        NoseRadiusMm is double r ? DepthOf(WornLengthMm, r) - DepthOf(LengthMm, r) : null;

    /// <summary>How the arm meets the moving copper; null without a strip.</summary>
    /// <param name="direction">Which way the wheel turns, seen from the wiper side.</param>
    public ArmSense? SenseOf(Turning direction)
    {
        if (ApproachRad is not double approach)
        {
            return null;
        }

        // The copper moves a quarter turn ahead of the radial (anticlockwise), root to tip runs against the approach:
        // the cosine of the angle between the two is −sin(approach).
        double along = direction == Turning.Anticlockwise ? -Math.Sin(approach) : Math.Sin(approach);
        const double acrossBelow = 1e-9;
        return Math.Abs(along) < acrossBelow ? ArmSense.Across : along > 0 ? ArmSense.Trailing : ArmSense.Leading;
    }

    /// <summary>The contact of the feed wiper.</summary>
    /// <exception cref="DesignRefusedException">Strip and feed contradict each other, or say too little.</exception>
    /// <exception cref="ArgumentException">The brief has no feed.</exception>
    public static StripContact OfFeed(Brief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        FeedBrief feed = brief.Feed ?? throw new ArgumentException("The brief has no feed.", nameof(brief));
        return new ContactQuestion("the feed", feed.Contact, brief, "feed") { Serves = t => t is ServesFeed }.Answer();
    }

    /// <summary>The contact of an output's wiper.</summary>
    /// <param name="brief">The whole brief.</param>
    /// <param name="output">Which output, from 0 in file order.</param>
    /// <param name="isReturn">Whether the second wiper of a lands wheel is meant.</param>
    /// <exception cref="DesignRefusedException">Strip and output contradict each other, or say too little.</exception>
    public static StripContact OfOutput(Brief brief, int output, bool isReturn = false)
    {
        ArgumentNullException.ThrowIfNull(brief);
        OutputBrief of = brief.Outputs[output];
        string who = string.Create(CultureInfo.InvariantCulture, $"output \"{of.Name}\"{(isReturn ? " (return wiper)" : "")}");
        return new ContactQuestion(who, of.Contact, brief, string.Create(CultureInfo.InvariantCulture, $"output[{output}]"))
        {
            Serves = t => t is ServesOutput s && string.Equals(s.Output, of.Name, StringComparison.OrdinalIgnoreCase) && s.IsReturn == isReturn,
        }.Answer();
    }

    /// <summary>How far a nose has worn flat, mm: the depth of a chord of this length in a circle of this radius.</summary>
    internal static double DepthOf(double chordMm, double radiusMm)
    {
        double half = Math.Min(chordMm / 2, radiusMm);
        return radiusMm - Math.Sqrt((radiusMm * radiusMm) - (half * half));
    }
}

/// <summary>Shape of a contact patch.</summary>
public enum ContactShape
{
    /// <summary>A rectangle along the line of a fold.</summary>
    FoldLine,

    /// <summary>A disc under the dome of a rivet.</summary>
    Disc,
}

/// <summary>How an arm meets the copper that moves under it.</summary>
public enum ArmSense
{
    /// <summary>The copper moves from root to tip: the arm trails, and slides over edges.</summary>
    Trailing,

    /// <summary>The copper moves from tip to root: the arm leads, and digs in.</summary>
    Leading,

    /// <summary>The copper moves straight across the arm.</summary>
    Across,
}
