namespace WheelDraft.Drawing;

/// <summary>Pushes places along a line apart, for texts whose points are closer than lettering.</summary>
internal static class Spread
{
    /// <summary>Each as near to its place as all can be that keep their distance: neighbours that are too close move together, as far one way as the other
    /// (pooling of adjacent violators; Barlow and others, Statistical Inference under Order Restrictions, 1972, from memory).</summary>
    /// <param name="ascending">The places, in ascending order, mm.</param>
    /// <param name="pitchMm">The least distance of neighbours, mm.</param>
    /// <param name="least">The least place that may be taken; more than fit between the limits go beyond the greatest.</param>
    /// <param name="most">The greatest.</param>
    public static double[] Apart(IReadOnlyList<double> ascending, double pitchMm, double least, double most)
    {
        List<(double Mean, int Count)> blocks = [];
        for (int i = 0; i < ascending.Count; i++)
        {
            blocks.Add((ascending[i] - (i * pitchMm), 1));
            while (blocks.Count > 1 && blocks[^1].Mean < blocks[^2].Mean)
            {
                ((double low, int lower), (double high, int upper)) = (blocks[^2], blocks[^1]);
                blocks.RemoveRange(blocks.Count - 2, 2);
                blocks.Add((((low * lower) + (high * upper)) / (lower + upper), lower + upper));
            }
        }

        double room = most - (Math.Max(0, ascending.Count - 1) * pitchMm);
        return [.. blocks.SelectMany(b => Enumerable.Repeat(b.Mean, b.Count)).Select((q, i) => Math.Max(Math.Min(q, room), least) + (i * pitchMm))];
    }
}
