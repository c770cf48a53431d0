using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>The order of rings that is searched for is the best of all orders, tried one by one.</summary>
public sealed class RingOrderTests
{
    private const string SlowCases = "WHEELDRAFT_ORDER_CASES";

    // Patches of all widths, tolerances from what no ring can keep near the axis to what any can, on-periods of all lengths, one always on, some turned, one or
    // two adjusted, a rim or none, a fixing circle in the way, a ring with a radius of its own.
    private static Gen<Brief> Wheels(int rings) =>
        from outputs in Outputs[rings - 1]
        from rim in Gen.Bool
        from circle in Gen.Double[14, 30]
        from isThere in Gen.Bool
        from radius in Gen.Double[20, 40]
        from among in Gen.Int[0, 3]
        let stays = among == 0 ? radius : (double?)null
        select Of([.. outputs.Select((o, i) => o with { Name = FormattableString.Invariant($"o{i}"), Net = FormattableString.Invariant($"o{i}"), RadiusMm = i == 0 ? stays : null })], rim, isThere ? circle : null);

    private static readonly Gen<OutputBrief> Output =
        from width in Gen.Double[0.6, 6]
        from length in Gen.Double[0.3, 1]
        from deg in Gen.Double[-80, 80]
        from among in Gen.Int[0, 2]
        let turned = among == 0 ? deg : 0
        from start in Gen.Double[1, 100]
        from lasts in Gen.Double[3, 70]
        from tolerance in Gen.Double[0.55, 3].Select(t => (lasts * 0.01) + t)
        from kind in Gen.Int[0, 9]
        select new OutputBrief("", "", kind == 0 ? ProgrammeBrief.Always : new([new(new StartAt(TurnAmount.Seconds(start)), new LastsFor(TurnAmount.Seconds(lasts)))]), new(length, width, length, Angles.RadFromDeg(turned), null))
        {
            ToleranceS = kind == 0 ? null : tolerance,
            StationRad = 0,
            SidePlayMm = 0.1,
            OverOpenContact = kind % 2 == 0 ? Insulation.Functional : null,
            Adjust = kind == 9 ? new(AdjustedEdge.Off, 0.8, 2, LongerWay.In, "M3", 0.5, 1) : null,
        };

    private static Gen<OutputBrief[]>[] Outputs => [.. Enumerable.Range(1, 8).Select(n => Output.Array[n])];

    private static Brief Of(OutputBrief[] outputs, bool rim, double? inTheWayMm)
    {
        Brief plain = Tests.Briefs.Plain(outputs);
        return plain with
        {
            Wheel = plain.Wheel with
            {
                Rim = rim,
                SearchesRingOrder = true,
                Fixings = inTheWayMm is double at ? new(3, 2.2, 2 * at, 0) : null,
            },
        };
    }

    // The same with lands: two wipers each, from side by side to half a turn apart.
    private static Gen<Brief> Lands(int rings) =>
        from brief in Wheels(rings)
        from apart in Gen.Int[4, 150].Array[rings]
        select brief with
        {
            Feed = null,
            Wheel = brief.Wheel with { Construction = WheelConstruction.Lands, Rim = true, Fixings = null },
            Outputs = [.. brief.Outputs.Select((o, i) => o with
            {
                On = o.On.Periods is null ? new([new(new StartAt(TurnAmount.Seconds(5)), new LastsFor(TurnAmount.Seconds(40)))]) : o.On,
                ToleranceS = o.ToleranceS ?? 2,
                Adjust = null,
                ReturnNet = "L",
                ReturnStationRad = Angles.RadFromDeg(apart[i]),
            })],
        };

    /// <summary>Sets out a brief's wheel with any order of rings: what does not depend on the order is worked out once.</summary>
    private static Func<string[]?, WheelLayout?> Setter(Brief brief)
    {
        Motion motion = Motion.Of(brief);
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, _ => 230);
        Programme programme = Programme.Of(brief, motion);
        WiperContacts contacts = WiperContacts.Of(new StripSprings(brief));
        return order =>
        {
            Brief asked = order is null ? brief : brief with { Wheel = brief.Wheel with { SearchesRingOrder = false, RingOrder = order } };
            try
            {
                return WheelSetter.Of(new WheelTask(asked, motion, programme, contacts, rules.Distances));
            }
            catch (DesignRefusedException)
            {
                return null;
            }
        };
    }

    private static IEnumerable<string[]> Orders(string[] names) => names.Length == 0 ? [[]]
        : names.SelectMany((n, i) => Orders([.. names.Where((_, k) => k != i)]).Select(rest => (string[])[n, .. rest]));

    private static void IsBest(Brief brief)
    {
        string[] names = [.. brief.Feed is null ? Array.Empty<string>() : [FeedBrief.NameInOrder], .. brief.Outputs.Select(o => o.Name)];
        Func<string[]?, WheelLayout?> setter = Setter(brief);
        double best = Orders(names).Select(o => setter(o)?.OuterDiameterMm ?? double.PositiveInfinity).Min();
        WheelLayout? found = setter(null);
        Assert.Equal(best, found?.OuterDiameterMm ?? double.PositiveInfinity, 1e-6);
        if (found is not null)
        {
            // What it says can be pasted back and gives the same.
            Assert.Equal(names.Order(StringComparer.Ordinal), found.RingOrder!.Order(StringComparer.Ordinal));
            Assert.Equal(found.OuterDiameterMm, setter([.. found.RingOrder!])!.OuterDiameterMm, 1e-9);
        }
    }

    private static long Cases(long usual) => long.TryParse(Environment.GetEnvironmentVariable(SlowCases), System.Globalization.CultureInfo.InvariantCulture, out long asked) ? asked : usual;

    /// <summary>Beyond the last land stays less carrier than between lands; the bound of the search once counted as much, and left out orders that were better.</summary>
    [Fact]
    public void Order_OfFourOrFiveLands_IsTheBestOfAll()
    {
        Lands(4).Sample(IsBest, iter: Cases(8));
        Lands(5).Sample(IsBest, iter: Cases(2));
    }

    [Fact]
    public void Order_OfFourRings_IsTheBestOfAll24() => Wheels(3).Sample(IsBest, iter: Cases(20));

    [Fact]
    public void Order_OfFiveRings_IsTheBestOfAll120() => Wheels(4).Sample(IsBest, iter: Cases(5));

    [Fact]
    public void Order_OfSevenRings_IsTheBestOfAll5040() => Wheels(6).Sample(IsBest, iter: Cases(1));
}
