using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The spacing drawing in figures and words.</summary>
internal static class SpacingWords
{
    // Rows that meet, the nearest first, are shown as far as they are of interest; the report has all.
    private const int MostOthers = 8;

    /// <summary>A verdict as one word.</summary>
    public static string Verdict(SpacingVerdict verdict) => verdict switch
    {
        SpacingVerdict.Misses => "misses",
        SpacingVerdict.Tight => "tight",
        _ => "meets",
    };

    /// <summary>Numbered distances, then the nearest of the others.</summary>
    public static SheetTable Table(Design design, TightPlaces places)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        return new(
            [
                new("No.", TextAlong.End),
                new("Between"),
                new("Kind"),
                new($"Required {numbers.UnitSign}", TextAlong.End),
                new("Nominal", TextAlong.End),
                new("Worst", TextAlong.End),
                new("At °", TextAlong.End),
                new("Verdict"),
            ],
            [
                .. places.Numbered.Select(p => Row(numbers, DrawingNumbers.Trimmed(p.Number, 0), p.Figures)),
                .. places.Others.Take(MostOthers).Select(o => Row(numbers, "", o)),
            ]);
    }

    /// <summary>Numbered distances alone, in few columns: the key to the numbers of a figure.</summary>
    public static SheetTable Key(Design design, TightPlaces places)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        return new(
            [new("No.", TextAlong.End), new("Distance"), new("At worst", TextAlong.End)],
            [.. places.Numbered.Select(p => (IReadOnlyList<string>)
                [DrawingNumbers.Trimmed(p.Number, 0), $"{p.Figures.Between}, {p.Figures.Kind}", $"{numbers.Length(p.Figures.WorstMm)} of {numbers.LengthWithUnit(p.Figures.RequiredMm)}, {Verdict(p.Verdict)}"])])
        {
            Title = "Key to the numbers",
        };
    }

    /// <summary>How the drawing is read.</summary>
    public static IReadOnlyList<string> Notes(Design design, TightPlaces places)
    {
        int all = places.Numbered.Count + places.Unnumbered + places.Others.Count;
        int others = Math.Max(0, places.Others.Count - MostOthers);
        return
        [
            "Plan of everything conductive with the wheel at home. Numbers: distances that miss what is required at the worst tolerance, or have less than 1.1 times as much (tight).",
            Invariant.Text($"{all} distances judged by {Standard(design)}; {places.Numbered.Count + places.Unnumbered} tight or missing")
                + (places.Unnumbered > 0 ? Invariant.Text($", {places.Unnumbered} of them not numbered here") : "")
                + (others > 0 ? Invariant.Text($"; {others} more that meet are in the report") : "")
                + ".",
            "Heights count too: points above each other may be far apart. A contact gap is never isolation.",
        ];
    }

    /// <summary>The drawing in sentences.</summary>
    public static string Description(Design design, TightPlaces places)
    {
        string solids = string.Join(", ", design.Solids.Select(s => s.Name).Distinct(StringComparer.Ordinal));
        string tight = places.Numbered.Count == 0
            ? Nothing(places)
            : string.Join(" ", places.Numbered.Select(p => Invariant.Text($"{p.Number}: {p.Figures.Between}, {p.Figures.Kind} {Wording.Mm(p.Figures.WorstMm)} at worst, {Wording.Mm(p.Figures.RequiredMm)} required, {Verdict(p.Verdict)}.")));
        return $"A plan, from the wiper side, of {solids}. {ReadersUnit.Of(design.Brief).Words(tight)}";
    }

    /// <summary>What is said when nothing is tight.</summary>
    public static string Nothing(TightPlaces places) => places.Others.Count == 0
        ? "There is no pair of nets to be kept apart."
        : $"Nothing is tight or missing. Nearest: {places.Others[0].Between}, {places.Others[0].Kind} {Wording.Mm(places.Others[0].WorstMm)} at worst, {Wording.Mm(places.Others[0].RequiredMm)} required.";

    private static string Standard(Design design) => design.Brief.Spacing.Standard == SpacingStandard.Iec60664 ? "IEC 60664-1" : "IEC 60335-1";

    private static IReadOnlyList<string> Row(DrawingNumbers numbers, string number, TightFigures figures) =>
    [
        number,
        figures.Between,
        figures.Kind,
        numbers.LengthInColumn(figures.RequiredMm, 2),
        numbers.LengthInColumn(figures.NominalMm, 2),
        numbers.LengthInColumn(figures.WorstMm, 2),
        figures.AtRad is double at ? DrawingNumbers.DirectionInColumn(at, 1) : "",
        Verdict(figures.Verdict),
    ];
}
