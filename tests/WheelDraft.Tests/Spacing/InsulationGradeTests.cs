using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>Grades of insulation that protect nobody. Functional insulation gives no protection against electric shock (IEC 60664-1:2020 and
/// IEC 61140:2016, from memory); extra-low voltage ends at 50 V a.c. (IEC 60449 band I, from memory).</summary>
public sealed class InsulationGradeTests
{
    private const string Words = "supplementary insulation of the housing, type test 17";

    [Theory]
    [InlineData(null)]
    [InlineData(Words)]
    public void ToTouchable_FunctionalAtMainsVoltage_IsAnErrorThatNoWordsLift(string? words) =>
        Assert.Equal(FindingSeverity.Error, Told(With(230, Insulation.Basic, Insulation.Functional, words), "spacing.touchable")!.Severity);

    [Theory]
    [InlineData(50, FindingSeverity.Warning)]
    [InlineData(51, FindingSeverity.Error)]
    public void ToTouchable_Functional_IsAWarningOnlyUpToExtraLowVoltage(double volts, FindingSeverity severity)
    {
        Finding told = Told(With(volts, Insulation.Basic, Insulation.Functional, null), "spacing.touchable")!;
        Assert.Equal(severity, told.Severity);
        Assert.Equal(severity == FindingSeverity.Warning, told.Message.Contains("SELV", StringComparison.Ordinal));
    }

    [Fact]
    public void ToTouchable_FunctionalAtTheUpperEndOfTheSupplyOverExtraLow_IsAnError()
    {
        Brief brief = With(48, Insulation.Basic, Insulation.Functional, null);
        Assert.Equal(FindingSeverity.Error, Told(brief with { Supply = brief.Supply with { VoltageToleranceShare = 0.1 } }, "spacing.touchable")!.Severity);
    }

    [Theory]
    [InlineData(Insulation.Basic, true)]
    [InlineData(Insulation.Supplementary, true)]
    [InlineData(Insulation.Reinforced, false)]
    public void ToTouchable_LessThanReinforcedBesideATouchablePart_IsAWarning(Insulation grade, bool told)
    {
        Brief brief = With(230, Insulation.Basic, grade, null);
        Assert.Null(Told(brief, "spacing.touchable"));
        Brief touched = brief with { Wheel = brief.Wheel with { Shaft = ShaftKind.Touchable, ShaftDiameterMm = 3 } };
        Assert.Equal(told ? FindingSeverity.Warning : null, Told(touched, "spacing.touchable")?.Severity);
    }

    [Theory]
    [InlineData(230, null, FindingSeverity.Error)]
    [InlineData(230, Words, FindingSeverity.Warning)]
    [InlineData(24, null, FindingSeverity.Warning)]
    public void ToEarthed_Functional_NeedsWordsThatSayWhy(double volts, string? words, FindingSeverity severity)
    {
        Finding told = Told(With(volts, Insulation.Functional, Insulation.Reinforced, words), "spacing.earthed")!;
        Assert.Equal(severity, told.Severity);
        Assert.Equal(words is not null, told.Message.Contains(Words, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_BasicAndReinforced_TellsNothing() => Assert.Empty(InsulationGrades.Of(With(230, Insulation.Basic, Insulation.Reinforced, null)));

    private static Finding? Told(Brief brief, string code) => Design.Of(brief).Findings.SingleOrDefault(f => string.Equals(f.Code, code, StringComparison.Ordinal));

    private static Brief With(double volts, Insulation earthed, Insulation touchable, string? words)
    {
        Brief brief = Briefs.Worked();
        return brief with
        {
            Supply = brief.Supply with { VoltageV = volts },
            Spacing = brief.Spacing with { ToEarthed = earthed, ToTouchable = touchable, OwnResponsibility = words },
        };
    }
}
