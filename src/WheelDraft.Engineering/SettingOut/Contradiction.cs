namespace WheelDraft.Engineering;

/// <summary>Wishes that cannot be had together, none of which can be left out of the list.</summary>
/// <param name="Together">The wishes, in the order of the file; empty where none of those that could ask less is the reason.</param>
internal sealed record Contradiction(IReadOnlyList<Wish> Together)
{
    // Halvings until a size is told to a thousandth of the way.
    private const int Halvings = 12;

    // Where strips have to be set out for each trial.
    private const int SearchedHalvings = 5;

    /// <summary>What each would have to become by itself, in words, in the same order.</summary>
    public IReadOnlyList<string> Instead { get; init; } = [];

    /// <summary>The contradiction of a brief that nothing meets; null where something does, or where even asking for less everywhere does not help.</summary>
    /// <remarks>Wishes are dropped one after the other, from the end of the file, and what is still contradicted without one does not need it: what stays is a least set, in that
    /// leaving any one of it out would do if nothing else of the file stood in the way. What the wheel alone contradicts is found by the wheel alone.</remarks>
    public static Contradiction? Of(Brief brief, SearchRequest request)
    {
        IReadOnlyList<Wish> all = Wishes.Of(brief);
        Func<Brief, bool> meets = CanBeBuilt(brief) ? b => Meets(b, request) : CanBeBuilt;
        List<Wish>? needed = Least(brief, all, meets, request);

        // A wheel that can be built may still miss: then the wheel alone does not tell which wishes are in each other's way.
        if (needed is not null && meets == CanBeBuilt && !needed.TrueForAll(w => Meets(Without(brief, all.Except(needed).Append(w)), request)))
        {
            meets = b => Meets(b, request);
            needed = Least(brief, all, meets, request);
        }

        return needed is null ? null : new(needed) { Instead = [.. needed.Select(w => InsteadOf(brief, w, (all, needed), meets))] };
    }

    // What stays of all wishes when those are left out, one after the other, without which it is contradicted all the same; null where they are met, or none of them helps.
    private static List<Wish>? Least(Brief brief, IReadOnlyList<Wish> all, Func<Brief, bool> meets, SearchRequest request)
    {
        if (meets(brief) || !meets(Without(brief, all)))
        {
            return null;
        }

        List<Wish> needed = [.. all];
        foreach (Wish wish in all.Reverse())
        {
            request.Stop.ThrowIfCancellationRequested();
            List<Wish> rest = [.. needed.Where(w => w != wish)];
            if (!meets(Without(brief, all.Except(rest))))
            {
                needed = rest;
            }
        }

        return needed;
    }

    /// <summary>As a finding.</summary>
    public Finding Finding(Brief brief)
    {
        string words = Together.Count == 1 ? $"This cannot be had: {Together[0].Words}." : $"These {Number(Together.Count)} cannot be had together: {string.Join(", ", Together.Select(w => w.Words))}.";
        IEnumerable<string> each = Together.Zip(Instead, (w, i) => $"{w.Words}: {i}");
        string safety = Together.Any(w => IsSafety(w.Path)) ? " What insulation is needed is no wish to be bargained with: rules and a qualified person decide it." : "";
        return Engineering.Finding.Error("setting-out.contradiction", $"{words} By itself each would have to become: {string.Join("; ", each)}.{safety}", brief.PlaceOf(Together[0].Path));
    }

    private static bool IsSafety(string path) => path.StartsWith("spacing.", StringComparison.Ordinal) || path.EndsWith("open_contact", StringComparison.Ordinal);

    private static string Number(int count) => count switch { 2 => "two", 3 => "three", 4 => "four", 5 => "five", _ => Wording.Number(count, 0) };

    private static Brief Without(Brief brief, IEnumerable<Wish> wishes) => wishes.Aggregate(brief, (b, w) => w.Dropped(b));

    // First with everything else as it is asked for; where more stands in the way, with that out of it.
    private static string InsteadOf(Brief brief, Wish wish, (IReadOnlyList<Wish> All, List<Wish> Needed) wishes, Func<Brief, bool> meets)
    {
        bool alone = meets(wish.Dropped(brief));
        Brief rest = alone ? brief : Without(brief, wishes.All.Except(wishes.Needed));
        string more = alone ? "" : " (and more of the file stands in the way then)";
        if (wish.Sized is null)
        {
            return wish.Say(double.NaN) + more;
        }

        (double tight, double loose) = wish.Sizes;
        if (!meets(wish.Sized(rest, loose)))
        {
            return (wish.Say(double.NaN) is { Length: > 0 } words && !words.Contains("NaN", StringComparison.Ordinal) ? words : "left out") + more;
        }

        for (int i = 0; i < (SettingOut.IsNeeded(brief) && CanBeBuilt(brief) ? SearchedHalvings : Halvings); i++)
        {
            double middle = tight > 0 && loose > 0 ? Math.Sqrt(tight * loose) : (tight + loose) / 2;
            (tight, loose) = meets(wish.Sized(rest, middle)) ? (tight, middle) : (middle, loose);
        }

        double plain = Plain(loose, loose > wish.Sizes.Asked);
        return wish.Say(meets(wish.Sized(rest, plain)) ? plain : loose) + more;
    }

    // To three figures, on the side that does.
    private static double Plain(double value, bool up)
    {
        double step = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(1e-9, Math.Abs(value)))) - 2);
        return (up ? Math.Ceiling(value / step) : Math.Floor(value / step)) * step;
    }

    // The wheel alone.
    private static bool CanBeBuilt(Brief brief)
    {
        try
        {
            return CandidateDesigns.CanBeBuilt(brief);
        }
        catch (DesignRefusedException)
        {
            return false;
        }
    }

    private static bool Meets(Brief brief, SearchRequest request)
    {
        try
        {
            return Design.Judged(SettingOut.IsNeeded(brief) ? SettingOut.Of(brief, request with { Effort = SearchEffort.Quick, Tell = null, KeepsBest = false }).Brief : brief).Meets;
        }
        catch (DesignRefusedException)
        {
            return false;
        }
    }
}
