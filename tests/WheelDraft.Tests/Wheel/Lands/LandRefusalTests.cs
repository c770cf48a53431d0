using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>Lands that cannot be: refused with numbers and a way out; lands that miss a distance: built, with a finding.</summary>
public sealed class LandRefusalTests
{
    public static TheoryData<string> Cases => [.. Named.Keys.Order(StringComparer.Ordinal)];

    private static readonly Dictionary<string, (Func<Brief> Brief, string Code, string[] Words)> Named = new(StringComparer.Ordinal)
    {
        ["adjusting edge"] = (() => Briefs.Lands(Lamp() with { Adjust = new(AdjustedEdge.Off, 1, 2, LongerWay.In, "M3", 0.5, 1) }), "wheel.adjust", ["'lamp'", "return_station", "windowed"]),
        ["no return net"] = (() => Briefs.Lands(Lamp() with { ReturnNet = null }), "wheel.return", ["return_net"]),
        ["both wipers on one net"] = (() => Briefs.Lands(Lamp() with { ReturnNet = "lamp" }), "wheel.return", ["'lamp'", "another net"]),
        ["a feed"] = (() => Briefs.Lands(Lamp()) with { Feed = new("L", 0, new(0.8, 3, 0.8, 0, null), 0.1) }, "wheel.feed", ["[feed]"]),

        // On 320° of the turn, wipers 60° apart: on + Δ is more than the turn.
        ["on-time and wipers more than the turn"] = (() => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 10, 160), 0, 60)), "wheel.off-time", ["20 s (40°)", "60° apart", "overlap", "bring station and return_station within"]),

        // Off for 80°, wipers 50° apart: the one land reaches round to the upstream wiper while it is still on the other.
        ["a lone land that reaches round"] = (() => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 10, 140), 0, 50)), "wheel.off-time", ["middle of its off-time", "50° apart", "within"]),
        ["wipers on top of each other"] = (() => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 10, 60), 30, 30) with { RadiusMm = 20 }), "wheel.wipers", ["touch or overlap", "0° apart"]),
        ["shorter than a land can be"] = (() => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 10, 0.1, 1), 0, 1.3) with { RadiusMm = 20 }), "wheel.on-time", ["0.1 s", "1.3° apart", "needs 0.5 mm"]),
        ["finer than the frequency"] = (() => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 0.1, (10, 60)), 0, 40)), "wheel.tolerance", ["supply frequency alone takes 0.6 s"]),
        ["carrier smaller than its lands"] = (() => Briefs.Lands(Lamp() with { RadiusMm = 20 }) with { Carrier = new(MaterialGroup.IIIa, 3, 0) { DiameterMm = 40 } }, "wheel.carrier", ["40 mm", "42.402 mm"]),
        ["diameter too small"] = (() => OfDiameter(20), "wheel.diameter", ["20 mm", "too small"]),
        ["pollution degree 4"] = (() => Briefs.Lands(Lamp() with { OverOpenContact = null }) with { Environment = new(4, 300, false) }, "rule.pollution-degree", ["degree 4"]),
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void Of_WhatLandsCannotDo_IsRefusedWithNumbersAndAWayOut(string title)
    {
        (Func<Brief> brief, string code, string[] words) = Named[title];
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Design.Of(brief()));
        Finding reason = Assert.Single(refused.Reasons);
        Assert.Equal(code, reason.Code);
        Assert.NotNull(reason.Where);
        Assert.All(words, w => Assert.Contains(w, reason.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void WayOut_WipersBroughtAsNearAsTold_CanBeBuilt()
    {
        // The same lone land with the angle that the refusal names (22.0x°, told for the largest ring tried).
        Brief refusedBrief = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 10, 140), 0, 50) with { RadiusMm = 25 });
        string message = Assert.Throws<DesignRefusedException>(() => Design.Of(refusedBrief)).Message;
        const string before = "within ";
        int at = message.IndexOf(before, StringComparison.Ordinal) + before.Length;
        double told = double.Parse(message[at..message.IndexOf('°', at)], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(told, 30, 40);
        Design.Of(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 10, 140), 0, told) with { RadiusMm = 25 }));
    }

    [Fact]
    public void Of_OwnRadiiNearerThanPacked_WarnsAndLeavesTheVerdictToSpacing()
    {
        // The bands are too near, but the lands in them stand at different angles: measured, they keep their distance.
        Design design = Design.Of(Briefs.Lands(
            Lamp() with { RadiusMm = 20 },
            Briefs.TwoWipers(Briefs.Output("fan", 10, 60), 100, 130) with { RadiusMm = 24 }));
        Finding finding = Assert.Single(design.Wheel.Findings, f => f.Severity == FindingSeverity.Warning);
        Assert.Equal("wheel.web", finding.Code);
        Assert.Contains("of carrier stays", finding.Message, StringComparison.Ordinal);
        Assert.True(design.Meets);
    }

    [Fact]
    public void Of_OwnRadiusWithLandsTooNear_IsBuiltWithAFinding()
    {
        // Off for 7 s = 14° with wipers 3° apart: the gap of about 12° is 2.2 mm on a radius of 12 mm.
        Design design = Design.Of(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("heat", 3, (0, 50), (57, 60)), 0, 3) with { RadiusMm = 12, OverOpenContact = null }));
        Finding finding = Assert.Single(design.Wheel.Findings, f => f.Severity == FindingSeverity.Warning);
        Assert.Equal("wheel.lands", finding.Code);
        Assert.Contains("2.461 mm", finding.Message, StringComparison.Ordinal);
        Assert.Contains("A radius of", finding.Message, StringComparison.Ordinal);

        // Spacing measures the same two lands and comes to the same distance, less both cut edges.
        Finding measured = Assert.Single(design.Findings, f => f.Severity == FindingSeverity.Error);
        Assert.Contains("2.36 mm (as drawn 2.46 mm) between 'heat land 1' and 'heat land 2'", measured.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OwnRadiusWithWipersTooNear_IsBuiltWithAFinding()
    {
        // 10° on a radius of 20 mm: the patches are about 2.9 mm apart.
        Design design = Design.Of(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 0, 10) with { RadiusMm = 20, OverOpenContact = null }));
        Finding finding = Assert.Single(design.Findings, f => f.Severity == FindingSeverity.Error);
        Assert.Equal("wheel.wipers", finding.Code);
        Assert.Contains("put them at least 13.", finding.Message, StringComparison.Ordinal);
        Assert.False(design.Meets);
    }

    [Theory]
    [InlineData(4, true)]
    [InlineData(1, false)]
    public void Of_WipersWhoseReachesPassEachOther_IsRefusedThoughTheirPatchesAreApart(double halfMm, bool isRefused)
    {
        // A fold 8 mm long and 60° from the radius reaches 4 sin 60° = 3.46 mm along the motion, further than the other wiper, a small rivet 3 mm from its
        // middle: a land would meet the two in the wrong order. Yet the rivet lies 1.5 mm from the fold's line.
        Brief brief = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 0, 8.6) with { RadiusMm = 20 });
        Motion motion = Motion.Of(brief);
        ContactPatch fold = new() { IsDisc = false, HalfLengthMm = 0.2, HalfWidthMm = halfMm, WornHalfLengthMm = 0.2, AngleRad = Math.PI / 3 };
        ContactPatch rivet = new() { IsDisc = true, HalfLengthMm = 0.2, HalfWidthMm = 0.2, WornHalfLengthMm = 0.2, AngleRad = 0 };
        foreach (WiperContacts contacts in new WiperContacts[] { new(null, [fold], [rivet]), new(null, [rivet], [fold]) })
        {
            WheelTask task = new(brief, motion, Programme.Of(brief, motion), contacts, OpenContactRequirements.Of(brief, _ => 230).Distances);
            Finding reason = isRefused
                ? Assert.Single(Assert.Throws<DesignRefusedException>(() => WheelSetter.Of(task)).Reasons)
                : Assert.Single(WheelSetter.Of(task).Findings, f => f.Severity == FindingSeverity.Error);
            Assert.Equal("wheel.wipers", reason.Code);
            Assert.Equal(isRefused, reason.Message.Contains("touch or overlap", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void First_StationsLeftToAuto_StandInPairsAroundTheWheel()
    {
        // Four outputs: a quarter of the circle each, and within it the two wipers an eighth apart, which is less than a third of the off-time.
        Brief brief = Briefs.Lands([.. Enumerable.Range(0, 4).Select(i => Briefs.TwoWipers(Briefs.Output($"lamp {(char)('a' + i)}", 30, 20), null, null))]);
        Programme programme = Programme.Of(brief, Motion.Of(brief));
        for (int i = 0; i < 4; i++)
        {
            (double own, double other) = LandStations.First(brief.Outputs[i], programme.Outputs[i], i, 4);
            Assert.Equal((90 * i, (90 * i) + 45), ((int)Math.Round(Angles.DegFromRad(own)), (int)Math.Round(Angles.DegFromRad(other))));
        }
    }

    private static OutputBrief Lamp() => Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 0, 330);

    private static Brief OfDiameter(double mm)
    {
        Brief brief = Briefs.Lands(Lamp());
        return brief with { Wheel = brief.Wheel with { OuterDiameterMm = mm } };
    }
}
