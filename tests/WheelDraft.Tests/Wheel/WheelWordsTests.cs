using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>Messages about rings that named the wrong cause or a cure that is none.</summary>
public sealed class WheelWordsTests
{
    [Fact]
    public void Pack_AdjustingEdgeTooSteep_WasToldOnARadiusOf500AndToTakeALargerRing()
    {
        string said = Refused(Steep("2 s", "1 mm")).Single().Message;
        Assert.DoesNotContain("500 mm", said, StringComparison.Ordinal);
        Assert.DoesNotContain("or a larger ring", said, StringComparison.Ordinal);
        double range = Figure(said, @"gives a range of ([\d.]+) s at most");
        double travel = Figure(said, @"needs a travel of ([\d.]+) mm");

        // What is said is true: with it the ring has no fault of this kind, and with a little more or less it has.
        Assert.DoesNotContain(Faults(Steep($"{Number(range)} s", "1 mm")), f => f.Code is "wheel.slope");
        Assert.Contains(Faults(Steep($"{Number(range * 1.02)} s", "1 mm")), f => f.Code is "wheel.slope");
        Assert.DoesNotContain(Faults(Steep("2 s", $"{Number(travel)} mm")), f => f.Code is "wheel.slope");
    }

    [Fact]
    public void Pack_DiameterTooSmall_NamesOneRingALineInOrderOfRadius()
    {
        Brief brief = new ChangedDemo("propagation-bench").Read().Brief!;
        string said = Refused(brief with { Wheel = brief.Wheel with { OuterDiameterMm = 30 } }).Single().Message;
        double[] radii = [.. Regex.Matches(said, @"^  .* on a radius of (?<mm>[\d.]+) mm: ", RegexOptions.Multiline, TimeSpan.FromMinutes(1)).Select(m => double.Parse(m.Groups["mm"].Value, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(4, radii.Length);
        Assert.Equal(radii.Order(), radii);
    }

    [Fact]
    public void Pack_RingThatGrewPastSeveralRules_NamesTheOneThatBinds()
    {
        // With exact supply the last rule that a growing ring meets is found by hand: each rule alone, the largest radius binds.
        Brief brief = Briefs.Plain(Briefs.Output("short", 10, 2, 0.15));
        brief = brief with { Supply = brief.Supply with { FrequencyToleranceShare = 0 } };
        RingLayout ring = Design.Of(brief).Wheel.Rings[0];
        RingLayout eased = Design.Of(brief with { Outputs = [brief.Outputs[0] with { ToleranceS = 10 }] }).Wheel.Rings[0];
        Assert.True(ring.RadiusMm > eased.RadiusMm + 0.1, "the case must grow further for its tolerance than for its copper");
        Assert.Contains("shortest on-time", eased.Why, StringComparison.Ordinal);
        Assert.Contains("tolerance", ring.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(178, false)]
    [InlineData(5, true)]
    public void Of_SingleSpoke_IsWarnedOfOnlyWhereItIsSlender(double onS, bool isWarned)
    {
        Design design = Design.Of(Briefs.Plain(Briefs.Output("inner", 1, onS), Briefs.Output("outer", 60, 50, 2)));
        Finding[] found = [.. design.Findings.Where(f => f.Code is "wheel.spoke" && f.Message.Contains("'inner'", StringComparison.Ordinal))];
        Assert.Equal(isWarned, found.Length == 1);
        Assert.All(found, f => Assert.Contains("rivets on a circle of", f.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_SingleSpokeWithRivetsBeyondIt_WasNotCurable()
    {
        FixingsBrief hub = new(3, 2, null, 0);
        Brief brief = Briefs.Plain(Briefs.Output("inner", 1, 5), Briefs.Output("outer", 60, 50, 2));
        brief = brief with { Wheel = brief.Wheel with { Fixings = hub } };
        Design hung = Design.Of(brief);
        double from = hung.Wheel.Rings[0].WindowToMm!.Value;
        FixingCircle rivets = new(3, 2 * (from + 3), 0.4);
        Design held = Design.Of(brief with { Wheel = brief.Wheel with { Fixings = hub with { More = [rivets] } } });
        Assert.Contains(hung.Findings, f => f.Code is "wheel.spoke" && f.Message.Contains("'inner'", StringComparison.Ordinal));
        Assert.DoesNotContain(held.Findings, f => f.Code is "wheel.spoke" && f.Message.Contains("'inner'", StringComparison.Ordinal));
        Assert.Equal(6, held.Wheel.Fixings.Count);

        // The three holes are in the copper, and no window comes nearer to them than a web and the head.
        Assert.Equal(3, held.Wheel.Copper.Single().Outline.Holes.Count(h => Math.Abs(h.Centroid.DistanceTo(WheelDraft.Geometry.Point.Origin) - (from + 3)) < 1e-6));
        Assert.All(held.Wheel.Rings, r => Assert.True(r.WindowToMm <= from + 3 - 1 || r.WindowFromMm >= from + 3 + 1, FormattableString.Invariant($"{r.Name}: {r.WindowFromMm} to {r.WindowToMm}")));
    }

    [Fact]
    public void Of_WheelParkedJustBehindItsOwnEdge_WasToldToTakeALargerRing()
    {
        Finding found = Assert.Single(
            new ChangedDemo("propagation-bench").WithEvery("open_contact = \"none\"", _ => "open_contact = \"functional\"").Design().Findings,
            f => f.Code is "spacing.open-contact" && f.Message.Contains("'run'", StringComparison.Ordinal));
        Assert.Contains("No ring size cures that", found.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("larger ring", found.Message, StringComparison.Ordinal);
    }

    private static Brief Steep(string range, string travel) => new ChangedDemo("propagation-bench")
        .WithEvery(@"adjust = \{[^}]*\}", _ => $"adjust = {{ edge = \"off\", range = \"{range}\", travel = \"{travel}\", longer = \"in\", screw = \"M3\" }}").Read().Brief!;

    private static IReadOnlyList<Finding> Refused(Brief brief) => Assert.Throws<DesignRefusedException>(() => Design.Of(brief)).Reasons;

    private static IReadOnlyList<Finding> Faults(Brief brief)
    {
        try
        {
            return Design.Of(brief).Findings;
        }
        catch (DesignRefusedException refused)
        {
            return refused.Reasons;
        }
    }

    private static string Number(double value) => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    private static double Figure(string words, string pattern)
    {
        Match match = Regex.Match(words, pattern, RegexOptions.None, TimeSpan.FromMinutes(1));
        Assert.True(match.Success, words);
        return double.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
    }
}
