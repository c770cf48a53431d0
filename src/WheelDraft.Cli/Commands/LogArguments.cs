using System.CommandLine;
using WheelDraft.Engineering;
using WheelDraft.Formats.BenchLog;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>What commands that read bench logs have in common.</summary>
internal sealed class LogArguments
{
    private readonly Option<string?> _onAbove = new("--on-above") { HelpName = "VOLTAGE", Description = "A column in volts is on above this, e.g. \"60 V\"; of an alternating voltage the envelope counts" };
    private readonly Option<string?> _bounce = new("--bounce") { HelpName = "TIME", Description = "Gaps shorter than this are bounce, joined and counted; \"100 ms\" when left out" };
    private readonly Option<string?> _unit = new Option<string?>("--time-unit") { HelpName = "UNIT", Description = "Unit of the time column where the header gives none: s, ms, us, min or h" }.Suggesting("s", "ms", "us", "min", "h");
    private readonly Option<string?> _turn = new("--turn-time") { HelpName = "TIME", Description = "One turn, where the log is too short to show it, e.g. \"180 s\"" };

    /// <summary>The options.</summary>
    public IReadOnlyList<Option> All => [_onAbove, _bounce, _unit, _turn];

    /// <summary>The turn time that was given, s; null for none.</summary>
    public double? TurnTimeS(ParseResult parsed) => Amount(parsed.GetValue(_turn), Dimension.Time, "turn-time", (0.5, 3.6e6));

    /// <summary>Reads a log.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
    /// <exception cref="DesignRefusedException">It cannot be understood: every reason, with its line.</exception>
    public LogReading Read(string named, ParseResult parsed, CommandContext context)
    {
        LogOptions options = new()
        {
            OnAboveV = Amount(parsed.GetValue(_onAbove), Dimension.Voltage, "on-above", (1e-3, 2000)),
            BounceS = Amount(parsed.GetValue(_bounce), Dimension.Time, "bounce", (1e-6, 10)) ?? LogOptions.UsualBounceS,
            TimeUnitS = UnitS(parsed.GetValue(_unit)),
        };
        context.InputFile = named;
        using Progress progress = new(context, "blocks of the log");
        using FileStream file = Open(named, context);
        return LogReader.Read(file, options, _ => progress.Step(), context.Stop);
    }

    /// <summary>Opens a log.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened.</exception>
    public static FileStream Open(string named, CommandContext context)
    {
        string path = context.PathOf(named);
        try
        {
            return new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            string why = Directory.Exists(path) ? "it is a folder" : trouble is FileNotFoundException or DirectoryNotFoundException ? "there is no such file" : trouble.Message;
            throw new FileTroubleException($"cannot read '{named}': {why}");
        }
    }

    /// <summary>An amount given on the command line, in its base unit; null when not given.</summary>
    /// <exception cref="DesignRefusedException">It is no such amount, or out of range.</exception>
    public static double? Amount(string? text, Dimension dimension, string option, (double Least, double Most) range)
    {
        if (text is null)
        {
            return null;
        }

        if (!Quantity.TryParse(text, dimension, out Quantity quantity, out string complaint))
        {
            throw new DesignRefusedException($"arguments.{option}", $"--{option}: {complaint}");
        }

        return quantity.Value >= range.Least && quantity.Value <= range.Most
            ? quantity.Value
            : throw new DesignRefusedException($"arguments.{option}", $"--{option} {text} is out of range");
    }

    private static double? UnitS(string? text) => text switch
    {
        null => null,
        "s" => 1,
        "ms" => 1e-3,
        "us" => 1e-6,
        "min" => 60,
        "h" => 3600,
        _ => throw new DesignRefusedException("arguments.time-unit", $"--time-unit knows s, ms, us, min and h, not '{text}'"),
    };
}
