using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The number that is scribed on the parts of a design; one that misses says so on the part itself.</summary>
internal static class PartNumber
{
    /// <summary>Drawing number, and that it misses; null when there is nothing to scribe.</summary>
    public static string? Of(Design design) => (design.Brief.DrawingNumber, design.Meets) switch
    {
        (string number, true) => number,
        (string number, false) => number + " MISSES",
        (null, true) => null,
        (null, false) => "MISSES",
    };
}

/// <summary>What is scribed on a wheel: home mark, arrow of rotation, part number; wheel frame, mm.</summary>
/// <param name="Strokes">The strokes, each a run of pieces.</param>
/// <param name="Missing">What found no room, in words.</param>
internal sealed record WheelMarks(IReadOnlyList<IReadOnlyList<Piece>> Strokes, IReadOnlyList<string> Missing)
{
    // Marks use this share of the web that they stand in, so that a scribe stays on the copper.
    private const double ShareOfWeb = 0.7;

    // Letters lower than this cannot be read when scribed, mm.
    private const double LeastLetterMm = 0.6;

    // Letters higher than this look out of place on a part of this kind, mm.
    private const double MostLetterMm = 3.5;

    /// <summary>The marks of a design's wheel.</summary>
    /// <remarks>They stand in the rim, where no wiper runs; without a rim, in the web round the bore.</remarks>
    public static WheelMarks Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        WheelLayout wheel = design.Wheel;
        (double from, double to) = Band(design);
        double middle = (from + to) / 2;
        double half = (to - from) * ShareOfWeb / 2;
        List<IReadOnlyList<Piece>> strokes = [[new Segment(Point.Polar(middle - half, 0), Point.Polar(middle + half, 0))]];
        strokes.AddRange(Arrow(middle, half, design.Motion.Direction));
        List<string> missing = [];
        if (PartNumber.Of(design) is string number)
        {
            double height = Math.Min(MostLetterMm, 2 * half);
            double turnRad = Lettering.WidthMm(number, height, TextWeight.Regular) / middle;
            if (height >= LeastLetterMm && turnRad < Math.PI)
            {
                strokes.AddRange(AlongCircle(number, height, middle - (height / 2)));
            }
            else
            {
                missing.Add(ReadersUnit.Of(design.Brief).Words($"The part number '{number}' finds no room in a web of {Wording.Mm(to - from)}; a wider web or a shorter number would do."));
            }
        }

        return new(strokes, missing);
    }

    private static (double From, double To) Band(Design design)
    {
        WheelLayout wheel = design.Wheel;
        double outer = wheel.OuterDiameterMm / 2;
        double last = wheel.AllRings.Max(r => r.WindowToMm ?? r.LandToMm ?? (r.PathToMm + r.SidePlayMm));
        double bore = design.Brief.Wheel.Bore.DiameterMm / 2;
        return outer - last > 0.1 ? (last, outer) : (bore, bore + wheel.WebMm);
    }

    /// <summary>An arc with a head that shows which way the wheel turns, beside the home mark.</summary>
    private static IEnumerable<IReadOnlyList<Piece>> Arrow(double radiusMm, double halfMm, Turning direction)
    {
        double sense = direction == Turning.Anticlockwise ? 1 : -1;
        double start = sense * (4 * halfMm / radiusMm);
        double sweep = sense * Math.Min(0.6, 10 * halfMm / radiusMm);
        Arc shaft = new(Point.Origin, radiusMm, start, sweep);
        yield return [shaft];
        Vector back = -shaft.TangentAt(1) * (1.6 * halfMm);
        foreach (double side in (double[])[0.4, -0.4])
        {
            yield return [new Segment(shaft.End, shaft.End + back.Turned(side))];
        }
    }

    /// <summary>Letters upright on a circle, read from inside, their middle opposite the home mark; each letter stays straight.</summary>
    private static IEnumerable<IReadOnlyList<Piece>> AlongCircle(string text, double heightMm, double baseRadiusMm)
    {
        double total = Lettering.WidthMm(text, heightMm, TextWeight.Regular);
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsWhiteSpace(text[i]))
            {
                continue;
            }

            double through = Lettering.WidthMm(text[..(i + 1)], heightMm, TextWeight.Regular);
            double own = Lettering.WidthMm(text[i..(i + 1)], heightMm, TextWeight.Regular);
            double centre = through - (own / 2) - (total / 2);
            Placement place = Placement.Translation(new(-own / 2, baseRadiusMm)).Then(Placement.Turn((Math.PI / 2) - (centre / baseRadiusMm)));
            foreach (Piece piece in Lettering.Layout(text[i..(i + 1)], heightMm, TextWeight.Regular).Pieces)
            {
                yield return [piece.Placed(place)];
            }
        }
    }
}
