using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What no rule forbids and a person would still want to be asked about: what is left out, joined to nothing, or of no effect.</summary>
/// <remarks>None of these is an error: a file may leave a motor out on purpose. Each says what is not judged because of it.</remarks>
internal static class Oversights
{
    // The wheel should stand where its programme begins, give or take its coast and a notch (common practice, no source).
    private const double FarFromHomeRad = 15 * Math.PI / 180;

    public static IEnumerable<Finding> Of(Design design) =>
        [.. NoLoads(design.Brief), .. NoMotor(design.Brief), .. FeedNothing(design.Brief), .. ChangeNothing(design), .. FarHome(design)];

    private static IEnumerable<Finding> NoLoads(Brief brief)
    {
        if (!brief.FeedsAnything)
        {
            yield return Finding.Warning(
                "circuit.no-loads",
                "The file has no [[load]] and no [drive_motor]: what contacts carry and break, and what inputs and faults do, is not judged, and every net counts at the supply's voltage. Give each thing that the timer switches a [[load]].",
                brief.PlaceOf("load"));
        }
    }

    private static IEnumerable<Finding> NoMotor(Brief brief)
    {
        if (brief.DriveMotor is null && brief.Loads.Count > 0)
        {
            yield return Finding.Warning(
                "circuit.no-motor",
                "The file has no [drive_motor], so nothing says when the wheel turns: where it can stand, whether a cycle completes, and which contacts then have voltage across them for long is not judged. Give [drive_motor] its nets and its power, if only between L and N for one that always runs.",
                brief.PlaceOf("drive"));
        }
    }

    private static IEnumerable<Finding> FeedNothing(Brief brief)
    {
        if (!brief.FeedsAnything)
        {
            yield break;
        }

        for (int i = 0; i < brief.Outputs.Count; i++)
        {
            OutputBrief output = brief.Outputs[i];
            string[] ends = output.ReturnNet is string other ? [output.Net, other] : [output.Net];
            if (ends.All(net => IsSource(brief, net) || !LeadsToLoad(brief, output, net)))
            {
                yield return Finding.Warning(
                    "circuit.feeds-nothing",
                    $"Output '{output.Name}' feeds nothing: no load hangs on net {output.Net}, not through an input either. Give the load that it switches that net in between, or give the output the net of its load.",
                    brief.PlaceOf(FormattableString.Invariant($"output[{i}]")));
            }
        }
    }

    // Over inputs and other outputs' contacts, but not back through what feeds them.
    private static bool LeadsToLoad(Brief brief, OutputBrief from, string start)
    {
        HashSet<string> seen = new(StringComparer.Ordinal) { start };
        Queue<string> open = new([start]);
        IEnumerable<LoadBrief> loads = brief.DriveMotor is { } motor ? brief.Loads.Append(motor) : brief.Loads;
        (string From, string To)[] ways = [.. brief.Inputs.Select(i => (i.From, i.To)), .. brief.Outputs.Where(o => !ReferenceEquals(o, from)).Select(o => (o.Net, brief.OtherNetOf(o)))];
        while (open.TryDequeue(out string? net))
        {
            if (loads.Any(l => string.Equals(l.From, net, StringComparison.Ordinal) || string.Equals(l.To, net, StringComparison.Ordinal)))
            {
                return true;
            }

            foreach (string next in ways.SelectMany(w => Beyond(w, net)).Where(n => !IsSource(brief, n) && seen.Add(n)))
            {
                open.Enqueue(next);
            }
        }

        return false;
    }

    private static IEnumerable<string> Beyond((string From, string To) way, string net) =>
        string.Equals(way.From, net, StringComparison.Ordinal) ? [way.To] : string.Equals(way.To, net, StringComparison.Ordinal) ? [way.From] : [];

    private static bool IsSource(Brief brief, string net) =>
        net is "N" or "E" || brief.Supply.Lines.Contains(net, StringComparer.Ordinal) || string.Equals(brief.Feed?.Net, net, StringComparison.Ordinal);

    // A contact that may as well be closed for ever, or open for ever, has a ring that changes nothing.
    private static IEnumerable<Finding> ChangeNothing(Design design)
    {
        Brief brief = design.Brief;
        for (int i = 0; i < brief.Outputs.Count && design.Circuit.Loads.Count > 0; i++)
        {
            FaultEffect[] stuck = [.. design.Circuit.Faults.Where(f =>
                f.Fault.Kind is CircuitFaultKind.ContactWelded or CircuitFaultKind.ContactNeverMade && string.Equals(f.Fault.Subject, brief.Outputs[i].Name, StringComparison.Ordinal))];
            if (stuck.Length > 0 && stuck.All(f => f.Effects.Count == 0 && f.ShortPath.Count == 0))
            {
                yield return Finding.Warning(
                    "circuit.no-effect",
                    $"The ring of output '{brief.Outputs[i].Name}' can change nothing: whether its contact is closed or open, every load is on and off in the same states. Look at the nets of its loads and at what lies beside it, or leave it out.",
                    brief.PlaceOf(FormattableString.Invariant($"output[{i}]")));
            }
        }
    }

    private static IEnumerable<Finding> FarHome(Design design)
    {
        ParkedPosition[] parks = [.. design.Circuit.Parks.Where(p => p.Output is not null)];
        if (parks.Length == 0 || parks.Min(FromHomeRad) <= FarFromHomeRad)
        {
            yield break;
        }

        ParkedPosition nearest = parks.MinBy(FromHomeRad)!;
        yield return Finding.Warning(
            "circuit.home",
            $"The wheel parks at {Wording.Degrees(nearest.FromRad)} ({Wording.Seconds(design.Motion.SecondsFromRad(nearest.FromRad))} after home), where '{nearest.Output}' lets go, and not at home, from which all times of the file count: "
                + $"a cycle begins there. To have it begin with the times as they are written, count them from there, so that '{nearest.Output}' ends at the end of the turn.",
            design.Brief.PlaceOf("drive_motor"));
    }

    private static double FromHomeRad(ParkedPosition park) =>
        park.ToRad >= Angles.TurnRad ? 0 : Math.Min(park.FromRad, Angles.TurnRad - park.ToRad);
}
