namespace WheelDraft.Engineering;

/// <summary>One on-time over a batch of wheels.</summary>
/// <param name="Output">The output, by its place in the file.</param>
/// <param name="Period">The on-period.</param>
/// <param name="LeastS">Least allowed, s.</param>
/// <param name="MostS">Greatest allowed, s.</param>
/// <param name="Wheels">Mean on-time of each wheel, s, in the order of the logs.</param>
internal sealed record BatchFigure(int Output, int Period, double LeastS, double MostS, IReadOnlyList<double> Wheels)
{
    // Two-sided 95 %.
    private const double Z = 1.959964;

    // Mean moving range of two to standard deviation of a normal, d₂ (Shewhart; ISO 7870-2, table 1, from memory), and 3/d₂.
    private const double IndividualsFactor = 2.66;

    /// <summary>Mean over the wheels, s.</summary>
    public double MeanS => Wheels.Average();

    /// <summary>Standard deviation over the wheels, s; 0 where it is no more than rounding.</summary>
    public double SpreadS
    {
        get
        {
            const double roundingS = 1e-9;
            double spread = Wheels.Count < 2 ? 0 : Math.Sqrt(Wheels.Sum(w => (w - MeanS) * (w - MeanS)) / (Wheels.Count - 1));
            return spread > roundingS ? spread : 0;
        }
    }

    /// <summary>Capability: the width of the limits over six standard deviations; infinite without spread.</summary>
    public double Cp => (MostS - LeastS) / (6 * SpreadS);

    /// <summary>Capability counting where the middle lies: the distance to the nearer limit over three standard deviations.</summary>
    public double Cpk => Math.Min(MostS - MeanS, MeanS - LeastS) / (3 * SpreadS);

    /// <summary>Two-sided 95 % confidence limits of Cp: it goes with the square root of a χ² over its degrees of freedom
    /// (NIST/SEMATECH handbook 7.2.3 and 6.1.6, from memory).</summary>
    public (double Low, double High) CpLimits
    {
        get
        {
            double degrees = Wheels.Count - 1;
            return (Cp * Math.Sqrt(ChiSquare(degrees, -Z) / degrees), Cp * Math.Sqrt(ChiSquare(degrees, Z) / degrees));
        }
    }

    /// <summary>Two-sided 95 % confidence limits of Cpk by Bissell, Applied Statistics 39 (1990): ± z √(1/(9 n) + Cpk²/(2 (n − 1))).</summary>
    public (double Low, double High) CpkLimits
    {
        get
        {
            double half = Z * Math.Sqrt((1 / (9.0 * Wheels.Count)) + (Cpk * Cpk / (2.0 * (Wheels.Count - 1))));
            return (Cpk - half, Cpk + half);
        }
    }

    /// <summary>Control limits of a chart of individuals: mean ± 2.66 times the mean moving range, s.</summary>
    public (double Low, double High) ControlLimits
    {
        get
        {
            double range = Wheels.Zip(Wheels.Skip(1), (a, b) => Math.Abs(b - a)).DefaultIfEmpty(0).Average();
            return (MeanS - (IndividualsFactor * range), MeanS + (IndividualsFactor * range));
        }
    }

    /// <summary>Wheels outside the control limits, by their place, from 0.</summary>
    public IReadOnlyList<int> Outside => SpreadS == 0 ? [] : [.. Enumerable.Range(0, Wheels.Count).Where(i => Wheels[i] < ControlLimits.Low || Wheels[i] > ControlLimits.High)];

    // Wilson and Hilferty (1931): the cube root of χ²/ν is nearly normal; within 1 % from 4 degrees on, and 5 % at 2.
    private static double ChiSquare(double degrees, double z)
    {
        double third = 1 - (2 / (9 * degrees)) + (z * Math.Sqrt(2 / (9 * degrees)));
        return degrees * third * third * third;
    }
}

/// <summary>A share of the spread over a batch.</summary>
/// <param name="Cause">What.</param>
/// <param name="Share">Of the variance.</param>
internal readonly record struct SpreadShare(string Cause, double Share);

/// <summary>A batch of wheels made from one file.</summary>
/// <param name="Figures">Each on-time.</param>
/// <param name="Shares">For each on-time, which cause explains how much of its variance; greatest first.</param>
internal sealed record BatchStudy(IReadOnlyList<BatchFigure> Figures, IReadOnlyList<IReadOnlyList<SpreadShare>> Shares)
{
    /// <summary>Capability needs a spread, and a spread three wheels at least.</summary>
    public const int LeastWheels = 3;

    /// <summary>Of the comparisons of at least <see cref="LeastWheels"/> wheels.</summary>
    public static BatchStudy Of(IReadOnlyList<BenchComparison> wheels)
    {
        List<BatchFigure> figures = [];
        List<IReadOnlyList<SpreadShare>> shares = [];
        foreach (ComparedPeriod period in wheels[0].Periods)
        {
            ComparedPeriod?[] same = [.. wheels.Select(w => w.Periods.FirstOrDefault(p => p.Output == period.Output && p.Period == period.Period))];
            if (same.All(p => p is not null))
            {
                BatchFigure figure = new(period.Output, period.Period, period.On.LeastS, period.On.MostS, [.. same.Select(p => p!.On.Measured.MeanS)]);
                figures.Add(figure);
                shares.Add(SharesOf(wheels, [.. same.Select(p => p!)], figure));
            }
        }

        return new(figures, shares);
    }

    /// <summary>Parts the variance of an on-time: turn time, what all on-periods of the output have in common (patch), the measuring, and what is left, the edges themselves.</summary>
    private static IReadOnlyList<SpreadShare> SharesOf(IReadOnlyList<BenchComparison> wheels, ComparedPeriod[] same, BatchFigure figure)
    {
        double variance = figure.SpreadS * figure.SpreadS;
        if (variance <= 0)
        {
            return [];
        }

        double[] scaled = [.. wheels.Select(w => w.TurnTime.Measured.MeanS / w.TurnTime.WantedS * same[0].On.WantedS)];
        double[] left = [.. figure.Wheels.Zip(scaled, (on, s) => on - s)];
        double turn = Math.Clamp(Covariance(figure.Wheels, scaled) / variance, 0, 1);
        double measuring = Math.Min(same.Average(p => p.On.Measured.UncertaintyS * p.On.Measured.UncertaintyS) / variance, Math.Max(0, 1 - Math.Max(0, turn)));
        double patch = 0;
        ComparedPeriod[] others = [.. wheels[0].Periods.Where(p => p.Output == figure.Output && p.Period != figure.Period)];
        if (others.Length > 0)
        {
            // A patch lengthens all on-periods of its ring alike: what goes together is put down to it.
            double[] common = [.. wheels.Select(w => w.Periods.Where(p => p.Output == figure.Output && p.Period != figure.Period)
                .Average(p => p.On.Measured.MeanS - (w.TurnTime.Measured.MeanS / w.TurnTime.WantedS * p.On.WantedS)))];
            patch = Math.Clamp(Covariance(left, common) / variance, 0, Math.Max(0, 1 - turn - measuring));
        }

        double edges = Math.Max(0, 1 - turn - measuring - patch);
        return
        [
            .. new SpreadShare[]
            {
                new("turn time: supply, motor, gear", turn), new("measuring", measuring),
                new("contact patch, common to the on-periods of its ring", patch),
                new(others.Length > 0 ? "this on-period's own edges" : "edges and contact patch, which one on-period cannot part", edges),
            }.Where(s => s.Share > 0).OrderByDescending(s => s.Share),
        ];
    }

    private static double Covariance(IReadOnlyList<double> one, IReadOnlyList<double> two)
    {
        double a = one.Average(), b = two.Average();
        return one.Zip(two, (x, y) => (x - a) * (y - b)).Sum() / (one.Count - 1);
    }
}
