using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>The tables against a copy of what was read in public texts (guards typing), and against structure that the
/// tables have by themselves (an outside check of the reading).</summary>
public sealed class RuleTableTests
{
    [Theory]
    [InlineData("tables/f1_rated_impulse.csv")]
    [InlineData("tables/iec60335_t15_rated_impulse.csv")]
    public void ImpulseRows_Copy_IsTheSame(string name)
    {
        CaseTable copy = CaseTable.Read(name);
        bool appliances = name.Contains("t15", StringComparison.Ordinal);
        ImpulseRow[] rows = appliances ? Iec60335Table15.Rows : Iec60664TableF1.Rows;
        Assert.Equal(copy.Rows.Count, rows.Length);
        foreach ((string[] read, ImpulseRow row) in copy.Rows.Zip(rows))
        {
            Assert.Equal(copy.Number(read, appliances ? "rated_voltage_max_inclusive_v" : "line_to_neutral_v_max"), row.UpToV);
            Assert.Equal(copy.Number(read, "ovc_i_impulse_v"), row.CategoryI);
            Assert.Equal(copy.Number(read, "ovc_ii_impulse_v"), row.CategoryII);
            Assert.Equal(copy.Number(read, "ovc_iii_impulse_v"), row.CategoryIII);
            Assert.Equal(appliances ? null : copy.Number(read, "ovc_iv_impulse_v"), row.CategoryIV);
        }
    }

    [Fact]
    public void TableF2_Copy_IsTheSame()
    {
        CaseTable copy = CaseTable.Read("tables/f2_clearance_impulse.csv");
        Assert.Equal(copy.Rows.Count, Iec60664TableF2.Rows.Length);
        foreach ((string[] read, ImpulseClearanceRow row) in copy.Rows.Zip(Iec60664TableF2.Rows))
        {
            Assert.Equal(1000 * copy.Number(read, "impulse_withstand_kv_peak"), row.ImpulseV, 1e-9);
            Assert.Equal(copy.Number(read, "case_a_pd1_mm"), row.Degree1);
            Assert.Equal(copy.Number(read, "case_a_pd2_mm"), row.Degree2);
            Assert.Equal(copy.Number(read, "case_a_pd3_mm"), row.Degree3);
            Assert.Equal(string.Equals(copy.Text(read, "preferred_series"), "yes", StringComparison.Ordinal), row.Preferred);
        }
    }

    [Fact]
    public void TableF6_Copy_IsTheSame()
    {
        CaseTable copy = CaseTable.Read("tables/f6_impulse_test_voltage.csv");
        Assert.Equal(copy.Rows.Count, Iec60664TableF6.Rows.Length);
        foreach ((string[] read, ImpulseTestRow row) in copy.Rows.Zip(Iec60664TableF6.Rows))
        {
            Assert.Equal(1000 * copy.Number(read, "rated_impulse_kv"), row.RatedV, 1e-9);
            Assert.Equal(1000 * copy.Number(read, "test_kv_sea_level"), row.AtSeaLevelV, 1e-9);
            Assert.Equal(1000 * copy.Number(read, "test_kv_200m"), row.At200MetresV, 1e-9);
            Assert.Equal(1000 * copy.Number(read, "test_kv_500m"), row.At500MetresV, 1e-9);
        }
    }

    [Fact]
    public void TableF8_Copy_IsTheSame()
    {
        CaseTable copy = CaseTable.Read("tables/f7_clearance_steady_peak.csv");
        string[][] inhomogeneous = [.. copy.Rows.Where(r => copy.Text(r, "case_a_inhomogeneous_mm").Length > 0)];
        Assert.Equal(inhomogeneous.Length, Iec60664TableF8.Rows.Length);
        foreach ((string[] read, PeakClearanceRow row) in inhomogeneous.Zip(Iec60664TableF8.Rows))
        {
            Assert.Equal(1000 * copy.Number(read, "voltage_kv_peak"), row.PeakV, 1e-9);
            Assert.Equal(copy.Number(read, "case_a_inhomogeneous_mm"), row.ClearanceMm);
        }
    }

    [Fact]
    public void Table16_Copy_IsTheSame()
    {
        CaseTable copy = CaseTable.Read("tables/iec60335_t16_clearance.csv");
        Assert.Equal(copy.Rows.Count, Iec60335Table16.Rows.Length);
        foreach ((string[] read, ImpulseClearanceRow row) in copy.Rows.Zip(Iec60335Table16.Rows))
        {
            Assert.Equal(copy.Number(read, "rated_impulse_v"), row.ImpulseV);
            Assert.Equal(copy.Number(read, "min_clearance_mm"), row.Degree1);
            Assert.Equal(copy.Number(read, "min_clearance_mm"), row.Degree2);
            Assert.Equal(copy.Number(read, "min_clearance_pd3_mm"), row.Degree3);
        }
    }

    [Theory]
    [InlineData("tables/f4_creepage.csv", "rms_v")]
    [InlineData("tables/iec60335_t17_creepage_basic.csv", "working_v_max_inclusive")]
    [InlineData("tables/iec60335_t18_creepage_functional.csv", "working_v_max_inclusive")]
    public void CreepageRows_Copy_IsTheSame(string name, string voltageColumn)
    {
        CaseTable copy = CaseTable.Read(name);
        CreepageRow[] rows = name.Contains("t17", StringComparison.Ordinal) ? Iec60335Table17.Rows
            : name.Contains("t18", StringComparison.Ordinal) ? Iec60335Table18.Rows
            : Iec60664TableF5.Rows;
        Assert.Equal(copy.Rows.Count, rows.Length);
        foreach ((string[] read, CreepageRow row) in copy.Rows.Zip(rows))
        {
            Assert.Equal(copy.Number(read, voltageColumn), row.VoltageV);
            Assert.Equal(copy.Number(read, "pd1_all_groups_mm", "pd1_mm"), row.Degree1);
            Assert.Equal(copy.Number(read, "pd2_group_i_mm"), row.At(2, MaterialGroup.I));
            Assert.Equal(copy.Number(read, "pd2_group_ii_mm"), row.At(2, MaterialGroup.II));
            Assert.Equal(copy.Number(read, "pd2_group_iii_mm"), row.At(2, MaterialGroup.IIIb));
            Assert.Equal(copy.Number(read, "pd3_group_i_mm"), row.At(3, MaterialGroup.I));
            Assert.Equal(copy.Number(read, "pd3_group_ii_mm"), row.At(3, MaterialGroup.II));
            Assert.Equal(copy.Number(read, "pd3_group_iii_mm"), row.At(3, MaterialGroup.IIIa));
        }
    }

    [Fact]
    public void TableA2_Copy_IsTheSame()
    {
        CaseTable copy = CaseTable.Read("tables/a2_altitude.csv");
        Assert.Equal(copy.Rows.Count, Iec60664TableA2.Rows.Length);
        foreach ((string[] read, AltitudeRow row) in copy.Rows.Zip(Iec60664TableA2.Rows))
        {
            Assert.Equal(copy.Number(read, "altitude_m"), row.AltitudeM);
            Assert.Equal(copy.Number(read, "barometric_pressure_kpa"), row.PressureKpa);
            Assert.Equal(copy.Number(read, "clearance_factor"), row.Factor);
        }
    }

    /// <summary>Both lists name systems like "24/25" and "110-220 or 120-240"; the last number of a range is line to line.</summary>
    [Theory]
    [InlineData("tables/f3a_rationalised_single_phase.csv", "line_to_line_all_systems_v", "nominal_supply_v")]
    [InlineData("tables/f3b_rationalised_three_phase.csv", "line_to_line_all_systems_v", "nominal_supply_v")]
    public void Rationalised_EveryNominalVoltageOfTheCopy_IsFoundAtLeastThere(string name, string value, string nominal)
    {
        CaseTable copy = CaseTable.Read(name);
        RationalisedRow[] rows = name.Contains("f3a", StringComparison.Ordinal) ? Iec60664TableF3.Rows : Iec60664TableF4.Rows;
        foreach (string[] read in copy.Rows)
        {
            foreach (string system in copy.Text(read, nominal).Replace(" (ed.3)", "", StringComparison.Ordinal).Split(["/", " or "], StringSplitOptions.None))
            {
                double nominalV = CaseTable.Number(system.Split('-')[^1]);
                double wantedV = nominalV == 415 ? 500 : copy.Number(read, value);
                Assert.Equal(wantedV, Assert.Single(rows, r => r.NominalV.Contains(nominalV)).RationalisedV);
            }
        }
    }

    [Fact]
    public void GrooveWidths_Copy_IsTheSame()
    {
        CaseTable copy = CaseTable.Read("tables/groove_x.csv");
        Assert.Equal(copy.Rows.Take(3).Select(r => copy.Number(r, "x_min_mm")), Iec60664GrooveWidths.WidthMm);
    }

    /// <summary>Physics: breakdown of air at these distances goes with its density, so the factor is 80 kPa over the pressure.</summary>
    [Fact]
    public void TableA2_EveryFactor_IsTheRatioOfPressures()
    {
        foreach (AltitudeRow row in Iec60664TableA2.Rows)
        {
            double halfLastDigit = row.Factor < 10 ? 0.005 : 0.05;
            Assert.InRange(row.Factor, (80 / row.PressureKpa) - halfLastDigit - 1e-9, (80 / row.PressureKpa) + halfLastDigit + 1e-9);
        }
    }

    /// <summary>The bands of IEC 60335-1 Table 17 are rows of IEC 60664-1 rounded to 0.1 mm (half up), band ends named here.</summary>
    [Fact]
    public void Table17_EveryBand_IsARowOfTableF5Rounded()
    {
        double[] rowOfBand = [50, 125, 250, 400, 500, 630, 800, 1000, 1250];
        AssertRowsMatch(Iec60335Table17.Rows, rowOfBand);
    }

    /// <summary>Table 18 below 500 V is one row lower than Table 17's: 40, 100, 200, 320, 400 V.</summary>
    [Fact]
    public void Table18_EveryBandUpTo500V_IsARowOfTableF5Rounded()
    {
        double[] rowOfBand = [40, 100, 200, 320, 400];
        AssertRowsMatch([.. Iec60335Table18.Rows.Take(5)], rowOfBand);
        Assert.Equal(Iec60335Table17.Rows.Skip(5), Iec60335Table18.Rows.Skip(5));
    }

    [Fact]
    public void Tables_EveryColumn_NeverFallsDownTheRows()
    {
        AssertRises(Iec60664TableF2.Rows.Select(r => new[] { r.ImpulseV, r.Degree1, r.Degree2, r.Degree3 }));
        AssertRises(Iec60335Table16.Rows.Select(r => new[] { r.ImpulseV, r.Degree1, r.Degree2, r.Degree3 }));
        AssertRises(Iec60664TableF8.Rows.Select(r => new[] { r.PeakV, r.ClearanceMm }));
        foreach (CreepageRow[] rows in (CreepageRow[][])[Iec60664TableF5.Rows, Iec60335Table17.Rows, Iec60335Table18.Rows])
        {
            AssertRises(rows.Select(r => new[] { r.VoltageV, r.Degree1, r.Degree2I, r.Degree2II, r.Degree2III, r.Degree3I, r.Degree3II, r.Degree3III }));
        }
    }

    private static void AssertRises(IEnumerable<double[]> rows)
    {
        double[]? before = null;
        foreach (double[] row in rows)
        {
            Assert.True(before is null || row.Zip(before).All(p => p.First >= p.Second));
            before = row;
        }
    }

    private static void AssertRowsMatch(CreepageRow[] bands, double[] rowOfBand)
    {
        Assert.Equal(rowOfBand.Length, bands.Length);
        foreach ((CreepageRow band, double rowV) in bands.Zip(rowOfBand))
        {
            CreepageRow row = Array.Find(Iec60664TableF5.Rows, r => r.VoltageV == rowV);
            foreach (MaterialGroup group in Enum.GetValues<MaterialGroup>())
            {
                foreach (int degree in (int[])[1, 2, 3])
                {
                    Assert.InRange(band.At(degree, group), row.At(degree, group) - 0.051, row.At(degree, group) + 0.051);
                }
            }
        }
    }
}
