namespace WheelDraft.Fuzz;

/// <summary>The cases that others are made from: the seeds, and what showed something new, which also lies in a folder so that a run can go on.</summary>
internal sealed class Corpus
{
    // More would bury the seeds; larger ones make every case slow.
    private const int MostKept = 4000;
    private const int MostBytes = 24_000;

    private readonly List<byte[]> _seeds = [];
    private readonly List<byte[]> _kept = [];
    private readonly string _folder;

    /// <summary>From folders of seeds, and one for what is kept.</summary>
    public Corpus(IReadOnlyList<string> seeds, string kept)
    {
        _folder = kept;
        Directory.CreateDirectory(kept);
        _seeds.AddRange(seeds.Where(Directory.Exists).SelectMany(Files));
        _kept.AddRange(Files(kept));
    }

    /// <summary>The seeds, in the order of their names.</summary>
    public IReadOnlyList<byte[]> Seeds => _seeds;

    /// <summary>What was kept, oldest first.</summary>
    public IReadOnlyList<byte[]> Kept => _kept;

    /// <summary>One to change: a seed as often as a kept one, new ones more often than old.</summary>
    public byte[] Parent(Chance chance)
    {
        if (_kept.Count == 0 || chance.OneIn(2))
        {
            return chance.Of(_seeds);
        }

        return chance.OneIn(2) ? chance.Of(_kept) : _kept[^(1 + chance.Below(Math.Min(200, _kept.Count)))];
    }

    /// <summary>Keeps one, if there is room.</summary>
    public bool Keep(byte[] bytes)
    {
        if (_kept.Count >= MostKept || bytes.Length > MostBytes)
        {
            return false;
        }

        File.WriteAllBytes(Path.Combine(_folder, FormattableString.Invariant($"{_kept.Count:D5}")), bytes);
        _kept.Add(bytes);
        return true;
    }

    private static IEnumerable<byte[]> Files(string folder) =>
        Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal).Select(File.ReadAllBytes);
}
