namespace WheelDraft.Fuzz;

/// <summary>Runs cases of one target, one after the other, in a process of its own.</summary>
internal sealed class Worker(ITarget target, WorkOrder order) : IDisposable
{
    // One good case in so many is written in full, and one in so many worked out twice: both cost many times the check.
    private const int WrittenOneIn = 50;
    private const int TwiceOneIn = 80;

    private readonly Ledger _ledger = new(order.LedgerPath);
    private readonly Corpus _corpus = new(WorkOrder.SeedsOf(target), order.KeptOf(target));
    private readonly Failures _failures = new(order.Folder);
    private readonly Watchdog _watchdog = new();

    /// <summary>From where the ledger stands to the end of the order.</summary>
    public void Run()
    {
        Branches.Load(order.BranchesPath);
        for (long number = _ledger[Count.Number]; number < order.Cases; number++)
        {
            _ledger[Count.Number] = number;
            One(number);
        }

        _ledger[Count.Number] = order.Cases;
    }

    public void Dispose()
    {
        _watchdog.Dispose();
        _ledger.Dispose();
    }

    private void One(long number)
    {
        Chance chance = Chance.Of(order.Seed, target.Name, number);
        bool seed = number < _corpus.Seeds.Count;
        byte[] bytes = seed ? _corpus.Seeds[(int)number] : target.Mutate(_corpus.Parent(chance), _corpus.Parent(chance), chance);
        bytes = bytes.Length > Ledger.MostBytes ? bytes[..Ledger.MostBytes] : bytes;
        _ledger.Case = bytes;
        Depth depth = seed ? Depth.Write | Depth.Twice : (chance.OneIn(WrittenOneIn) ? Depth.Write : Depth.Check) | (chance.OneIn(TwiceOneIn) ? Depth.Twice : Depth.Check);
        Branches.Clear();
        Trial trial = Trial.Of(target, bytes, depth, _watchdog);
        int fresh = Branches.TakeNew();
        Tally(trial, depth);
        if (trial.Shape is string shape)
        {
            Fail(number, bytes, depth, (shape, trial.Words));
        }
        else if ((fresh > 0 || seed) && _corpus.Keep(bytes, trial.Outcome!.Value))
        {
            _ledger.Add(Count.Kept);
            Branches.Save(order.BranchesPath);
        }
    }

    private void Tally(Trial trial, Depth depth)
    {
        _ledger.Add(Count.Done);
        _ledger[Count.Branches] = Branches.Count;
        _ledger[Count.LongestUs] = Math.Max(_ledger[Count.LongestUs], (long)trial.Time.TotalMicroseconds);
        _ledger[Count.MostAllocated] = Math.Max(_ledger[Count.MostAllocated], trial.Allocated);
        if (trial.Outcome == Outcome.Judged)
        {
            _ledger.Add(Count.Judged);
            if (depth.HasFlag(Depth.Write))
            {
                _ledger.Add(Count.Written);
            }

            if (depth.HasFlag(Depth.Twice))
            {
                _ledger.Add(Count.Twice);
            }
        }
        else if (trial.Outcome is not null)
        {
            _ledger.Add(trial.Outcome == Outcome.Refused ? Count.Refused : Count.RefusedLate);
        }
    }

    private void Fail(long number, byte[] bytes, Depth depth, (string Shape, string Words) failure)
    {
        if (_failures.IsKnown(failure.Shape))
        {
            _ledger.Add(Count.Known);
        }
        else
        {
            _ledger.Add(Count.Failed);
        }

        bool small = !failure.Shape.StartsWith("slow", StringComparison.Ordinal) && _failures.CountOf(target, failure.Shape) == 0;
        byte[] kept = small ? Smaller.Of(bytes, target is DrawingTarget ? 2 : 1, b => string.Equals(Again(b, depth).Shape, failure.Shape, StringComparison.Ordinal)) : bytes;
        _failures.Add(target, number, failure, kept);
        Branches.Clear();
    }

    private Trial Again(byte[] bytes, Depth depth)
    {
        _ledger.Case = bytes;
        return Trial.Of(target, bytes, depth, _watchdog);
    }
}

/// <summary>What a worker is to do.</summary>
/// <param name="Folder">Folder of the run.</param>
/// <param name="Target">Name of the target.</param>
/// <param name="Seed">Seed of all dice.</param>
/// <param name="Cases">How many cases.</param>
internal sealed record WorkOrder(string Folder, string Target, ulong Seed, long Cases)
{
    public string LedgerPath => Path.Combine(Folder, Target + ".ledger");

    public string BranchesPath => Path.Combine(Folder, Target + ".branches");

    /// <summary>Small files kept with the program, and the files of what was found before.</summary>
    public static IReadOnlyList<string> SeedsOf(ITarget target) =>
        [Path.Combine(AppContext.BaseDirectory, "corpus", target.Name), Path.Combine(AppContext.BaseDirectory, "regressions", target.Name)];

    public string KeptOf(ITarget target) => Path.Combine(Folder, "kept", target.Name);
}
