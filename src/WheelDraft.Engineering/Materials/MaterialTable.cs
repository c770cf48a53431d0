namespace WheelDraft.Engineering;

/// <summary>The copper alloys that this project knows, by temper.</summary>
internal static class MaterialTable
{
    // Annealed stock is sold under both words (ASTM B601: O60 soft anneal, O61 annealed); the published tables used here do not
    // distinguish them.
    private const string SoftAnneal = "O60";
    private const string Annealed = "O61";

    /// <summary>All of them, by alloy, soft to hard.</summary>
    public static IReadOnlyList<Material> All { get; } =
    [
        .. CopperAlloys.C11000(),
        .. CopperAlloys.C17200(),
        .. CopperAlloys.C19400(),
        .. CopperAlloys.C26000(),
        .. CopperAlloys.C51000(),
    ];

    /// <summary>Looks up a designation such as <c>C51000-H04</c>, without regard to case.</summary>
    public static MaterialSearch Find(string designation)
    {
        ArgumentNullException.ThrowIfNull(designation);
        string asked = designation.Trim();
        string listed = asked.EndsWith(SoftAnneal, StringComparison.OrdinalIgnoreCase) ? asked[..^SoftAnneal.Length] + Annealed : asked;
        Material? found = All.FirstOrDefault(m => string.Equals(m.Designation, listed, StringComparison.OrdinalIgnoreCase));
        return new MaterialSearch(asked, found, found is null ? Nearest(asked) : []);
    }

    // The same alloy first; then by the number of letters that differ; four are enough to choose from.
    private static List<string> Nearest(string asked)
    {
        string alloy = asked.Split('-')[0];
        return [.. All
            .Select(m => m.Designation)
            .OrderBy(d => d.StartsWith(alloy + "-", StringComparison.OrdinalIgnoreCase) ? 0 : 1)
            .ThenBy(d => LettersApart(asked.ToUpperInvariant(), d))
            .ThenBy(d => d, StringComparer.Ordinal)
            .Take(4)];
    }

    // Edit distance of Levenshtein (1966): letters put in, left out or changed.
    private static int LettersApart(string a, string b)
    {
        int[] row = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 1; i <= a.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(changed, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }
}

/// <summary>What a look-up of a material found.</summary>
/// <param name="Asked">The designation asked for.</param>
/// <param name="Found">The material; null when it is not listed.</param>
/// <param name="NearMisses">The listed designations nearest to it, best first; none when it was found.</param>
internal sealed record MaterialSearch(string Asked, Material? Found, IReadOnlyList<string> NearMisses)
{
    /// <summary>What to say to the person when it is not listed.</summary>
    public string Message =>
        $"material \"{Asked}\" is not listed; it is written as alloy and temper, and the nearest are {string.Join(", ", NearMisses.Select(n => $"\"{n}\""))} (alloys: {string.Join(", ", MaterialTable.All.Select(m => m.Alloy).Distinct(StringComparer.Ordinal))})";
}
