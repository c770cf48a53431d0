namespace WheelDraft.Engineering;

/// <summary>Something that a brief asks for and could ask less of.</summary>
/// <param name="Words">The wish, in words.</param>
/// <param name="Path">Its key, as in <see cref="Brief.Places"/>.</param>
/// <param name="Dropped">The brief without it.</param>
internal sealed record Wish(string Words, string Path, Func<Brief, Brief> Dropped)
{
    /// <summary>The brief with another size of it; null where it has no size.</summary>
    public Func<Brief, double, Brief>? Sized { get; init; }

    /// <summary>The size asked for, and one that asks next to nothing.</summary>
    public (double Asked, double Loosest) Sizes { get; init; }

    /// <summary>A size in words; for a wish without size what it would have to become.</summary>
    public Func<double, string> Say { get; init; } = _ => "";
}

/// <summary>The wishes of a brief.</summary>
internal static class Wishes
{
    // Looser than this no wish is tried: beyond what anyone would take.
    private const double MuchLooser = 1000;

    /// <summary>All of them, in the order of the file.</summary>
    public static IReadOnlyList<Wish> Of(Brief brief) => [.. Wheel(brief), .. brief.Outputs.SelectMany((o, i) => Output(brief, o, i)), .. Spacing(brief), .. Strips(brief)];

    private static IEnumerable<Wish> Wheel(Brief brief)
    {
        if (brief.Wheel.OuterDiameterMm is double diameter)
        {
            yield return new($"an outer diameter of {Wording.Mm(diameter)}", "wheel.outer_diameter", b => b with { Wheel = b.Wheel with { OuterDiameterMm = null } })
            {
                Sized = (b, v) => b with { Wheel = b.Wheel with { OuterDiameterMm = v } },
                Sizes = (diameter, MuchLooser),
                Say = v => $"{Wording.Mm(v)} or more",
            };
        }

        if (brief.Wheel.WebMm > brief.Process.LeastWebMm)
        {
            yield return new($"webs of {Wording.Mm(brief.Wheel.WebMm)}", "wheel.web", b => b with { Wheel = b.Wheel with { WebMm = b.Process.LeastWebMm } })
            {
                Sized = (b, v) => b with { Wheel = b.Wheel with { WebMm = v } },
                Sizes = (brief.Wheel.WebMm, brief.Process.LeastWebMm),
                Say = v => $"{Wording.Mm(v)} or less",
            };
        }
    }

    private static IEnumerable<Wish> Output(Brief brief, OutputBrief output, int index)
    {
        Brief With(Brief b, Func<OutputBrief, OutputBrief> change) => b with { Outputs = [.. b.Outputs.Select((o, i) => i == index ? change(o) : o)] };
        if (output.ToleranceS is double tolerance)
        {
            yield return new($"a tolerance of {Wording.Seconds(tolerance)} on '{output.Name}'", FormattableString.Invariant($"output[{index}].tolerance"), b => With(b, o => o with { ToleranceS = brief.Drive.TurnTimeS }))
            {
                Sized = (b, v) => With(b, o => o with { ToleranceS = v }),
                Sizes = (tolerance, Math.Max(brief.Drive.TurnTimeS, 2 * tolerance)),
                Say = v => $"{Wording.Seconds(v)} or more",
            };
        }

        if (output.OverOpenContact is Insulation grade)
        {
            yield return new($"{Grade(grade)} open contact on '{output.Name}'", FormattableString.Invariant($"output[{index}].open_contact"), b => With(b, o => o with { OverOpenContact = null }))
            {
                Sized = grade == Insulation.Functional ? null : (b, v) => With(b, o => o with { OverOpenContact = (Insulation)(int)Math.Round(v) }),
                Sizes = ((double)(int)grade, (int)Insulation.Functional),
                Say = v => grade == Insulation.Functional || double.IsNaN(v) ? "\"none\"" : $"\"{Grade((Insulation)(int)Math.Round(v))}\"",
            };
        }

        if (output.Adjust is AdjustBrief adjust)
        {
            yield return new($"a range of {Wording.Seconds(adjust.RangeS)} to adjust '{output.Name}' by", FormattableString.Invariant($"output[{index}].adjust"), b => With(b, o => o with { Adjust = null }))
            {
                Sized = (b, v) => With(b, o => o with { Adjust = o.Adjust! with { RangeS = v } }),
                Sizes = (adjust.RangeS, adjust.RangeS / MuchLooser),
                Say = v => $"{Wording.Seconds(v)} or less",
            };
        }
    }

    private static IEnumerable<Wish> Spacing(Brief brief)
    {
        if (brief.Spacing.MarginMm > 0)
        {
            yield return new($"a margin of {Wording.Mm(brief.Spacing.MarginMm)} on every distance", "spacing.margin", b => b with { Spacing = b.Spacing with { MarginMm = 0 } })
            {
                Sized = (b, v) => b with { Spacing = b.Spacing with { MarginMm = v } },
                Sizes = (brief.Spacing.MarginMm, 0),
                Say = v => $"{Wording.Mm(v)} or less",
            };
        }

        if (brief.Spacing.BetweenLive != Insulation.Functional)
        {
            yield return new($"{Grade(brief.Spacing.BetweenLive)} insulation between live nets", "spacing.between_live", b => b with { Spacing = b.Spacing with { BetweenLive = Insulation.Functional } }) { Say = _ => "\"functional\"" };
        }
    }

    private static IEnumerable<Wish> Strips(Brief brief)
    {
        if (brief.StripRecipe is not StripsBrief recipe)
        {
            yield break;
        }

        static Brief With(Brief b, Func<StripsBrief, StripsBrief> change) => b with { StripRecipe = change(b.StripRecipe!) };
        yield return new(FormattableString.Invariant($"contact forces of {recipe.Force.LeastN} to {recipe.Force.MostN} N"), "strips.force", b => With(b, r => r with { Force = new(0.01, 50) })) { Say = _ => "a wider range" };
        if (recipe.YieldFactor is double yield)
        {
            yield return new(FormattableString.Invariant($"a factor of {yield} against yield"), "strips.yield_factor", b => With(b, r => r with { YieldFactor = null }))
            {
                Sized = (b, v) => With(b, r => r with { YieldFactor = v }),
                Sizes = (yield, 1),
                Say = v => $"{Wording.Number(v, 2)} or less",
            };
        }

        if (recipe.FatigueFactor is double fatigue)
        {
            yield return new(FormattableString.Invariant($"a factor of {fatigue} against fatigue"), "strips.fatigue_factor", b => With(b, r => r with { FatigueFactor = null }))
            {
                Sized = (b, v) => With(b, r => r with { FatigueFactor = v }),
                Sizes = (fatigue, 0.1),
                Say = v => $"{Wording.Number(v, 2)} or less",
            };
        }

        if (recipe.Room is not null)
        {
            yield return new("feet that stay in the room given", "strips.room", b => With(b, r => r with { Room = null })) { Say = _ => "larger" };
        }
    }

    private static string Grade(Insulation grade) => grade switch
    {
        Insulation.Functional => "functional",
        Insulation.Basic => "basic",
        Insulation.Supplementary => "supplementary",
        _ => "reinforced",
    };
}
