using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>On-periods recovered from wheel.dxf alone are those of the file within 0.001°.</summary>
public sealed class ReadBackTests
{
    private const double CloseDeg = 0.001;

    public static TheoryData<string> Cases => [.. Named.Keys.Order(StringComparer.Ordinal)];

    private static readonly Dictionary<string, Func<Brief>> Named = new(StringComparer.Ordinal)
    {
        ["worked wheel"] = Briefs.Worked,
        ["worked wheel, anticlockwise"] = () => Briefs.Worked() with { Drive = new(180, Turning.Anticlockwise, 0, default) },
        ["inches"] = () => Briefs.Worked() with { DrawingUnit = DrawingUnit.Inch },
        ["through home"] = () => Briefs.Plain(Briefs.Output("night", 175, 10)),
        ["several a ring, both sides of home"] = () => Briefs.Plain(Briefs.Output("pulse", 3, (170, 15), (20, 4), (60, 30), (100, 8))),
        ["turned patch"] = () => Briefs.Plain(Turned(Briefs.Output("skew", 30, 40), 35)),
        ["turned patch, anticlockwise"] = () => Briefs.Plain(Turned(Briefs.Output("skew", 30, 40), 35)) with { Drive = new(180, Turning.Anticlockwise, 0, default) },
        ["patch along the motion"] = () => Briefs.Plain(Turned(Briefs.Output("flat", 30, 40, 6), 90)),
        ["no rim"] = () => WithoutRim(Briefs.Plain(Briefs.Output("in", 10, 100), Briefs.Output("out", 2, (90, 20), (130, 12)))),
        ["make edge adjusted, anticlockwise, longer out"] = () => Adjusted(Turning.Anticlockwise, AdjustedEdge.On, LongerWay.Out, 0),
        ["make edge adjusted, turned patch"] = () => Adjusted(Turning.Clockwise, AdjustedEdge.On, LongerWay.In, 20),
        ["break edge adjusted, turned patch"] = () => Adjusted(Turning.Anticlockwise, AdjustedEdge.Off, LongerWay.Out, -25),
        ["copper proud of the carrier"] = () => Briefs.Plain(Briefs.Output("proud", 30, 40) with { Contact = new(0.4, 2, 0.4, 0, 1.5) }) with { Carrier = new(MaterialGroup.IIIa, 3, 0.1) },
        ["minutes and hours: one turn in half an hour"] = () => Briefs.Plain(Briefs.Output("slow", 20, (100, 300), (900, 60))) with { Drive = new(1800, Turning.Clockwise, 0, default) },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void OnPeriods_FromTheFileAlone_AreThoseAskedFor(string title)
    {
        Design design = Design.Of(Named[title]());
        SweptPatch bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        foreach ((RingLayout ring, OutputProgramme asked) in design.Wheel.Rings.Zip(design.Programme.Outputs))
        {
            Compare(bench, design, ring, ring.RadiusMm, [.. asked.Periods.Select(p => (Angles.DegFromRad(p.StartRad), Angles.DegFromRad(p.EndRad)))]);
        }
    }

    [Theory]
    [InlineData(Turning.Clockwise, AdjustedEdge.Off, LongerWay.In, 0)]
    [InlineData(Turning.Anticlockwise, AdjustedEdge.Off, LongerWay.Out, 15)]
    [InlineData(Turning.Clockwise, AdjustedEdge.On, LongerWay.Out, -20)]
    public void OnTime_AtBothEndsOfTravel_DiffersByTheRange(Turning direction, AdjustedEdge edge, LongerWay longer, double angleDeg)
    {
        Design design = Design.Of(Adjusted(direction, edge, longer, angleDeg));
        SweptPatch bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        RingLayout ring = design.Wheel.Rings[0];
        (double InFrom, double InTo) = Assert.Single(bench.OnPeriods(WiperOf(ring, ring.RadiusMm - 1), direction == Turning.Clockwise));
        (double OutFrom, double OutTo) = Assert.Single(bench.OnPeriods(WiperOf(ring, ring.RadiusMm + 1), direction == Turning.Clockwise));
        double range = (InTo - InFrom - (OutTo - OutFrom)) / design.Motion.SpeedDegPerS;
        Assert.Equal(longer == LongerWay.In ? 1 : -1, range, CloseDeg / 2);
    }

    private static void Compare(SweptPatch bench, Design design, RingLayout ring, double radiusMm, List<(double From, double To)> asked)
    {
        List<(double FromDeg, double ToDeg)> found = bench.OnPeriods(WiperOf(ring, radiusMm), design.Motion.Direction == Turning.Clockwise);
        Assert.Equal(asked.Count, found.Count);
        foreach ((double from, double to) in asked)
        {
            (double foundFrom, double foundTo) = found.MinBy(f => Math.Abs(Math.IEEERemainder(f.FromDeg - from, 360)));
            Assert.True(Math.Abs(Math.IEEERemainder(foundFrom - from, 360)) < CloseDeg, FormattableString.Invariant($"{ring.Name}: make at {foundFrom}, asked {from}"));
            Assert.True(Math.Abs(Math.IEEERemainder(foundTo - to, 360)) < CloseDeg, FormattableString.Invariant($"{ring.Name}: break at {foundTo}, asked {to}"));
        }
    }

    private static SweptPatch.Wiper WiperOf(RingLayout ring, double radiusMm) => new(
        radiusMm,
        Angles.DegFromRad(ring.StationRad),
        2 * ring.Patch.HalfLengthMm,
        2 * ring.Patch.HalfWidthMm,
        Angles.DegFromRad(ring.Patch.AngleRad),
        ring.Patch.IsDisc);

    private static OutputBrief Turned(OutputBrief output, double angleDeg) =>
        output with { Contact = output.Contact with { AngleRad = Angles.RadFromDeg(angleDeg) } };

    private static Brief WithoutRim(Brief brief) => brief with { Wheel = brief.Wheel with { Rim = false } };

    private static Brief Adjusted(Turning direction, AdjustedEdge edge, LongerWay longer, double angleDeg) =>
        Briefs.Plain(Turned(Briefs.Output("dose", 40, 8), angleDeg) with
        {
            Adjust = new(edge, 1, 2, longer, "M3", 0.5, 1),
            StationRad = Angles.RadFromDeg(75),
        }) with
        { Drive = new(180, direction, 0, default) };
}
