using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>Open contacts of lands wheels against a graph of conductors of another kind: lands read from the cutting file, distances by
/// NetTopologySuite, all pairs of conductors at once, angles in small steps.</summary>
public sealed class LandChainOracleTests
{
    // X of pollution degree 3 (IEC 60664-1:2020, 6.8). Flattened arcs differ by less than the slack, which is left to X and to every distance.
    private const double XMm = 1.5;
    private const double SlackMm = 2e-3;
    private const double GridDeg = 0.5;

    // How far below the greatest gap a fine search may stay: on the safe side, it is a gap that is there.
    private const double SearchedMm = 0.2;

    /// <summary>Scenes drawn in a build; 300 with WHEELDRAFT_LAND_SCENES=300.</summary>
    private static int Scenes => int.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_LAND_SCENES"), System.Globalization.CultureInfo.InvariantCulture, out int n) ? n : 8;

    /// <summary>Two rings: one of two or three lands, one of a single land; wipers to either side, some way apart.</summary>
    private static readonly Gen<(bool Clockwise, double[] OnS, double FirstS, double FromS, double ForS, double[] StationsDeg, double[] ApartDeg, double ParkedDeg, double CoastDeg)> Wheels =
        from clockwise in Gen.Bool
        from ons in Gen.Double[6, 25].Array[2, 3]
        from first in Gen.Double[0, 179]
        from start in Gen.Double[0, 179]
        from last in Gen.Double[4, 40]
        from stations in Gen.Double[0, 359].Array[2]
        from apart in Gen.Double[25, 50]
        from wide in Gen.Double[30, 125]
        from sides in Gen.Bool.Array[2]
        from parked in Gen.Double[0, 360]
        from coast in Gen.Double[0, 12]
        select (clockwise, ons, first, start, last, stations, new[] { sides[0] ? apart : -apart, sides[1] ? wide : -wide }, parked, coast);

    [Fact]
    public void Of_AnyLands_AreTheGapsOfAGraphOfConductors()
    {
        int built = 0, chained = 0, parkedOpen = 0;
        Dictionary<string, int> refusals = new(StringComparer.Ordinal);
        Wheels.Sample(
            g =>
            {
                double off = (180 - g.OnS.Sum()) / g.OnS.Length;
                (double, double)[] periods = [.. g.OnS.Select((lasts, i) => ((g.FirstS + g.OnS.Take(i).Sum() + (i * off)) % 180, lasts))];
                OutputBrief many = Briefs.TwoWipers(Briefs.Output("many", 20, periods), g.StationsDeg[0], (g.StationsDeg[0] + g.ApartDeg[0] + 360) % 360);
                OutputBrief lone = Briefs.TwoWipers(Briefs.Output("lone", g.FromS, g.ForS, 20), g.StationsDeg[1], (g.StationsDeg[1] + g.ApartDeg[1] + 360) % 360);
                Brief brief = Exact(Briefs.Lands(many, lone)) with { Drive = new(180, g.Clockwise ? Turning.Clockwise : Turning.Anticlockwise, 0, default) };
                try
                {
                    Design design = Design.Of(brief);
                    built++;
                    StandingStretch parked = new(Angles.RadFromDeg(g.ParkedDeg), Angles.RadFromDeg(g.ParkedDeg + g.CoastDeg)) { Why = "as drawn", VoltageAcross = [0, 1] };
                    (int overs, int opens) = Compare(design, parked);
                    (chained, parkedOpen) = (chained + overs, parkedOpen + opens);
                }
                catch (DesignRefusedException refused)
                {
                    refusals[refused.Reasons[0].Code] = refusals.GetValueOrDefault(refused.Reasons[0].Code) + 1;
                }
            },
            iter: Scenes,
            threads: 1);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{built} wheels, {chained} gaps over other conductors, {parkedOpen} gaps while parked"));
        Assert.True(built >= Scenes / 4 && chained > 0 && parkedOpen > 0, FormattableString.Invariant($"{built} wheels, {chained} chains, {parkedOpen} parked; refused: {string.Join(", ", refusals)}"));
    }

    /// <summary>Cut and put together exactly, so that the gap at worst is the gap that the file shows.</summary>
    private static Brief Exact(Brief brief) => brief with
    {
        Process = brief.Process with { ToleranceMm = 0 },
        Wheel = brief.Wheel with { RunOutMm = 0 },
        Outputs = [.. brief.Outputs.Select(o => o with { SidePlayMm = 0 })],
    };

    private static (int Chains, int Parked) Compare(Design design, StandingStretch parked)
    {
        SweptLands bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        double sense = design.Motion.Direction == Turning.Clockwise ? 1 : -1;
        OpenContactRequirements rules = OpenContactRequirements.Of(design.Brief, _ => 230);
        OpenContactMeter meter = OpenContactMeter.Of(design.Brief, design.Motion, design.Wheel);
        int chains = 0, parkedOpen = 0;
        for (int i = 0; i < design.Wheel.Rings.Count; i++)
        {
            RingLayout ring = design.Wheel.Rings[i];
            (SweptPatch.Wiper own, SweptPatch.Wiper other) = SweptLands.WipersOf(ring);
            SweptPatch.Wiper[] strange = [.. design.Wheel.Rings.Where(r => !ReferenceEquals(r, ring)).SelectMany(r => new[] { SweptLands.WipersOf(r).Own, SweptLands.WipersOf(r).Other })];
            double Bench(double atRad, double x) => bench.ChainMm(own, other, strange, sense * Angles.DegFromRad(atRad), x);
            OpenContact open = meter.Of(i, rules.Outputs[i], 230, [parked])!;
            foreach (OpenPeriod period in open.Periods)
            {
                double greatest = 0;
                for (double at = period.BreakRad; at < period.MakeRad; at += Angles.RadFromDeg(GridDeg))
                {
                    greatest = Math.Max(greatest, Bench(at, XMm + SlackMm));
                }

                Assert.True(period.WorstGreatestMm >= greatest - SearchedMm, FormattableString.Invariant($"{ring.Name}: {period.WorstGreatestMm} reached, {greatest} by sampling"));
                Assert.InRange(period.WorstGreatestMm, Bench(period.GreatestAtRad, XMm + SlackMm) - SlackMm, Bench(period.GreatestAtRad, XMm - SlackMm) + SlackMm);

                // With nothing off, what is drawn is what there is at worst.
                Assert.Equal(period.WorstGreatestMm, period.GreatestMm, SlackMm);
                chains += period.Along?.Over.Count > 0 ? 1 : 0;
            }

            if (open.Parked is not { WorstMm: > 0 } gap)
            {
                continue;
            }

            // Never above what is found anywhere in the interval, and there where it says.
            parkedOpen++;
            double least = double.PositiveInfinity;
            for (double at = gap.FromRad; at <= gap.ToRad; at += Angles.RadFromDeg(GridDeg / 5))
            {
                least = Math.Min(least, Bench(at, XMm - SlackMm));
            }

            Assert.True(gap.WorstMm <= least + SlackMm, FormattableString.Invariant($"{ring.Name}: {gap.WorstMm} while parked, {least} by sampling"));
            double there = new[] { -1e-5, 0, 1e-5 }.Min(d => Bench(gap.AtRad + d, XMm + SlackMm));
            Assert.True(gap.WorstMm >= Math.Min(there, least) - SlackMm - LandChains.WithinMm - 0.01, FormattableString.Invariant($"{ring.Name}: {gap.WorstMm} while parked, {there} at its place"));
        }

        return (chains, parkedOpen);
    }
}
