using System.Globalization;
using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Tolerance;

/// <summary>Single changes that would meet a tolerance: what is told is made, and does meet; a little less does not.</summary>
public sealed partial class ToleranceRemediesTests
{
    [Fact]
    public void Refusal_OnAGivenRadius_NamesChangesThatMeetWhenMade()
    {
        Brief brief = Fan(0.32);
        Finding refusal = Assert.Single(Refused(brief));
        Assert.Equal("wheel.tolerance", refusal.Code);
        Assert.Contains("Any one of these alone would meet it", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("its radius left to \"auto\"", refusal.Message, StringComparison.Ordinal);
        Design.Of(With(brief, o => o with { RadiusMm = null }));

        double cut = Figure(refusal, CutMm());
        Design.Of(brief with { Process = brief.Process with { ToleranceMm = cut } });
        Assert.NotEmpty(Refused(brief with { Process = brief.Process with { ToleranceMm = cut + 0.006 } }));

        double worn = Figure(refusal, WornMm());
        Design.Of(With(brief, o => o with { Contact = o.Contact with { WornLengthMm = worn } }));
        Assert.NotEmpty(Refused(With(brief, o => o with { Contact = o.Contact with { WornLengthMm = worn + 0.011 } })));
    }

    // 60 s at 1 % alone take 0.606 s: only a steadier grid helps, and no more of it than 0.3 s in 60 s.
    [Fact]
    public void Refusal_FinerThanTheFrequency_NamesTheFrequencyToleranceAlone()
    {
        Brief brief = Briefs.Plain(Briefs.Output("fan", 10, 60, 0.3) with { OverOpenContact = null });
        Finding refusal = Assert.Single(Refused(brief));
        double share = Figure(refusal, FrequencyPercent()) / 100;
        Assert.InRange(share, 0.001, 0.005);
        Design.Of(brief with { Supply = brief.Supply with { FrequencyToleranceShare = share } });
        Assert.DoesNotContain("a process that cuts", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Refusal_ThatNothingSingleHelps_SaysSo()
    {
        Brief brief = Briefs.Plain(Briefs.Output("fan", 10, 60, 0.001) with { RadiusMm = 30, OverOpenContact = null });
        Assert.Contains("Tried one at a time", Assert.Single(Refused(brief)).Message, StringComparison.Ordinal);
    }

    private static Brief Fan(double toleranceS) => Briefs.Plain(Briefs.Output("fan", 10, 5, toleranceS) with
    {
        RadiusMm = 25,
        OverOpenContact = null,
        Contact = new(0.4, 2, 0.6, 0, null),
    });

    private static Brief With(Brief brief, Func<OutputBrief, OutputBrief> change) => brief with { Outputs = [change(brief.Outputs[0])] };

    private static IReadOnlyList<Finding> Refused(Brief brief) => Assert.Throws<DesignRefusedException>(() => Design.Of(brief)).Reasons;

    private static double Figure(Finding finding, Regex pattern)
    {
        Match match = pattern.Match(finding.Message);
        Assert.True(match.Success, finding.Message);
        return double.Parse(match.Groups["figure"].ValueSpan, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"a process that cuts to (?<figure>[\d.]+) mm", RegexOptions.None, 60_000)]
    private static partial Regex CutMm();

    [GeneratedRegex(@"a worn_length of (?<figure>[\d.]+) mm", RegexOptions.None, 60_000)]
    private static partial Regex WornMm();

    [GeneratedRegex(@"a frequency_tolerance of (?<figure>[\d.]+) %", RegexOptions.None, 60_000)]
    private static partial Regex FrequencyPercent();
}
