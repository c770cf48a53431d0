using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The mains, or what else feeds the timer.</summary>
/// <param name="VoltageV">R.m.s. voltage, line to neutral.</param>
/// <param name="FrequencyHz">Nominal frequency.</param>
/// <param name="FrequencyToleranceShare">Plus and minus, as a share of the nominal frequency (0.01 for 1 %).</param>
/// <param name="Category">Overvoltage category.</param>
public sealed record SupplyBrief(double VoltageV, double FrequencyHz, double FrequencyToleranceShare, OvervoltageCategory Category)
{
    private static readonly string[] OneLine = ["L"];

    /// <summary>The line nets in phase order: one, or three 120° apart.</summary>
    public IReadOnlyList<string> Lines { get; init; } = OneLine;

    /// <summary>Plus and minus, as a share of the voltage (0.1 for 10 %); at least 0, below 1.</summary>
    public double VoltageToleranceShare { get; init; }

    /// <summary>What clearances count in addition to impulse and working peak.</summary>
    public OverVoltages OverVoltages { get; init; }

    /// <summary>The highest r.m.s. voltage between two nets of the supply: line to line with three lines, else line to neutral.</summary>
    public double HighestV => Lines.Count > 1 ? Math.Sqrt(3) * VoltageV : VoltageV;

    /// <summary>Upper end of extra-low voltage, a.c. r.m.s. (IEC 60449 band I, IEC 61140 and IEC 60364-4-41 clause 414, from memory), V.</summary>
    internal const double ExtraLowV = 50;

    /// <summary>The highest voltage between two nets at the upper end of the supply's tolerance, V.</summary>
    internal double HighestAtToleranceV => HighestV * (1 + VoltageToleranceShare);

    /// <summary>Whether no two nets are ever more than extra-low voltage apart, lines and tolerance counted; above it a supply can kill.</summary>
    internal bool IsExtraLow => HighestAtToleranceV <= ExtraLowV;
}

/// <summary>Over-voltages that clearances count in addition to the rated impulse and the working peak.</summary>
public enum OverVoltages
{
    /// <summary>None; every clearance says what temporary ones would ask.</summary>
    None,

    /// <summary>Temporary over-voltages of the low-voltage supply.</summary>
    Temporary,
}

/// <summary>Overvoltage category of IEC 60664-1.</summary>
public enum OvervoltageCategory
{
    /// <summary>Circuits in which transients are limited.</summary>
    I = 1,

    /// <summary>Equipment fed from the fixed installation.</summary>
    II,

    /// <summary>Equipment of the fixed installation.</summary>
    III,

    /// <summary>Equipment at the origin of the installation.</summary>
    IV,
}

/// <summary>Where the timer lives.</summary>
/// <param name="PollutionDegree">1 to 4 of IEC 60664-1; 4 is refused later with a reason.</param>
/// <param name="AltitudeM">Height above sea level, metres.</param>
/// <param name="Condensation">Whether frost or dew settles on live parts.</param>
public sealed record EnvironmentBrief(int PollutionDegree, double AltitudeM, bool Condensation);

/// <summary>The motor and its gear.</summary>
/// <param name="TurnTimeS">One turn at the nominal frequency, given or found from poles and gear ratio.</param>
/// <param name="Direction">As seen from the wiper side.</param>
/// <param name="BacklashRad">Play of the gear at the wheel.</param>
/// <param name="Coast">How far the wheel runs on after its motor loses supply, least and most.</param>
public sealed record DriveBrief(double TurnTimeS, Turning Direction, double BacklashRad, Coast Coast)
{
    /// <summary>Poles of the motor, when the turn time comes from them.</summary>
    public int? Poles { get; init; }

    /// <summary>Speed of the geared motor's own shaft at the nominal frequency, rev/min; null when not given.</summary>
    public double? MotorRpm { get; init; }

    /// <summary>Whether that speed is left to the program.</summary>
    public bool ChoosesMotor { get; init; }

    /// <summary>Motor turns per wheel turn, when the turn time comes from it.</summary>
    public double? GearRatio { get; init; }

    /// <summary>Rated torque at the wheel, N m; null when not given.</summary>
    public double? TorqueNm { get; init; }

    /// <summary>Coefficients of friction of wipers, least and most; null when not given.</summary>
    public FrictionBand? Friction { get; init; }
}

/// <summary>How far a wheel runs on after its motor loses supply.</summary>
/// <param name="LeastRad">Least, at least 0.</param>
/// <param name="MostRad">Most, at least the least.</param>
public readonly record struct Coast(double LeastRad, double MostRad);

/// <summary>A band of coefficients of friction.</summary>
/// <param name="Least">Least.</param>
/// <param name="Most">Most, at least the least.</param>
public readonly record struct FrictionBand(double Least, double Most);

/// <summary>How exactly the fixed parts are made and put in place.</summary>
/// <param name="ToleranceMm">Each face of every part, rib, slot and surface, plus and minus, mm, at least 0.</param>
/// <param name="PlacingMm">Each wiper's contact along the motion, plus and minus, mm, at least 0.</param>
public sealed record Housing(double ToleranceMm, double PlacingMm)
{
    /// <summary>Exactly as drawn.</summary>
    public static Housing Exact { get; } = new(0, 0);
}

/// <summary>Which rules keep live parts apart.</summary>
/// <param name="Standard">The standard.</param>
/// <param name="BetweenLive">Insulation between live nets.</param>
/// <param name="ToEarthed">Insulation to earthed parts.</param>
/// <param name="ToTouchable">Insulation to parts that a person can touch.</param>
/// <param name="OverOpenContact">Insulation of an open wiper to wheel copper; null for none.</param>
/// <param name="MarginMm">Added to every required distance.</param>
/// <param name="GrooveX">The least width at which a groove counts.</param>
public sealed record SpacingBrief(
    SpacingStandard Standard,
    Insulation BetweenLive,
    Insulation ToEarthed,
    Insulation ToTouchable,
    Insulation? OverOpenContact,
    double MarginMm,
    GrooveX GrooveX)
{
    /// <summary>The person's own clearance in place of the rule's, mm; null for the rule's.</summary>
    public double? ClearanceMm { get; init; }

    /// <summary>The person's own creepage distance in place of the rule's, mm; null for the rule's.</summary>
    public double? CreepageMm { get; init; }

    /// <summary>The person's words why a distance of their own may be below the rule's; null when none are given.</summary>
    public string? OwnResponsibility { get; init; }

    /// <summary>Whether working voltages count the states under every single fault, and not only under open loads. Asked for on the
    /// command line: no key of a parameter file says so.</summary>
    public bool VoltagesUnderFaults { get; init; }
}

/// <summary>A published set of spacing rules.</summary>
public enum SpacingStandard
{
    /// <summary>IEC 60664-1, insulation coordination for equipment in low-voltage systems.</summary>
    Iec60664,

    /// <summary>IEC 60335-1, household appliances.</summary>
    Iec60335,
}

/// <summary>The grade of an insulation.</summary>
public enum Insulation
{
    /// <summary>Needed for the equipment to work.</summary>
    Functional,

    /// <summary>Basic protection against electric shock.</summary>
    Basic,

    /// <summary>Independent insulation in addition to the basic one.</summary>
    Supplementary,

    /// <summary>One insulation as good as double insulation.</summary>
    Reinforced,
}

/// <summary>Least groove width that counts.</summary>
public enum GrooveX
{
    /// <summary>X by pollution degree.</summary>
    Full,

    /// <summary>A third of the clearance where that is below 3 mm.</summary>
    Third,
}
