namespace WheelDraft.Formats.Parameters;

/// <summary>Supply, environment, drive and spacing.</summary>
internal sealed class SupplyRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    /// <summary>Most that a supply frequency may be off, as a share, however it is written.</summary>
    private const decimal MostTolerance = 0.2m;

    /// <inheritdoc/>
    public override void Check()
    {
        Condensation();
        Frequency();
        LineNames();
        if (Root.Table("drive") is { } drive)
        {
            Drive(drive);
        }
    }

    private void Condensation()
    {
        if (Root.Table("environment") is { } environment && environment.Flag("condensation") == true && environment.Number("pollution_degree") is { } degree and < 3)
        {
            Wrong(
                environment.PlaceOf("condensation"),
                $"frost or dew on live parts (condensation = true) does not go with pollution degree {Short(degree)}",
                "write pollution_degree = 3, or condensation = false");
        }
    }

    private void Frequency()
    {
        if (Root.Table("supply") is { } supply
            && supply.Quantity("frequency_tolerance") is { Dimension: Dimension.Frequency } tolerance
            && supply.Quantity("frequency") is { } frequency
            && tolerance.InBaseUnit > MostTolerance * frequency.InBaseUnit)
        {
            Wrong(
                supply.PlaceOf("frequency_tolerance"),
                $"'frequency_tolerance' is {QuantityText.Plain(tolerance.InBaseUnit)} Hz of {QuantityText.Plain(frequency.InBaseUnit)} Hz",
                "it lies from 0 % to 20 % of the frequency");
        }
    }

    private void LineNames()
    {
        IReadOnlyList<CheckedValue> lines = Root.Table("supply")?.Items("lines") ?? [];
        if (lines.Count == 2)
        {
            Wrong(lines[1].Place, "the supply has two lines", "it has one, or three that are 120° apart; for two lines of such three name the third all the same");
        }

        for (int i = 0; i < lines.Count; i++)
        {
            if (lines[i].Text is not { } name)
            {
                continue;
            }

            if (name.ToUpperInvariant() is "N" or "E")
            {
                Wrong(lines[i].Place, $"the line \"{name}\" has the name of {NameRules.ReservedMeaning(name)}", "give it another, e.g. \"L1\"");
            }
            else if (lines.Take(i).Any(l => string.Equals(l.Text, name, StringComparison.OrdinalIgnoreCase)))
            {
                Wrong(lines[i].Place, $"the line \"{name}\" stands twice", "names of lines differ in more than upper and lower case");
            }
        }
    }

    private void Drive(CheckedTable drive)
    {
        if (drive.Number("poles") is { } poles && poles % 2 != 0)
        {
            Wrong(drive.PlaceOf("poles"), $"'poles' is {Short(poles)}", "a motor has an even number of poles, e.g. poles = 12");
        }

        if (TurnTime.Of(Root) is { } turn && !drive.Has("turn_time") && turn is < 1 or > 3_600_000)
        {
            bool bySpeed = drive.Has("speed");
            Wrong(drive.PlaceOf(bySpeed ? "speed" : "gear_ratio"), $"{(bySpeed ? "'speed' gives" : "poles and gear_ratio give")} a turn of {Short(turn)} s", "a turn lies from 1 s to 1000 h");
        }

        Ascending(drive, "coast", "least and most, in that order, e.g. coast = [\"0 deg\", \"0.5 deg\"]");
        Ascending(drive, "friction", "least and most, in that order, e.g. friction = [0.2, 0.5]");
    }

    private void Ascending(CheckedTable table, string key, string right)
    {
        IReadOnlyList<CheckedValue> band = table.Items(key);
        if (band.Count == 2 && Size(band[0]) is { } least && Size(band[1]) is { } most && least > most)
        {
            Wrong(band[1].Place, $"the second value of '{key}' is less than the first", $"it is {right}");
        }
    }

    private static double? Size(CheckedValue value) => value.Quantity?.Value ?? value.Content as double?;
}
