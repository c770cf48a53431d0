using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Checking;
using WheelDraft.Formats.Dxf.Reading;

namespace WheelDraft.Cli;

/// <summary>Checks one drawing and reports on it.</summary>
internal static class DrawingChecking
{
    /// <summary>Whether a file is taken for a drawing, by its name.</summary>
    public static bool IsDrawing(string file) => file.EndsWith(".dxf", StringComparison.OrdinalIgnoreCase);

    /// <summary>Reads and judges.</summary>
    /// <exception cref="DesignRefusedException">The file or the options are wrong.</exception>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
    public static DrawingCheck Check(string file, DxfReadOptions reading, DrawingQuestion question, CommandContext context)
    {
        context.InputFile = null;
        byte[] bytes = ParameterFile.BytesOfDrawing(file, context);
        context.InputFile = file;
        try
        {
            return DrawingCheck.Of(DxfReader.Read(bytes, reading), question);
        }
        catch (DxfReadException refused)
        {
            throw new DesignRefusedException(refused.Reasons);
        }
    }

    /// <summary>The result as lines.</summary>
    public static IEnumerable<string> Lines(string file, DrawingCheck check)
    {
        yield return $"{file}: {Verdict(check)}";
        foreach (LeftOut left in check.NotCounted)
        {
            yield return $"  not counted: {left}, first at line {Wording.Number(left.Line, 0)}: {left.Why}";
        }

        foreach (ReadLayer layer in check.Drawing.Layers)
        {
            yield return $"  layer {layer.Name}: {Wording.Number(layer.Contours.Count, 0)} closed, {Wording.Number(layer.OpenPaths.Count, 0)} open{(layer.Areas.Count > 0 ? $", {Wording.Number(layer.Areas.Count, 0)} filled" : "")}";
        }

        if (check.Spacing.Rows.Count > 0)
        {
            yield return "  All nets lie in one plane on one surface without slots or ribs. Between two nets the larger of their voltages counts: one phase, and either may be dead.";
        }

        foreach (string line in SpacingLines.Of(check.Spacing.Rows, ReadersUnit.Millimetres))
        {
            yield return line;
        }

        if (check.Cut is CutFigures cut)
        {
            yield return $"  {cut.Process}: {Limit("web", cut.LeastWebMm, cut.NeededWebMm)}, {Limit("slot", cut.LeastSlotMm, cut.NeededSlotMm)}, {Limit("hole", cut.LeastHoleMm, cut.NeededHoleMm)}";
        }
    }

    /// <summary>The verdict in words that never reassure beyond what was looked at.</summary>
    private static string Verdict(DrawingCheck check) =>
        !check.Meets ? "something misses"
        : !check.IsMeasured ? "contours are closed and apart; no spacing and no limits of a process were asked, so none were measured"
        : check.IsComplete ? "nothing misses"
        : "nothing misses among what was counted; what is listed next was not";

    private static string Limit(string what, double? leastMm, double neededMm) =>
        leastMm is double least ? $"least {what} {Wording.Mm(least)} ({Wording.Mm(neededMm)} needed)" : $"no {what}";
}
