using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>On-times and their limits in the report.</summary>
internal static class TimingJson
{
    public static void Write(JsonSheet json, Design design) => json.Objects("timing", design.Wheel.Rings, ring =>
    {
        OutputBrief output = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
        json.Text("output", ring.Name);
        json.Objects("on", ring.Periods.Zip(design.Spreads.Of(ring.Name).Periods), p => Period(json, design, output, p));
        if (ring.IsWhole)
        {
            json.Flag("always", true);
        }

        if (output.ToleranceS is double tolerance)
        {
            json.Plain("tolerance_s", tolerance);
        }

        if (design.FrictionShifts.FirstOrDefault(s => ReferenceEquals(design.Brief.Outputs[s.Output], output)) is FrictionShift shift)
        {
            json.Object("friction", () => Friction(json, shift));
        }

        if (ring.Adjust is AdjustLayout adjust)
        {
            json.Object("adjust", () => Adjust(json, output, adjust));
        }
    });

    private static void Period(JsonSheet json, Design design, OutputBrief output, (RingPeriod Period, PeriodSpread Spread) of)
    {
        RingPeriod period = of.Period;
        double on = design.Motion.SecondsFromRad(period.Wanted.SweepRad);
        json.Plain("from_s", design.Motion.SecondsFromRad(period.Wanted.StartRad));
        json.Plain("for_s", on);
        json.Plain("start_min_s", period.Bands.StartMinS);
        json.Plain("start_max_s", period.Bands.StartMaxS);
        json.Plain("worst_min_s", on - period.Limits.ShorterS);
        json.Plain("worst_max_s", on + period.Limits.LongerS);
        SpreadJson.Summary(json, of.Spread.OnTime);
        json.Objects("contributors", period.Limits.Contributors, c =>
        {
            json.Text("name", c.Name);
            json.Plain("seconds", c.LongerS);
            json.Plain("shorter_s", c.ShorterS);
        });
        if (DoseLimits.Of(output, on, period.Limits) is DoseLimits dose)
        {
            json.Plain("dose_ml", dose.NominalMl);
            json.Plain("dose_min_ml", dose.LeastMl);
            json.Plain("dose_max_ml", dose.MostMl);
        }

        SpreadJson.Write(json, design.Spreads, of.Spread);
        SpreadJson.Mains(json, design, output, period);
    }

    private static void Friction(JsonSheet json, FrictionShift shift)
    {
        json.MmList("shift_mm", shift.LeastMm, shift.MostMm);
        json.Mm("radial_mm", shift.MostRadialMm);
        json.Plain("later_min_s", shift.LaterMinS);
        json.Plain("later_max_s", shift.LaterMaxS);
        json.Plain("on_time_s", shift.OnTimeS);
    }

    private static void Adjust(JsonSheet json, OutputBrief output, AdjustLayout adjust)
    {
        json.Plain("seconds_per_turn", adjust.Middle.SecondsPerTurn);
        json.Plain("range_s", adjust.Asked.RangeS);
        json.Mm("travel_mm", adjust.Asked.TravelMm);
        json.Plain("linearity_s", adjust.LinearityS);
        json.Text("longer", adjust.Asked.Longer == LongerWay.In ? "in" : "out");
        json.Text("screw", adjust.Asked.Screw);
        json.Plain("turns", adjust.Turns);
        json.Objects("along_travel", adjust.Steps, s =>
        {
            json.Mm("offset_mm", s.OffsetMm);
            json.Plain("on_s", s.OnS);
            json.Plain("worst_min_s", s.OnS - s.ShorterS);
            json.Plain("worst_max_s", s.OnS + s.LongerS);
            json.Plain("seconds_per_turn", s.SecondsPerTurn);
            if (output.FlowLPerS is double flow)
            {
                json.Plain("ml_per_turn", s.SecondsPerTurn * flow * 1000);
            }
        });
    }
}
