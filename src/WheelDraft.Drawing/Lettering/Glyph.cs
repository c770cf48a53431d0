using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>One letter: the middle lines of its strokes in tenths of the height, its first stroke's middle at x = 0.</summary>
/// <param name="Pieces">Lines and arcs.</param>
/// <param name="Width">Of the letter, strokes included, tenths.</param>
/// <param name="Advance">To the next letter's left edge, tenths.</param>
internal sealed record Glyph(IReadOnlyList<Piece> Pieces, double Width, double Advance)
{
    /// <summary>Round the middle lines; null for a blank.</summary>
    public Bounds? Span { get; } = Pieces.Count == 0 ? null : Pieces.Select(p => p.Bounds).Aggregate((a, b) => a.With(b));

    /// <summary>Reads a letter from its source text.</summary>
    /// <remarks>
    /// The source begins with the width between the outermost middle lines, then come strokes with semicolons between:
    /// corner points "x,y" in turn, a "~r" after one rounds it with that radius; "z" at the end closes the stroke;
    /// "o x,y r" is a whole circle, "a x,y r from sweep" an arc in degrees, ". x,y" a dot, "&amp; c x,y s" the letter c moved and scaled.
    /// Tenths of the height, y up from the middle of the lowest stroke of a letter that stands on the line.
    /// </remarks>
    public static Glyph Parse(string source)
    {
        string[] strokes = source.Split(';', StringSplitOptions.TrimEntries);
        double width = Number(strokes[0]);
        List<Piece> pieces = [];
        foreach (string stroke in strokes[1..])
        {
            pieces.AddRange(Stroke(stroke.Split(' ', StringSplitOptions.RemoveEmptyEntries)));
        }

        // Strokes are one tenth wide, gaps two tenths (ISO 3098 type B).
        double inked = pieces.Count == 0 ? width : width + 1;
        return new Glyph(pieces, inked, inked + 2);
    }

    /// <summary>This letter with an accent.</summary>
    public Glyph With(Glyph accent, Vector at)
    {
        Placement raised = Placement.Translation(at);
        Piece[] all = [.. Pieces, .. accent.Pieces.Select(p => p.Placed(raised))];
        Bounds span = all.Select(p => p.Bounds).Aggregate((x, y) => x.With(y));

        // An accent wider than its letter, as on i, makes room for itself.
        double left = Math.Max(0, -span.MinX);
        double width = Math.Max(Width, span.MaxX + left + 1);
        Placement moved = Placement.Translation(new Vector(left, 0));
        return new Glyph([.. all.Select(p => p.Placed(moved))], width, width + 2);
    }

    private static List<Piece> Borrowed(char letter, Point at, double scale)
    {
        Placement placement = Placement.Scaling(scale).Then(Placement.Translation(at - Point.Origin));
        return [.. Alphabet.Letter(letter).Pieces.Select(p => p.Placed(placement))];
    }

    private static List<Piece> Stroke(string[] words) => words[0] switch
    {
        "a" => [new Arc(Corner(words[1]).At, Number(words[2]), Angles.RadFromDeg(Number(words[3])), Angles.RadFromDeg(Number(words[4])))],
        "&" => Borrowed(words[1][0], Corner(words[2]).At, Number(words[3])),
        "o" => [new Arc(Corner(words[1]).At, Number(words[2]), 0, Angles.TurnRad)],
        "." => [Dot(Corner(words[1]).At)],
        _ => Rounded(words),
    };

    /// <summary>A dot is a ring narrow enough to close under its own stroke: half as wide again as a stroke, so that decimal points are seen.</summary>
    private static Arc Dot(Point at) => new(at, 0.3, 0, Angles.TurnRad);

    private static List<Piece> Rounded(string[] words)
    {
        bool closed = string.Equals(words[^1], "z", StringComparison.Ordinal);
        (Point At, double RadiusTenths)[] corners = [.. (closed ? words[..^1] : words).Select(Corner)];
        List<Piece> pieces = [];
        int n = corners.Length;
        Arc?[] arcs = [.. corners.Select((c, i) => c.RadiusTenths == 0 ? null : Fillet(corners[(i + n - 1) % n].At, c, corners[(i + 1) % n].At))];
        for (int i = 0; i < n; i++)
        {
            if (arcs[i] is Arc arc)
            {
                pieces.Add(arc);
            }

            int next = (i + 1) % n;
            Point from = arcs[i]?.End ?? corners[i].At;
            Point to = arcs[next]?.Start ?? corners[next].At;
            if ((closed || next != 0) && from.DistanceTo(to) > Tolerances.JoinMm)
            {
                pieces.Add(new Segment(from, to));
            }
        }

        return pieces;
    }

    /// <summary>The arc that touches both sides of a corner: tangent lengths r · tan(turn / 2).</summary>
    private static Arc Fillet(Point before, (Point At, double RadiusTenths) corner, Point after)
    {
        Vector arriving = (corner.At - before).Unit();
        Vector leaving = (after - corner.At).Unit();
        double turn = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
        double tangent = corner.RadiusTenths * Math.Abs(Math.Tan(turn / 2));
        Point start = corner.At - (arriving * tangent);
        Point centre = start + (arriving.Left * (corner.RadiusTenths * Math.Sign(turn)));
        return new Arc(centre, corner.RadiusTenths, (start - centre).AngleRad, turn);
    }

    private static (Point At, double RadiusTenths) Corner(string word)
    {
        string[] parts = word.Split('~');
        string[] xy = parts[0].Split(',');
        return (new Point(Number(xy[0]), Number(xy[1])), parts.Length > 1 ? Number(parts[1]) : 0);
    }

    private static double Number(string word) => double.Parse(word, NumberStyles.Float, CultureInfo.InvariantCulture);
}
