using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class BendRuleTests
{
    private const double Quarter = Math.PI / 2;

    // FAA airframe handbook, "Making Straight Line Bends": U channel, T 0.040, R 0.16 in, mould lines 1, 2, 1: flats 0.8, 1.6, 0.8,
    // allowance per degree 0.01743 R + 0.0078 T; total 3.7581 in. The constants give K = 0.4469 (0.0078 · 180/π), and 0.01743
    // for π/180 = 0.017453 is the handbook's rounding.
    [Fact]
    public void Allowance_FaaChannel_GivesTheHandbookWidth()
    {
        double k = 0.0078 * 180 / Math.PI;
        double allowance = BendRule.AllowanceMm(Quarter, 0.16 * 25.4, 0.040 * 25.4, k) / 25.4;
        Assert.Equal(90 * ((0.01743 * 0.16) + (0.0078 * 0.04)), allowance, 4e-4);
        double flats = 4 - (4 * OutsideSetbackMm(Quarter, 0.16, 0.04));
        Assert.Equal(3.2, flats, 1e-12);
        Assert.Equal(3.7581, flats + (2 * allowance), 1e-3);
    }

    // Standard forming text, 90°: R = T = 0.125 in, K 0.44: allowance 0.2827, setback 0.25, deduction 0.21726 in.
    [Fact]
    public void Deduction_InchExample_AgreesWithTheText()
    {
        Assert.Equal(0.28274, BendRule.AllowanceMm(Quarter, 0.125, 0.125, 0.44), 1e-5);
        Assert.Equal(0.25, OutsideSetbackMm(Quarter, 0.125, 0.125), 1e-12);
        Assert.Equal(0.21726, DeductionMm(Quarter, 0.125, 0.125, 0.44), 1e-5);
    }

    // Worked by hand from BA = θ (R + K t) and the Machinery's Handbook factors rounded to two digits.
    [Theory]
    [InlineData(0.5, 1.0, 0.41, 1.8928, 1.1072)] // copper strip, half hard
    [InlineData(0.3, 0.6, 0.45, 1.1545, 0.6455)] // bronze CuSn5, hard
    [InlineData(0.8, 0.8, 0.35, 1.6965, 1.5035)] // soft copper
    public void Deduction_MetricExamples_AgreeToFourDigits(double t, double r, double k, double allowance, double deduction)
    {
        Assert.Equal(allowance, BendRule.AllowanceMm(Quarter, r, t, k), 5e-5);
        Assert.Equal(deduction, DeductionMm(Quarter, r, t, k), 5e-5);
    }

    // The same strips as blanks: straight flats plus the allowance, with the factor of the parameter file.
    [Theory]
    [InlineData("C11000-H02", 0.5, 1.0, 0.41, 1.8928)]
    [InlineData("C51000-H04", 0.3, 0.6, 0.45, 1.1545)]
    [InlineData("C11000-O61", 0.8, 0.8, 0.35, 1.6965)]
    public void Form_OneRightAngle_HasTheWorkedBlankLength(string material, double t, double r, double k, double allowance)
    {
        StripBrief strip = new("angle", new ServesNet("N", new(45, 0)), material, t, [new StripStraight(10, 4, null), new StripBend(Quarter, r, false), new StripStraight(10, 4, null)])
        {
            KFactor = k,
            Grain = StripGrain.Along,
            ApproachRad = 0,
            SeatedOn = "floor",
        };
        StripForm form = StripForm.Of(StripBriefs.With(strip), 0);
        Assert.Equal(20 + allowance, form.LengthMm, 5e-5);
        Assert.Equal(10 + (allowance / 2), form.Folds[0].AtMm, 5e-5);
        Assert.Equal(form.LengthMm, form.Blank.Outline.Bounds.MaxX, 1e-12);

        // From outside legs: both mould-line legs less one deduction.
        double legs = 2 * (10 + OutsideSetbackMm(Quarter, r, t));
        Assert.Equal(legs - DeductionMm(Quarter, r, t, k), form.LengthMm, 1e-9);
    }

    // Machinery's Handbook, 90° rules: 0.55 T, 0.64 T, 0.71 T beyond 1.57 R (factors from memory).
    [Theory]
    [InlineData("C11000-O61", 1.0, 0.55)]
    [InlineData("C11000-H02", 1.0, 0.64)]
    [InlineData("C51000-H04", 1.0, 0.71)]
    public void K_TightBend_IsTheHandbookRule(string material, double r, double perThickness)
    {
        Material m = MaterialTable.Find(material).Found!;
        Assert.Equal(perThickness / Quarter, BendRule.K(m, r, r).Value, 5e-4);
    }

    [Fact]
    public void K_WideBend_MovesToTheMiddle()
    {
        Material m = MaterialTable.Find("C11000-O61").Found!;
        Assert.True(BendRule.K(m, 2, 0.5).Value > BendRule.K(m, 0.5, 0.5).Value);
        Assert.Equal(0.5, BendRule.K(m, 20, 0.5).Value);
    }

    // CuSn5 hard (560 MPa, 110 GPa), T 0.3, tool radius 0.6: X 0.01018, Rᵢ/R_f 0.9695, so R_f 0.619 mm (worked from the published
    // formula); 90° opens to about 87.8°, over-bend about 2.3°.
    [Fact]
    public void Springback_HardBronze_AgreesWithTheWorkedExample()
    {
        Material m = MaterialTable.Find("C51000-H04").Found!;
        SpringbackSetting set = BendRule.Springback(Quarter, 0.6 / 0.9695, 0.3, m);
        Assert.Equal(0.6, set.ToolRadiusMm, 1e-4);
        Assert.Equal(0.01018, set.X, 1e-5);
        double overbendDeg = (set.AngleRad - Quarter) * 180 / Math.PI;
        Assert.InRange(overbendDeg, 2.1, 2.4);

        // The neutral arc keeps its length.
        Assert.Equal(Quarter * ((0.6 / 0.9695) + 0.15), set.AngleRad * (set.ToolRadiusMm + 0.15), 1e-12);
    }

    // Published default of the springback formula: 300 MPa, tool radius 50 mm, 210 GPa, 2 mm: X 0.0357, ratio 0.8930.
    [Fact]
    public void Springback_PublishedDefault_HasTheRatio()
    {
        Material steelLike = MaterialTable.Find("C51000-H04").Found! with { YieldMpa = new(300, "published example"), ModulusGpa = new(210, "published example") };
        SpringbackSetting set = BendRule.Springback(1, 50 / 0.8930, 2, steelLike);
        Assert.Equal(50, set.ToolRadiusMm, 5e-3);
        Assert.Equal(0.0357, set.X, 5e-5);
    }

    // From the tangent line of a fold to its outer mould line, as handbooks define the setback: (R + t) tan(θ/2).
    private static double OutsideSetbackMm(double angleRad, double r, double t) => (r + t) * Math.Tan(angleRad / 2);

    // What a fold takes off the sum of its outside legs, as handbooks define it: twice the setback less the allowance.
    private static double DeductionMm(double angleRad, double r, double t, double k) =>
        (2 * OutsideSetbackMm(angleRad, r, t)) - BendRule.AllowanceMm(angleRad, r, t, k);
}
