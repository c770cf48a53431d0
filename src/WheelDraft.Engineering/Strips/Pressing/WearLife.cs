namespace WheelDraft.Engineering;

/// <summary>How many turns a nose lasts until its patch has its worn length, as a band and never one number.</summary>
/// <remarks>Archard's law, V = K F s/(3 H), with the dimensionless K of the form with the 3. The nose is taken to rub all the turn.</remarks>
/// <param name="DryTurns">Without lubricant.</param>
/// <param name="PoorTurns">With poor lubricant.</param>
/// <param name="GoodTurns">With good lubricant.</param>
public sealed record WearLife(double DryTurns, double PoorTurns, double GoodTurns)
{
    // Rabinowicz's bands for different but mutually soluble metals, as copper on copper alloy (from memory).
    internal const double DryK = 5e-4;
    internal const double PoorK = 1e-4;
    internal const double GoodK = 2e-5;

    /// <summary>Where the coefficients come from.</summary>
    public const string Source = "Archard's law with Rabinowicz's bands for mutually soluble metals (from memory): dry 5e-4, poor lubricant 1e-4, good lubricant 2e-5";

    /// <summary>The band for a nose; null when it has no worn length or nothing presses.</summary>
    /// <param name="contact">The contact, with its nose radius.</param>
    /// <param name="forceN">Force, N: the one when new, which wears fastest.</param>
    /// <param name="ringRadiusMm">Radius of its ring.</param>
    /// <param name="hardnessMpa">Hardness of the nose.</param>
    public static WearLife? Of(StripContact contact, double forceN, double ringRadiusMm, double hardnessMpa)
    {
        ArgumentNullException.ThrowIfNull(contact);
        if (contact.NoseRadiusMm is not double radius || !(contact.WornLengthMm > contact.LengthMm) || !(forceN > 0))
        {
            return null;
        }

        double volume = WornMm3(contact, contact.WornLengthMm, radius) - WornMm3(contact, contact.LengthMm, radius);
        double Turns(double k) => volume * 3 * hardnessMpa / (k * forceN * 2 * Math.PI * ringRadiusMm);
        return new WearLife(Turns(DryK), Turns(PoorK), Turns(GoodK));
    }

    /// <summary>Volume worn off when the flat has a length: a cap of the dome, or a segment along the fold, mm³.</summary>
    internal static double WornMm3(StripContact contact, double lengthMm, double radiusMm)
    {
        double depth = StripContact.DepthOf(lengthMm, radiusMm);
        if (contact.Shape == ContactShape.Disc)
        {
            return Math.PI * depth * depth * ((3 * radiusMm) - depth) / 3;
        }

        double half = Math.Asin(Math.Min(1, lengthMm / (2 * radiusMm)));
        return contact.WidthMm * radiusMm * radiusMm * (half - (Math.Sin(half) * Math.Cos(half)));
    }
}
