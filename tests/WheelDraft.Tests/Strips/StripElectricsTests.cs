using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class StripElectricsTests
{
    private static Material With(double nanoOhmM, double hardness) => MaterialTable.Find("C11000-H02").Found! with
    {
        ResistivityNanoOhmM = new(nanoOhmM, "worked example"),
        HardnessMpa = new(hardness, "worked example"),
    };

    // R. Holm, Electric Contacts: (ρ₁ + ρ₂)/(4a), a = √(F/(πH)), H = 0.9 GPa, clean, one spot, worked by hand.
    [Theory]
    [InlineData(17.24, 17.24, 0.5, 0.648)]
    [InlineData(17.24, 17.24, 1, 0.458)]
    [InlineData(17.24, 17.24, 5, 0.205)]
    [InlineData(115, 17.24, 1, 1.76)]
    [InlineData(115, 17.24, 2, 1.24)]
    [InlineData(61.6, 17.24, 1, 1.05)]
    public void ConstrictionOhmOf_WorkedPairs_AgreeToThreeDigits(double first, double second, double force, double milliOhm) =>
        Assert.Equal(milliOhm, 1000 * StripElectrics.ConstrictionOhmOf(With(first, 900), With(second, 900), force), 0.006);

    // ρ L/(w t) of a plain bar; ρ L/(t (w₂ − w₁)) ln(w₂/w₁) of a taper (integrated by hand).
    [Fact]
    public void Of_BarAndTaper_HaveTheIntegratedResistance()
    {
        StripBrief bar = new("bus", new ServesNet("N", new(45, 0)), "C11000-H02", 0.5, [new StripStraight(20, 4, null), new StripStraight(30, 4, 2)]) { ApproachRad = 0, SeatedOn = "floor" };
        StripForm form = StripForm.Of(StripBriefs.With(bar), 0);
        StripElectrics found = StripElectrics.Of(form, null, With(17.24, 900), new StripCurrent(10, 0, false));
        double expected = 17.24e-6 * ((20 / (4 * 0.5)) + (30 / (0.5 * 2) * Math.Log(2)));
        Assert.Equal(expected, found.ResistanceOhm, expected * 1e-12);
        Assert.Equal(10 / (2 * 0.5), found.DensityAPerMm2!.Value, 1e-12);
        Assert.Equal(expected * 100, found.LossW!.Value, 1e-9);

        // All of it through both faces and both edges at 10 W/(m² K).
        double surface = (20 * 9) + (30 * ((2 * 3) + 1));
        Assert.Equal(expected * 100 / (10e-6 * surface), found.TemperatureRiseK!.Value, 1e-6);
        Assert.Null(found.ConstrictionOhm);
    }

    // Archard, V = K F s/(3H): 1 N on r = 30 mm, 1e5 turns, s = 18.85 km; K/3 = 1e-6 with H = 0.9 GPa takes 7 µm off 3 mm²
    // (worked by hand). Here: the turns after which that volume is gone.
    [Fact]
    public void Of_WearBand_FollowsArchard()
    {
        StripContact contact = new() { Shape = ContactShape.FoldLine, LengthMm = 0.4, WornLengthMm = 0.8, WidthMm = 3, AngleRad = 0, NoseRadiusMm = 1.5 };
        WearLife life = WearLife.Of(contact, 1, 30, 900)!;
        double volume = WearLife.WornMm3(contact, 0.8, 1.5) - WearLife.WornMm3(contact, 0.4, 1.5);
        double perTurnAtK = 1e-6 * 1 * (2 * Math.PI * 30) / 900;
        Assert.Equal(0.007, perTurnAtK * 1e5 / 3, 2e-4);
        Assert.Equal(volume / (perTurnAtK * (WearLife.DryK / 3 / 1e-6)), life.DryTurns, 1e-6 * life.DryTurns);
        Assert.Equal(25, life.GoodTurns / life.DryTurns, 1e-9);
        Assert.True(life.DryTurns < life.PoorTurns && life.PoorTurns < life.GoodTurns);

        // A circular segment of chord w on radius R, numerically: ∫ (√(R² − x²) − √(R² − w²/4)) dx.
        double area = 0;
        for (int i = 0; i < 10000; i++)
        {
            double x = -0.4 + (0.8 * (i + 0.5) / 10000);
            area += (Math.Sqrt((1.5 * 1.5) - (x * x)) - Math.Sqrt((1.5 * 1.5) - 0.16)) * 0.8 / 10000;
        }

        Assert.Equal(3 * area, WearLife.WornMm3(contact, 0.8, 1.5), 1e-8);
        Assert.Null(WearLife.Of(contact with { WornLengthMm = 0.4 }, 1, 30, 900));
    }
}
