using System.CommandLine;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>A parameter file, read and worked out.</summary>
internal static class DesignFile
{
    /// <summary>The option of commands that judge spacing.</summary>
    public static Option<bool> UnderFaults() => new("--under-faults") { Description = "Let working voltages, and so required distances, count the states under every single fault, not only under open loads" };

    /// <summary>Reads a file and works the design out.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
    /// <exception cref="DesignRefusedException">It is wrong, or cannot be built: every reason, with its place.</exception>
    public static Design Read(string named, CommandContext context, bool underFaults = false)
    {
        Brief brief = ReadBrief(named, context);
        return WorkedOut.Of(underFaults ? brief with { Spacing = brief.Spacing with { VoltagesUnderFaults = true } } : brief, ShareLine.For(context));
    }

    /// <summary>Reads a file.</summary>
    public static Brief ReadBrief(string named, CommandContext context)
    {
        context.InputFile = named;
        return ReadBrief(named, ParameterFile.Bytes(named, context), context);
    }

    /// <summary>Reads a file whose bytes are there.</summary>
    public static Brief ReadBrief(string named, byte[] bytes, CommandContext context)
    {
        context.InputFile = named;
        ParameterResult result = ParameterReader.Read(bytes, path => WholeFile.BesideOrNull(context.PathOf(named), path, context.Stop));
        return result.Brief ?? throw new DesignRefusedException(
            [.. result.Diagnostics.Select(d => Finding.Error("parameters", d.Message, d.Place))]);
    }
}
