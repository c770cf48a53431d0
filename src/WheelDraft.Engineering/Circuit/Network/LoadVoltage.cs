namespace WheelDraft.Engineering;

/// <summary>The voltage that a load is rated for where its file does not say.</summary>
internal static class LoadVoltage
{
    /// <summary>Supply voltage; line to line where contacts and inputs can join its ends to different lines only, and to no neutral.</summary>
    public static double Of(CircuitModel model, NetworkElement load)
    {
        if (model.Lines.Count == 1)
        {
            return model.SupplyV;
        }

        HashSet<int> first = Sources(model, load.A);
        HashSet<int> second = Sources(model, load.B);
        bool betweenLines = first.Count > 0 && second.Count > 0
            && !first.Overlaps([CircuitModel.Neutral, CircuitModel.Earth]) && !second.Overlaps([CircuitModel.Neutral, CircuitModel.Earth])
            && !(first.Count == 1 && first.SetEquals(second));
        return betweenLines ? model.Brief.Supply.HighestV : model.SupplyV;
    }

    // Sources that switches can join a node to, not through another source.
    private static HashSet<int> Sources(CircuitModel model, int from)
    {
        HashSet<int> seen = [from];
        HashSet<int> sources = [];
        Queue<int> open = new(seen);
        while (open.TryDequeue(out int at))
        {
            if (model.IsSource(at))
            {
                sources.Add(at);
                continue;
            }

            foreach (int next in model.SwitchedTo(at).Where(seen.Add))
            {
                open.Enqueue(next);
            }
        }

        return sources;
    }
}
