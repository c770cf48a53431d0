using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Follows groups of edges in every order that their worst-case bands allow.</summary>
internal sealed class TurnGroups(
    List<TurnPosition> positions,
    (List<string> Words, List<(double FromRad, double ToRad)> Spans) unexplored,
    IReadOnlyList<ContactSchedule> contacts)
{
    // Longest group that fits the set of passed edges in one word.
    private const int MostEdgesOfGroup = 62;

    private TurnEdge[] _before = [];
    private TurnEdge[] _after = [];

    /// <summary>Lists the positions of all groups and the steps between them, round to the first again.</summary>
    /// <param name="groups">The groups in turning order, unrolled over one turn.</param>
    /// <param name="closed">Contacts closed before the first group.</param>
    public void Follow(IReadOnlyList<TurnEdge[]> groups, ulong[] closed)
    {
        int entry = Add(closed, Behind(groups[^1], -Angles.TurnRad), Ahead(groups[0], 0));
        int first = entry;
        for (int g = 0; g < groups.Count; g++)
        {
            _before = g == 0 ? Shift(groups[^1], -Angles.TurnRad) : groups[g - 1];
            bool last = g == groups.Count - 1;
            _after = last ? Shift(groups[0], Angles.TurnRad) : groups[g + 1];
            entry = FollowGroup(groups[g], entry, last ? first : -1);
        }
    }

    private static TurnEdge[] Shift(TurnEdge[] edges, double byRad) => [.. edges.Select(e => e.Shifted(byRad))];

    private static double Behind(TurnEdge[] edges, double byRad) => edges.Max(e => e.EarliestRad) + byRad;

    private static double Ahead(TurnEdge[] edges, double byRad) => edges.Min(e => e.LatestRad) + byRad;

    private int FollowGroup(TurnEdge[] group, int entry, int exit)
    {
        ulong[] mustPrecede = Order(group);
        List<ulong>? sets = PassedSets(mustPrecede);
        if (sets is null)
        {
            unexplored.Spans.Add((group.Min(e => e.EarliestRad), group.Max(e => e.LatestRad)));
            unexplored.Words.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{group.Length} edges between {Angles.DegFromRad(group[0].AtRad):0.0##}° and {Angles.DegFromRad(group[^1].AtRad):0.0##}° may come in more than {TurnPositions.MostOrdersOfGroup} orders"));
            group = [.. group.Select(e => e with { EarliestRad = e.AtRad, LatestRad = e.AtRad })];
            return FollowNominal(group, entry, exit);
        }

        ulong all = (1UL << group.Length) - 1;
        Dictionary<ulong, int> at = new() { [0] = entry };
        foreach (ulong passed in sets.Where(s => s != 0 && (s != all || exit < 0)))
        {
            at[passed] = Add(ClosedAfter(group, entry, passed), Lower(group, passed), Upper(group, passed));
        }

        if (exit >= 0)
        {
            at[all] = exit;
        }

        for (int e = 0; e < group.Length; e++)
        {
            if (at.TryGetValue((2UL << e) - 1, out int behind))
            {
                positions[behind].NominalRad = group[e].AtRad;
            }
        }

        foreach (ulong passed in sets)
        {
            for (int e = 0; e < group.Length; e++)
            {
                if ((passed >> e & 1) == 0 && at.TryGetValue(passed | (1UL << e), out int to) && (mustPrecede[e] & ~passed) == 0)
                {
                    Link(at[passed], to, group[e]);
                }
            }
        }

        return at[all];
    }

    private int FollowNominal(TurnEdge[] group, int entry, int exit)
    {
        int from = entry;
        ulong[] closed = positions[entry].Closed;
        for (int e = 0; e < group.Length; e++)
        {
            closed = (ulong[])closed.Clone();
            BitRow.Put(closed, group[e].Contact, group[e].Makes);
            bool last = e == group.Length - 1;
            int to = last && exit >= 0 ? exit : Add(closed, group[e].AtRad, last ? Ahead(_after, 0) : group[e + 1].AtRad);
            positions[to].NominalRad = group[e].AtRad;
            Link(from, to, group[e]);
            from = to;
        }

        return from;
    }

    // For each edge, the edges of its group that surely come first: bands apart, or the same contact.
    private static ulong[] Order(TurnEdge[] group)
    {
        ulong[] before = new ulong[group.Length];
        for (int e = 0; e < Math.Min(group.Length, MostEdgesOfGroup); e++)
        {
            for (int a = 0; a < Math.Min(group.Length, MostEdgesOfGroup); a++)
            {
                bool same = group[a].Contact == group[e].Contact && a < e;
                if (a != e && (same || group[a].LatestRad < group[e].EarliestRad))
                {
                    before[e] |= 1UL << a;
                }
            }
        }

        return before;
    }

    // Every set of passed edges that the order allows, smaller sets first; null when there are too many.
    private static List<ulong>? PassedSets(ulong[] mustPrecede)
    {
        if (mustPrecede.Length > MostEdgesOfGroup)
        {
            return null;
        }

        List<ulong> sets = [0];
        HashSet<ulong> seen = [0];
        for (int i = 0; i < sets.Count; i++)
        {
            for (int e = 0; e < mustPrecede.Length; e++)
            {
                ulong with = sets[i] | (1UL << e);
                if (with != sets[i] && (mustPrecede[e] & ~sets[i]) == 0 && seen.Add(with))
                {
                    sets.Add(with);
                }
            }

            if (sets.Count > TurnPositions.MostOrdersOfGroup)
            {
                return null;
            }
        }

        return sets;
    }

    private ulong[] ClosedAfter(TurnEdge[] group, int entry, ulong passed)
    {
        ulong[] closed = (ulong[])positions[entry].Closed.Clone();
        for (int e = 0; e < group.Length; e++)
        {
            if ((passed >> e & 1) != 0)
            {
                // In nominal order, so that the later edge of one contact decides.
                BitRow.Put(closed, group[e].Contact, group[e].Makes);
            }
        }

        return closed;
    }

    private double Lower(TurnEdge[] group, ulong passed) =>
        Math.Max(Behind(_before, 0), group.Where((_, e) => (passed >> e & 1) != 0).Max(e => e.EarliestRad));

    private double Upper(TurnEdge[] group, ulong passed)
    {
        double upper = Ahead(_after, 0);
        for (int e = 0; e < group.Length; e++)
        {
            upper = (passed >> e & 1) == 0 ? Math.Min(upper, group[e].LatestRad) : upper;
        }

        return upper;
    }

    private int Add(ulong[] closed, double lowerRad, double upperRad)
    {
        if (closed.Length != BitRow.WordsFor(contacts.Count))
        {
            throw new ArgumentException("A row of closed contacts has one bit for each contact.", nameof(closed));
        }

        positions.Add(new TurnPosition { Closed = closed, LowerRad = lowerRad, UpperRad = Math.Max(lowerRad, upperRad) });
        return positions.Count - 1;
    }

    private void Link(int from, int to, TurnEdge edge)
    {
        positions[from].Next.Add(new TurnStep(to, edge));
        positions[to].Previous.Add(new TurnStep(from, edge));
    }
}
