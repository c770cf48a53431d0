using WheelDraft.Engineering;

namespace WheelDraft.Tests.Chosen;

/// <summary>A finished design's brief with everything left to the program that can be: order of rings, stations, and whole strips of the same stock, feet, contacts and forces.</summary>
internal static class AllAuto
{
    /// <summary>The brief of a design made by hand, with nothing of that kind given.</summary>
    internal static Brief Of(Design hand)
    {
        Brief brief = hand.Brief;
        return brief with
        {
            Wheel = brief.Wheel with { RingOrder = null, SearchesRingOrder = true },
            Feed = brief.Feed is FeedBrief feed ? feed with { StationRad = null } : null,
            Outputs = [.. brief.Outputs.Select(o => o with { StationRad = null, ReturnStationRad = null, Adjust = o.Adjust is AdjustBrief adjust ? adjust with { Place = null } : null })],
            Strips = [.. brief.Strips.Select(Left)],
            StripRecipe = brief.Strips.Count == 0 ? null : RecipeOf(hand),
        };
    }

    private static StripBrief Left(StripBrief strip) =>
        new(strip.Name, strip.Task, "", 0, []) { Left = new(Shape: true, Approach: true, Deflection: true) };

    private static StripsBrief RecipeOf(Design hand)
    {
        StripBrief[] strips = [.. hand.Brief.Strips];
        StripSpring[] springs = [.. hand.Strips.Strips.Select(s => s.Spring).OfType<StripSpring>()];
        StripStraight foot = strips.Select(s => s.Shape.OfType<StripStraight>().First()).MaxBy(s => s.WidthMm)!;
        StripContactBrief contact = strips[0].Shape.OfType<StripRivet>().FirstOrDefault() is StripRivet rivet
            ? new RivetContact(rivet)
            : new FoldContact(strips[0].Shape.OfType<StripBend>().Single(b => b.IsContact).RadiusMm);
        IEnumerable<StripStock> stock = strips.GroupBy(s => s.Material, StringComparer.Ordinal).Select(g => new StripStock(g.Key, [.. g.Select(s => s.ThicknessMm).Distinct().Order()]));
        return new([.. stock], contact, new(foot.LengthMm!.Value, foot.WidthMm!.Value), new(springs.Min(s => s.ForceN), springs.Max(s => s.ForceN)), strips[0].SeatedOn!)
        {
            Tab = strips[0].Shape.OfType<StripTab>().FirstOrDefault()?.Size,
            YieldFactor = Math.Min(springs.Min(s => s.YieldFactor), 2),
            FatigueFactor = springs.Min(s => s.FatigueFactor) is double fatigue ? Math.Min(fatigue, 1.5) : null,
        };
    }
}
