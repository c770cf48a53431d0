namespace WheelDraft.Formats.Parameters;

/// <summary>A unit as it is spelled, and its size in the base unit of its dimension: numerator over denominator, both exact.</summary>
/// <remarks>Sizes are exact by definition: the inch is 25.4 mm, the foot 12 inches, the pound 0.45359237 kg (international yard and pound agreement, 1959),
/// an ounce a sixteenth of it, the standard acceleration of free fall 9.80665 m/s² (3rd CGPM, 1901; NIST SP 811, 2008, appendix B.8), the litre 1 dm³, a turn
/// 360°; only the radian is rounded, to 28 digits.</remarks>
internal sealed record Unit(string Symbol, Dimension Dimension, decimal Numerator, decimal Denominator = 1)
{
    private const decimal PoundKg = 0.45359237m;
    private const decimal FreeFallMPerS2 = 9.80665m;
    private const decimal InchM = 0.0254m;
    private const decimal OuncesInPound = 16;

    /// <summary>Whether messages leave it out, because another spelling of the same unit stands there already.</summary>
    public bool IsOtherSpelling { get; private init; }

    /// <summary>Degrees in a radian, to the 28 digits of a decimal.</summary>
    private const decimal DegInRad = 57.295779513082320876798154814m;

    /// <summary>Every unit; the first of a dimension is the one that is shown.</summary>
    public static IReadOnlyList<Unit> All { get; } =
    [
        new("mm", Dimension.Length, 1),
        new("cm", Dimension.Length, 10),
        new("m", Dimension.Length, 1000),
        new("um", Dimension.Length, 1, 1000),
        new("\u00B5m", Dimension.Length, 1, 1000),
        new("\u03BCm", Dimension.Length, 1, 1000),
        new("in", Dimension.Length, 25.4m),
        new("ft", Dimension.Length, 304.8m),
        new("thou", Dimension.Length, 0.0254m),
        new("s", Dimension.Time, 1),
        new("ms", Dimension.Time, 1, 1000),
        new("min", Dimension.Time, 60),
        new("h", Dimension.Time, 3600),
        new("deg", Dimension.Angle, 1),
        new("\u00B0", Dimension.Angle, 1),
        new("rad", Dimension.Angle, DegInRad),
        new("rpm", Dimension.Speed, 1),
        new("Hz", Dimension.Frequency, 1),
        new("mHz", Dimension.Frequency, 1, 1000),
        new("V", Dimension.Voltage, 1),
        new("kV", Dimension.Voltage, 1000),
        new("mV", Dimension.Voltage, 1, 1000),
        new("A", Dimension.Current, 1),
        new("mA", Dimension.Current, 1, 1000),
        new("W", Dimension.Power, 1),
        new("kW", Dimension.Power, 1000),
        new("mW", Dimension.Power, 1, 1000),
        new("ohm", Dimension.Resistance, 1),
        new("\u03A9", Dimension.Resistance, 1),
        new("\u2126", Dimension.Resistance, 1),
        new("kohm", Dimension.Resistance, 1000),
        new("k\u03A9", Dimension.Resistance, 1000),
        new("k\u2126", Dimension.Resistance, 1000),
        new("mohm", Dimension.Resistance, 1, 1000),
        new("m\u03A9", Dimension.Resistance, 1, 1000),
        new("m\u2126", Dimension.Resistance, 1, 1000),
        new("N", Dimension.Force, 1),
        new("mN", Dimension.Force, 1, 1000),
        new("N m", Dimension.Torque, 1),
        new("N\u00B7m", Dimension.Torque, 1),
        new("Nm", Dimension.Torque, 1),
        new("mN m", Dimension.Torque, 1, 1000),
        new("mN\u00B7m", Dimension.Torque, 1, 1000),
        new("N mm", Dimension.Torque, 1, 1000),
        new("N\u00B7mm", Dimension.Torque, 1, 1000),
        new("mN mm", Dimension.Torque, 1, 1_000_000),
        new("N cm", Dimension.Torque, 1, 100),
        new("N\u00B7cm", Dimension.Torque, 1, 100),
        new("Ncm", Dimension.Torque, 1, 100) { IsOtherSpelling = true },
        new("ozf in", Dimension.Torque, PoundKg * FreeFallMPerS2 * InchM, OuncesInPound),
        new("ozf\u00B7in", Dimension.Torque, PoundKg * FreeFallMPerS2 * InchM, OuncesInPound),
        new("kgf cm", Dimension.Torque, FreeFallMPerS2, 100),
        new("L/min", Dimension.Flow, 1, 60),
        new("L/s", Dimension.Flow, 1),
        new("L/h", Dimension.Flow, 1, 3600),
        new("mL/s", Dimension.Flow, 1, 1000),
        new("mL/min", Dimension.Flow, 1, 60_000),
        new("l/min", Dimension.Flow, 1, 60) { IsOtherSpelling = true },
        new("l/s", Dimension.Flow, 1) { IsOtherSpelling = true },
        new("l/h", Dimension.Flow, 1, 3600) { IsOtherSpelling = true },
        new("ml/s", Dimension.Flow, 1, 1000) { IsOtherSpelling = true },
        new("ml/min", Dimension.Flow, 1, 60_000) { IsOtherSpelling = true },
        new("L", Dimension.Volume, 1),
        new("mL", Dimension.Volume, 1, 1000),
        new("cL", Dimension.Volume, 1, 100),
        new("l", Dimension.Volume, 1) { IsOtherSpelling = true },
        new("ml", Dimension.Volume, 1, 1000) { IsOtherSpelling = true },
        new("cl", Dimension.Volume, 1, 100) { IsOtherSpelling = true },
        new("N mm/deg", Dimension.TorqueRate, 1),
        new("N mm/rad", Dimension.TorqueRate, 1, DegInRad),
        new("N/mm", Dimension.ForceRate, 1),
        new("N/m", Dimension.ForceRate, 1, 1000),
        new("g mm2", Dimension.Inertia, 1),
        new("g mm\u00B2", Dimension.Inertia, 1),
        new("kg mm2", Dimension.Inertia, 1000),
        new("g cm2", Dimension.Inertia, 100),
        new("g cm\u00B2", Dimension.Inertia, 100),
        new("kg m2", Dimension.Inertia, 1_000_000_000),
        new("g", Dimension.Mass, 1),
        new("kg", Dimension.Mass, 1000),
        new("%", Dimension.Share, 1, 100),
    ];

    /// <summary>Spellings that people write out of habit, and the unit that is meant.</summary>
    private static readonly (string Habit, string Meant)[] Habits =
    [
        ("sec", "s"), ("secs", "s"), ("second", "s"), ("seconds", "s"), ("msec", "ms"), ("minute", "min"), ("minutes", "min"), ("mins", "min"),
        ("hour", "h"), ("hours", "h"), ("hr", "h"), ("inch", "in"), ("inches", "in"), ("\"", "in"), ("\u2033", "in"), ("mil", "thou"), ("mils", "thou"),
        ("millimetre", "mm"), ("millimetres", "mm"), ("millimeter", "mm"), ("millimeters", "mm"), ("metre", "m"), ("meter", "m"), ("micron", "um"), ("microns", "um"),
        ("degree", "deg"), ("degrees", "deg"), ("radian", "rad"), ("radians", "rad"), ("volt", "V"), ("volts", "V"), ("Vac", "V"), ("VAC", "V"), ("amp", "A"), ("amps", "A"),
        ("ampere", "A"), ("amperes", "A"), ("watt", "W"), ("watts", "W"), ("ohms", "ohm"), ("hertz", "Hz"), ("litre", "L"), ("litres", "L"), ("liter", "L"), ("liters", "L"),
        ("foot", "ft"), ("feet", "ft"), ("'", "ft"), ("\u2032", "ft"),
        ("oz in", "ozf in"), ("oz-in", "ozf in"), ("ozin", "ozf in"), ("ozf-in", "ozf in"), ("ozfin", "ozf in"), ("in ozf", "ozf in"), ("in oz", "ozf in"),
        ("kg cm", "kgf cm"), ("kg-cm", "kgf cm"), ("kgcm", "kgf cm"), ("kgfcm", "kgf cm"), ("N-cm", "N cm"), ("N*cm", "N cm"), ("lpm", "L/min"), ("percent", "%"), ("per cent", "%"), ("N*m", "N m"), ("N.m", "N m"), ("newton", "N"), ("newtons", "N"),
    ];

    /// <summary>The unit of exactly this spelling, or null.</summary>
    public static Unit? Find(string symbol) => All.FirstOrDefault(u => string.Equals(u.Symbol, symbol, StringComparison.Ordinal));

    /// <summary>The unit that was probably meant by an unknown spelling, or null.</summary>
    /// <param name="written">As it was written.</param>
    /// <param name="wanted">The dimensions that would be right: only their units are proposed.</param>
    public static string? NearMissOf(string written, IReadOnlyList<Dimension> wanted)
    {
        string[] fitting = [.. All.Where(u => wanted.Contains(u.Dimension)).Select(u => u.Symbol)];
        string? meant = Habits.FirstOrDefault(h => string.Equals(h.Habit, written, StringComparison.OrdinalIgnoreCase)).Meant;
        return meant is not null && fitting.Contains(meant, StringComparer.Ordinal) ? meant : NearMiss.Of(written, fitting);
    }
}
