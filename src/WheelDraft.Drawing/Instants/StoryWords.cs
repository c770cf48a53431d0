using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>A played scenario told in sentences: for each event what has happened, and what follows from it.</summary>
internal static class StoryWords
{
    /// <summary>One text of one or more sentences for each moment of a run.</summary>
    public static IReadOnlyList<string> Of(Design design, ScenarioRun run)
    {
        List<string> told = [];
        for (int m = 0; m < run.Moments.Count; m++)
        {
            told.Add(m == 0 ? Beginning(design, run.Moments[0]) : Event(design, run.Moments[m - 1], run.Moments[m]));
        }

        if (run.IsCutShort && told.Count > 1)
        {
            told[^1] += " The story goes on, but is told no further here.";
        }

        return told;
    }

    private static string Beginning(Design design, RunMoment start)
    {
        string[] on = [.. design.Circuit.Loads.Where((_, l) => start.Loads[l] == LoadState.On)];
        string inputs = design.Circuit.Inputs.Count == 0 ? "" : start.ClosedInputs.Count == 0 ? ", every input open" : $", closed: {string.Join(", ", start.ClosedInputs)}";
        return $"The wheel stands at home{inputs}; {(on.Length == 0 ? "nothing is on" : $"on: {string.Join(", ", on)}")}.";
    }

    private static string Event(Design design, RunMoment before, RunMoment now)
    {
        string what = now.What switch
        {
            "home" => FormattableString.Invariant($"the wheel comes home, {(now.Turns == 1 ? "1 turn" : FormattableString.Invariant($"{now.Turns} turns"))} done"),
            "" => "nothing is switched",
            string words => words,
        };
        List<string> follows =
        [
            .. design.Circuit.Loads
                .Select((name, l) => (Name: name, Was: before.Loads[l], Is: now.Loads[l]))
                .Where(l => l.Was != l.Is)
                .Select(l => $"{l.Name} {(l.Is switch { LoadState.On => "goes on", LoadState.Off => "goes off", _ => "may be on or off" })}"),
        ];
        if (before.IsTurning != now.IsTurning)
        {
            follows.Add(now.IsTurning ? "the wheel turns" : "the wheel stands");
        }

        string consequence = follows.Count == 0 ? "nothing else changes" : string.Join(", ", follows);
        return $"After {Wording.Seconds(now.TimeS)} {what}; {consequence}.";
    }
}
