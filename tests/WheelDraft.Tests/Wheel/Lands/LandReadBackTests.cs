using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>On-periods recovered from the lands of wheel.dxf alone, with two patches and a meter, are those of the file within 0.001°.</summary>
public sealed class LandReadBackTests
{
    private const double CloseDeg = 0.001;

    // Brute force on a grid of 0.1° misses a gap's top by at most what the wheel turns in a step.
    private const double GridDeg = 0.1;

    // Pollution degree 3 (IEC 60664-1:2020, 6.8).
    private const double XMm = 1.5;

    public static TheoryData<string> Cases => [.. Named.Keys.Order(StringComparer.Ordinal)];

    private static readonly Dictionary<string, Func<Brief>> Named = new(StringComparer.Ordinal)
    {
        ["return downstream"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 40, 10)),
        ["return upstream"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 40, 70)),
        ["anticlockwise, return downstream"] = () => Anticlockwise(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 40, 70))),
        ["anticlockwise, return upstream"] = () => Anticlockwise(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 40, 10))),
        ["wipers a third of a turn apart"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 100, 30), 0, 120)),
        ["through home"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("night", 175, 10), 300, 330)),
        ["several periods, both sides of home"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("pulse", 3, (170, 15), (20, 4), (60, 30), (110, 8)), 120, 95)),
        ["several periods, anticlockwise"] = () => Anticlockwise(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("pulse", 3, (170, 15), (20, 4), (60, 30), (110, 8)), 120, 95))),
        ["gap narrower than the wipers are apart"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("twice", 3, (10, 60), (95, 60)), 0, 30)),
        ["on nearly all the turn"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("fan", 10, 155), 200, 182)),
        ["turned patch"] = () => Briefs.Lands(Turned(Briefs.TwoWipers(Briefs.Output("skew", 30, 40), 15, 45), 35)),
        ["turned patch, anticlockwise"] = () => Anticlockwise(Briefs.Lands(Turned(Briefs.TwoWipers(Briefs.Output("skew", 30, 40), 15, 45), 35))),
        ["patch along the motion"] = () => Briefs.Lands(Turned(Briefs.TwoWipers(Briefs.Output("flat", 30, 40, 6), 15, 60), 90)),
        ["inches"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 40, 10)) with { DrawingUnit = DrawingUnit.Inch },
        ["land proud of the carrier"] = () => Briefs.Lands(Briefs.TwoWipers(Briefs.Output("proud", 30, 40) with { Contact = new(0.4, 2, 0.4, 0, 1.5) }, 15, 50)) with { Carrier = new(MaterialGroup.IIIa, 3, 0.1) },
        ["three rings"] = () => Briefs.Lands(
            Briefs.TwoWipers(Briefs.Output("heat", 3, (0, 50), (80, 40)), 0, 25),
            Briefs.TwoWipers(Briefs.Output("fan", 10, 150), 120, 140),
            Briefs.TwoWipers(Briefs.Output("bell", 170, 4, 1), 240, 220)),
        ["all stations left to auto"] = () => Briefs.Lands(
            Briefs.TwoWipers(Briefs.Output("heat", 3, (0, 50), (80, 40)), null, null),
            Briefs.TwoWipers(Briefs.Output("fan", 10, 150), 120, null),
            Briefs.TwoWipers(Briefs.Output("bell", 170, 4, 1), null, 220)),
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void OnPeriods_FromTheFileAlone_AreThoseAskedFor(string title)
    {
        Design design = Design.Of(Named[title]());
        SweptLands bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        Compare(bench, design.Wheel, design.Programme, design.Motion);
    }

    [Theory]
    [InlineData(Turning.Clockwise, true, false)]
    [InlineData(Turning.Anticlockwise, true, false)]
    [InlineData(Turning.Clockwise, false, true)]
    [InlineData(Turning.Anticlockwise, true, true)]
    public void OnPeriods_RivetsAndTurnedFoldsMixed_AreThoseAskedFor(Turning direction, bool ownIsRivet, bool returnIsRivet)
    {
        Brief brief = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("mixed", 3, (170, 40), (60, 30)), 15, 45)) with { Drive = new(180, direction, 0, default) };
        ContactPatch fold = new() { IsDisc = false, HalfLengthMm = 0.3, HalfWidthMm = 1.4, WornHalfLengthMm = 0.3, AngleRad = Angles.RadFromDeg(-25) };
        ContactPatch rivet = new() { IsDisc = true, HalfLengthMm = 0.5, HalfWidthMm = 0.5, WornHalfLengthMm = 0.5, AngleRad = 0, NoseRadiusMm = 1.5 };
        Motion motion = Motion.Of(brief);
        Programme programme = Programme.Of(brief, motion);
        WiperContacts contacts = new(null, [ownIsRivet ? rivet : fold], [returnIsRivet ? rivet : fold]);
        WheelLayout wheel = WheelSetter.Of(new WheelTask(brief, motion, programme, contacts, [OpenContactRule.None]));
        Compare(new(DxfWriter.Write(Dxf.CutDrawings.Of(DrawingUnit.Millimetre, [.. wheel.Copper.Select(c => c.Outline)]), DxfVersion.R2000)), wheel, programme, motion);
    }

    private static void Compare(SweptLands bench, WheelLayout wheel, Programme programme, Motion motion)
    {
        Assert.Equal(programme.Outputs.Sum(o => o.Periods.Count), bench.Count);
        foreach ((RingLayout ring, OutputProgramme asked) in wheel.Rings.Zip(programme.Outputs))
        {
            (SweptPatch.Wiper own, SweptPatch.Wiper other) = SweptLands.WipersOf(ring);
            List<(double FromDeg, double ToDeg)> found = bench.OnPeriods(own, other, motion.Direction == Turning.Clockwise);
            Assert.Equal(asked.Periods.Count, found.Count);
            foreach (OnPeriod period in asked.Periods)
            {
                double from = Angles.DegFromRad(period.StartRad);
                double to = Angles.DegFromRad(period.EndRad);
                (double foundFrom, double foundTo) = found.MinBy(f => Math.Abs(Math.IEEERemainder(f.FromDeg - from, 360)));
                Assert.True(Math.Abs(Math.IEEERemainder(foundFrom - from, 360)) < CloseDeg, FormattableString.Invariant($"{ring.Name}: make at {foundFrom}, asked {from}"));
                Assert.True(Math.Abs(Math.IEEERemainder(foundTo - to, 360)) < CloseDeg, FormattableString.Invariant($"{ring.Name}: break at {foundTo}, asked {to}"));
            }
        }
    }

    [Fact]
    public void OnPeriods_AlwaysOn_IsOneWholeRingThatJoinsAllTheTurn()
    {
        Design design = Design.Of(Briefs.Lands(Always(), Briefs.TwoWipers(Briefs.Output("bell", 170, 4, 1), 240, 220)));
        SweptLands bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        (SweptPatch.Wiper own, SweptPatch.Wiper other) = SweptLands.WipersOf(design.Wheel.Rings[0]);
        Assert.Equal([(0, 360)], bench.OnPeriods(own, other, clockwise: true));
        Assert.True(design.Wheel.Rings[0].RadiusMm < design.Wheel.Rings[1].RadiusMm);
        Assert.Equal([false, true], design.Solids.Select(s => s.FloatsAtTimes));
        Assert.Equal([LandState.OnBoth], Enumerable.Range(0, 360).Select(d => design.Wheel.Rings[0].Lands[0].StateAt(Angles.RadFromDeg(d))).Distinct());
    }

    [Theory]
    [InlineData("return downstream")]
    [InlineData("return upstream")]
    [InlineData("anticlockwise, return downstream")]
    [InlineData("several periods, both sides of home")]
    [InlineData("gap narrower than the wipers are apart")]
    [InlineData("on nearly all the turn")]
    [InlineData("turned patch")]
    [InlineData("wipers a third of a turn apart")]
    public void OpenContacts_GreatestGap_IsThatOfBruteForceOverTheFile(string title)
    {
        // Cut and put together exactly, so that the gap at worst is the gap that the file shows.
        Brief brief = Named[title]();
        Design design = Design.Of(brief with
        {
            Process = brief.Process with { ToleranceMm = 0 },
            Wheel = brief.Wheel with { RunOutMm = 0 },
            Outputs = [.. brief.Outputs.Select(o => o with { SidePlayMm = 0 })],
        });
        RingLayout ring = design.Wheel.Rings[0];
        SweptLands bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        (SweptPatch.Wiper own, SweptPatch.Wiper other) = SweptLands.WipersOf(ring);
        double sense = design.Motion.Direction == Turning.Clockwise ? 1 : -1;
        double step = ring.RadiusMm * Angles.RadFromDeg(GridDeg);
        foreach (OpenPeriod open in design.OpenContacts[0].Periods)
        {
            double from = Angles.DegFromRad(open.BreakRad);
            double to = Angles.DegFromRad(open.MakeRad);
            double greatest = 0;
            double reached = double.NaN;
            for (double at = from + (GridDeg / 2); at < to; at += GridDeg)
            {
                double gap = bench.ChainMm(own, other, [], sense * at, XMm);
                greatest = Math.Max(greatest, gap);
                reached = double.IsNaN(reached) && gap >= design.OpenContacts[0].RequiredMm - 1e-4 ? at - from : reached;
            }

            Assert.Equal(greatest, open.GreatestMm, step);
            Assert.True(open.GreatestMm >= greatest - 1e-3, "the top found is below a sampled one");
            Assert.Equal(open.ReachedAfterRad is double after ? Angles.DegFromRad(after) : double.NaN, reached, GridDeg);
            Assert.Equal(open.GreatestMm, bench.ChainMm(own, other, [], sense * Angles.DegFromRad(open.GreatestAtRad), XMm), 1e-4);
        }
    }

    internal static OutputBrief Always() =>
        new("power", "power", ProgrammeBrief.Always, new(0.4, 2, 0.4, 0, null)) { StationRad = 0, ReturnStationRad = Angles.RadFromDeg(40), ReturnNet = "L", SidePlayMm = 0.1 };

    private static Brief Anticlockwise(Brief brief) => brief with { Drive = new(180, Turning.Anticlockwise, 0, default) };

    private static OutputBrief Turned(OutputBrief output, double angleDeg) =>
        output with { Contact = output.Contact with { AngleRad = Angles.RadFromDeg(angleDeg) } };
}
