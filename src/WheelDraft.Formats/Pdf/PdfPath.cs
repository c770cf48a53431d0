using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Pdf;

/// <summary>Pieces as path operators: arcs as cubics of at most an eighth of a turn.</summary>
internal static class PdfPath
{
    /// <summary>An eighth of a turn: the cubic then leaves the circle by 4.3e-6 of the radius, below a micrometre up to 230 mm.</summary>
    private const double PartRad = Math.PI / 4;

    // A micrometre on paper, a tenth of a thousandth of a letter's height in fonts.
    private const int Decimals = 3;

    public static string Number(double value) => FixedPoint.Short(value, Decimals);

    public static void Append(StringBuilder drawn, IEnumerable<StrokeRun> runs)
    {
        foreach (StrokeRun run in runs)
        {
            At(drawn, run.Pieces[0].Start).Append("m\n");
            for (int i = 0; i < run.Pieces.Count; i++)
            {
                if (run.Pieces[i] is Arc arc)
                {
                    Along(drawn, arc);
                }
                else if (!run.IsClosed || i < run.Pieces.Count - 1)
                {
                    At(drawn, run.Pieces[i].End).Append("l\n");
                }
            }

            if (run.IsClosed)
            {
                drawn.Append("h\n");
            }
        }
    }

    public static StringBuilder At(StringBuilder drawn, Point p) => drawn.Append(Number(p.X)).Append(' ').Append(Number(p.Y)).Append(' ');

    /// <summary>Cubics with handles of 4/3 tan(sweep/4) radii, the usual approximation that meets the circle midway too.</summary>
    private static void Along(StringBuilder drawn, Arc arc)
    {
        const double roundingRad = 1e-9;
        int parts = Math.Max(1, (int)Math.Ceiling((Math.Abs(arc.SweepRad) - roundingRad) / PartRad));
        double sweep = arc.SweepRad / parts;
        double handle = 4.0 / 3 * Math.Tan(sweep / 4) * arc.RadiusMm;
        for (int i = 0; i < parts; i++)
        {
            double from = arc.StartRad + (i * sweep);
            Point start = arc.PointAt(i / (double)parts);
            Point end = i == parts - 1 ? arc.End : arc.PointAt((i + 1) / (double)parts);
            At(drawn, start + (Vector.Polar(1, from).Left * handle));
            At(drawn, end - (Vector.Polar(1, from + sweep).Left * handle));
            At(drawn, end).Append("c\n");
        }
    }
}
