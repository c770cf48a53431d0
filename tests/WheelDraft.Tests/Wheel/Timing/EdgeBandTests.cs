using System.Globalization;
using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel.Timing;

/// <summary>Bands of single edges, and what is proved with them, against the copper of wheel.dxf turned off its centre.</summary>
/// <remarks>WHEELDRAFT_SWEEPS sets how many wheels are drawn.</remarks>
public sealed class EdgeBandTests
{
    // What sweeping finds to, degrees, twice.
    private const double FoundDeg = 3e-7;
    private const double PrintedDeg = 2e-6;

    private static readonly int Sweeps =
        int.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_SWEEPS"), CultureInfo.InvariantCulture, out int count) ? count : 10;

    // Computed apart from the program, by a script that holds the definitions alone.
    [Fact]
    public void Bands_AnAdjustedEdge_MayStandAnywhereInItsTravel()
    {
        PeriodBands mist = Design.Of(Briefs.Worked()).Wheel.Ring("mist").Periods[0].Bands;
        Assert.Equal(1.071825, Angles.DegFromRad(mist.Make.EarlierRad), PrintedDeg);
        Assert.Equal(0.340748, Angles.DegFromRad(mist.Make.LaterRad), PrintedDeg);
        Assert.Equal(1.306466, Angles.DegFromRad(mist.Break.EarlierRad), PrintedDeg);
        Assert.Equal(2.170826, Angles.DegFromRad(mist.Break.LaterRad), PrintedDeg);
    }

    // 122 s after home: 1 % fast or slow, and the make 0.974883° sooner or 0.323800° later (same script), 2° a second.
    [Fact]
    public void Start_MistOfTheWorkedWheel_HasItsLimits()
    {
        PeriodBands mist = Design.Of(Briefs.Worked()).Wheel.Ring("mist").Periods[0].Bands;
        Assert.Equal(120.309464, mist.StartMinS, 1e-5);
        Assert.Equal(123.395859, mist.StartMaxS, 1e-5);
    }

    [Fact]
    public void Start_BacklashAndPlacing_ShiftTheStartAndBacklashOnlyLater()
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 20, 30) with { RadiusMm = 20, Contact = new(0.4, 2, 0.4, 0, null) });
        RingLayout exact = Design.Of(plain).Wheel.Rings[0];
        PeriodBands sharp = exact.Periods[0].Bands;
        PeriodBands loose = Design.Of(plain with { Housing = new(0, 0.2), Drive = plain.Drive with { BacklashRad = 0.01 } }).Wheel.Rings[0].Periods[0].Bands;

        // 0.2 mm on the least radius that the patch covers, 19 mm, less the play of 0.1 mm.
        double placing = 0.2 / 18.9;
        double speed = 2 * Math.PI / 180;
        Assert.Equal((sharp.StartMinS * 1.01) - (placing / speed), loose.StartMinS * 1.01, 1e-9);
        Assert.Equal((sharp.StartMaxS * 0.99) + ((placing + 0.01) / speed), loose.StartMaxS * 0.99, 1e-9);
        Assert.Equal(sharp.Break.EarlierRad + placing, loose.Break.EarlierRad, 1e-12);
        Assert.Equal(sharp.Break.LaterRad + placing + 0.01, loose.Break.LaterRad, 1e-12);
        Assert.Equal(sharp.Make.EarlierRad + placing, loose.Make.EarlierRad, 1e-12);
        Assert.Equal(sharp.Make.LaterRad + placing + 0.01, loose.Make.LaterRad, 1e-12);
    }

    [Fact]
    public void Bands_OneEdgeAlone_HaveTheWholeCentreOffset()
    {
        // Was the effect on a whole on-time: of one on for 2 s, next to nothing. By hand: the last corner 19 mm out, 0.2 mm beside.
        OutputBrief output = Briefs.Output("fan", 20, 2) with { RadiusMm = 20, SidePlayMm = 0 };
        Brief plain = Briefs.Plain(output);
        Brief eccentric = plain with { Wheel = plain.Wheel with { RunOutMm = 0.4 }, Process = plain.Process with { ToleranceMm = 0 } };
        PeriodBands bands = Design.Of(eccentric).Wheel.Rings[0].Periods[0].Bands;
        double alone = Math.Asin(0.2 / Math.Sqrt((19 * 19) + 0.04));
        Assert.Equal(alone, bands.Make.EarlierRad, 1e-12);
        Assert.Equal(alone, bands.Break.LaterRad, 1e-12);
    }

    [Fact]
    public void Interlock_OppositeStationsAndAnEccentricWheel_IsNotCalledProved()
    {
        // Was proved; but the copper 0.2 mm off its centre makes the one before the other breaks.
        Brief brief = Opposed(gapS: 0.3, stationDeg: 180, runOutMm: 0.4, sideMm: 0);
        Design design = Design.Of(brief);
        Assert.Equal(InterlockVerdict.Fails, Assert.Single(design.Circuit.Interlocks).Verdict);
        SweptPatch bench = new(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000));
        double least = Enumerable.Range(0, 8).Min(k => Gap(bench, design, (0.2 * Math.Cos(k * Math.PI / 4), 0.2 * Math.Sin(k * Math.PI / 4)), (0, 0), (0, 0)));
        Assert.True(least < 0, FormattableString.Invariant($"The bench sees {least}° between break and make."));
    }

    [Fact]
    public void Bands_TheWheelAsCutSweptOffItsCentre_HoldEveryEdge()
    {
        int proved = 0;
        Gen.Select(Gen.Double[0, 4], Gen.Double[20, 340], Gen.Double[0.05, 0.4], Gen.Double[0, 0.15], Gen.Double[0, 0.2], Gen.Int).Sample(
            (gapS, stationDeg, runOut, side, placing, seed) =>
            {
                Brief brief = Opposed(gapS, stationDeg, runOut, side);
                Design design = Design.Of(brief with { Housing = new(0, placing) });
                bool holds = Assert.Single(design.Circuit.Interlocks).Verdict == InterlockVerdict.Holds;
                proved += holds ? 1 : 0;
                Random random = new(seed);
                double Within(double most) => most * ((2 * random.Next(2)) - 1) * (random.Next(3) > 0 ? 1 : random.NextDouble());
                string dxf = DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000);
                SweptPatch bench = new(dxf, Within(brief.Process.ToleranceMm));
                for (int i = 0; i < 2; i++)
                {
                    double way = 2 * Math.PI * random.NextDouble();
                    (double, double) centre = (runOut / 2 * Math.Cos(way), runOut / 2 * Math.Sin(way));
                    double gap = Gap(bench, design, centre, (Within(side), Within(side)), (Within(placing), Within(placing)));
                    Assert.True(!holds || gap > -FoundDeg, FormattableString.Invariant($"Proved apart, but {gap}° between break and make."));
                }

                return true;
            },
            iter: Sweeps);
        Assert.True(Sweeps < 10 || proved > 0, "No interlock was proved: the test says nothing.");
    }

    /// <summary>Degrees from the break of the first to the make of the second, as a bench would find them; every edge within its band.</summary>
    private static double Gap(SweptPatch bench, Design design, (double X, double Y) centre, (double First, double Second) sideMm, (double First, double Second) alongMm)
    {
        (double _, double off) = Edges(bench, design, 0, centre, sideMm.First, alongMm.First);
        (double make, double _) = Edges(bench, design, 1, centre, sideMm.Second, alongMm.Second);
        return make - off;
    }

    private static (double MakeDeg, double BreakDeg) Edges(SweptPatch bench, Design design, int index, (double X, double Y) centre, double sideMm, double alongMm)
    {
        RingLayout ring = design.Wheel.Rings[index];
        RingPeriod period = ring.Periods[0];
        SweptPatch.Wiper wiper = new(
            ring.RadiusMm + sideMm,
            Angles.DegFromRad(ring.StationRad),
            2 * ring.Patch.HalfLengthMm,
            2 * ring.Patch.HalfWidthMm,
            Angles.DegFromRad(ring.Patch.AngleRad),
            ring.Patch.IsDisc)
        { AlongMm = alongMm };
        (double make, double off) = Assert.Single(bench.OnPeriods(wiper, design.Motion.Direction == Turning.Clockwise, centre));
        InBand(make, period.Wanted.StartRad, period.Bands.Make);
        InBand(off, period.Wanted.EndRad, period.Bands.Break);
        return (make, off);
    }

    private static void InBand(double foundDeg, double nominalRad, EdgeBand band) => Assert.InRange(
        foundDeg - Angles.DegFromRad(nominalRad),
        -Angles.DegFromRad(band.EarlierRad) - FoundDeg,
        Angles.DegFromRad(band.LaterRad) + FoundDeg);

    /// <summary>Two outputs, the second on a while after the first, the interlock that they are never on together.</summary>
    private static Brief Opposed(double gapS, double stationDeg, double runOutMm, double sideMm)
    {
        OutputBrief One(string name, double fromS, double at) => Briefs.Output(name, fromS, 5) with
        {
            StationRad = Angles.RadFromDeg(at),
            SidePlayMm = sideMm,
            OverOpenContact = null,
        };
        Brief plain = Briefs.Plain(One("first", 20, 0), One("second", 25 + gapS, stationDeg));
        return plain with
        {
            Wheel = plain.Wheel with { RunOutMm = runOutMm },
            Process = plain.Process with { ToleranceMm = 0.01 },
            Loads = [new("lamp", "first", "N", new RatedPower(10, 1), 0.8, 0.2), new("bell", "second", "N", new RatedPower(10, 1), 0.8, 0.2)],
            DriveMotor = new("motor", "L", "N", new RatedPower(3, 1), 0.8, 0.2),
            Interlocks = [new("bell after lamp", InterlockClaim.NeverOn, ["bell"]) { WhileClosed = ["first"] }],
        };
    }
}
