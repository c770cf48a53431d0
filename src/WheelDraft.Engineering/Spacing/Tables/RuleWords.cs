using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>How the rules write numbers and words: a point for the decimals, units always, nothing that depends on the machine.</summary>
internal static class RuleWords
{
    /// <summary>A distance with at least two decimals: <c>3.00 mm</c>.</summary>
    public static string Mm(double mm) => mm.ToString("0.00#######", CultureInfo.InvariantCulture) + " mm";

    /// <summary>A voltage in volts: <c>230 V</c>.</summary>
    public static string Volts(double v) => Plain(v) + " V";

    /// <summary>An impulse voltage in kilovolts: <c>2.5 kV</c>.</summary>
    public static string Kilovolts(double v) => Plain(v / 1000) + " kV";

    /// <summary>An altitude: <c>300 m</c>.</summary>
    public static string Metres(double m) => Plain(m) + " m";

    /// <summary>A number without unit, up to six decimals.</summary>
    public static string Plain(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>The grade as a word.</summary>
    public static string Grade(Insulation insulation) => insulation switch
    {
        Insulation.Functional => "functional",
        Insulation.Basic => "basic",
        Insulation.Supplementary => "supplementary",
        Insulation.Reinforced => "reinforced",
        _ => throw new ArgumentOutOfRangeException(nameof(insulation), insulation, "No such insulation."),
    };

    /// <summary>The material group as printed: <c>IIIa</c>.</summary>
    public static string Group(MaterialGroup group) => group switch
    {
        MaterialGroup.I => "I",
        MaterialGroup.II => "II",
        MaterialGroup.IIIa => "IIIa",
        MaterialGroup.IIIb => "IIIb",
        _ => throw new ArgumentOutOfRangeException(nameof(group), group, "No such material group."),
    };

    /// <summary>The overvoltage category as printed: <c>II</c>.</summary>
    public static string Category(OvervoltageCategory category) => category switch
    {
        OvervoltageCategory.I => "I",
        OvervoltageCategory.II => "II",
        OvervoltageCategory.III => "III",
        OvervoltageCategory.IV => "IV",
        _ => throw new ArgumentOutOfRangeException(nameof(category), category, "No such overvoltage category."),
    };

    /// <summary>The confidence in words.</summary>
    public static string Confidence(RuleConfidence confidence) => confidence switch
    {
        RuleConfidence.High => "high",
        RuleConfidence.Medium => "medium",
        RuleConfidence.Low => "low",
        RuleConfidence.FromMemory => "from memory",
        _ => throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "No such confidence."),
    };

    /// <summary>A pollution degree as the tables' head has it: <c>PD3</c>.</summary>
    public static string Degree(int degree) => "PD" + degree.ToString(CultureInfo.InvariantCulture);
}
