using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>Ribs drawn in by the tolerance of their faces.</summary>
public sealed class WorstBarriersTests
{
    // Both ends of a leg of 0.3 mm are drawn in by 0.25 mm: what was left was shorter than its bend, and the run ended as a fault of the program.
    [Fact]
    public void On_AShortLegBeforeABend_CountsForNothing() => Assert.NotNull(new ChangedDemo("propagation-bench")
        .With("[forming]", "[housing]\ntolerance = \"0.25 mm\"\n[[rib]]\nsurface = \"floor\"\npath = [ [\"50 mm\", \"60 mm\"], [\"50.3 mm\", \"60 mm\"], [\"60 mm\", \"62 mm\"] ]\nheight = \"4 mm\"\nthickness = \"2 mm\"\n[forming]")
        .Design());
}
