using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Report;

namespace WheelDraft.Formats.Guide;

/// <summary>The guide to building a design.</summary>
internal static class BuildGuide
{
    /// <summary>The whole guide.</summary>
    public static BuildingGuide Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return new($"Building: {design.Brief.Title}", Cautions.Short(design),
        [
            Before(design),
            ShoppingList.Of(design),
            WorkOrder.Of(design),
            .. AdjustingSteps.Of(design),
            ColdTestSteps.Of(design),
            PowerUp.Of(design),
        ]);
    }

    /// <summary>Drawn lengths: those of the drawing sheets.</summary>
    internal static DrawingNumbers Numbers(Design design) => new(design.Brief.DrawingUnit);

    private static GuideChapter Before(Design design)
    {
        string mark = design.Brief.InputMark.Length > 0 ? $" All parts and sheets of this run carry the mark {design.Brief.InputMark}: use no part that carries another." : "";
        return new("Before you begin",
        [
            .. design.Meets ? [] : (GuideBlock[])[new GuideCautions(["MISSES: DO NOT BUILD. This design misses a rule; report.md says which. The guide was asked for all the same."])],
            new GuideCautions([.. Cautions.For(design), "Sharp edges and burrs: file them off. Clamp metal before drilling, wear eye protection."]),
            new GuideWords($"Everything here is worked out from the parameter file; the drawings in the folder draw show it, report.md says why.{mark} Angles of the turn count from home in the sense of turning, {SheetWordsOf.Turns(design)} seen from the wiper side."),
        ]);
    }
}
