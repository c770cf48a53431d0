using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;

namespace WheelDraft.Tests;

/// <summary>The outline of a cutting file, read from its text without the program's own reader.</summary>
internal static class DxfOutline
{
    /// <summary>Corners and bulges of a contour as its cutting file has them: written, and read again from the text alone.</summary>
    public static IReadOnlyList<(Point At, double Bulge)> OfCut(Contour contour) =>
        Read(DxfWriter.Write(new CutDrawing(DrawingUnit.Millimetre, [new(CutLayer.Outline, contour)]), DxfVersion.R2000));

    /// <summary>Corners and bulges of the one polyline on layer OUTLINE.</summary>
    public static IReadOnlyList<(Point At, double Bulge)> Read(string dxf)
    {
        string[] lines = [.. dxf.Split('\n').Select(l => l.Trim())];
        List<(Point, double)> corners = [];
        bool inside = false, closed = false;
        string kind = "";
        double x = 0;
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            (string code, string value) = (lines[i], lines[i + 1]);
            switch (code)
            {
                case "0":
                    kind = value;
                    inside = false;
                    break;
                case "8" when string.Equals(kind, "LWPOLYLINE", StringComparison.Ordinal) && string.Equals(value, "OUTLINE", StringComparison.Ordinal):
                    inside = true;
                    break;
                case "70" when inside:
                    closed = (int.Parse(value, System.Globalization.CultureInfo.InvariantCulture) & 1) != 0;
                    break;
                case "10" when inside:
                    x = Number(value);
                    break;
                case "20" when inside:
                    corners.Add((new(x, Number(value)), 0));
                    break;
                case "42" when inside:
                    corners[^1] = (corners[^1].Item1, Number(value));
                    break;
                default:
                    break;
            }
        }

        return closed ? corners : throw new InvalidOperationException("The outline is open.");
    }

    private static double Number(string value) => double.Parse(value, System.Globalization.CultureInfo.InvariantCulture);
}
