namespace WheelDraft.Engineering;

/// <summary>Roots of continuous functions of one variable, by bracketing.</summary>
internal static class RootFinding
{
    // Steps of narrowing: many times what any bracket met here takes (a radian, a metre), where every third at least halves it.
    private const int MostSteps = 200;

    /// <summary>A root between two ends at which the function has different signs, to the last bit or so.</summary>
    /// <returns>The root; null when the signs are the same, so that a root is not certain.</returns>
    public static double? Within(Func<double, double> f, double low, double high)
    {
        double atLow = f(low);
        double atHigh = f(high);
        if (atLow == 0)
        {
            return low;
        }

        if (atHigh == 0)
        {
            return high;
        }

        if (double.IsNaN(atLow) || double.IsNaN(atHigh) || Math.Sign(atLow) == Math.Sign(atHigh))
        {
            return null;
        }

        // What halving finds, bit for bit, with most of its looks left out: where a middle lies outside the narrow bracket, its sign is known.
        Bracket near = Narrowed(f, new(low, atLow, high, atHigh));
        (double from, double to) = (Math.Min(near.A, near.B), Math.Max(near.A, near.B));
        (double below, double above) = low < high ? (atLow, atHigh) : (atHigh, atLow);
        for (double middle = (low + high) / 2; middle > Math.Min(low, high) && middle < Math.Max(low, high); middle = (low + high) / 2)
        {
            double at = middle <= from ? below : above;
            if (middle > from && middle < to)
            {
                at = f(middle);
                if (at == 0)
                {
                    return middle;
                }
            }

            (low, high) = Math.Sign(at) == Math.Sign(atLow) ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    // Two ends at which the function has different signs, A the one tried last.
    private readonly record struct Bracket(double A, double AtA, double B, double AtB);

    // Chandrupatla, Adv. Eng. Software 28 (1997) 145: inverse quadratic interpolation where three points lie as on a smooth curve, else halving, so that
    // kinks, as patch corners give, cost no more than halving does. Ends while the bracket is still wider than what rounding does to signs near the root.
    private static Bracket Narrowed(Func<double, double> f, Bracket ends)
    {
        const double close = 1e-13;
        (double a, double atA, double b, double atB) = ends;
        double share = 0.5;
        for (int i = 0; i < MostSteps; i++)
        {
            double x = a + (share * (b - a));
            double atX = f(x);
            if (atX == 0)
            {
                return Around(f, x, new(a, atA, b, atB), close * Math.Max(Math.Abs(a), Math.Abs(b)));
            }

            bool isOnSide = Math.Sign(atX) == Math.Sign(atA);
            (double c, double atC) = isOnSide ? (a, atA) : (b, atB);
            (b, atB) = isOnSide ? (b, atB) : (a, atA);
            (a, atA) = (x, atX);
            double closeShare = close * Math.Max(Math.Abs(a), Math.Abs(b)) / Math.Abs(b - a);
            if (!(closeShare < 0.5))
            {
                break;
            }

            double along = (a - b) / (c - b);
            double rise = (atA - atB) / (atC - atB);
            bool isSmooth = rise * rise < along && (1 - rise) * (1 - rise) < 1 - along;
            share = isSmooth ? (atA / (atB - atA) * (atC / (atB - atC))) + ((c - a) / (b - a) * (atA / (atC - atA)) * (atB / (atC - atB))) : 0.5;
            share = Math.Clamp(share, closeShare, 1 - closeShare);
        }

        return new(a, atA, b, atB);
    }

    // A bracket close about a root, where the signs on both sides of it are those of the ends; else the ends.
    private static Bracket Around(Func<double, double> f, double root, Bracket ends, double close)
    {
        double a = root + (ends.A < ends.B ? -close : close);
        double b = root + (ends.A < ends.B ? close : -close);
        (double atA, double atB) = (f(a), f(b));
        return atA * ends.AtA > 0 && atB * ends.AtB > 0 ? new(a, atA, b, atB) : ends;
    }

    /// <summary>The least value at which a condition holds that holds for all greater ones, to within a resolution.</summary>
    /// <param name="holds">Monotone condition.</param>
    /// <param name="low">A value at which it does not hold.</param>
    /// <param name="high">A value at which it holds.</param>
    /// <param name="resolution">Where to stop, above 0; the answer holds and lies at most this above the true one.</param>
    public static double LeastWhere(Func<double, bool> holds, double low, double high, double resolution)
    {
        while (high - low > resolution)
        {
            double middle = (low + high) / 2;
            if (holds(middle))
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return high;
    }
}
