using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

public sealed class RemediesTests
{
    private static readonly InsulatingSurface Floor = new("floor", MaterialGroup.IIIa, -7, null, false);

    [Fact]
    public void For_CreepageThatMisses_OffersTheSmallestOfEachChange()
    {
        // Functional at 230 V, pollution degree 3, IIIa: 3.68 mm by interpolation (IEC 60664-1:2020 Table F.5, 3.2 at 200 V, 4.0 at 250 V).
        // Flat copper 3 mm apart on the floor, 4 mm wide.
        SpacingTask task = Task(3);
        SpacingTable table = SpacingTable.Of(task);
        Assert.Equal(3.68, table.Rows.Single(r => r.Kind == SpacingKind.Creepage).Required.RequiredMm, 1e-9);
        IReadOnlyList<Remedy> remedies = Remedies.For(task, table);

        // Missing 0.68: a shift of 0.70. A rib of 1.2 mm in the middle stands 0.9 mm from either copper, nearer than X = 1.5 mm: bridged straight
        // to its upper edges, 2·√(0.9² + h²) + 1.2 reaches 3.68 at h = 0.85 to within 0.004, so 0.90. A material of group II asks 3.28, of group I 2.92.
        Assert.Equal([0.7, 0.7], remedies.Where(r => r.Kind == RemedyKind.Move).Select(r => Math.Round(r.AmountMm, 6)));
        Assert.Equal(0.9, remedies.Single(r => r.Kind == RemedyKind.Rib).AmountMm, 1e-9);
        Assert.Contains("group I", remedies.Single(r => r.Kind == RemedyKind.Material).Text, StringComparison.Ordinal);
        Remedy slot = remedies.Single(r => r.Kind == RemedyKind.Slot);

        // Round the slot's end: 2·√(0.75² + (l/2 − 2)²) + 1.5 reaches 3.68 at l = 5.58.
        Assert.Equal(5.6, slot.AmountMm, 1e-9);
        Assert.All(remedies, r => Assert.True(r.WorstAfterMm >= 3 && r.NewMisses.Count == 0));
    }

    [Fact]
    public void For_EachRemedy_MeetsWithItAndMissesWithOneStepLess()
    {
        SpacingTask task = Task(2.2);
        SpacingTable table = SpacingTable.Of(task);
        foreach (Remedy remedy in Remedies.For(task, table).Where(r => r.Kind == RemedyKind.Move))
        {
            double moved = remedy.AmountMm;
            Assert.Equal(2.2 + moved, remedy.WorstAfterMm, 1e-6);
            Assert.True(2.2 + moved - 0.05 < remedy.Row.Required.RequiredMm);
        }
    }

    [Fact]
    public void For_MoveTowardsAnotherNet_SaysWhatWouldMissThen()
    {
        SpacingTask task = Task(3);
        Solid third = Copper("N", 13, 17);
        task = task with { Solids = [.. task.Solids, third] };
        Remedy right = Remedies.For(task, SpacingTable.Of(task)).First(r => r.Kind == RemedyKind.Move && r.Text.Contains("mist", StringComparison.Ordinal));
        Assert.NotEmpty(right.NewMisses);
    }

    private static SpacingTask Task(double gap) =>
        new([Copper("L", 0, 4), Copper("mist", 4 + gap, 8 + gap)], [Floor], SpacingTableTests.Demands(), Turning.Clockwise);

    private static Solid Copper(string net, double fromX, double toX) =>
        new(net + " strip", net, SolidKind.Live, false, -7, -7, SurfacePathsTests.Box(fromX, -2, toX, 2)) { OnSurface = "floor" };
}
