namespace WheelDraft.Engineering;

/// <summary>The rectangular section of a strip at one place: stiffness about its three axes, and stress from moments about them.</summary>
/// <param name="WidthMm">Width.</param>
/// <param name="ThicknessMm">Thickness.</param>
internal readonly record struct StripSection(double WidthMm, double ThicknessMm)
{
    /// <summary>Second moment for bending about its own axis, out of the plane, mm⁴.</summary>
    internal double OwnAxisMm4 => WidthMm * Cube(ThicknessMm) / 12;

    /// <summary>Second moment for bending in the plane, mm⁴.</summary>
    internal double InPlaneMm4 => ThicknessMm * Cube(WidthMm) / 12;

    /// <summary>Torsion constant, mm⁴ (Roark's Formulas for Stress and Strain, torsion of a rectangle, from memory; within 4 %
    /// for a square, far nearer for a flat strip).</summary>
    internal double TorsionMm4
    {
        get
        {
            (double a, double b) = Halves;
            return a * Cube(b) * ((16.0 / 3) - (3.36 * b / a * (1 - (b * b * b * b / (12 * a * a * a * a)))));
        }
    }

    private (double Long, double Short) Halves => (Math.Max(WidthMm, ThicknessMm) / 2, Math.Min(WidthMm, ThicknessMm) / 2);

    /// <summary>Largest equivalent stress, MPa: corners under both bendings, or the middle of a face under bending and torsion (von Mises).</summary>
    /// <param name="ownNmm">Moment about its own axis, N·mm.</param>
    /// <param name="inPlaneNmm">Moment in the plane, N·mm.</param>
    /// <param name="torqueNmm">Torque, N·mm.</param>
    internal double StressMpa(double ownNmm, double inPlaneNmm, double torqueNmm)
    {
        double own = Math.Abs(ownNmm) * ThicknessMm / 2 / OwnAxisMm4;
        double inPlane = Math.Abs(inPlaneNmm) * WidthMm / 2 / InPlaneMm4;
        double shear = ShearMpa(Math.Abs(torqueNmm));
        return Math.Max(own + inPlane, Math.Sqrt((own * own) + (3 * shear * shear)));
    }

    // Largest shear stress, at the middle of the long side (same table of Roark, from memory).
    private double ShearMpa(double torqueNmm)
    {
        (double a, double b) = Halves;
        double q = b / a;
        return 3 * torqueNmm / (8 * a * b * b) * (1 + (0.6095 * q) + (0.8865 * q * q) - (1.8023 * q * q * q) + (0.9100 * q * q * q * q));
    }

    private static double Cube(double x) => x * x * x;
}
