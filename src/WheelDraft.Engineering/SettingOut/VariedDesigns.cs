namespace WheelDraft.Engineering;

/// <summary>One brief with one or two of its keys varied, every point a full design.</summary>
/// <param name="Keys">What is varied: one or two keys.</param>
/// <param name="Points">The designs: the first key's values in order, and to each of them all of the second's.</param>
internal sealed record VariedDesigns(IReadOnlyList<VariedKey> Keys, IReadOnlyList<VariedPoint> Points)
{
    /// <summary>The point at one value of each key, both from 0.</summary>
    public VariedPoint At(int first, int second = 0) => Points[(first * (Keys.Count > 1 ? Keys[1].Values.Count : 1)) + second];
}

/// <summary>A key that is varied.</summary>
/// <param name="Name">The key as it was asked for, e.g. <c>output.mist.tolerance</c>.</param>
/// <param name="Values">Its values as they would stand in the file, in order.</param>
internal sealed record VariedKey(string Name, IReadOnlyList<string> Values)
{
    /// <summary>The numbers of the values, all in one unit; null where they are words or of several units.</summary>
    public IReadOnlyList<double>? Numbers { get; init; }

    /// <summary>The unit of <see cref="Numbers"/>; empty for bare numbers.</summary>
    public string Unit { get; init; } = "";
}

/// <summary>What came of one point.</summary>
/// <param name="Values">The value of each key.</param>
/// <param name="Merits">The figures of its design; null where it was refused.</param>
/// <param name="First">Its first finding of severity error, or the first reason why it was refused; null when there is none.</param>
internal sealed record VariedPoint(IReadOnlyList<string> Values, DesignMerits? Merits, Finding? First)
{
    /// <summary>meets, misses, or refused: it cannot be read or built.</summary>
    public string Verdict => Merits is null ? "refused" : First is null ? "meets" : "misses";

    /// <summary>A point of a brief, or of the reasons why there is none.</summary>
    /// <param name="values">The value of each key.</param>
    /// <param name="brief">The brief with these values; null when it cannot be read.</param>
    /// <param name="fault">Why it cannot be read.</param>
    /// <param name="bands">Bands of strips, which most points have in common.</param>
    public static VariedPoint Of(IReadOnlyList<string> values, Brief? brief, Finding? fault, BandMemory bands)
    {
        if (brief is null)
        {
            return new(values, null, fault);
        }

        try
        {
            DesignMerits merits = DesignMerits.Of(Design.Judged(SettingOut.IsNeeded(brief) ? SettingOut.Of(brief).Brief : brief, bands));
            return new(values, merits, merits.First);
        }
        catch (DesignRefusedException refused)
        {
            return new(values, null, refused.Reasons[0]);
        }
    }
}
