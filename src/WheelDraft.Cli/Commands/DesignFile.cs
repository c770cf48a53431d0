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
    public static Design Read(string named, CommandContext context, bool underFaults = false) => Work(named, context, new SearchRequest { Stop = context.Stop }, underFaults).Design;

    /// <summary>Reads a file and works the design out, with the file settled where anything in it is "auto".</summary>
    /// <inheritdoc cref="Read"/>
    public static WorkedFile Work(string named, CommandContext context, SearchRequest request, bool underFaults = false)
    {
        byte[] bytes = ParameterFile.Bytes(named, context);
        Brief brief = ReadBrief(named, bytes, context);
        brief = underFaults ? brief with { Spacing = brief.Spacing with { VoltagesUnderFaults = true } } : brief;
        using Progress progress = new(context, "designs tried");
        return WorkedOut.Of(bytes, brief, request with { Attend = ShareLine.For(context), Tell = request.Tell ?? (n => progress.Reach(n.Designs)) }, Beside(named, context));
    }

    private static Func<string, byte[]?> Beside(string named, CommandContext context) => path => WholeFile.BesideOrNull(context.PathOf(named), path, context.Stop);

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
        ParameterResult result = ParameterReader.Read(bytes, Beside(named, context));
        return result.Brief ?? throw new DesignRefusedException(
            [.. result.Diagnostics.Select(d => Finding.Error("parameters", d.Message, d.Place))]);
    }
}
