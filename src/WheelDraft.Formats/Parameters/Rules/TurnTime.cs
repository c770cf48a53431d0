namespace WheelDraft.Formats.Parameters;

/// <summary>The time of one turn at nominal frequency.</summary>
internal static class TurnTime
{
    /// <summary>In seconds, given, or from the speed, T = 60 / n, or from poles and gear ratio: n = 120 f / poles, T = 60 gear_ratio / n. Null when what it needs is wrong or missing.</summary>
    public static double? Of(CheckedTable root)
    {
        if (root.Table("drive") is not { } drive)
        {
            return null;
        }

        if (drive.Has("turn_time"))
        {
            return drive.Quantity("turn_time")?.Value;
        }

        if (drive.Has("speed"))
        {
            return drive.Quantity("speed") is { } speed ? 60 / speed.Value : null;
        }

        return drive.Number("poles") is { } poles && drive.Number("gear_ratio") is { } ratio && root.Table("supply")?.Quantity("frequency")?.Value is { } frequency
            ? 60 * ratio * poles / (120 * frequency)
            : null;
    }
}
