using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Notes under a heading: numbered if there are several; broken into lines by themselves.</summary>
/// <param name="Heading">Heading.</param>
/// <param name="Notes">The notes.</param>
internal sealed record NoteBlock(string Heading, IReadOnlyList<string> Notes)
{
    private static readonly TextStyle HeadingStyle = new(3.5, TextWeight.Heavy);
    private static readonly TextStyle NoteStyle = TextStyle.Small;
    private const double IndentMm = 6;
    private const double GapMm = 1.2;

    /// <summary>Height that it takes at a width, mm.</summary>
    public double HeightMm(double widthMm) => Lines(widthMm).Sum(l => l.StepMm) + HeadingStyle.HeightMm + 0.8;

    /// <summary>Writes it, its upper left corner at a point.</summary>
    /// <returns>The area that it takes.</returns>
    public Bounds Draw(GroupPen pen, Point topLeft, double widthMm)
    {
        ArgumentNullException.ThrowIfNull(pen);
        pen.Text(Heading, new(topLeft, TextAlong.Start, TextAcross.Top), HeadingStyle);
        double y = topLeft.Y - HeadingStyle.HeightMm;
        foreach ((string number, string line, double step) in Lines(widthMm))
        {
            y -= step;
            double indent = Notes.Count > 1 ? IndentMm : 0;
            if (number.Length > 0)
            {
                pen.Text(number, new(new(topLeft.X, y)), NoteStyle);
            }

            pen.Text(line, new(new(topLeft.X + indent, y)), NoteStyle);
        }

        return new Bounds(topLeft.X, y - 0.8, topLeft.X + widthMm, topLeft.Y);
    }

    private IEnumerable<(string Number, string Line, double StepMm)> Lines(double widthMm)
    {
        double indent = Notes.Count > 1 ? IndentMm : 0;
        double pitch = NoteStyle.HeightMm * 1.7;
        for (int i = 0; i < Notes.Count; i++)
        {
            IReadOnlyList<string> lines = TextFit.Wrap(Notes[i], widthMm - indent, NoteStyle);
            for (int k = 0; k < lines.Count; k++)
            {
                yield return (k == 0 && Notes.Count > 1 ? Invariant.Text($"{i + 1}") : "", lines[k], pitch + (k == 0 ? GapMm : 0));
            }
        }
    }
}

/// <summary>A caution: a framed block with the general warning triangle, shown by sign, word and frame, not by colour.</summary>
/// <param name="Cautions">Sentences.</param>
internal sealed record CautionBlock(IReadOnlyList<string> Cautions)
{
    private const double PadMm = 3;
    private const double SignMm = 12;

    /// <summary>Height that it takes at a width, mm.</summary>
    public double HeightMm(double widthMm) => Math.Max(SignMm, Words.HeightMm(WordsWidth(widthMm))) + (2 * PadMm);

    /// <summary>Draws it, its upper left corner at a point.</summary>
    /// <returns>The area that it takes.</returns>
    public Bounds Draw(GroupPen pen, Point topLeft, double widthMm)
    {
        ArgumentNullException.ThrowIfNull(pen);
        double height = HeightMm(widthMm);
        Bounds all = new(topLeft.X, topLeft.Y - height, topLeft.X + widthMm, topLeft.Y);
        pen.Box(all, Fill.Of(FillKind.Paper), LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 0.7));
        DrawSign(pen, new Point(topLeft.X + PadMm + (SignMm / 2), topLeft.Y - PadMm));
        Words.Draw(pen, new Point(topLeft.X + (2 * PadMm) + SignMm, topLeft.Y - PadMm), WordsWidth(widthMm));
        return all;
    }

    private NoteBlock Words => new("Caution", Cautions);

    private static double WordsWidth(double widthMm) => widthMm - SignMm - (3 * PadMm);

    /// <summary>A triangle with rounded corners and an exclamation mark, its top in the middle at a point.</summary>
    private static void DrawSign(GroupPen pen, Point top)
    {
        const double half = SignMm / 2;
        double high = SignMm * Math.Sqrt(3) / 2;
        Contour triangle = Contour.Polygon(top + new Vector(-half, -high), top + new Vector(half, -high), top);
        pen.Area(new Outline(triangle), Fill.Of(FillKind.Paper), LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 1));
        Point foot = top + new Vector(0, -high + 1.9);
        pen.Line(foot + new Vector(0, 1.9), foot + new Vector(0, 5), LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 1.2));
        pen.Area(new Outline(Contour.Circle(foot, 0.8)), Fill.Solid(Ink.Outline));
    }
}
