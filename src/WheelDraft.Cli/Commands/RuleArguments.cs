using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>Reads the values of options that are quantities or words and collects what is wrong with them, so that one run reports all of it.</summary>
/// <param name="code">Code of the faults.</param>
internal sealed class RuleArguments(string code = "rule.argument")
{
    private readonly List<Finding> _faults = [];

    /// <summary>Words for pollution degrees; 4 is refused by the rules, with its reason.</summary>
    public static IReadOnlyList<(string Word, int Value)> Degrees { get; } = [("1", 1), ("2", 2), ("3", 3), ("4", 4)];

    /// <summary>Words for overvoltage categories.</summary>
    public static IReadOnlyList<(string Word, OvervoltageCategory Value)> Categories { get; } =
    [
        ("I", OvervoltageCategory.I), ("II", OvervoltageCategory.II), ("III", OvervoltageCategory.III), ("IV", OvervoltageCategory.IV),
    ];

    /// <summary>Words for material groups.</summary>
    public static IReadOnlyList<(string Word, MaterialGroup Value)> Groups { get; } =
    [
        ("I", MaterialGroup.I), ("II", MaterialGroup.II), ("IIIa", MaterialGroup.IIIa), ("IIIb", MaterialGroup.IIIb),
    ];

    /// <summary>Words for grades of insulation.</summary>
    public static IReadOnlyList<(string Word, Insulation Value)> Insulations { get; } =
    [
        ("functional", Insulation.Functional), ("basic", Insulation.Basic), ("supplementary", Insulation.Supplementary), ("reinforced", Insulation.Reinforced),
    ];

    /// <summary>Names of the rule sets.</summary>
    public static IReadOnlyList<(string Word, SpacingStandard Value)> Standards { get; } =
    [
        ("IEC 60664-1", SpacingStandard.Iec60664), ("IEC 60335-1", SpacingStandard.Iec60335),
    ];

    /// <summary>Words for the over-voltages that count.</summary>
    public static IReadOnlyList<(string Word, OverVoltages Value)> OverVoltageWords { get; } =
    [
        ("none", OverVoltages.None), ("temporary", OverVoltages.Temporary),
    ];

    /// <summary>Whether anything was wrong so far.</summary>
    public bool AreFaulty => _faults.Count > 0;

    /// <summary>Notes a fault.</summary>
    public void Complain(string message) => _faults.Add(Finding.Error(code, message));

    /// <summary>Ends the run if anything was wrong.</summary>
    /// <exception cref="DesignRefusedException">Something was.</exception>
    public void ThrowIfFaulty()
    {
        if (AreFaulty)
        {
            throw new DesignRefusedException(_faults);
        }
    }

    /// <summary>Complains of an option that is missing and has no default.</summary>
    /// <param name="option">The option.</param>
    /// <param name="text">Its value, or null.</param>
    /// <param name="what">What it is, and a right form.</param>
    public void Need(string option, string? text, string what)
    {
        if (text is null)
        {
            Complain($"{option} is missing; it is {what}");
        }
    }

    /// <summary>A voltage above zero, V; a missing one is for the caller to complain of.</summary>
    public double Volts(string option, string? text)
    {
        double volts = Read(option, text, Dimension.Voltage);
        if (text is not null && volts <= 0 && !double.IsNaN(volts))
        {
            Complain($"{option}: \"{text}\" is not above zero; give the size of the voltage, e.g. \"230 V\"");
        }

        return volts;
    }

    /// <summary>A volume above zero, mL; not a number for a missing one.</summary>
    public double Millilitres(string option, string? text)
    {
        double litres = Read(option, text, Dimension.Volume);
        if (litres <= 0)
        {
            Complain($"{option}: \"{text}\" is not above zero; give what flowed, e.g. \"118 mL\"");
        }

        return litres * 1000;
    }

    /// <summary>A length in metres.</summary>
    public double Metres(string option, string? text) => Read(option, text, Dimension.Length) / 1000;

    /// <summary>One of a few words; a missing one is for the caller to complain of.</summary>
    public T Choice<T>(string option, string? text, IReadOnlyList<(string Word, T Value)> choices)
    {
        foreach ((string word, T value) in choices)
        {
            if (string.Equals(word, text, StringComparison.Ordinal))
            {
                return value;
            }
        }

        if (text is not null)
        {
            string[] words = [.. choices.Select(c => c.Word)];
            string meant = NearMiss.Of(text, words) is { } near ? $"; did you mean \"{near}\"?" : $"; it is one of {string.Join(", ", words)}";
            Complain($"{option}: \"{text}\" is not known{meant}");
        }

        return choices[0].Value;
    }

    private double Read(string option, string? text, Dimension dimension)
    {
        if (text is null)
        {
            return double.NaN;
        }

        if (Quantity.TryParse(text, dimension, out Quantity quantity, out string complaint))
        {
            return quantity.Value;
        }

        Complain($"{option}: {complaint}");
        return double.NaN;
    }
}
