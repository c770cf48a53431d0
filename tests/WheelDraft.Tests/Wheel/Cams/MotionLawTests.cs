using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Laws of cam motion against tables of the text books and against numerical differentiation.</summary>
public sealed class MotionLawTests
{
    /// <summary>Greatest velocity, acceleration and jerk of a motion of height 1 over length 1.</summary>
    /// <remarks>Peak values of R. L. Norton, Cam Design and Manufacturing Handbook, and H. A. Rothbart, Cams, both recalled from memory and confirmed by numerical
    /// integration outside this project; the harmonic's jerk is infinite at its ends and 15.5 within.</remarks>
    public static TheoryData<string, double, double, double> Published => new()
    {
        { "Harmonic", 1.5708, 4.9348, 15.503 },
        { "Cycloidal", 2.0000, 6.2832, 39.48 },
        { "Polynomial345", 1.8750, 5.7735, 60.0 },
        { "Polynomial4567", 2.1875, 7.5132, 52.5 },
        { "ModifiedTrapezoid", 2.0000, 4.8881, 61.4 },
        { "ModifiedSine", 1.7596, 5.5280, 69.5 },
        { "Uniform", 1, 0, 0 },
    };

    [Theory]
    [MemberData(nameof(Published))]
    public void Peaks_OfLaw_AreThePublishedOnes(string law, double velocity, double acceleration, double jerk)
    {
        MotionPoint peaks = MotionLaw.Peaks(Enum.Parse<CamLaw>(law));
        Assert.Equal(velocity, peaks.Velocity, 0.5e-4);
        Assert.Equal(acceleration, peaks.Acceleration, 0.5e-4);
        Assert.Equal(jerk, peaks.Jerk, 0.05);
    }

    /// <summary>Rise of 20 mm in 60°, cycloidal: lift, mm, velocity, mm/deg, acceleration, mm/deg².</summary>
    /// <remarks>A published worked table ("HW4 fall08", scribd 402730349, a mirror), confirmed by calculation outside this project.</remarks>
    [Theory]
    [InlineData(10, 0.576689, 0.166667, 0.03023)]
    [InlineData(20, 3.910022, double.NaN, double.NaN)]
    [InlineData(30, 10, 0.666667, double.NaN)]
    public void At_CycloidalRiseOfTwentyMillimetres_IsThePublishedTable(double deg, double lift, double velocity, double acceleration)
    {
        MotionPoint at = MotionLaw.At(CamLaw.Cycloidal, deg / 60).Scaled(20, 60);
        Assert.Equal(lift, at.Lift, 0.5e-6);
        Assert.True(double.IsNaN(velocity) || Math.Abs(at.Velocity - velocity) < 0.5e-6);
        Assert.True(double.IsNaN(acceleration) || Math.Abs(at.Acceleration - acceleration) < 0.5e-5);
    }

    public static TheoryData<string> Laws => [.. Enum.GetNames<CamLaw>()];

    // Central differences of the lift, step h: their error is h²/6 of the third higher derivative, plus rounding.
    [Theory]
    [MemberData(nameof(Laws))]
    public void At_AnyShare_IsTheDerivativeOfTheLift(string name)
    {
        CamLaw law = Enum.Parse<CamLaw>(name);
        const double h = 1e-5;
        for (double u = 0.0137; u < 1; u += 0.0171)
        {
            MotionPoint before = MotionLaw.At(law, u - h), at = MotionLaw.At(law, u), after = MotionLaw.At(law, u + h);
            Assert.Equal((after.Lift - before.Lift) / (2 * h), at.Velocity, 1e-7);
            Assert.Equal((after.Velocity - before.Velocity) / (2 * h), at.Acceleration, 1e-5);
            Assert.Equal((after.Acceleration - before.Acceleration) / (2 * h), at.Jerk, 1e-2);
        }
    }

    [Theory]
    [MemberData(nameof(Laws))]
    public void At_Ends_RunsFromNothingToAll(string name)
    {
        CamLaw law = Enum.Parse<CamLaw>(name);
        Assert.Equal(0, MotionLaw.At(law, 0).Lift, 1e-15);
        Assert.Equal(1, MotionLaw.At(law, 1).Lift, 1e-15);
        Assert.Equal(0.5, MotionLaw.At(law, 0.5).Lift, 1e-14);
        Assert.Equal(MotionLaw.Strikes(law) ? 1 : 0, MotionLaw.At(law, 0).Velocity, 1e-15);
        bool jumps = law is CamLaw.Uniform or CamLaw.Harmonic;
        Assert.Equal(jumps, MotionLaw.AccelerationJump(law) > 1e-12);
        foreach (double u in MotionLaw.Breaks(law))
        {
            Assert.Equal(MotionLaw.At(law, u - 1e-12).Lift, MotionLaw.At(law, u + 1e-12).Lift, 1e-11);
            Assert.Equal(MotionLaw.At(law, u - 1e-12).Velocity, MotionLaw.At(law, u + 1e-12).Velocity, 1e-10);
            Assert.Equal(MotionLaw.At(law, u - 1e-12).Acceleration, MotionLaw.At(law, u + 1e-12).Acceleration, 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Laws))]
    public void Most_OverAnyPart_IsNeverPassed(string name)
    {
        CamLaw law = Enum.Parse<CamLaw>(name);
        for (double from = 0; from < 0.95; from += 0.061)
        {
            double to = Math.Min(1, from + 0.137);
            MotionPoint most = MotionLaw.Most(law, from, to);
            for (double u = from; u <= to; u += 0.0007)
            {
                MotionPoint at = MotionLaw.At(law, u);
                Assert.True(Math.Abs(at.Velocity) <= most.Velocity + 1e-12 && Math.Abs(at.Acceleration) <= most.Acceleration + 1e-11 && Math.Abs(at.Jerk) <= most.Jerk + 1e-9);
            }
        }
    }
}
