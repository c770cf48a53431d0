using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>The circuit in the report.</summary>
internal static class CircuitJson
{
    // Every interval × input position is listed, a line each: 40 outputs and 8 inputs give about fifty thousand. Where those of all inputs are too many, the
    // positions of each set of inputs that matter together are, all others open. Beyond this many the list would fill a disk; then only as many reachable
    // ones are given. In both cases "states_complete" says so.
    private const int MostStates = 200_000;

    public static void Write(JsonSheet json, Design design) => json.Object("circuit", () =>
    {
        CircuitAnalysis circuit = design.Circuit;
        json.Objects("intervals", circuit.Intervals, i => Interval(json, i));
        bool all = circuit.States.Count <= MostStates;
        bool apart = circuit.MatterTogether.Count > 1 || circuit.MatterTogether[0] != circuit.AllInputs;
        json.Flag("states_complete", all && !apart);
        if (apart)
        {
            json.Array("states_apart", circuit.MatterTogether, set => json.RawValue(JsonSheet.List(circuit.Inputs.Where((_, i) => (set >> i & 1) != 0).Select(JsonSheet.Quoted))));
        }

        int loads = circuit.Loads.Count - (design.Brief.DriveMotor is null ? 0 : 1);
        json.Array("states", all ? circuit.States : circuit.States.Where(s => s.IsReachable).Take(MostStates), s => json.RawValue(State(circuit, s, loads)));
        json.Array("parks_at_deg", circuit.Parks, p => json.RawValue(JsonSheet.List([JsonSheet.DegFigure(p.FromRad), JsonSheet.DegFigure(p.ToRad)])));
        json.Objects("standing", circuit.Standing, s => Standing(json, s, design.Brief.Outputs));
        json.Flag("cycle_completes", circuit.CycleCompletes);
        json.Text("cycle", circuit.Cycle switch { CycleVerdict.Yes => "yes", CycleVerdict.No => "no", _ => "undecided" });
        json.Texts("cycle_history", circuit.CycleHistory);
        json.Array("stalls_in", circuit.StalledIntervals, i => json.RawValue(JsonSheet.Figure(i, 0)));
        if (circuit.Request.VoltagesUnderFaults)
        {
            json.Flag("voltages_under_faults", true);
        }

        json.Objects("working_voltage", circuit.WorkingVoltages, v =>
        {
            json.RawList("between", JsonSheet.Quoted(v.First), JsonSheet.Quoted(v.Second));
            json.Plain("volts", v.VoltageV);
            json.Text("where", v.Where);
        });
        if (circuit.Loads.Count > 0)
        {
            Currents(json, circuit);
        }

        json.Objects("interlocks", circuit.Interlocks, i =>
        {
            json.Text("name", i.Name);
            json.Text("verdict", i.Verdict switch { InterlockVerdict.Holds => "holds", InterlockVerdict.Fails => "fails", _ => "undecided" });
            json.Text("kind", Kind(i));
            json.Text("faults", i.Faults == FaultDepth.Single ? "single" : "none");
            json.Flag("applies", i.Applies);
            json.Texts("history", i.History);
            if (i.FaultsThatBreakIt.Count > 0)
            {
                json.Texts("broken_by", i.FaultsThatBreakIt.Select(f => f.Words));
            }
        });
        json.Objects("faults", circuit.Faults, f => Fault(json, f));
    });

    private static void Standing(JsonSheet json, StandingStretch stretch, IReadOnlyList<OutputBrief> outputs)
    {
        bool whole = stretch.ToRad - stretch.FromRad >= Angles.TurnRad;
        json.RawAngle("from_deg", whole ? "0" : JsonSheet.DegFigure(stretch.FromRad));
        json.RawAngle("to_deg", whole ? "360" : JsonSheet.DegFigure(stretch.ToRad));
        json.Text("why", stretch.Why);
        json.Texts("outputs", stretch.VoltageAcross.Select(o => outputs[o].Name));
    }

    /// <summary>What the conditions of an interlock ask of its inputs.</summary>
    private static string Kind(InterlockResult interlock) => (interlock.AsksContactsOf.Count > 0, interlock.AsksMeaningOf.Count > 0) switch
    {
        (true, true) => "both",
        (true, false) => "contacts",
        (false, true) => "meaning",
        _ => "no inputs",
    };

    private static void Currents(JsonSheet json, CircuitAnalysis circuit)
    {
        CircuitCurrents currents = circuit.Currents;
        if (currents.IsBound)
        {
            json.Flag("currents_bound", true);
        }

        json.Objects("currents", CurrentWords.Wipers(circuit), w =>
        {
            json.Text("contact", w.Name);
            Known("carried_a", w.Current.CarriedA);
            if (w.Current.CarriedWhere.Length > 0)
            {
                json.Text("carried_where", w.Current.CarriedWhere);
            }

            Known("broken_a", w.Current.BrokenA);
            if (w.Current.BrokenWhere.Length > 0)
            {
                json.Text("broken_where", w.Current.BrokenWhere);
            }

            json.Flag("breaks_inductive", w.Current.BreaksInductive);
            json.Flag("shared", w.Current.IsShared);
        });

        void Known(string name, double amperes)
        {
            if (double.IsFinite(amperes))
            {
                json.Plain(name, amperes);
            }
        }
    }

    private static void Interval(JsonSheet json, CircuitInterval interval)
    {
        bool whole = interval.LengthRad >= Angles.TurnRad;
        json.RawAngle("from_deg", whole ? "0" : JsonSheet.DegFigure(interval.FromRad));
        json.RawAngle("to_deg", whole ? "360" : JsonSheet.DegFigure(interval.FromRad + interval.LengthRad));
        json.Texts("closed", interval.Closed);
        json.Flag("reachable", interval.IsReachable);
    }

    /// <summary>One state on one line; the motor has a key of its own and is not among the loads that are on.</summary>
    private static string State(CircuitAnalysis circuit, CircuitState state, int loads)
    {
        List<(string Key, string Json)> members =
        [
            ("interval", JsonSheet.Figure(state.Interval, 0)),
            ("inputs", JsonSheet.Line([.. circuit.Inputs.Select((name, i) => (name, i)).Where(n => !circuit.IsHold(n.i)).Select(n => (n.name, Contact((state.Inputs >> n.i & 1) != 0))), .. circuit.Levers.Select((l, i) => (l.Input, Contact(circuit.IsLeverClosed(i, state.Interval, state.Inputs))))])),
        ];
        if (circuit.Levers.Count > 0)
        {
            members.Add(("levers", JsonSheet.Line(circuit.Levers.Select((l, i) => (l.Cam, JsonSheet.Quoted(circuit.LeverStands(i, state.Inputs)))))));
        }

        if (state.Motor is LoadState motor)
        {
            members.Add(("motor", JsonSheet.Quoted(Word(motor))));
        }

        string Names(LoadState wanted) => JsonSheet.List(Enumerable.Range(0, loads).Where(i => state.Loads[i] == wanted).Select(i => JsonSheet.Quoted(circuit.Loads[i])));
        members.Add(("on", Names(LoadState.On)));
        members.Add(("undecided", Names(LoadState.Undecided)));
        members.Add(("volts", JsonSheet.Line(Enumerable.Range(0, circuit.Loads.Count)
            .Where(i => double.IsFinite(state.VoltsV[i]))
            .Select(i => (circuit.Loads[i], JsonSheet.Figure(state.VoltsV[i], 6))))));
        members.Add(("reachable", state.IsReachable ? "true" : "false"));
        if (state.IsShort)
        {
            members.Add(("short", "true"));
        }

        return JsonSheet.Line(members);
    }

    private static string Contact(bool closed) => JsonSheet.Quoted(closed ? "closed" : "open");

    private static void Fault(JsonSheet json, FaultEffect fault)
    {
        json.Text("fault", fault.Fault.Words);
        json.Objects("effects", fault.Effects, e =>
        {
            json.Text("load", e.Load);
            json.Text("change", LoadChangeWords.Of(e.Change));
        });
        json.Texts("short_path", fault.ShortPath);
        json.Texts("breaks", fault.BreaksInterlocks);
        json.Texts("caught_by", fault.CaughtBy);
        json.Texts("dangers", fault.Dangers);
        json.Flag("noticed", fault.IsNoticed);
        json.Text("notice", fault.Notice);
    }

    private static string Word(LoadState state) => state switch
    {
        LoadState.On => "on",
        LoadState.Off => "off",
        _ => "undecided",
    };
}

/// <summary>What a fault does to a load, in words.</summary>
internal static class LoadChangeWords
{
    public static string Of(LoadChange change)
    {
        List<string> words = [];
        void When(LoadChange flag, LoadChange impliedBy, string said)
        {
            if (change.HasFlag(flag) && (impliedBy == LoadChange.None || !change.HasFlag(impliedBy)))
            {
                words.Add(said);
            }
        }

        When(LoadChange.AlwaysOn, LoadChange.None, "always on");
        When(LoadChange.NeverOn, LoadChange.None, "never on");
        When(LoadChange.OnWhenOff, LoadChange.AlwaysOn, "on when it should be off");
        When(LoadChange.OffWhenOn, LoadChange.NeverOn, "off when it should be on");
        When(LoadChange.Undecided, LoadChange.None, "undecided");
        return string.Join(", ", words);
    }
}
