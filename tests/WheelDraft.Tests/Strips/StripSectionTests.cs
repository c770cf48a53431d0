using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class StripSectionTests
{
    // Torsion of a rectangle by Saint-Venant's series (S. Timoshenko and J. N. Goodier, Theory of Elasticity, torsion of
    // rectangular bars): J = a b³ (1/3 − 64 b/(π⁵ a) Σ tanh(nπa/2b)/n⁵), τ = T b k/J with k = 1 − 8/π² Σ 1/(n² cosh(nπa/2b)), n odd.
    private static (double J, double ShearPerNmm) Series(double a, double b)
    {
        double j = 0;
        double k = 0;
        for (int n = 1; n < 60; n += 2)
        {
            double x = n * Math.PI * a / (2 * b);
            j += Math.Tanh(x) / Math.Pow(n, 5);
            k += 1 / (n * n * Math.Cosh(Math.Min(x, 600)));
        }

        double constant = a * b * b * b * ((1.0 / 3) - (64 * b / (Math.Pow(Math.PI, 5) * a) * j));
        return (constant, b * (1 - (8 / (Math.PI * Math.PI) * k)) / constant);
    }

    // The series gives the table's values: J/(ab³) 0.1406, 0.229, 0.281, 0.312 for a/b = 1, 2, 4, 10 (Timoshenko and Goodier, from memory).
    [Theory]
    [InlineData(1, 0.1406)]
    [InlineData(2, 0.229)]
    [InlineData(4, 0.281)]
    [InlineData(10, 0.312)]
    public void Series_PublishedTable_Agrees(double ratio, double published) => Assert.Equal(published, Series(ratio, 1).J / ratio, 6e-4);

    [Theory]
    [InlineData(1, 0.005)]
    [InlineData(2, 0.005)]
    [InlineData(4, 0.002)]
    [InlineData(6, 0.002)]
    [InlineData(10, 0.002)]
    [InlineData(30, 0.002)]
    public void TorsionMm4_SaintVenantsSeries_Agrees(double ratio, double share)
    {
        const double t = 0.5;
        StripSection section = new(ratio * t, t);
        Assert.InRange(section.TorsionMm4 / Series(ratio * t, t).J, 1 - share, 1 + share);
    }

    // Torque alone: von Mises √3 τ; its own axis and in its plane: 6 M/(b t²) and 6 M/(t b²), by hand.
    [Theory]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(10)]
    public void StressMpa_OneMomentAtATime_IsTheClosedForm(double ratio)
    {
        const double t = 0.5;
        StripSection section = new(ratio * t, t);
        double twisted = section.StressMpa(0, 0, 1) / (Math.Sqrt(3) * Series(ratio * t, t).ShearPerNmm);
        Assert.InRange(twisted, 0.98, 1.02);
        Assert.Equal(6 / (ratio * t * t * t), section.StressMpa(-1, 0, 0), 1e-9);
        Assert.Equal(6 / (t * ratio * ratio * t * t), section.StressMpa(0, -1, 0), 1e-9);
        Assert.Equal((6 / (ratio * t * t * t)) + (12 / (t * ratio * ratio * t * t)), section.StressMpa(1, 2, 0), 1e-9);
    }
}
