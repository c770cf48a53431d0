using System.Diagnostics;
using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Benchmarks;

/// <summary>Drawings read in: time in proportion to the size, so four times the contours cost well under sixteen times.</summary>
internal static class DxfBenchmark
{
    /// <summary>Runs it; yields a line a figure.</summary>
    public static IEnumerable<string> Run()
    {
        _ = Ms(1_000);
        double small = Ms(2_500);
        double large = Ms(10_000);
        yield return FormattableString.Invariant($"drawing read: 2,500 squares {small:0} ms; 10,000 squares {large:0} ms, {large / small:0.0} times (at most 6)");
    }

    private static double Ms(int squares)
    {
        List<Outline> outlines = [.. Enumerable.Range(0, squares).Select(i =>
            new Outline(Contour.Rectangle(new(i % 100 * 2, i / 100 * 2), new((i % 100 * 2) + 1, (i / 100 * 2) + 1))))];
        byte[] file = Encoding.ASCII.GetBytes(DxfWriter.Write(new CutDrawing(DrawingUnit.Millimetre, outlines.SelectMany(CutDrawing.ContoursOf)), DxfVersion.R2000));
        long begin = Stopwatch.GetTimestamp();
        _ = DxfReader.Read(file);
        return Stopwatch.GetElapsedTime(begin).TotalMilliseconds;
    }
}
