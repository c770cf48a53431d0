using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Checking;
using WheelDraft.Formats.Dxf.Reading;

namespace WheelDraft.Cli;

/// <summary>Holds cutting files against the design that they were made from.</summary>
internal static class AgainstChecking
{
    /// <summary>Compares one file and says what differs.</summary>
    /// <returns>Whether the part would come out as designed.</returns>
    /// <exception cref="DesignRefusedException">It cannot be read as a drawing, or nothing says which part it is.</exception>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
    public static bool Check(string file, DxfReadOptions reading, Design design, CommandContext context)
    {
        context.InputFile = null;
        byte[] bytes = ParameterFile.BytesOfDrawing(file, context);
        context.InputFile = file;
        AgainstCheck check = Compared(bytes, Path.GetFileNameWithoutExtension(file), AgainstCheck.Reading(reading, design), design);
        if (context.Json)
        {
            context.Out.Write(AgainstCheckJson.Write(check));
            return check.Meets;
        }

        FindingWords.Say([.. check.Findings.Where(f => f.Severity != FindingSeverity.Note)], context);
        if (!context.Quiet)
        {
            context.Out.WriteLine($"{file}: {Verdict(check)}");
        }

        return check.Meets;
    }

    private static AgainstCheck Compared(byte[] bytes, string name, DxfReadOptions reading, Design design)
    {
        try
        {
            return AgainstCheck.Of(DxfReader.Read(bytes, reading), design, name);
        }
        catch (DxfReadException refused)
        {
            throw new DesignRefusedException(refused.Reasons);
        }
    }

    private static string Verdict(AgainstCheck check)
    {
        string how = check.KerfMm > 0 ? $"compensated for a kerf of {Wording.Mm(check.KerfMm)}" : "nominal";
        int count = check.Differences.Count;
        return $"{check.Name}, {how}: {(count == 0 ? $"as designed, every cut, fold line and mark within {Wording.Number(CutComparison.ToleranceMm * 1000, 1)} µm" : $"{Wording.Number(count, 0)} difference{(count == 1 ? "" : "s")}")}";
    }
}
