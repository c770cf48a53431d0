namespace WheelDraft.Fuzz;

/// <summary>The cases that others are made from: the seeds, and what showed something new, which also lies in a folder so that a run can go on.</summary>
internal sealed class Corpus
{
    // More would bury the seeds; larger ones make every case slow.
    private const int MostKept = 4000;
    private const int MostBytes = 24_000;

    // The end of a kept file's name that tells that the case was worked out to a verdict.
    private const string JudgedMark = "-judged";

    private readonly List<byte[]> _seeds = [];
    private readonly List<byte[]> _kept = [];
    private readonly List<byte[]> _judged = [];
    private readonly string _folder;

    /// <summary>From folders of seeds, and one for what is kept.</summary>
    public Corpus(IReadOnlyList<string> seeds, string kept)
    {
        _folder = kept;
        Directory.CreateDirectory(kept);
        _seeds.AddRange(seeds.Where(Directory.Exists).SelectMany(Files).Select(File.ReadAllBytes));
        foreach (string file in Files(kept))
        {
            byte[] bytes = File.ReadAllBytes(file);
            _kept.Add(bytes);
            if (file.EndsWith(JudgedMark, StringComparison.Ordinal))
            {
                _judged.Add(bytes);
            }
        }
    }

    /// <summary>The seeds, in the order of their names.</summary>
    public IReadOnlyList<byte[]> Seeds => _seeds;

    /// <summary>One to change: half of the time one that is worked out to a verdict, for its changes go deepest, else a seed or what was kept.</summary>
    /// <remarks>Of four the shortest is taken more often than any: short files are quick, so that more of them can be tried.</remarks>
    public byte[] Parent(Chance chance)
    {
        byte[] parent = Any(chance);
        for (int others = chance.OneIn(4) ? 0 : 3; others > 0; others--)
        {
            byte[] other = Any(chance);
            parent = other.Length < parent.Length ? other : parent;
        }

        return parent;
    }

    private byte[] Any(Chance chance)
    {
        if (_judged.Count > 0 && chance.OneIn(2))
        {
            return chance.Of(_judged);
        }

        return _kept.Count == 0 || chance.OneIn(3) ? chance.Of(_seeds)
            : chance.OneIn(2) ? chance.Of(_kept)
            : _kept[^(1 + chance.Below(Math.Min(200, _kept.Count)))];
    }

    /// <summary>Keeps one, if there is room: all seeds are, so that a later worker knows which are judged.</summary>
    public bool Keep(byte[] bytes, Outcome outcome)
    {
        if (_kept.Count >= MostKept || bytes.Length > MostBytes)
        {
            return false;
        }

        bool judged = outcome == Outcome.Judged;
        File.WriteAllBytes(Path.Combine(_folder, FormattableString.Invariant($"{_kept.Count:D5}{(judged ? JudgedMark : "")}")), bytes);
        _kept.Add(bytes);
        if (judged)
        {
            _judged.Add(bytes);
        }

        return true;
    }

    private static IEnumerable<string> Files(string folder) => Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal);
}
