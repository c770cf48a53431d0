using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What [strips] asks of every strip that presses, beyond what works: force as drawn, factors, and where feet stay. A wish that is not kept is an error.</summary>
internal static class StripWishes
{
    // Forces and factors that differ by no more are the same: far below what is reported.
    private const double SameShare = 1e-6;

    // Far below what is drawn.
    private const double SameMm = 1e-6;

    /// <summary>The wishes that are not kept.</summary>
    public static IEnumerable<Finding> Findings(Brief brief, IReadOnlyList<PlacedStrip> strips) => brief.StripRecipe is not StripsBrief recipe ? []
        : strips.Where(s => s.Spring is not null).SelectMany(s => Of(recipe, s).Select(w => Finding.Error(w.Code, FormattableString.Invariant(w.Words), brief.PlaceOf(FormattableString.Invariant($"strip[{s.Form.Index}]")))));

    private static IEnumerable<(string Code, FormattableString Words)> Of(StripsBrief recipe, PlacedStrip strip)
    {
        StripSpring spring = strip.Spring!;
        string name = strip.Form.Strip.Name;
        if (spring.ForceN < recipe.Force.LeastN * (1 - SameShare) || spring.ForceN > recipe.Force.MostN * (1 + SameShare))
        {
            yield return ("strip.wish-force", $"Strip \"{name}\" presses with {spring.ForceN:0.###} N as drawn, and [strips] asks for {recipe.Force.LeastN:0.###} to {recipe.Force.MostN:0.###} N.");
        }

        if (recipe.YieldFactor is double yield && spring.YieldFactor < yield * (1 - SameShare))
        {
            yield return ("strip.wish-yield", $"Strip \"{name}\" has a factor of {spring.YieldFactor:0.###} against yield within its limits, and [strips] asks for {yield:0.###}.");
        }

        if (recipe.FatigueFactor is double fatigue && !(spring.FatigueFactor >= fatigue * (1 - SameShare)))
        {
            yield return ("strip.wish-fatigue", $"Strip \"{name}\" has {(spring.FatigueFactor is double have ? FormattableString.Invariant($"a factor of {have:0.###} against fatigue within its limits") : "no known fatigue strength")}, and [strips] asks for {fatigue:0.###}.");
        }

        if (recipe.Room is Outline room && OutsideMm(strip, room) is var outside && outside > SameMm)
        {
            yield return ("strip.wish-room", $"The foot of strip \"{name}\" reaches {outside:0.###} mm beyond the room that [strips] gives it.");
        }
    }

    // Foot and tab are a rectangle up to the clamp's end, and rooms are convex: corners decide.
    private static double OutsideMm(PlacedStrip strip, Outline room)
    {
        double most = 0;
        foreach (double at in (double[])[0, strip.Form.Clamp.FromMm, strip.Form.Clamp.ToMm])
        {
            StripFrame frame = strip.Placement.Of(strip.Form.FrameAt(at));
            FormedPiece piece = strip.Form.PieceAt(at);
            double half = piece.WidthAt(piece.DevelopedMm > 0 ? Math.Clamp((at - piece.FromMm) / piece.DevelopedMm, 0, 1) : 0) / 2;
            most = Math.Max(most, Math.Max(Distances.Between(frame.At(0, half, 0).Plan, room).DistanceMm, Distances.Between(frame.At(0, -half, 0).Plan, room).DistanceMm));
        }

        return most;
    }
}
