using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What is scribed on a strip's blank: its name and number, and where rivet and dimple go; blank's own place, mm.</summary>
/// <param name="Strokes">The strokes, each a run of pieces.</param>
/// <param name="Missing">What found no room, in words.</param>
internal sealed record StripMarks(IReadOnlyList<IReadOnlyList<Piece>> Strokes, IReadOnlyList<string> Missing)
{
    // Letters lower than this cannot be read when scribed, mm.
    private const double LeastLetterMm = 0.6;

    // Letters higher than this look out of place on a part of this kind, mm.
    private const double MostLetterMm = 1.8;

    // From letters to an edge or hole, mm: half a wide kerf and a scribe's wander.
    private const double AirMm = 0.4;

    /// <summary>The marks of one strip.</summary>
    /// <remarks>Letters stand where the clamp holds the strip: nothing bends there, so a scribe is no notch in a spring.</remarks>
    /// <param name="design">The design.</param>
    /// <param name="form">The strip.</param>
    public static StripMarks Of(Design design, StripForm form)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(form);
        List<IReadOnlyList<Piece>> strokes = [.. form.Blank.Marks.SelectMany(Cross)];
        List<string> missing = [];
        Bounds field = Field(form);
        double hole = form.Blank.Outline.Holes.Select(h => h.Bounds).Where(h => h.MaxX > field.MinX && h.MinX < field.MaxX)
            .Select(h => Math.Max(Math.Abs(h.MinY), Math.Abs(h.MaxY))).Append(0).Max();
        Bounds upper = new(field.MinX + AirMm, hole + AirMm, field.MaxX - AirMm, field.MaxY - AirMm);
        Bounds lower = new(upper.MinX, -upper.MaxY, upper.MaxX, -upper.MinY);
        Write(form.Strip.Name, lower, strokes, missing);
        if (PartNumber.Of(design) is string number)
        {
            Write(number, upper, strokes, missing);
        }

        return new(strokes, missing);
    }

    // The flat part between the clamp's ends, before anything turns.
    private static Bounds Field(StripForm form)
    {
        double to = form.Clamp.ToMm;
        double half = double.PositiveInfinity;
        foreach (FormedPiece piece in form.Pieces)
        {
            if (piece.Kind != FormedKind.Straight)
            {
                to = Math.Min(to, piece.FromMm);
                break;
            }

            if (piece.ToMm > form.Clamp.FromMm && piece.FromMm < form.Clamp.ToMm)
            {
                half = Math.Min(half, Math.Min(piece.WidthMm, piece.WidthEndMm) / 2);
            }
        }

        return double.IsFinite(half) && to > form.Clamp.FromMm ? new(form.Clamp.FromMm, -half, to, half) : new(0, 0, 0, 0);
    }

    private static IEnumerable<IReadOnlyList<Piece>> Cross(BlankMark mark)
    {
        double reach = mark.DiameterMm / 4;
        yield return [new Segment(mark.At - new Vector(reach, 0), mark.At + new Vector(reach, 0))];
        yield return [new Segment(mark.At - new Vector(0, reach), mark.At + new Vector(0, reach))];
    }

    private static void Write(string text, Bounds field, List<IReadOnlyList<Piece>> strokes, List<string> missing)
    {
        double perHeight = Lettering.WidthMm(text, 1, TextWeight.Regular);
        double height = Math.Min(MostLetterMm, Math.Min(field.MaxY - field.MinY, (field.MaxX - field.MinX) / perHeight));
        if (height < LeastLetterMm)
        {
            missing.Add($"'{text}' finds no room on the clamped part of the strip; a wider or longer clamp, or a shorter name, would do.");
            return;
        }

        Vector start = new(field.Centre.X - (perHeight * height / 2), field.Centre.Y - (height / 2));
        strokes.AddRange(Lettering.Layout(text, height, TextWeight.Regular).Pieces
            .Select(p => (IReadOnlyList<Piece>)[p.Placed(Placement.Translation(start))]));
    }
}
