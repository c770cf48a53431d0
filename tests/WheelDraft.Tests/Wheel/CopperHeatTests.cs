using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>Currents through copper and contacts of which no strip is given.</summary>
public sealed class CopperHeatTests
{
    [Fact]
    public void Findings_125AThroughAWheelWithoutStrips_SaidNothingMisses()
    {
        Design design = new ChangedDemo("tank-doser").With("power = \"4 W\"", "current = \"125 A\"").Design();
        Assert.Contains(design.Findings, f => f is { Code: "wheel.heat", Severity: FindingSeverity.Error } && f.Message.Contains("125", StringComparison.Ordinal));
        Assert.Contains(design.Findings, f => f is { Code: "wheel.softening", Severity: FindingSeverity.Error } && f.Message.Contains("'feeder'", StringComparison.Ordinal));
        Assert.False(design.Meets);
    }

    [Fact]
    public void Findings_OfAContactWithoutStrip_NeedTheForceThatHolmGives()
    {
        // Two members of brass, hard: R = ρ/(2a), a = √(F/(π H)), H = 3 · 490 MPa, ten times for films, 0.1 V (R. Holm, Electric Contacts, 1967; strength
        // and 6.16 µΩ·cm from the strip's data sheet): F = π H (10 I ρ / (2 · 0.1 V))² = 4618 N · (3.08e-3 I/A)², at 10 A 4.38 N.
        Finding found = Assert.Single(
            new ChangedDemo("tank-doser").With("power = \"4 W\"", "current = \"10 A\"").Design().Findings,
            f => f.Code is "wheel.softening" && f.Message.Contains("'feeder'", StringComparison.Ordinal));
        Assert.Equal(FindingSeverity.Warning, found.Severity);
        Assert.Contains(" from 4.4 N on", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Warmest_OneNeck_AgreesWithFiniteDifferences()
    {
        Design design = Demos.Of("tank-doser");
        CopperSection neck = new("a neck", 40, 1.5, 20);
        (_, double rise) = new CopperHeat(design.Brief, design.Wheel, design.Circuit.Currents).Warmest([neck]);

        // The oracle: steady heat along a bar, k T'' + J² ρ = 0, ends at the temperature of the body, by elimination on 400 cells; the body cools by its face alone.
        double rho = 61.6e-6, k = 2.45e-8 * 293 / rho, t = design.Brief.Wheel.ThicknessMm;
        double density = neck.CurrentA / (neck.WidthMm * t), step = neck.LengthMm / 400;
        double[] sweep = new double[400], sum = new double[400];
        for (int i = 1; i < 400; i++)
        {
            sweep[i] = 1 / (2 - sweep[i - 1]);
            sum[i] = sweep[i] * ((density * density * rho * step * step / k) + sum[i - 1]);
        }

        double[] bar = new double[401];
        for (int i = 399; i > 0; i--)
        {
            bar[i] = sum[i] + (sweep[i] * bar[i + 1]);
        }

        double body = density * density * rho * neck.LengthMm * neck.WidthMm * t / (10e-6 * design.Wheel.Copper.Sum(c => c.Outline.AreaMm2));
        Assert.Equal(bar.Max() + body, rise, 1e-3 * rise);
    }

    [Fact]
    public void Of_WindowedWheel_SpokesAndWebsCarryWhatLiesBeyondThem()
    {
        Design design = Demos.Of("tank-doser");
        IReadOnlyList<CopperSection> sections = CopperSection.Of(design.Brief, design.Wheel, design.Circuit.Currents);
        CopperSection web = sections.Single(s => s.Where.Contains("'stirrer' and 'feeder'", StringComparison.Ordinal));
        double beyond = design.Brief.Outputs.Zip(design.Circuit.Currents.Contacts).Where(o => o.First.Name is "feeder" or "buffer").Sum(o => o.Second.CarriedA);
        Assert.Equal(Math.Min(beyond, design.Circuit.Currents.Feed!.CarriedA), web.CurrentA, 1e-9);
        Assert.Equal(design.Brief.Wheel.WebMm - (2 * design.Brief.Process.ToleranceMm), web.WidthMm, 1e-6);
    }
}
