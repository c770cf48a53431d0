using System.Globalization;

namespace WheelDraft.Fuzz;

/// <summary>What argument lists may not ask of this machine: files outside the folder, hours of work.</summary>
internal static class ArgumentBounds
{
    /// <summary>The list within bounds: no way out of the folder, no characters that no shell can pass on, no long films or huge pictures.</summary>
    public static IReadOnlyList<string> Keep(IEnumerable<string> args) => [.. args.Select(Keep).Take(40)];

    private static string Keep(string arg)
    {
        string inside = arg.Replace('/', '_').Replace('\\', '_').Replace("..", "__", StringComparison.Ordinal).Replace("\0", "", StringComparison.Ordinal);
        string whole = string.Concat(inside.EnumerateRunes().Select(r => r.ToString()));

        // Numbers of more than two digits stand for pictures of a film and pixels of an inch alike: three are enough.
        return int.TryParse(Number(whole), NumberStyles.Integer, CultureInfo.InvariantCulture, out int number) && number > 300 ? whole.Replace(Number(whole), "3", StringComparison.Ordinal) : whole;
    }

    private static string Number(string arg)
    {
        int cut = arg.IndexOf('=', StringComparison.Ordinal);
        return cut > 0 && arg.StartsWith('-') ? arg[(cut + 1)..] : arg;
    }
}
