using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How the figures of a strip came about, step by step, one line a step.</summary>
internal static class StripReasons
{
    /// <summary>How the length of the blank came about.</summary>
    public static IReadOnlyList<string> BlankLength(StripForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        List<string> steps = [];
        foreach (FormedPiece piece in form.Pieces)
        {
            StripPiece asked = form.Strip.Shape[piece.ShapeIndex];
            steps.Add(asked switch
            {
                StripTab tab => Say($"tab {tab.Size}: {piece.DevelopedMm:0.####} mm ({form.Tab!.Source})"),
                StripStraight { LengthMm: null } => Say($"straight \"auto\": {piece.DevelopedMm:0.####} mm, so that the free contact lies {form.DeflectionMm:0.####} mm below the copper face"),
                StripStraight => Say($"straight: {piece.DevelopedMm:0.####} mm"),
                StripSweep => Say($"sweep of {Angles.DegFromRad(piece.AngleRad):0.##}° on radius {piece.RadiusMm:0.####} mm: θ R = {piece.DevelopedMm:0.####} mm along its centre line"),
                _ => Fold(form, piece),
            });
        }

        steps.Add(Say($"blank length: {form.LengthMm:0.####} mm"));
        return steps;
    }

    /// <summary>How the contact force came about.</summary>
    public static IReadOnlyList<string> Force(PlacedStrip strip)
    {
        ArgumentNullException.ThrowIfNull(strip);
        if (strip is not { Spring: StripSpring spring, Form.Nose: StripNose nose })
        {
            return ["a plain strip presses on nothing"];
        }

        Material material = strip.Form.Material;
        List<string> steps =
        [
            Say($"free contact: {nose.DepthMm:0.####} mm below the copper face, with the seat at {strip.Form.SeatLevelMm:0.####} mm; this is the deflection"),
            Say($"spring: from the clamp at {strip.Form.Clamp.ToMm:0.####} mm to the contact at {nose.AtMm:0.####} mm of the blank, {strip.Form.Strip.ThicknessMm:0.####} mm {material.Designation}"),
            Say($"E = {material.ModulusGpa.Value:0.#} GPa ({material.ModulusGpa.SourceInWords}), taken itself and not E/(1 − ν²)"),
            Say($"unit load at the contact, bending about both axes and torsion integrated along the strip: {spring.GivesMmPerN.Z:0.####} mm up for 1 N"),
            Say($"force = {spring.DeflectionMm:0.####} mm / {spring.GivesMmPerN.Z:0.####} mm/N = {spring.ForceN:0.####} N"),
        ];
        if (spring.WornForceN is double worn && strip.Contact?.WearDepthMm is double depth)
        {
            steps.Add(Say($"worn by {depth:0.####} mm, to a patch of {strip.Contact.WornLengthMm:0.####} mm: {worn:0.####} N"));
        }

        if (spring.Adjuster is StripAdjuster adjuster)
        {
            steps.Add(Say($"drawn, at the inner and outer end of travel: {adjuster.InnerForceN:0.####} and {adjuster.OuterForceN:0.####} N, the screw pushing with {adjuster.ScrewForceN:0.####} N"));
        }

        steps.Add(Say($"of all strips within their limits ({FormingWords.Limits(spring.Limits.Forming)}; cut edges, face run-out and friction as well), new to worn and over travel: {spring.LeastForceN:0.####} to {spring.MostForceN:0.####} N"));
        if (spring.WindUp is WindUp wind)
        {
            steps.Add(Say($"in steady turning friction winds the contact {wind.LeastMm:0.####} to {wind.MostMm:0.####} mm along the motion of the copper, and up to {wind.MostRadialMm:0.####} mm along the radius"));
        }

        return steps;
    }

    /// <summary>How the largest stress came about.</summary>
    public static IReadOnlyList<string> Stress(PlacedStrip strip)
    {
        ArgumentNullException.ThrowIfNull(strip);
        if (strip is not { Spring: StripSpring spring, Form.Nose: StripNose })
        {
            return ["a plain strip is not stressed by the wheel"];
        }

        MaterialValue yield = strip.Form.Material.YieldMpa;
        List<string> steps =
        [
            Say($"contact force {spring.ForceN:0.####} N bends the strip most at {spring.StressAtMm:0.####} mm of the blank, {spring.StressWidthMm:0.###} mm wide and {strip.Form.Strip.ThicknessMm:0.###} mm thick"),
            Say($"bending over its section modulus b t²/6, raised on the inside of folds and sweeps (Winkler and Bach, curved bars), with torsion after von Mises: {spring.StressMpa:0.##} MPa"),
            Say($"largest of all strips within their limits and over travel: {spring.WorstStressMpa:0.##} MPa"),
        ];
        if (spring.Adjuster is StripAdjuster adjuster)
        {
            steps.Add(Say($"at the ends of travel: {adjuster.StressMpa:0.##} MPa"));
        }

        steps.Add(Say($"yield {yield.Value:0.#} MPa ({yield.SourceInWords}): factor {spring.YieldFactor:0.###}"));
        if (spring.FatigueFactor is double factor && strip.Form.Material.FatigueMpa is MaterialValue fatigue)
        {
            steps.Add(Say($"fatigue {fatigue.Value:0.#} MPa ({fatigue.SourceInWords}), as if wholly reversed: factor {factor:0.###}"));
        }

        return steps;
    }

    private static string Fold(StripForm form, FormedPiece piece)
    {
        StripFold fold = form.Folds.First(f => f.ShapeIndex == piece.ShapeIndex);
        return Say($"fold of {Angles.DegFromRad(fold.AngleRad):0.##}°, inside radius {fold.RadiusMm:0.###} mm: θ (R + K t) = {fold.AllowanceMm:0.####} mm with K = {fold.K.Value:0.###} ({fold.K.SourceInWords})");
    }

    private static string Say(FormattableString step) => FormattableString.Invariant(step);
}
