namespace WheelDraft.Engineering;

/// <summary>Roots of continuous functions of one variable, by bracketing: slow and sure.</summary>
internal static class RootFinding
{
    // Halvings of a bracket: enough to reach the last bit of a double from any bracket met here (a radian, a metre).
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

        for (int i = 0; i < MostSteps; i++)
        {
            // Regula falsi with halved weights (Illinois) would be quicker near smooth roots, but patch corners give kinks.
            double middle = (low + high) / 2;
            if (middle <= Math.Min(low, high) || middle >= Math.Max(low, high))
            {
                break;
            }

            double at = f(middle);
            if (at == 0)
            {
                return middle;
            }

            if (Math.Sign(at) == Math.Sign(atLow))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return (low + high) / 2;
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
