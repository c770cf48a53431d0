namespace WheelDraft.Engineering;

/// <summary>Nets of the supply that closed switches join, and by what.</summary>
/// <param name="From">Node of the line.</param>
/// <param name="To">Node of the other line, of neutral or of earth.</param>
/// <param name="Names">Names along the shortest way.</param>
internal sealed record ShortPath(int From, int To, IReadOnlyList<string> Names);

/// <summary>Finds by what a line is joined to another, to neutral or to earth in one state.</summary>
internal static class ShortPaths
{
    /// <summary>Names along the shortest way from a line to another net of the supply; empty when there is none.</summary>
    public static IReadOnlyList<string> Find(CircuitModel model, FaultCase fault, int inputs, int position) =>
        All(model, fault, inputs, position) is [var first, ..] ? first.Names : [];

    /// <summary>The shortest way from each line, in phase order, to another net of the supply over closed switches.</summary>
    public static IReadOnlyList<ShortPath> All(CircuitModel model, FaultCase fault, int inputs, int position)
    {
        List<(string Name, int A, int B)> joins = Joins(model, fault, inputs, position);
        List<ShortPath> paths = [];
        foreach (int line in model.Lines.Where(l => l != fault.OpenLine))
        {
            // A way between two lines is the same from either end.
            if (From(model, fault, joins, line) is { } path && !paths.Exists(p => p.To == line && p.From == path.To))
            {
                paths.Add(path);
            }
        }

        return paths;
    }

    private static ShortPath? From(CircuitModel model, FaultCase fault, List<(string Name, int A, int B)> joins, int line)
    {
        bool Holds(int node) => node != line && model.IsSource(node) && node != fault.OpenLine && !(node == CircuitModel.Neutral && fault.NeutralOpen);
        int[] via = new int[model.NodeCount];
        Array.Fill(via, -1);
        Queue<int> open = new([line]);
        HashSet<int> seen = [line];
        while (open.TryDequeue(out int node))
        {
            if (Holds(node))
            {
                return new ShortPath(line, node, Back(joins, via, node));
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

        return null;
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
            ElementMode mode = fault.ModeAt(c, inputs);
            if (mode == ElementMode.Joined || (mode == ElementMode.Working && BitRow.Has(model.ClosedPositions[c], position)))
            {
                joins.Add((model.LeverOf(c) is null ? $"{model.Contacts[c].Name} ring" : model.Contacts[c].Name, model.Contacts[c].A, model.Contacts[c].B));
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
