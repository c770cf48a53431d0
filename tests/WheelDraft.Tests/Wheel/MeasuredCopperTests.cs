using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>On-periods from copper measured on an old wheel.</summary>
/// <remarks>Oracle: by hand a patch of half length a and inner radius rᵢ reaches atan(a/rᵢ) beyond its station at a radial edge (methods, "Contact");
/// and a wheel laid out for times, whose copper is read back.</remarks>
public sealed class MeasuredCopperTests
{
    private static double Rad(double deg) => Angles.RadFromDeg(deg);

    private static Brief Of(Turning direction, double radiusMm, double stationDeg, params (double FromDeg, double ToDeg)[] copper)
    {
        Brief plain = Briefs.Plain(Briefs.Output("mist", 3));
        return plain with
        {
            Drive = plain.Drive with { Direction = direction },
            Outputs =
            [
                plain.Outputs[0] with
                {
                    RadiusMm = radiusMm,
                    StationRad = Rad(stationDeg),
                    Measured = new([.. copper.Select(c => CircleArc.Between(Rad(c.FromDeg), Rad(c.ToDeg)))]),
                },
            ],
        };
    }

    [Theory]
    [InlineData(Turning.Clockwise, 120, 41, 65, 281)]
    [InlineData(Turning.Anticlockwise, 120, 41, 65, 55)]
    [InlineData(Turning.Clockwise, 30, 350, 20, 320)]
    public void Of_CopperMeasuredByHand_IsOnForItsCopperAndThePatchTwice(Turning direction, double stationDeg, double fromDeg, double toDeg, double beginsDeg)
    {
        // Clockwise the wiper at φ stands over φ + ψ: copper from β begins at ψ = β − φ. Anticlockwise over φ − ψ: copper to β begins at φ − β.
        double reach = Angles.DegFromRad(Math.Atan(0.2 / 19));
        OnPeriod period = Design.Of(Of(direction, 20, stationDeg, (fromDeg, toDeg))).Programme.Outputs[0].Periods[0];
        double sweep = ((toDeg - fromDeg) % 360 + 360) % 360;
        Assert.Equal(beginsDeg - reach, Angles.DegFromRad(period.StartRad), 1e-9);
        Assert.Equal(sweep + (2 * reach), Angles.DegFromRad(period.SweepRad), 1e-9);
    }

    [Fact]
    public void Of_CopperOfADesignGivenBack_IsTheSameProgramme() => Gen.Select(Gen.Bool, Gen.Double[14, 40], Gen.Double[0, 359], Gen.Double[0, 170], Gen.Double[15, 60], Gen.Double[-40, 40]).Sample(
        (clockwise, radius, station, from, lasts, angle) =>
        {
            Brief timed = Briefs.Plain(Briefs.Output("mist", 3, (from, lasts), ((from + lasts + 15) % 180, 60)) with
            {
                RadiusMm = radius,
                StationRad = Rad(station),
                Contact = new(0.4, 2, 0.4, Rad(angle), null),
            });
            timed = timed with { Drive = timed.Drive with { Direction = clockwise ? Turning.Clockwise : Turning.Anticlockwise } };
            Design first = Design.Of(timed);
            MeasuredCopperBrief measured = new([.. first.Wheel.Rings[0].Periods.Select(p => p.CopperRad)]);
            Design again = Design.Of(timed with { Outputs = [timed.Outputs[0] with { On = new([]), Measured = measured }] });
            foreach ((OnPeriod wanted, OnPeriod found) in first.Programme.Outputs[0].Periods.Zip(again.Programme.Outputs[0].Periods))
            {
                Assert.Equal(0, Math.IEEERemainder(wanted.StartRad - found.StartRad, Angles.TurnRad), 1e-11);
                Assert.Equal(wanted.SweepRad, found.SweepRad, 1e-11);
            }
        },
        iter: 25);

    [Fact]
    public void Of_MeasuredCopper_SaysHowFarOffMeasuringMakesIt()
    {
        // Half a degree of 360 in 180 s is a quarter of a second at each edge.
        Finding note = Assert.Single(Design.Of(Of(Turning.Clockwise, 20, 120, (41, 65))).Findings, f => f.Code is "wheel.measured");
        Assert.Equal(FindingSeverity.Note, note.Severity);
        Assert.Contains("±0.5° (assumed)", note.Message, StringComparison.Ordinal);
        Assert.Contains("0.25 s sooner or later and last 0.5 s more or less", note.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_MeasuredCoarserThanItsTolerance_Warns()
    {
        Brief asked = Of(Turning.Clockwise, 20, 120, (41, 65));
        OutputBrief output = asked.Outputs[0];
        Brief coarse = asked with { Outputs = [output with { Measured = output.Measured! with { GivenRad = Rad(4) } }] };
        Finding warning = Assert.Single(Design.Of(coarse).Findings, f => f.Code is "wheel.measured");
        Assert.Equal(FindingSeverity.Warning, warning.Severity);
        Assert.Contains("±3 s", warning.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(41, 65, 66, 90, "1° wide")]
    [InlineData(41, 65, 60, 90, "overlap by 5°")]
    public void Of_CopperThatNeverOpens_IsRefused(double from, double to, double nextFrom, double nextTo, string words)
    {
        // The patch of 0.4 mm takes 1.2° on this radius.
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Design.Of(Of(Turning.Clockwise, 20, 120, (from, to), (nextFrom, nextTo))));
        Assert.Contains(words, Assert.Single(refused.Reasons).Message, StringComparison.Ordinal);
    }
}
