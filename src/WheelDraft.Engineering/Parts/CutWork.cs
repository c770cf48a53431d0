using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What a shop has to do for one part, and what it takes from the sheet: figures by which a quotation can be checked.</summary>
/// <param name="Part">The part.</param>
/// <param name="CutLengthMm">Length of all cuts, mm.</param>
/// <param name="Pierces">How often the cut begins inside the sheet: once a contour.</param>
/// <param name="AreaMm2">Area of the finished part, mm².</param>
/// <param name="MassG">Mass of the finished part, g; null where its material is not in the list or its thickness is not known.</param>
internal sealed record CutWork(Part Part, double CutLengthMm, int Pierces, double AreaMm2, double? MassG)
{
    /// <summary>Time on the machine, s, least and most; null for a process that does not cut along a line, or by no known process.</summary>
    public (double LeastS, double MostS)? TimeS { get; private init; }

    /// <summary>The work of a part.</summary>
    public static CutWork Of(Brief brief, Part part)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(part);
        Contour[] contours = [.. part.Shapes.SelectMany(s => s.ToCut.Contours)];
        double area = part.Shapes.Sum(s => s.Finished.AreaMm2);
        double? density = part.Stock.Material is string named ? MaterialTable.Find(named).Found?.DensityGPerCm3.Value : null;
        CutWork work = new(part, contours.Sum(c => c.Length), contours.Length, area, density * area * part.Stock.ThicknessMm / 1000);
        return part.KerfMm is not null && brief.Process.Name is string process && CuttingProcesses.Find(process)?.Pace is CuttingPace pace
            ? work with { TimeS = pace.TimeS(work.CutLengthMm, work.Pierces) }
            : work;
    }
}
