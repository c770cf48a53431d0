namespace WheelDraft.Drawing;

/// <summary>Steps of a scale that people count in.</summary>
internal enum StepKind
{
    /// <summary>1, 2 and 5 times a power of ten.</summary>
    Decimal,

    /// <summary>Degrees: parts of a turn, 1, 2, 5, 10, 15, 30, 45, 90, and decimals below one.</summary>
    Degrees,

    /// <summary>Seconds: 1, 2, 5, 10, 15, 30, 60, then whole minutes, and decimals below one.</summary>
    Seconds,
}

/// <summary>Chooses steps of a scale.</summary>
internal static class NiceSteps
{
    private static readonly double[] DegreeSteps = [1, 2, 5, 10, 15, 30, 45, 90, 180, 360];
    private static readonly double[] SecondSteps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 28_800, 86_400];

    /// <summary>The least nice step that is not below a wish.</summary>
    /// <param name="kind">How people count.</param>
    /// <param name="leastStep">The wish, above 0 and finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">The wish is not above 0 and finite.</exception>
    public static double AtLeast(StepKind kind, double leastStep)
    {
        if (!(leastStep > 0) || !double.IsFinite(leastStep))
        {
            throw new ArgumentOutOfRangeException(nameof(leastStep), leastStep, "A step is above 0.");
        }

        double[] steps = kind switch
        {
            StepKind.Degrees => DegreeSteps,
            StepKind.Seconds => SecondSteps,
            _ => [],
        };
        int at = leastStep < 1 ? -1 : Array.FindIndex(steps, s => s >= leastStep);
        return at >= 0 ? steps[at] : DecimalAtLeast(leastStep);
    }

    /// <summary>The multiples of a step from one value to another, both included within a thousandth of the step.</summary>
    public static IReadOnlyList<double> Between(double from, double to, double step)
    {
        const double hair = 1e-3;
        List<double> ticks = [];
        for (double k = Math.Ceiling((from / step) - hair); k <= (to / step) + hair; k++)
        {
            ticks.Add((k * step) + 0.0);
        }

        return ticks;
    }

    private static double DecimalAtLeast(double least)
    {
        // A power of ten that rounding made a hair too large must not cost a step.
        const double hair = 1e-9;
        double power = Math.Pow(10, Math.Floor(Math.Log10(least)));
        double lead = least / power;
        return power * (lead <= 1 + hair ? 1 : lead <= 2 + hair ? 2 : lead <= 5 + hair ? 5 : 10);
    }
}
