using System.Globalization;

namespace WheelDraft.Engineering;

// The folder "Rules": from a voltage, a grade and the surroundings to a distance, every step recorded. A rule set is one
// small class here and its tables in "Tables". Nothing here measures: what a design has is for the rest of the chapter.

/// <summary>One published set of rules for clearances and creepage distances.</summary>
/// <remarks>Distances are those of the tables: no wear addition, no margin, a creepage distance not raised to the clearance.
/// <see cref="RequiredBetween"/> does the whole order of steps for a pair of conductors.</remarks>
internal abstract class SpacingRules
{
    /// <summary>Both standards' tables end at this frequency, Hz.</summary>
    private const double LargestFrequencyHz = 30_000;

    private protected SpacingRules()
    {
    }

    /// <summary>The rule set's standard.</summary>
    public abstract SpacingStandard Standard { get; }

    /// <summary>The rule set of a standard.</summary>
    public static SpacingRules For(SpacingStandard standard) => standard switch
    {
        SpacingStandard.Iec60664 => Iec60664Rules.Instance,
        SpacingStandard.Iec60335 => Iec60335Rules.Instance,
        _ => throw new ArgumentOutOfRangeException(nameof(standard), standard, "No such rule set."),
    };

    /// <summary>What is asked of one pair of conductors: base value, grade, altitude, creepage raised to the clearance, wear
    /// addition, margin; the person's own distances in place of the rule's where given.</summary>
    /// <exception cref="RuleRefusedException">The rules give no distance for this pair.</exception>
    public static PairRequirement RequiredBetween(PairQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        return new PairRules(query).Required();
    }

    /// <summary>The clearance that the tables ask, mm.</summary>
    /// <exception cref="RuleRefusedException">The rules give no clearance for this.</exception>
    public abstract Requirement RequiredClearance(ClearanceQuery query);

    /// <summary>The creepage distance that the tables ask, mm.</summary>
    /// <exception cref="RuleRefusedException">The rules give no creepage distance for this.</exception>
    public abstract Requirement RequiredCreepage(CreepageQuery query);

    /// <summary>A clearance by this rule set with what it adds for wear and movement.</summary>
    internal abstract Requirement WithWear(Requirement clearance, SupplyImpulse supply);

    /// <summary>Refuses pollution degree 4.</summary>
    internal static void CheckDegree(int degree)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(degree, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(degree, 4);
        if (degree == 4)
        {
            throw new RuleRefusedException(
                "rule.pollution-degree",
                "Pollution degree 4 (conductive dust, rain or wet all the time): no creepage distance can be given, because the surface itself conducts, and a clearance without one protects nothing. " +
                "Enclose the insulation so that at its surface pollution degree 3 or better holds, and give that degree.");
        }
    }

    private protected static void CheckFrequency(double frequencyHz)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(frequencyHz);
        if (!(frequencyHz <= LargestFrequencyHz))
        {
            throw new RuleRefusedException(
                "rule.frequency",
                $"A frequency of {RuleWords.Plain(frequencyHz)} Hz is above 30 kHz, where the tables end. Use IEC 60664-4 for it.");
        }
    }

    private protected static void CheckVoltage(double v, string what)
    {
        if (!double.IsFinite(v) || v < 0)
        {
            throw new ArgumentOutOfRangeException(nameof(v), v, what + " must be a number not below 0.");
        }
    }

    /// <summary>A clearance at an altitude: the factor of the next higher row of Table A.2 above 2000 m.</summary>
    private protected static double AtAltitude(double clearanceMm, double altitudeM, RuleWorkings workings)
    {
        if (!double.IsFinite(altitudeM))
        {
            throw new ArgumentOutOfRangeException(nameof(altitudeM), altitudeM, "The altitude must be a number.");
        }

        AltitudeRow[] rows = Iec60664TableA2.Rows;
        int row = TableRows.FirstReaching(rows, altitudeM, r => r.AltitudeM);
        if (row == rows.Length)
        {
            throw new RuleRefusedException(
                "rule.altitude",
                $"An altitude of {RuleWords.Metres(altitudeM)} is above {RuleWords.Metres(rows[^1].AltitudeM)}, where {Iec60664TableA2.Source.Citation} ends. " +
                "Dimension for the air pressure by test.");
        }

        double factor = rows[row].Factor;
        string factorText = factor.ToString("0.00", CultureInfo.InvariantCulture);
        if (row == 0)
        {
            workings.Note($"Altitude {RuleWords.Metres(altitudeM)}: not above 2000 m, factor {factorText} ({Iec60664TableA2.Source.Citation}).");
            return clearanceMm;
        }

        double raisedMm = TableRows.Noiseless(clearanceMm * factor);
        workings.Note($"Altitude {RuleWords.Metres(altitudeM)}: row {RuleWords.Metres(rows[row].AltitudeM)}, factor {factorText}: {RuleWords.Mm(raisedMm)} ({Iec60664TableA2.Source.Citation}).");
        return raisedMm;
    }
}
