using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

public sealed class CuttingProcessTests
{
    // Capability pages of board makers (2cisa.com, pcb-infotech.com, elprint.com): 0.2, 0.25 and about 0.3 mm at 35, 70 and 105 um of copper.
    [Theory]
    [InlineData(0.035, 0.20)]
    [InlineData(0.070, 0.25)]
    [InlineData(0.105, 0.30)]
    public void BoardEtch_CopperWeights_GapOfTheMakers(double thicknessMm, double gapMm) =>
        Assert.Equal(gapMm, CuttingProcesses.Find("board-etch")!.LeastSlot.At(thicknessMm), 1e-12);

    // Design guides of etchers: openings 1.1 thickness, tolerance 10 % of thickness and at least 0.01 mm.
    [Fact]
    public void PhotoEtch_Thickness_Decides()
    {
        CuttingProcess etch = CuttingProcesses.Find("photo-etch")!;
        Assert.Equal(0.55, etch.LeastSlot.At(0.5), 1e-12);
        Assert.Equal(0.05, etch.Tolerance.At(0.5), 1e-12);
        Assert.Equal(0.01, etch.Tolerance.At(0.05), 1e-12);
    }

    // What is cut with a round tool has corners of at least half its width, or kerf compensation could not be undone.
    [Fact]
    public void All_InsideRadius_AtLeastHalfTheKerf()
    {
        foreach (CuttingProcess process in CuttingProcesses.All)
        {
            double thinnest = Math.Max(process.ThinnestMm, 0.01);
            Assert.True(process.InsideRadius.At(thinnest) >= process.KerfMm / 2, process.Name);
            Assert.NotEmpty(process.Source);
        }
    }

    [Fact]
    public void Find_UnknownName_IsNull() => Assert.Null(CuttingProcesses.Find("Fibre-Laser"));
}
