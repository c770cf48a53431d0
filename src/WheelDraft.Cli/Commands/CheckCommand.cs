using System.CommandLine;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Checking;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Formats.Report;

namespace WheelDraft.Cli;

/// <summary>All findings of parameter files and of drawings, without writing anything.</summary>
internal sealed class CheckCommand : ICommand
{
    private readonly Argument<string[]> _files = new("FILE") { Arity = ArgumentArity.OneOrMore, Description = "Parameter files, drawings (.dxf), or folders that make has written; every one is checked, and the worst exit status wins; with --json several are a line of JSON each, in the order given" };
    private readonly Option<bool> _underFaults = DesignFile.UnderFaults();
    private readonly Option<string> _against = new("--against") { HelpName = "FILE", Description = "DXF: compare cutting files with the design of this parameter file: every contour, fold line and mark, to the micrometre" };
    private readonly DrawingOptions _drawing = new();

    /// <inheritdoc/>
    public Command Describe()
    {
        Command command = new("check", "Checks parameter files and drawings: every finding and the figures behind it, no files written") { _files, _underFaults, _against };
        foreach (Option option in _drawing.All)
        {
            command.Add(option);
        }

        return command;
    }

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string[] files = parsed.GetRequiredValue(_files);
        if (!files.Any(DrawingChecking.IsDrawing) && _drawing.AnyGiven(parsed))
        {
            throw new DesignRefusedException("arguments.drawing", "--net and the other options marked DXF are for drawings (.dxf); a parameter file says all this itself.");
        }

        bool underFaults = parsed.GetValue(_underFaults);
        if (underFaults && files.All(DrawingChecking.IsDrawing))
        {
            throw new DesignRefusedException("arguments.under-faults", "--under-faults is for parameter files: a drawing (.dxf) has no circuit.");
        }

        if (parsed.GetValue(_against) is string parameters)
        {
            return Against(files, parameters, parsed, context);
        }

        (DxfReadOptions Reading, DrawingQuestion Question)? drawing = files.Any(DrawingChecking.IsDrawing) ? _drawing.Of(parsed) : null;
        return Each(files, Meets, context);

        bool Meets(string file, CommandContext own) => Directory.Exists(own.PathOf(file)) ? FolderChecking.Check(file, own)
            : DrawingChecking.IsDrawing(file) ? Drawing(file, drawing!.Value, own)
            : Parameters(file, underFaults, own);
    }

    private int Against(string[] files, string parameters, ParseResult parsed, CommandContext context)
    {
        if (!files.All(DrawingChecking.IsDrawing))
        {
            throw new DesignRefusedException("arguments.against", "--against compares cutting files (.dxf), nothing else: wheeldraft check made/cut/wheel.dxf --against my-wheel.toml.");
        }

        (DxfReadOptions reading, DrawingQuestion question) = _drawing.Of(parsed);
        if (question.Nets.Count > 0 || question.Cut is not null)
        {
            throw new DesignRefusedException("arguments.against", "--against compares; --net, --process and what goes with them judge a drawing by itself: ask for one of the two at a time.");
        }

        Design design = DesignFile.Read(parameters, context);
        return Each(files, (file, own) => AgainstChecking.Check(file, reading, design, own), context);
    }

    // Files are checked side by side, each with words of its own, which are said in the order of the files.
    private static int Each(string[] files, Func<string, CommandContext, bool> meets, CommandContext context)
    {
        if (files.Length == 1)
        {
            return StatusOf(files[0], meets, context);
        }

        int worst = ExitStatus.Done;
        foreach (string[] some in files.Chunk(Environment.ProcessorCount))
        {
            (string File, int Status, AsideWords Words)[] checks = Cores.InOrder(some, file =>
            {
                AsideWords words = new(context);
                return (file, StatusOf(file, meets, words.Context), words);
            }, () => { }, context.Stop);
            foreach ((string file, int status, AsideWords words) in checks)
            {
                if (context.Json)
                {
                    words.SayMessages();
                    context.Results.Write(JsonLine.Of(file, status, words) + "\n");
                }
                else
                {
                    words.Say();
                }

                words.Dispose();
                worst = Math.Max(worst, status);
            }
        }

        return worst;
    }

    private static int StatusOf(string file, Func<string, CommandContext, bool> meets, CommandContext context)
    {
        context.Stop.ThrowIfCancellationRequested();
        return Troubles.StatusOf(() => meets(file, context) ? ExitStatus.Done : ExitStatus.Findings, context);
    }

    private static bool Parameters(string file, bool underFaults, CommandContext context)
    {
        Design design = DesignFile.Read(file, context, underFaults);
        if (context.Json)
        {
            context.Out.Write(System.Text.Encoding.UTF8.GetString(ReportJson.Write(design)));
            return design.Meets;
        }

        Show(design.Findings, CheckTable.Of(design).Concat(new DesignSummary(file, design).Lines()), context, ReadersUnit.Of(design.Brief));
        return design.Meets;
    }

    private static bool Drawing(string file, (DxfReadOptions Reading, DrawingQuestion Question) drawing, CommandContext context)
    {
        DrawingCheck check = DrawingChecking.Check(file, drawing.Reading, drawing.Question, context);
        if (context.Json)
        {
            context.Out.Write(DrawingCheckJson.Write(check));
            return check.Meets;
        }

        Show(check.Findings, DrawingChecking.Lines(file, check), context, ReadersUnit.Millimetres);
        return check.Meets;
    }

    private static void Show(IReadOnlyList<Finding> findings, IEnumerable<string> lines, CommandContext context, ReadersUnit unit)
    {
        FindingWords.Say(findings, context, unit);
        if (context.Quiet)
        {
            return;
        }

        foreach (string line in lines)
        {
            context.Out.WriteLine(line);
        }
    }
}
