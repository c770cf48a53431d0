using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>Puts a history into words.</summary>
internal sealed class HistoryWords(CircuitModel model, NetworkSplit split)
{
    /// <summary>The steps of a history, the outcome joined to the last one.</summary>
    /// <param name="path">From home on.</param>
    /// <param name="judge">The interlock that the history is about.</param>
    /// <param name="sheet">The sheet on which it ends.</param>
    public IReadOnlyList<string> Describe(IReadOnlyList<HistoryStep> path, InterlockJudge judge, StateSheet sheet)
    {
        HistoryNode end = path[^1].To;
        List<string> words = Steps(path, sheet.Fault, [.. judge.Conditions, .. ContactsBehind(judge.Loads, sheet.Fault, end.Inputs)]);
        if (judge.Brief.Between is not null)
        {
            TurnPosition at = model.Turn.Positions[end.Position];
            words.Add(string.Create(CultureInfo.InvariantCulture, $"wheel between {model.SecondsAt(at.LowerRad):0.0} s and {model.SecondsAt(at.UpperRad):0.0} s"));
        }

        words[^1] = $"{words[^1]}: {Outcome(judge, sheet, end)}";
        return words;
    }

    /// <summary>The steps of a history that ends with the wheel at a stand, described by what feeds the motor.</summary>
    /// <param name="path">From home on, without fault.</param>
    /// <param name="fault">No fault.</param>
    /// <param name="outcome">What it comes to, joined to the last step.</param>
    public IReadOnlyList<string> DescribeStanding(IReadOnlyList<HistoryStep> path, FaultCase fault, string outcome)
    {
        List<string> words = Steps(path, fault, ContactsBehind([], fault, path[^1].To.Inputs));
        words[^1] = $"{words[^1]}: {outcome}";
        return words;
    }

    private List<string> Steps(IReadOnlyList<HistoryStep> path, FaultCase fault, HashSet<int> matters)
    {
        List<string> words = ["home"];
        bool toldUnsure = false;
        foreach (HistoryStep step in path)
        {
            if (!step.IsSure && !toldUnsure)
            {
                words.Add("motor undecided, the wheel turns");
                toldUnsure = true;
            }

            if (Words(step, fault, matters) is { } said)
            {
                words.Add(said);
            }
        }

        return words;
    }

    private static string Named(LoadState state) => state switch
    {
        LoadState.On => "on",
        LoadState.Off => "off",
        _ => "undecided",
    };

    private string Outcome(InterlockJudge judge, StateSheet sheet, HistoryNode end)
    {
        if (judge.Brief.Claim == InterlockClaim.NeverTogether)
        {
            return string.Join(", ", judge.Loads.Select(l => $"{model.Loads[l].Name} {Named(sheet.StateOf(end.Inputs, l, end.Position))}"));
        }

        LoadState wrong = judge.Brief.Claim == InterlockClaim.NeverOn ? LoadState.On : LoadState.Off;
        List<int> loads = [.. judge.Loads.Where(l => sheet.StateOf(end.Inputs, l, end.Position) == wrong)];
        if (loads.Count == 0)
        {
            loads = [.. judge.Loads.Where(l => sheet.StateOf(end.Inputs, l, end.Position) == LoadState.Undecided)];
        }

        return string.Join(", ", loads.Select(l => $"{model.Loads[l].Name} {Named(sheet.StateOf(end.Inputs, l, end.Position))}"));
    }

    private string? Words(HistoryStep step, FaultCase fault, HashSet<int> matters)
    {
        if (step.From is not { } from)
        {
            return null;
        }

        if (from.Faulty != step.To.Faulty)
        {
            return from.Position == step.To.Position
                ? fault.Fault.Words
                : string.Create(CultureInfo.InvariantCulture, $"{fault.Fault.Words} to {model.SecondsAt(model.Turn.Positions[step.To.Position].LowerRad):0.0} s");
        }

        int changed = from.Inputs ^ step.To.Inputs;
        if (changed != 0)
        {
            int input = System.Numerics.BitOperations.TrailingZeroCount(changed);
            return model.Change(input, (step.To.Inputs & changed) != 0);
        }

        TurnEdge edge = step.Edge!;
        bool works = !step.To.Faulty || fault.ModeAt(edge.Contact, step.To.Inputs) == ElementMode.Working;
        if (!works || !matters.Contains(edge.Contact))
        {
            return null;
        }

        bool makes = edge.Makes != (step.To.Faulty && fault.Motion == WheelMotion.Backward);
        string what = model.LeverOf(edge.Contact) is { } lever
            ? $"the lever of {lever.Schedule.Cam} {(makes ? "closes" : "opens")} {lever.Schedule.Input}"
            : $"{model.Contacts[edge.Contact].Name} ring {(makes ? "makes" : "breaks")}";
        return string.Create(CultureInfo.InvariantCulture, $"at {model.SecondsAt(edge.AtRad):0.0} s {what}");
    }

    // Contacts that can be felt by some loads, and by the motor: those of their sections.
    private HashSet<int> ContactsBehind(IReadOnlyList<int> loads, FaultCase fault, int inputs)
    {
        HashSet<int> contacts = [];
        if (!split.Split(fault, inputs))
        {
            return contacts;
        }

        HashSet<int> wanted = [.. loads.Append(model.Motor).Where(l => l >= 0).Select(l => l + model.Contacts.Count)];
        for (int s = 0; s < split.Count; s++)
        {
            List<int> elements = [];
            foreach (long packed in split.Section(s))
            {
                elements.Add(SectionEnd.Unpack(packed).Element);
            }

            if (elements.Exists(wanted.Contains))
            {
                contacts.UnionWith(elements.Where(e => e < model.Contacts.Count));
            }
        }

        return contacts;
    }
}
