namespace WheelDraft.Engineering;

/// <summary>What the strips of each net carry at most, from the ratings of the loads alone.</summary>
internal static class NetCurrents
{
    /// <summary>By net: the sum of all ratings on it; on the wheel's own net (its feed) the sum of everything.</summary>
    /// <remarks>An upper bound for loads that hang on their output and neutral: every load on at once, currents added as if in phase.</remarks>
    internal static Dictionary<string, StripCurrent> FromRatings(Brief brief)
    {
        Dictionary<string, StripCurrent> byNet = new(StringComparer.OrdinalIgnoreCase);
        List<LoadBrief> all = [.. brief.Loads];
        if (brief.DriveMotor is LoadBrief motor)
        {
            all.Add(motor);
        }

        foreach (OutputBrief output in brief.Outputs)
        {
            byNet[output.Net] = Sum(brief, all.Where(l => Touches(l, output.Net)), makesAndBreaks: output.On.Periods is not null);
            if (output.ReturnNet is string back && !byNet.ContainsKey(back))
            {
                byNet[back] = byNet[output.Net];
            }
        }

        if (brief.Feed is FeedBrief feed)
        {
            byNet[feed.Net] = Sum(brief, all, makesAndBreaks: false);
        }

        return byNet;
    }

    private static bool Touches(LoadBrief load, string net) =>
        string.Equals(load.From, net, StringComparison.OrdinalIgnoreCase) || string.Equals(load.To, net, StringComparison.OrdinalIgnoreCase);

    private static StripCurrent Sum(Brief brief, IEnumerable<LoadBrief> loads, bool makesAndBreaks)
    {
        double amperes = 0;
        bool inductive = false;
        foreach (LoadBrief load in loads)
        {
            (double current, bool coil) = load.Rating switch
            {
                RatedPower p => (p.PowerW / (brief.Supply.VoltageV * p.PowerFactor), p.PowerFactor < 1),
                RatedCurrent c => (c.CurrentA, c.PowerFactor < 1),
                RatedImpedance z => (brief.Supply.VoltageV / Math.Sqrt((z.ResistanceOhm * z.ResistanceOhm) + (z.ReactanceOhm * z.ReactanceOhm)), z.ReactanceOhm > 0),
                _ => (0, false),
            };
            amperes += current;
            inductive |= coil;
        }

        return new StripCurrent(amperes, inductive, makesAndBreaks);
    }
}
