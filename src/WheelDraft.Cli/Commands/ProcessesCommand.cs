using System.CommandLine;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft processes</c>: every process of the list with its figures by thickness, and where they are from.</summary>
internal sealed class ProcessesCommand : ICommand
{
    // What copper wheels and strips are usually made of, mm; a process shows those that it cuts.
    private static readonly double[] UsualMm = [0.035, 0.07, 0.105, 0.2, 0.3, 0.5, 0.8, 1, 1.5, 2];

    private readonly Argument<string?> _name = new Argument<string?>("NAME") { Arity = ArgumentArity.ZeroOrOne, Description = "One process; left out: all of them" }.Suggesting(() => CuttingProcesses.All.Select(p => p.Name));
    private readonly Option<string> _thickness = new("--thickness") { HelpName = "LENGTH", Description = "Only for stock of this thickness; left out: usual thicknesses of copper" };

    /// <inheritdoc/>
    public Command Describe() => new("processes", "The list of cutting processes: kerf, tolerance, least slot, web, hole and inside radius by thickness, with sources") { _name, _thickness };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        RuleArguments arguments = new();
        double? only = parsed.GetValue(_thickness) is string text ? arguments.Metres(_thickness.Name, text) * 1000 : null;
        arguments.ThrowIfFaulty();
        CuttingProcess[] processes = parsed.GetValue(_name) is string name
            ? [CuttingProcesses.Find(name) ?? throw new DesignRefusedException("arguments.process", $"there is no process '{name}'; the list has {string.Join(", ", CuttingProcesses.All.Select(p => p.Name))}")]
            : [.. CuttingProcesses.All];
        if (context.Json)
        {
            Json(context, processes, only);
            return ExitStatus.Done;
        }

        foreach (CuttingProcess process in processes)
        {
            Lines(context, process, only);
        }

        context.Out.WriteLine("Figures are for copper and its alloys, lengths in mm; what shops say in guides, not the promise of any one shop. Own numbers in [process] go before them.");
        return ExitStatus.Done;
    }

    private static double[] Thicknesses(CuttingProcess process, double? only) => only is double one
        ? process.Cuts(one) ? [one] : []
        : [.. UsualMm.Where(process.Cuts)];

    private static void Lines(CommandContext context, CuttingProcess process, double? only)
    {
        context.Out.WriteLine(process.Name);
        double[] thicknesses = Thicknesses(process, only);
        if (thicknesses.Length == 0)
        {
            context.Out.WriteLine($"  does not cut stock of {Wording.Mm(only!.Value)}");
        }
        else
        {
            string[][] rows = [["thickness", "kerf", "tolerance ±", "least slot", "least web", "least hole", "inside radius"], .. thicknesses.Select(t => Row(process, t))];
            foreach (string line in TextTable.Lines(rows, leftColumns: 0))
            {
                context.Out.WriteLine(line);
            }
        }

        context.Out.WriteLine($"  source: {process.Source}");
        if (process.Remark.Length > 0)
        {
            context.Out.WriteLine($"  mind: {process.Remark}");
        }
    }

    private static string[] Row(CuttingProcess p, double t) =>
        [.. new[] { t, p.KerfMm, p.Tolerance.At(t), p.LeastSlot.At(t), p.LeastWeb.At(t), p.LeastHole.At(t), p.InsideRadius.At(t) }.Select(v => Wording.Number(v, 3))];

    private static void Json(CommandContext context, CuttingProcess[] processes, double? only) => context.WriteJson(json =>
    {
        json.WriteStartArray();
        foreach (CuttingProcess p in processes)
        {
            json.WriteStartObject();
            json.WriteString("name", p.Name);
            json.WriteNumber("kerf_mm", p.KerfMm);
            json.WriteStartArray("by_thickness");
            foreach (double t in Thicknesses(p, only))
            {
                json.WriteStartObject();
                foreach ((string key, double value) in new[] { ("thickness_mm", t), ("tolerance_mm", p.Tolerance.At(t)), ("least_slot_mm", p.LeastSlot.At(t)), ("least_web_mm", p.LeastWeb.At(t)), ("least_hole_mm", p.LeastHole.At(t)), ("inside_radius_mm", p.InsideRadius.At(t)) })
                {
                    json.WriteNumber(key, Math.Round(value, 6));
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteString("source", p.Source);
            json.WriteString("mind", p.Remark);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });
}
