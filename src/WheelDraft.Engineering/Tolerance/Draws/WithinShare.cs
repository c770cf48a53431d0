namespace WheelDraft.Engineering;

/// <summary>The share of draws that lie within a tolerance, and how well it is known.</summary>
/// <param name="Share">As drawn.</param>
/// <param name="Low">Lower end of its interval of 95 % confidence.</param>
/// <param name="High">Upper end.</param>
public readonly record struct WithinShare(double Share, double Low, double High)
{
    // The normal law's quantile at 97.5 %.
    private const double Z = 1.959963984540054;

    /// <summary>Wilson's score interval ("Probable inference, the law of succession, and statistical inference", Journal of the American
    /// Statistical Association 22, 1927): right near 0 and 1 too, where most wheels are.</summary>
    /// <param name="within">Draws within.</param>
    /// <param name="draws">All draws, at least 1.</param>
    public static WithinShare Of(long within, long draws)
    {
        double share = (double)within / draws;
        double square = Z * Z / draws;
        double middle = (share + (square / 2)) / (1 + square);
        double half = Z / (1 + square) * Math.Sqrt((share * (1 - share) / draws) + (square / (4 * draws)));
        return new(share, within == 0 ? 0 : Math.Max(0, middle - half), within == draws ? 1 : Math.Min(1, middle + half));
    }
}
