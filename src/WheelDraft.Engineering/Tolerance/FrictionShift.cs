namespace WheelDraft.Engineering;

/// <summary>What friction does to one output: it winds an arm up in the way the copper goes.</summary>
/// <remarks>In steady turning make and break both come later, by the shift over r ω. How far the arm is wound up lies between the least and
/// the greatest friction, and may differ between the make, met riding on the carrier, and the break, left riding on copper: so the
/// on-time may be longer or shorter by the range. The layout of the wheel does not know the strips: this comes on top of its worst
/// case, and of the bands of the edges.</remarks>
/// <param name="Output">The output, by index in file order.</param>
/// <param name="LeastMm">Least shift along the motion, mm, of its wiper, or of the one of two that is shifted less.</param>
/// <param name="MostMm">Greatest shift along the motion, mm.</param>
/// <param name="MostRadialMm">Greatest shift along the radius, either way, mm.</param>
/// <param name="LaterMinS">By how much both edges come later at least, s.</param>
/// <param name="LaterMaxS">By how much at most, s.</param>
/// <param name="OnTimeS">By how much an on-time may be longer or shorter as well, s.</param>
public sealed record FrictionShift(int Output, double LeastMm, double MostMm, double MostRadialMm, double LaterMinS, double LaterMaxS, double OnTimeS)
{
    /// <summary>What a person must know: an on-time that friction takes beyond its tolerance, a contact that it moves further than its side play.</summary>
    internal IEnumerable<Finding> Findings(Brief brief, WheelLayout wheel)
    {
        OutputBrief output = brief.Outputs[Output];
        RingLayout ring = wheel.Rings[Output];
        if (output.ToleranceS is double tolerance && ring.Periods.Count > 0)
        {
            double worst = ring.Periods.Max(p => p.Limits.WorstS) + OnTimeS;
            if (worst > tolerance)
            {
                yield return Finding.Error(
                    "timing.friction",
                    FormattableString.Invariant($"The on-time of '{output.Name}' may be off by {worst:0.####} s, where {tolerance:0.####} s are allowed: {OnTimeS:0.###} s of it because friction winds its arm up by {LeastMm:0.###} to {MostMm:0.###} mm. A stiffer or shorter arm, less force, a larger ring or a wider tolerance would do."),
                    brief.PlaceOf(FormattableString.Invariant($"output[{Output}].tolerance")));
            }
        }

        if (MostRadialMm > output.SidePlayMm)
        {
            yield return Finding.Error(
                "strip.side-play",
                FormattableString.Invariant($"Friction moves the contact of '{output.Name}' by up to {MostRadialMm:0.###} mm along the radius, more than its side_play of {output.SidePlayMm:0.###} mm, with which gaps and times were worked out. Give a side_play of at least {Math.Ceiling(MostRadialMm * 100) / 100:0.##} mm, or let the arm run across the radius (approach 90 or 270 deg)."),
                brief.PlaceOf(FormattableString.Invariant($"output[{Output}].side_play")));
        }
    }

    internal static FrictionShift? Of(Brief brief, Motion motion, RingLayout ring, StripSet strips, int index)
    {
        WindUp[] wound =
        [
            .. strips.Strips
                .Where(s => s.Form.Strip.Task is ServesOutput serves && string.Equals(serves.Output, brief.Outputs[index].Name, StringComparison.OrdinalIgnoreCase))
                .Select(s => s.Spring?.WindUp)
                .OfType<WindUp>(),
        ];
        if (wound.Length == 0 || ring.IsWhole)
        {
            return null;
        }

        double least = wound.Min(w => w.LeastMm), most = wound.Max(w => w.MostMm);
        double speedMmPerS = ring.PathFromMm * motion.SpeedRadPerS;
        return new(index, least, most, wound.Max(w => w.MostRadialMm), least / speedMmPerS, most / speedMmPerS, (most - least) / speedMmPerS);
    }
}
