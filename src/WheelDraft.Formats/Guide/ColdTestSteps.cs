using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Guide;

/// <summary>The test with a meter before any supply is joined.</summary>
internal static class ColdTestSteps
{
    public static GuideChapter Of(Design design)
    {
        ColdTest test = ColdTest.Of(design.Circuit);
        string[] earthed = [.. design.Solids.Where(s => string.Equals(s.Net, "E", StringComparison.Ordinal) || s.Kind == SolidKind.Touchable).Select(s => s.Name).Distinct(StringComparer.Ordinal)];
        return new("Test with a meter, not live",
        [
            new GuideCautions(["The supply is isolated and proved dead for all of this test; every receptacle is pulled from the strips, so that no coil and no sensor lies beside what is measured."]),
            new GuideList(
            [
                "Set the meter to continuity. Closed is a reading of almost nothing, open is no reading at all; a reading between the two is dirt, a burr or a contact that hardly presses.",
                $"Turn the wheel {SheetWordsOf.Turns(design)} by hand, its motor uncoupled or the wheel loose on its shaft: never force a gear.",
                "Start with the home mark at the station of 0° and read the pairs at an angle or two within each row. Between the rows an edge passes, and the reading may be either.",
                test.Pairs.Any(p => string.Equals(p.First, ColdTest.FeedName, StringComparison.Ordinal))
                    ? "Two outputs read closed to each other where both read closed to the feed, and open else."
                    : "Terminals of different rings read open to each other at every angle.",
                .. earthed.Length > 0 ? [$"From every terminal to {ShoppingList.Names(earthed)}: open, at every angle."] : (string[])[],
            ], IsNumbered: true),
            Readings(design, test),
            .. design.Brief.Inputs.Count > 0 ? [Sensors(design)] : (GuideBlock[])[],
            new GuideList(
            [
                "A pair that reads open where it should be closed: dirt, too little force, a contact beside its ring. One that reads closed where it should be open: a burr, a chip, a strip that touches another. Mend it before anything is live.",
                "Push the receptacles on again by the table of terminals, each with a pull to see that it holds.",
            ]),
            new GuidePicture("timing", "What is on when"),
        ]);
    }

    private static GuideTable Readings(Design design, ColdTest test) => new(
        "Readings for each part of the turn, degrees from home; sure whatever the tolerances do",
        [new("From, °", TextAlong.End), new("To, °", TextAlong.End), new("Home mark from", TextAlong.End), new("to station", TextAlong.End), .. test.Pairs.Select(p => new TableColumn($"{p.First} – {p.Second}"))],
        [.. test.Rows.Select(r => (IReadOnlyList<string>)
        [
            .. r.SureDeg is (double from, double to)
                ? [Degrees(from), Degrees(to), Station(design, from), Station(design, to)]
                : (string[])["too short", "to read", "–", "–"],
            .. r.Closed.Select(c => c ? "closed" : "open"),
        ])]);

    private static GuideTable Sensors(Design design) => new(
        "Sensors and switches, at their own terminals",
        [new("Sensor"), new("Between"), new("Reads closed when")],
        [.. design.Brief.Inputs.Select(i => (IReadOnlyList<string>)[i.Name, $"{i.From} – {i.To}", i.ClosedWhen ?? "as its name says"])]);

    private static string Degrees(double deg) => Wording.Fixed(deg, 1);

    private static string Station(Design design, double deg) => Degrees(Math.Round((deg * design.Motion.Sigma) - (360 * Math.Floor(deg * design.Motion.Sigma / 360)), 1)) + "°";
}
