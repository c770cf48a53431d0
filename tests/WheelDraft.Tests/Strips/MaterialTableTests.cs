using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class MaterialTableTests
{
    [Theory]
    [InlineData("C11000-H02", 17.24, 116, 255, 255)] // Cu-ETP strip data sheet (ASTM B152); 100 % IACS
    [InlineData("C26000-H04", 61.6, 111, 495, 490)] // C26000 (ASTM B36) strip data
    [InlineData("C51000-H04", 115, 110, 560, 525)] // C51000 (ASTM B103) strip data
    [InlineData("C51000-H08", 115, 110, 690, 655)]
    [InlineData("C19400-H02", 29, 119, 360, 405)] // ASM Handbook vol. 2, tables 44 to 46
    [InlineData("C17200-TF00", 76.8, 127, 960, 1100)] // C17200 tables
    public void Find_ListedTemper_HasThePublishedValues(string designation, double nanoOhmM, double gpa, double yield, double tensile)
    {
        Material m = MaterialTable.Find(designation).Found!;
        Assert.Equal(nanoOhmM, m.ResistivityNanoOhmM.Value);
        Assert.Equal(gpa, m.ModulusGpa.Value);
        Assert.Equal(yield, m.YieldMpa.Value);
        Assert.Equal(tensile, m.TensileMpa.Value);
    }

    [Theory]
    [InlineData("C51000-H4", "C51000-H04")]
    [InlineData("c5100-h04", "C51000-H04")]
    [InlineData("C11000", "C11000-H01")]
    [InlineData("C52000-H04", "C51000-H04")]
    public void Find_NearMiss_SuggestsTheListedOne(string asked, string near)
    {
        MaterialSearch search = MaterialTable.Find(asked);
        Assert.Null(search.Found);
        Assert.Contains(near, search.NearMisses, StringComparer.Ordinal);
        Assert.Contains(near, search.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_OtherCaseOrSoftAnneal_IsTheSameMaterial()
    {
        Assert.Equal("C51000-H04", MaterialTable.Find("c51000-h04").Found?.Designation);
        Assert.Equal("C26000-O61", MaterialTable.Find("C26000-O60").Found?.Designation);
    }

    [Fact]
    public void All_EveryValue_NamesItsSource()
    {
        Assert.Equal(31, MaterialTable.All.Count);
        Assert.All(MaterialTable.All, m => Assert.All(
            new[] { m.ResistivityNanoOhmM, m.ModulusGpa, m.PoissonRatio, m.DensityGPerCm3, m.YieldMpa, m.TensileMpa, m.HardnessMpa, m.TightBendK, m.FatigueMpa, m.SofteningV, m.LeastRadiusBadWay, m.LeastRadiusGoodWay, m.RelaxesAboveC },
            v => Assert.True(v is null || (v.Value >= 0 && v.Source.Length > 10), m.Designation)));
        Assert.StartsWith("from memory", MaterialTable.Find("C26000-H04").Found!.FatigueMpa!.SourceInWords, StringComparison.Ordinal);
    }

    // C51000 (ASTM B103): R/T good way and bad way 1.0 and 1.5 hard, 2.0 and 5.0 spring; half hard only the bad way is published.
    [Fact]
    public void LeastRadius_ByWayOfTheGrain_IsThePublishedOrTheHarder()
    {
        Material Of(string t) => MaterialTable.Find("C51000-" + t).Found!;
        Assert.Equal(1.0, Of("H04").LeastRadiusGoodWay!.Value);
        Assert.Equal(1.5, Of("H04").LeastRadiusBadWay!.Value);
        Assert.Equal(5.0, Of("H08").LeastRadiusBadWay!.Value);
        Assert.Equal(0.5, Of("H02").LeastRadiusGoodWay!.Value);
        Assert.Contains("H02", Of("O61").LeastRadiusBadWay!.Source, StringComparison.Ordinal);
        Assert.Null(Of("H10").LeastRadiusBadWay);
        Assert.Equal(1.5, MaterialTable.Find("C11000-H03").Found!.LeastRadiusBadWay!.Value);
    }
}
