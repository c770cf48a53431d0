using System.Globalization;
using System.Text;
using WheelDraft.Cli;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Checking;
using WheelDraft.Formats.Dxf.Reading;

namespace WheelDraft.Fuzz;

/// <summary>Drawings: what <c>check drawing.dxf</c> does, with one of a few questions that the case names in a comment.</summary>
internal sealed class DrawingTarget : ITarget
{
    private static readonly DrawingRules Rules = new(
        new SupplyBrief(230, 50, 0, OvervoltageCategory.II),
        new EnvironmentBrief(3, 0, false),
        new SpacingBrief(SpacingStandard.Iec60664, Insulation.Basic, Insulation.Basic, Insulation.Reinforced, null, 0, GrooveX.Full),
        MaterialGroup.IIIa);

    private static readonly DrawingNet[] Nets = [new("A", "L", SolidKind.Live, 230) { PhaseDeg = 0 }, new("B", "N", SolidKind.Live, 0), new("OUTLINE", "M", SolidKind.Live, 230)];

    private static readonly CuttingProcess Process = CuttingProcesses.All[0];

    // Contours only; nets, loose copper and holes; the limits of a process; both, with curves as chords.
    private static readonly DrawingQuestion[] Questions =
    [
        new([], null, null),
        new(Nets, Rules, null) { Holes = ["H"], Ignored = ["X"] },
        new([], null, new DrawingCut(Process, 0.5, [])),
        new(Nets, Rules, new DrawingCut(Process, 0.5, ["A", "B"])),
    ];

    public string Name => "drawings";

    public string Ending => ".dxf";

    public byte[] Mutate(byte[] parent, byte[] donor, Chance chance) => DxfMutator.Mutate(parent, donor, chance);

    public Outcome Try(byte[] bytes, Depth depth)
    {
        string first = Check(bytes, out Outcome outcome);
        if (depth.HasFlag(Depth.Twice) && !string.Equals(first, Check(bytes, out _), StringComparison.Ordinal))
        {
            throw new BrokenPromiseException("two runs differ in a drawing's check", "The check of a drawing differs between two runs.");
        }

        return outcome;
    }

    private static string Check(byte[] bytes, out Outcome outcome)
    {
        int which = QuestionOf(bytes);
        DrawingQuestion question = Questions[which];
        outcome = Outcome.Refused;
        try
        {
            Stage.Now = "reading";
            ReadDrawing drawing = DxfReader.Read(bytes, new DxfReadOptions { ChordMm = which == 3 ? 0.05 : null, UnitMm = which == 0 ? null : 1, Heeds = question.Heeds, Needs = question.Needs });
            outcome = Outcome.RefusedLate;
            Stage.Now = "checking";
            DrawingCheck check = DrawingCheck.Of(drawing, question);
            outcome = Outcome.Judged;
            return Words(check, bytes);
        }
        catch (DxfReadException refused)
        {
            KeepLines(refused.Reasons, bytes);
            return refused.Message;
        }
        catch (DesignRefusedException refused)
        {
            // What no one place decides, a missing layer for instance, has none.
            Promises.Keep(refused.Reasons, needsPlace: false);
            return refused.Message;
        }
    }

    private static string Words(DrawingCheck check, byte[] bytes)
    {
        Stage.Now = "telling";
        using StringWriter words = new(CultureInfo.InvariantCulture);
        FindingWords.Say(check.Findings, new CommandContext(new Surroundings { Out = words, Error = words, Folder = "." }) { InputFile = "case.dxf" });
        foreach (string line in DrawingChecking.Lines("case.dxf", check))
        {
            words.WriteLine(line);
        }

        words.Write(DrawingCheckJson.Write(check));
        Promises.KeepNumbers("the check of a drawing", words.ToString(), bytes);
        return words.ToString();
    }

    private static void KeepLines(IReadOnlyList<Finding> reasons, byte[] bytes)
    {
        Promises.Keep(reasons, needsPlace: false);
        int lines = 2 + bytes.AsSpan().Count((byte)'\n') + bytes.AsSpan().Count((byte)'\r');
        bool text = !bytes.AsSpan().StartsWith("AutoCAD Binary DXF"u8);
        if (text && reasons.FirstOrDefault(r => r.Where is TextPlace place && (place.Line < 1 || place.Line > lines)) is Finding off)
        {
            throw new BrokenPromiseException("a line that the drawing does not have", $"{off.Where}: {off.Message}");
        }
    }

    /// <summary>The question that the first comment names; without one, that of nets.</summary>
    private static int QuestionOf(byte[] bytes)
    {
        string head = Encoding.Latin1.GetString(bytes.AsSpan(0, Math.Min(bytes.Length, 64)));
        int at = head.IndexOf("question ", StringComparison.Ordinal);
        return at >= 0 && at + 9 < head.Length && head[at + 9] is >= '0' and <= '3' ? head[at + 9] - '0' : 1;
    }
}
