using WheelDraft.Benchmarks;

// Benchmarks inside the process, each line a figure with what is promised. Names as arguments choose some.
if (args is ["monte-carlo-json"])
{
    using Stream to = Console.OpenStandardOutput();
    MonteCarloBenchmark.WriteJson(to);
    return 0;
}

if (args is ["inputs-timer", string timer])
{
    InputBenchmark.Measure(int.Parse(timer, System.Globalization.CultureInfo.InvariantCulture), Console.Out);
    return 0;
}

if (args is ["compare-json"])
{
    using Stream to = Console.OpenStandardOutput();
    CompareBenchmark.WriteJson(to);
    return 0;
}

(string Name, Action Run)[] all =
[
    ("wheel", () => Tell(WheelBenchmark.Run())),
    ("strips", () => Tell(StripBenchmarks.Run())),
    ("spacing", () => Tell(SpacingBenchmark.Run())),
    ("creepage", () => Tell(WallsBenchmark.Run())),
    ("monte-carlo", () => Tell(MonteCarloBenchmark.Run())),
    ("drawing", () => Tell(DxfBenchmark.Run())),
    ("picture", () => Tell(PictureBenchmark.Run())),
    ("setting-out", () => Tell(SettingOutBenchmark.Run())),
    ("sizes", () => Tell(SizesBenchmark.Run())),
    ("circuit", () => CircuitBenchmark.Run(Console.Out)),
    ("inputs", () => InputBenchmark.Run(Console.Out)),
];
if (args is ["names"])
{
    Tell(all.Select(b => b.Name));
    return 0;
}

foreach ((_, Action run) in all.Where(b => args.Length == 0 || args.Contains(b.Name, StringComparer.Ordinal)))
{
    run();
}

return 0;

static void Tell(IEnumerable<string> lines)
{
    foreach (string line in lines)
    {
        Console.WriteLine(line);
    }
}
