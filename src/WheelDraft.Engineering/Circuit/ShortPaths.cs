namespace WheelDraft.Engineering;

/// <summary>Finds by what line is joined to neutral or earth in one state.</summary>
internal static class ShortPaths
{
    /// <summary>Names along the shortest way from line to neutral or earth over closed switches; empty when there is none.</summary>
    public static IReadOnlyList<string> Find(CircuitModel model, FaultCase fault, int inputs, int position)
    {
        List<(string Name, int A, int B)> joins = Joins(model, fault, inputs, position);
        int[] via = new int[model.NodeCount];
        Array.Fill(via, -1);
        Queue<int> open = new([CircuitModel.Line]);
        HashSet<int> seen = [CircuitModel.Line];
        while (open.TryDequeue(out int node))
        {
            if (node == CircuitModel.Earth || (node == CircuitModel.Neutral && !fault.NeutralOpen))
            {
                return Back(joins, via, node);
            }

            for (int j = 0; j < joins.Count; j++)
            {
                int other = joins[j].A == node ? joins[j].B : joins[j].B == node ? joins[j].A : -1;
                if (other >= 0 && seen.Add(other))
                {
                    via[other] = j;
                    open.Enqueue(other);
                }
            }
        }

        return [];
    }

    private static List<string> Back(List<(string Name, int A, int B)> joins, int[] via, int node)
    {
        List<string> names = [];
        while (via[node] >= 0)
        {
            (string name, int a, int b) = joins[via[node]];
            if (name.Length > 0)
            {
                names.Add(name);
            }

            node = a == node ? b : a;
        }

        names.Reverse();
        return names;
    }

    private static List<(string Name, int A, int B)> Joins(CircuitModel model, FaultCase fault, int inputs, int position)
    {
        List<(string Name, int A, int B)> joins = [];
        if (model.WheelNode >= 0 && !fault.FeedOpen)
        {
            joins.Add(("", model.WheelNode, model.FeedNode));
        }

        if (fault.JoinA >= 0)
        {
            joins.Add((fault.Fault.Words, fault.JoinA, fault.JoinB));
        }

        for (int i = 0; i < model.Inputs.Count; i++)
        {
            if ((fault.Actual(inputs) >> i & 1) != 0)
            {
                joins.Add((model.Inputs[i].Name, model.Inputs[i].A, model.Inputs[i].B));
            }
        }

        for (int c = 0; c < model.Contacts.Count; c++)
        {
            ElementMode mode = fault.Contacts[c];
            if (mode == ElementMode.Joined || (mode == ElementMode.Working && BitRow.Has(model.ClosedPositions[c], position)))
            {
                joins.Add(($"{model.Contacts[c].Name} ring", model.Contacts[c].A, model.Contacts[c].B));
            }
        }

        for (int l = 0; l < model.Loads.Count; l++)
        {
            if (fault.Loads[l] == ElementMode.Joined)
            {
                joins.Add((fault.Fault.Words, model.Loads[l].A, model.Loads[l].B));
            }
        }

        return joins;
    }
}
