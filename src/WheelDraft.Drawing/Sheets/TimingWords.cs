using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The timing of a design in figures and words.</summary>
internal static class TimingWords
{
    /// <summary>Every on-period with its worst case.</summary>
    public static SheetTable Table(Design design)
    {
        bool adjusts = design.Wheel.Rings.Any(r => r.Adjust is not null);
        TableColumn[] columns =
        [
            new("Output"),
            new("Makes s", TextAlong.End),
            new("°", TextAlong.End),
            new("Breaks s", TextAlong.End),
            new("°", TextAlong.End),
            new("On s", TextAlong.End),
            new("Least s", TextAlong.End),
            new("Most s", TextAlong.End),
            new("Asked ± s", TextAlong.End),
            .. adjusts ? (TableColumn[])[new("Screw, s a turn", TextAlong.End)] : [],
        ];
        return new(columns, [.. design.Wheel.Rings.SelectMany(r => Rows(design, r)).Select(r => (IReadOnlyList<string>)[.. r.Take(columns.Length)])]);
    }

    /// <summary>How the chart is read, and the conditions that are lettered in it.</summary>
    public static IReadOnlyList<string> Notes(Design design, IReadOnlyList<(string Letter, string Condition)> conditions) =>
    [
        $"One turn of {DrawingNumbers.Trimmed(design.Motion.TurnTimeS, 3)} s at {Wording.Number(design.Brief.Supply.FrequencyHz, 2)} Hz, {Wording.Number(design.Motion.SpeedDegPerS, 4)}° a second; home is 0 s. Bars through home go on at the other side.",
        "Whiskers: worst case. At the start of a bar, of the start, the supply's frequency counted from home; at its end, of the on-time, the start where it should be.",
        .. conditions.Count == 0
            ? (string[])[]
            : [Conditions(conditions)],
    ];

    /// <summary>What the letters in the chart mean.</summary>
    public static string Conditions(IReadOnlyList<(string Letter, string Condition)> conditions) =>
        "On only with: " + string.Join("; ", conditions.Select(c => $"{c.Letter} = {c.Condition}")) + ".";

    /// <summary>The chart in sentences.</summary>
    public static string Description(Design design)
    {
        string outputs = string.Join("; ", design.Wheel.Rings.Select(r => r.IsWhole
            ? $"'{r.Name}' is always closed"
            : $"'{r.Name}' is closed {string.Join(" and ", r.Periods.Select(p => $"from {Seconds(design, p.Wanted.StartRad)} for {Seconds(design, p.Wanted.SweepRad)}"))}"));
        string parks = design.Circuit.Parks.Count == 0
            ? ""
            : $" The wheel parks {string.Join(" and ", design.Circuit.Parks.Select(p => $"at {Seconds(design, Angles.InTurn(p.FromRad))}"))}.";
        string stands = string.Join(" and ", design.Circuit.Standing
            .Select(s => s.ToRad - s.FromRad >= Angles.TurnRad ? "anywhere in the turn" : $"from {Seconds(design, s.FromRad)} to {Seconds(design, Angles.InTurn(s.ToRad))}")
            .Distinct(StringComparer.Ordinal));
        stands = stands.Length == 0 ? "" : $" At worst it can stand {stands}.";
        return $"A chart of one turn of {Wording.Seconds(design.Motion.TurnTimeS)}, time from home running to the right, in seconds below and degrees above. {outputs}.{parks}{stands}";
    }

    private static string Seconds(Design design, double rad) => Wording.Seconds(design.Motion.SecondsFromRad(rad));

    private static IEnumerable<IReadOnlyList<string>> Rows(Design design, RingLayout ring)
    {
        OutputBrief output = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
        string asked = output.ToleranceS is double tolerance ? DrawingNumbers.Trimmed(tolerance, 3) : "";
        string screw = ring.Adjust is AdjustLayout adjust ? DrawingNumbers.Fixed(adjust.Middle.SecondsPerTurn, 3) : "";
        string name = ring.Name;
        if (ring.IsWhole)
        {
            yield return [name, "always", "", "never", "", "", "", "", "", ""];
        }

        foreach (RingPeriod period in ring.Periods)
        {
            double on = design.Motion.SecondsFromRad(period.Wanted.SweepRad);
            double end = Angles.InTurn(period.Wanted.EndRad);
            yield return
            [
                name,
                DrawingNumbers.Fixed(design.Motion.SecondsFromRad(period.Wanted.StartRad), 2),
                DrawingNumbers.DirectionInColumn(period.Wanted.StartRad, 2),
                DrawingNumbers.Fixed(design.Motion.SecondsFromRad(end), 2),
                DrawingNumbers.DirectionInColumn(end, 2),
                DrawingNumbers.Fixed(on, 2),
                DrawingNumbers.Fixed(on - period.Limits.ShorterS, 2),
                DrawingNumbers.Fixed(on + period.Limits.LongerS, 2),
                asked,
                screw,
            ];
            name = "";
        }
    }
}
