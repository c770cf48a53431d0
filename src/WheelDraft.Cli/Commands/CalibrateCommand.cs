using System.CommandLine;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft calibrate</c>: from the volume that one on-period gave to the flow, the right on-time, and screw turns or a new file.</summary>
internal sealed class CalibrateCommand : ICommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private readonly Option<string?> _output = new("--output") { HelpName = "NAME", Description = "The output whose dose was measured" };
    private readonly Option<string?> _measured = new("--measured") { HelpName = "VOLUME", Description = "What flowed in one of its on-periods, e.g. \"118 mL\"" };
    private readonly Option<string?> _wanted = new("--wanted") { HelpName = "VOLUME", Description = "The dose wanted; left out, that of the file" };
    private readonly Option<int> _period = new("--period") { HelpName = "N", Description = "Which on-period of the file's list was measured, from 1; needed where they differ in length" };
    private readonly Option<double> _turned = new("--turned") { HelpName = "TURNS", Description = "How far the screw stood from the middle of its travel when it was measured, positive where the on-time is longer" };
    private readonly Option<string?> _new = new("-o") { HelpName = "FILE", Description = "Write the file with the measured flow and corrected on-times, everything else as it is; a file that is there is never overwritten" };

    /// <inheritdoc/>
    public Command Describe() => new("calibrate", "From a measured dose to the flow, the right on-time, and how far to turn the screw, or to a new file")
    {
        _file, _output, _measured, _wanted, _period, _turned, _new,
    };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        RuleArguments arguments = new("calibrate.argument");
        arguments.Need(_output.Name, parsed.GetValue(_output), "the output whose dose was measured, e.g. --output mist");
        arguments.Need(_measured.Name, parsed.GetValue(_measured), "the volume that flowed in one of its on-periods, e.g. --measured \"118 mL\"");
        double measuredMl = arguments.Millilitres(_measured.Name, parsed.GetValue(_measured));
        double wantedMl = arguments.Millilitres(_wanted.Name, parsed.GetValue(_wanted));
        arguments.ThrowIfFaulty();

        string named = parsed.GetRequiredValue(_file);
        byte[] bytes = ParameterFile.Bytes(named, context);
        Brief brief = DesignFile.ReadBrief(named, bytes, context);
        int output = IndexOf(brief, parsed.GetValue(_output)!);
        Design design = WorkedOut.Of(bytes, brief, new SearchRequest { Stop = context.Stop }, null).Design;
        RingLayout ring = design.Wheel.Rings[output];
        RingPeriod period = Period(design, ring, parsed.GetValue(_period));
        double[] wanted = Wanted(design, output, period, wantedMl);
        Calibration found = Calibration.Of(ring, design.Motion, period, new(measuredMl, wanted[period.Wanted.Index], parsed.GetValue(_turned)));
        string? written = parsed.GetValue(_new);
        if (written is not null)
        {
            FileSet.WriteNew(context.PathOf(written), CalibratedFile.Of(bytes, brief, output, found.FlowLPerS, wanted));
        }

        CalibrationWords words = new(design.Brief.Outputs[output], ring, found) { MeasuredMl = measuredMl, TurnedLonger = parsed.GetValue(_turned), Written = written };
        if (context.Json)
        {
            context.WriteJson(words.Write);
        }
        else
        {
            foreach (string line in words.Lines(ReadersUnit.Of(design.Brief)))
            {
                context.Out.WriteLine(line);
            }
        }

        return ExitStatus.Done;
    }

    private static int IndexOf(Brief brief, string name)
    {
        int found = Enumerable.Range(0, brief.Outputs.Count).FirstOrDefault(i => string.Equals(brief.Outputs[i].Name, name, StringComparison.OrdinalIgnoreCase), -1);
        return found >= 0 ? found : throw new DesignRefusedException("calibrate.output", $"there is no output '{name}'; there are {string.Join(", ", brief.Outputs.Select(o => $"'{o.Name}'"))}");
    }

    private static RingPeriod Period(Design design, RingLayout ring, int asked)
    {
        if (ring.IsWhole)
        {
            throw new DesignRefusedException("calibrate.output", $"'{ring.Name}' is always on: it gives no dose");
        }

        if (asked != 0)
        {
            return ring.Periods.FirstOrDefault(p => p.Wanted.Index == asked - 1)
                ?? throw new DesignRefusedException("calibrate.period", $"--period: '{ring.Name}' has on-periods 1 to {Wording.Number(ring.Periods.Count, 0)}, not {Wording.Number(asked, 0)}");
        }

        double first = ring.Periods[0].Wanted.SweepRad;
        return ring.Periods.All(p => Math.Abs(p.Wanted.SweepRad - first) < 1e-9) ? ring.Periods[0] : throw new DesignRefusedException(
            "calibrate.period",
            $"the on-periods of '{ring.Name}' differ in length ({string.Join(", ", ring.Periods.OrderBy(p => p.Wanted.Index).Select(p => Wording.Seconds(design.Motion.SecondsFromRad(p.Wanted.SweepRad))))}); say with --period which one was measured");
    }

    /// <summary>The dose wanted of every on-period, in file order, mL.</summary>
    private static double[] Wanted(Design design, int output, RingPeriod measured, double wantedMl)
    {
        OutputBrief brief = design.Brief.Outputs[output];
        if (brief.FlowLPerS is null && double.IsNaN(wantedMl))
        {
            throw new DesignRefusedException("calibrate.flow", $"'{brief.Name}' has no flow, so the file does not say what dose is wanted; give --wanted, e.g. --wanted \"110 mL\"", design.Brief.PlaceOf(FormattableString.Invariant($"output[{output}]")));
        }

        // What is wanted of the one that was measured goes for the others by their lengths.
        double measuredS = design.Motion.SecondsFromRad(measured.Wanted.SweepRad);
        double perS = double.IsNaN(wantedMl) ? brief.FlowLPerS!.Value * 1000 : wantedMl / measuredS;
        return [.. design.Wheel.Rings[output].Periods.OrderBy(p => p.Wanted.Index).Select(p => design.Motion.SecondsFromRad(p.Wanted.SweepRad) * perS)];
    }
}
