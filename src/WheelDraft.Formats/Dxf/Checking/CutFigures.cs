using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>The finest features of a drawing against the limits of a process.</summary>
/// <param name="Process">Name of the process.</param>
/// <param name="LeastWebMm">Narrowest copper, mm; null where no two edges face each other through it.</param>
/// <param name="NeededWebMm">What the process needs of it.</param>
/// <param name="LeastSlotMm">Narrowest opening, mm; null without one.</param>
/// <param name="NeededSlotMm">What the process needs of it.</param>
/// <param name="LeastHoleMm">Smallest round hole, diameter, mm; null without one.</param>
/// <param name="NeededHoleMm">What the process needs of it.</param>
internal sealed record CutFigures(
    string Process, double? LeastWebMm, double NeededWebMm, double? LeastSlotMm, double NeededSlotMm, double? LeastHoleMm, double NeededHoleMm)
{
    // Finest features are compared at a nanometre, as distances are.
    private const double SameMm = 1e-6;

    // Webs and slots are looked for between all edges that face each other: with this many a second or two.
    private const int MostPieces = 2000;

    // How many places where contours meet are reported one by one.
    private const int MostPlaces = 10;

    /// <summary>Measures the layers that are cut.</summary>
    internal static CutFigures? Of(ReadDrawing drawing, DrawingCut asked, List<Finding> findings)
    {
        IReadOnlyList<ReadLayer> layers = [.. asked.Layers.Select(l => DrawingCheck.LayerOf(drawing, l))];
        DrawingCheck.CheckSize(layers, "The layers that are cut hold", MostPieces);
        Thick(asked, findings);
        Contour[] contours = [.. layers.SelectMany(l => l.Contours).Select(c => c.Contour)];
        if (contours.Length == 0)
        {
            throw new DesignRefusedException([.. findings.Where(f => f.Severity == FindingSeverity.Error), Finding.Error("drawing.nothing", "Nothing was measured against the process: the layers that are cut hold no closed contour.")]);
        }

        int areas = layers.Sum(l => l.Areas.Count);
        if (areas > 0)
        {
            findings.Add(Finding.Error("drawing.limits", $"{DxfReader.Count(areas)} filled areas (wide polylines, solids, hatches) lie on layers that are cut: a cutter follows lines, so they are not measured against the process. Draw their edges, or move them to another layer."));
        }

        IReadOnlyList<ContourFault> faults = Soundness.Faults(contours);
        if (faults.Count > 0)
        {
            findings.AddRange(findings.Exists(f => f.Code is "drawing.crossing") ? [] : faults.Take(MostPlaces).Select(f => Finding.Error("drawing.crossing", $"Contours that are cut meet: {f.InWords(LayerJoiner.Text(f.At))}")));
            findings.Add(Finding.Warning("drawing.limits", "Webs, slots and holes are not measured against the process, because contours that are cut meet each other or themselves."));
            return null;
        }

        IReadOnlyList<Outline> shapes = ContourNesting.Outlines(contours);
        return Measured(shapes, asked, findings);
    }

    private static void Thick(DrawingCut asked, List<Finding> findings)
    {
        CuttingProcess process = asked.Process;
        if (asked.ThicknessMm < process.ThinnestMm || asked.ThicknessMm > process.ThickestMm)
        {
            findings.Add(Finding.Error(
                "drawing.stock",
                $"Stock of {Wording.Mm(asked.ThicknessMm)} is outside what {process.Name} cuts: {Wording.Mm(process.ThinnestMm)} to {(process.ThickestMm is double most ? Wording.Mm(most) : "any")} ({process.Source}). Take another process or other stock."));
        }
    }

    private static CutFigures Measured(IReadOnlyList<Outline> shapes, DrawingCut asked, List<Finding> findings)
    {
        double t = asked.ThicknessMm;
        CuttingProcess process = asked.Process;
        Nearest? web = shapes.Select(s => Thickness.LeastWeb(s)).OfType<Nearest>().OrderBy(n => n.DistanceMm).Select(n => (Nearest?)n).FirstOrDefault();
        Nearest? slot = Thickness.LeastSlot(shapes);
        (Point Centre, double DiameterMm)? hole = shapes.SelectMany(s => s.Holes).Select(Round).OfType<(Point, double)>().OrderBy(h => h.Item2).Select(h => ((Point, double)?)h).FirstOrDefault();
        CutFigures figures = new(
            process.Name, web?.DistanceMm, process.LeastWeb.At(t), slot?.DistanceMm, process.LeastSlot.At(t), hole?.DiameterMm, process.LeastHole.At(t));
        string rule = $"{process.Name} in stock of {Wording.Mm(t)}; {process.Source}";
        if (web is Nearest thin && thin.DistanceMm < figures.NeededWebMm - SameMm)
        {
            findings.Add(Finding.Error("drawing.web", $"The narrowest copper is {Wording.Mm(thin.DistanceMm)}, from {LayerJoiner.Text(thin.OnFirst)} to {LayerJoiner.Text(thin.OnSecond)} mm; {Wording.Mm(figures.NeededWebMm)} are needed ({rule}). Widen it, or take a finer process."));
        }

        if (slot is Nearest narrow && narrow.DistanceMm < figures.NeededSlotMm - SameMm)
        {
            findings.Add(Finding.Error("drawing.slot", $"The narrowest opening is {Wording.Mm(narrow.DistanceMm)}, from {LayerJoiner.Text(narrow.OnFirst)} to {LayerJoiner.Text(narrow.OnSecond)} mm; {Wording.Mm(figures.NeededSlotMm)} are needed ({rule}). Widen it, or take a finer process."));
        }

        if (hole is (Point centre, double diameter) && diameter < figures.NeededHoleMm - SameMm)
        {
            findings.Add(Finding.Error("drawing.hole", $"The smallest hole has {Wording.Mm(diameter)}, at {LayerJoiner.Text(centre)} mm; {Wording.Mm(figures.NeededHoleMm)} are needed ({rule}). Enlarge it, or drill it afterwards."));
        }

        return figures;
    }

    /// <summary>Centre and diameter of a contour that is a circle.</summary>
    private static (Point, double)? Round(Contour contour) =>
        contour.Pieces[0] is Arc first && contour.Pieces.All(p => p is Arc arc && arc.Centre.DistanceTo(first.Centre) < SameMm && Math.Abs(arc.RadiusMm - first.RadiusMm) < SameMm)
            ? (first.Centre, 2 * first.RadiusMm)
            : null;
}
