namespace WheelDraft.Engineering;

/// <summary>How far a motion of height 1 over a stretch of length 1 has come, and its first three derivatives.</summary>
/// <param name="Lift">From 0 to 1.</param>
/// <param name="Velocity">First derivative.</param>
/// <param name="Acceleration">Second derivative.</param>
/// <param name="Jerk">Third derivative, within the motion: jumps at its ends are not in it.</param>
internal readonly record struct MotionPoint(double Lift, double Velocity, double Acceleration, double Jerk)
{
    /// <summary>The same motion of another height over another length.</summary>
    public MotionPoint Scaled(double height, double length) =>
        new(Lift * height, Velocity * height / length, Acceleration * height / (length * length), Jerk * height / (length * length * length));
}

/// <summary>The laws of cam motion, in their normal form.</summary>
/// <remarks>Closed forms of the text books (R. L. Norton, Cam Design and Manufacturing Handbook; H. A. Rothbart, Cams: both from memory); peaks are checked
/// by the tests against their tables. All laws are symmetric about the middle: s(1 − u) = 1 − s(u).</remarks>
internal static class MotionLaw
{
    // Acceleration of the flat parts of the modified trapezoid, 8π/(2 + π), and of the modified sine, 4π²/(4 + π): what brings the lift to 1.
    private const double TrapezoidPeak = 8 * Math.PI / (2 + Math.PI);
    private const double SinePeak = 4 * Math.PI * Math.PI / (4 + Math.PI);

    // First eighth of both modified laws: a quarter of a sine wave.
    private const double Eighth = 1.0 / 8;
    private const double EighthWave = 4 * Math.PI;

    /// <summary>The motion at a share of the stretch, from 0 to 1.</summary>
    public static MotionPoint At(CamLaw law, double u)
    {
        if (u > 0.5)
        {
            MotionPoint mirrored = FirstHalf(law, 1 - u);
            return mirrored with { Lift = 1 - mirrored.Lift, Acceleration = -mirrored.Acceleration };
        }

        return FirstHalf(law, u);
    }

    /// <summary>Greatest absolute velocity, acceleration and jerk within the motion.</summary>
    public static MotionPoint Peaks(CamLaw law) => Most(law, 0, 1);

    /// <summary>Greatest absolute velocity, acceleration and jerk over a part of the stretch; exact, and 1 for the lift.</summary>
    public static MotionPoint Most(CamLaw law, double from, double to)
    {
        MotionPoint most = Greater(Greater(new(1, 0, 0, 0), At(law, from)), At(law, to));
        foreach (double u in Turns(law))
        {
            most = u > from && u < to ? Greater(most, At(law, u)) : most;
        }

        // At a break between two formulas the jerk jumps: both sides count.
        foreach (double u in Breaks(law))
        {
            if (u >= from && u <= to)
            {
                double beside = Math.Max(Math.Abs(At(law, u - BesideBreak).Jerk), Math.Abs(At(law, u + BesideBreak).Jerk));
                most = most with { Jerk = Math.Max(most.Jerk, beside * JerkBesideBreak) };
            }
        }

        return most;
    }

    private static MotionPoint Greater(MotionPoint most, MotionPoint at) =>
        new(1, Math.Max(most.Velocity, Math.Abs(at.Velocity)), Math.Max(most.Acceleration, Math.Abs(at.Acceleration)), Math.Max(most.Jerk, Math.Abs(at.Jerk)));

    // So near a break that the jerk beside it is that at it, but for what JerkBesideBreak adds.
    private const double BesideBreak = 1e-9;
    private const double JerkBesideBreak = 1 + 1e-6;

    /// <summary>Shares within the stretch at which one formula ends and the next begins.</summary>
    public static IReadOnlyList<double> Breaks(CamLaw law) => law switch
    {
        CamLaw.ModifiedTrapezoid => TrapezoidBreaks,
        CamLaw.ModifiedSine => SineBreaks,
        _ => [],
    };

    private static readonly double[] TrapezoidBreaks = [1.0 / 8, 3.0 / 8, 5.0 / 8, 7.0 / 8];
    private static readonly double[] SineBreaks = [1.0 / 8, 7.0 / 8];

    /// <summary>The law's name, as parameter files have it.</summary>
    public static string NameOf(CamLaw law) => law switch
    {
        CamLaw.Uniform => "uniform",
        CamLaw.Harmonic => "harmonic",
        CamLaw.Cycloidal => "cycloidal",
        CamLaw.ModifiedTrapezoid => "modified trapezoid",
        CamLaw.ModifiedSine => "modified sine",
        CamLaw.Polynomial345 => "3-4-5",
        _ => "4-5-6-7",
    };

    /// <summary>Whether velocity jumps at the ends, so that the lever strikes.</summary>
    public static bool Strikes(CamLaw law) => law == CamLaw.Uniform;

    /// <summary>The jump of the acceleration at the beginning, at its end the same downwards; infinite where the velocity jumps.</summary>
    public static double AccelerationJump(CamLaw law) => law == CamLaw.Uniform ? double.PositiveInfinity : At(law, 0).Acceleration;

    // Where velocity, acceleration or jerk has an extreme within the stretch.
    private static double[] Turns(CamLaw law) => law switch
    {
        CamLaw.Harmonic => HarmonicTurns,
        CamLaw.Cycloidal => CycloidalTurns,
        CamLaw.ModifiedTrapezoid => TrapezoidTurns,
        CamLaw.ModifiedSine => SineTurns,
        CamLaw.Polynomial345 => Turns345,
        CamLaw.Polynomial4567 => Turns4567,
        _ => [],
    };

    private static readonly double[] HarmonicTurns = [0.5];
    private static readonly double[] CycloidalTurns = [0.25, 0.5, 0.75];
    private static readonly double[] TrapezoidTurns = [1.0 / 8, 3.0 / 8, 0.5, 5.0 / 8, 7.0 / 8];
    private static readonly double[] SineTurns = [1.0 / 8, 0.5, 7.0 / 8];
    private static readonly double[] Turns345 = [(3 - Math.Sqrt(3)) / 6, 0.5, (3 + Math.Sqrt(3)) / 6];
    private static readonly double[] Turns4567 = [(10 - Math.Sqrt(60)) / 20, (5 - Math.Sqrt(5)) / 10, 0.5, (5 + Math.Sqrt(5)) / 10, (10 + Math.Sqrt(60)) / 20];

    private static MotionPoint FirstHalf(CamLaw law, double u) => law switch
    {
        CamLaw.Uniform => new(u, 1, 0, 0),
        CamLaw.Harmonic => Harmonic(u),
        CamLaw.Cycloidal => Cycloidal(u),
        CamLaw.ModifiedTrapezoid => ModifiedTrapezoid(u),
        CamLaw.ModifiedSine => ModifiedSine(u),
        CamLaw.Polynomial345 => new(
            u * u * u * (10 - (u * (15 - (6 * u)))),
            u * u * (30 - (u * (60 - (30 * u)))),
            u * (60 - (u * (180 - (120 * u)))),
            60 - (u * (360 - (360 * u)))),
        CamLaw.Polynomial4567 => new(
            u * u * u * u * (35 - (u * (84 - (u * (70 - (20 * u)))))),
            u * u * u * (140 - (u * (420 - (u * (420 - (140 * u)))))),
            u * u * (420 - (u * (1680 - (u * (2100 - (840 * u)))))),
            u * (840 - (u * (5040 - (u * (8400 - (4200 * u))))))),
        _ => throw new NotSupportedException($"The law {law} has no formula."),
    };

    private static MotionPoint Harmonic(double u)
    {
        (double sin, double cos) = Math.SinCos(Math.PI * u);
        return new((1 - cos) / 2, Math.PI / 2 * sin, Math.PI * Math.PI / 2 * cos, -Math.PI * Math.PI * Math.PI / 2 * sin);
    }

    private static MotionPoint Cycloidal(double u)
    {
        const double wave = 2 * Math.PI;
        (double sin, double cos) = Math.SinCos(wave * u);
        return new(u - (sin / wave), 1 - cos, wave * sin, wave * wave * cos);
    }

    // The first eighth of a modified law of this peak acceleration.
    private static MotionPoint Begin(double peak, double u)
    {
        (double sin, double cos) = Math.SinCos(EighthWave * u);
        return new(peak / EighthWave * (u - (sin / EighthWave)), peak / EighthWave * (1 - cos), peak * sin, peak * EighthWave * cos);
    }

    private static MotionPoint ModifiedTrapezoid(double u)
    {
        if (u <= Eighth)
        {
            return Begin(TrapezoidPeak, u);
        }

        MotionPoint begun = Begin(TrapezoidPeak, Eighth);
        double flat = Math.Min(u, 3 * Eighth) - Eighth;
        MotionPoint run = new(begun.Lift + (flat * (begun.Velocity + (TrapezoidPeak * flat / 2))), begun.Velocity + (TrapezoidPeak * flat), TrapezoidPeak, 0);
        if (u <= 3 * Eighth)
        {
            return run;
        }

        double w = u - (3 * Eighth);
        (double sin, double cos) = Math.SinCos(EighthWave * w);
        return new(
            run.Lift + (run.Velocity * w) + (TrapezoidPeak / (EighthWave * EighthWave) * (1 - cos)),
            run.Velocity + (TrapezoidPeak / EighthWave * sin),
            TrapezoidPeak * cos,
            -TrapezoidPeak * EighthWave * sin);
    }

    private static MotionPoint ModifiedSine(double u)
    {
        if (u <= Eighth)
        {
            return Begin(SinePeak, u);
        }

        // Half a cosine wave over the three quarters in the middle.
        const double wave = 4 * Math.PI / 3;
        MotionPoint begun = Begin(SinePeak, Eighth);
        double w = u - Eighth;
        (double sin, double cos) = Math.SinCos(wave * w);
        return new(
            begun.Lift + (begun.Velocity * w) + (SinePeak / (wave * wave) * (1 - cos)),
            begun.Velocity + (SinePeak / wave * sin),
            SinePeak * cos,
            -SinePeak * wave * sin);
    }
}
