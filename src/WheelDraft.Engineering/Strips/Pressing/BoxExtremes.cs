namespace WheelDraft.Engineering;

/// <summary>The greatest value of a figure over a box of errors.</summary>
internal static class BoxExtremes
{
    // Every figure of a strip is all but linear in small errors, one at a time and together, so that one round of flips settles it;
    // more are for strips at the edge of folding over, and end the search where a figure has no settled corner.
    private const int MostRounds = 8;

    /// <summary>The greatest value, and where.</summary>
    /// <param name="count">How many errors.</param>
    /// <param name="figure">The figure, of errors each in [−1, 1].</param>
    /// <remarks>The search starts at the corner that the slopes at the middle point to: one error at a time is moved to its better end, or to the crest
    /// of the parabola through both ends and the middle where that lies between and is higher, until nothing rises.</remarks>
    internal static (double Value, double[] At) Most(int count, Func<double[], double> figure)
    {
        double[] at = new double[count];
        double[] corner = new double[count];
        for (int i = 0; i < count; i++)
        {
            corner[i] = With(at, i, 1, figure) >= With(at, i, -1, figure) ? 1 : -1;
        }

        double best = figure(corner);
        bool moved = true;
        for (int round = 0; round < MostRounds && moved; round++)
        {
            moved = false;
            for (int i = 0; i < count; i++)
            {
                moved |= Climb(corner, i, figure, ref best);
            }
        }

        return (best, corner);
    }

    /// <summary>The least value, and where.</summary>
    internal static (double Value, double[] At) Least(int count, Func<double[], double> figure)
    {
        (double value, double[] at) = Most(count, x => -figure(x));
        return (-value, at);
    }

    private static bool Climb(double[] at, int index, Func<double[], double> figure, ref double best)
    {
        double here = best;
        double End(double end) => at[index] == end ? here : With(at, index, end, figure);
        double low = End(-1);
        double middle = With(at, index, 0, figure);
        double high = End(1);
        double bend = ((low + high) / 2) - middle;
        List<(double Value, double At)> tries = [(low, -1), (high, 1)];
        double crest = bend < 0 ? -(high - low) / (4 * bend) : double.NaN;
        if (Math.Abs(crest) < 1)
        {
            tries.Add((With(at, index, crest, figure), crest));
        }

        (double value, double place) = tries.MaxBy(t => t.Value);
        const double more = 1e-12;
        if (!(value > best + (more * Math.Abs(best))))
        {
            return false;
        }

        (best, at[index]) = (value, place);
        return true;
    }

    private static double With(double[] at, int index, double value, Func<double[], double> figure)
    {
        double kept = at[index];
        at[index] = value;
        double found = figure(at);
        at[index] = kept;
        return found;
    }
}
