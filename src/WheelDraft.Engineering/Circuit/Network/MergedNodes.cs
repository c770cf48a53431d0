namespace WheelDraft.Engineering;

/// <summary>Nodes merged by closed switches, as a forest: a node that is its own parent stands for all that are joined to it.</summary>
/// <remarks>The lowest number of a group stands for it, so that the result does not depend on the order of joining. B. A. Galler and M. J. Fischer, An
/// improved equivalence algorithm, Communications of the ACM 7 (1964), with paths halved on the way.</remarks>
internal static class MergedNodes
{
    /// <summary>The node that stands for the group of a node.</summary>
    public static int Find(int[] parent, int node)
    {
        while (parent[node] != node)
        {
            parent[node] = parent[parent[node]];
            node = parent[node];
        }

        return node;
    }

    /// <summary>Joins the groups of two nodes.</summary>
    public static void Join(int[] parent, int a, int b)
    {
        a = Find(parent, a);
        b = Find(parent, b);
        parent[Math.Max(a, b)] = Math.Min(a, b);
    }
}
