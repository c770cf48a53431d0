using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Pdf;

/// <summary>Pieces as path operators: arcs as cubics of at most an eighth of a turn.</summary>
internal static class PdfPath
{
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

    private static void Along(StringBuilder drawn, Arc arc)
    {
        foreach (ArcCubic cubic in ArcCubics.Of(arc))
        {
            At(drawn, cubic.First);
            At(drawn, cubic.Second);
            At(drawn, cubic.End).Append("c\n");
        }
    }
}
