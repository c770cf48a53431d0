using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>Two cutting drawings laid on each other, contour by contour and line by line.</summary>
/// <param name="wanted">What the design asks.</param>
/// <param name="found">What the file holds.</param>
/// <param name="place">From the file to where the design has the part.</param>
internal sealed class CutComparison(ReadDrawing wanted, ReadDrawing found, Placement place)
{
    /// <summary>What is a difference, mm: half a micrometre, so that one of a micrometre never passes, and the rounding of files with four
    /// decimals of a millimetre, a twentieth of one, always does.</summary>
    public const double ToleranceMm = 5e-4;

    // A contour on another layer is the one that is missing when its box is this near, mm: ten times what a shop's rounding may do.
    private const double SameBoxMm = 0.01;

    private static readonly string[] Cut = ["OUTLINE", "WINDOW", "RECESS"];
    private static readonly string[] Lines = ["FOLD", "MARK"];

    /// <summary>Layers whose contours are not compared: nobody cuts them.</summary>
    public static bool IsUncut(string layer) => Is(layer, "NOTE") || Is(layer, "LEAD") || Is(layer, "Defpoints") || IsLine(layer);

    /// <summary>Every difference, by layer.</summary>
    public IReadOnlyList<CutDifference> Differences() => [.. Contours(), .. Lines.SelectMany(OfLines), .. Areas()];

    private List<CutDifference> Contours()
    {
        List<LaidContour> should = [.. ContoursOf(wanted, Placement.Identity).Where(c => Cut.Contains(c.Layer, StringComparer.OrdinalIgnoreCase))];
        List<LaidContour> there = [.. ContoursOf(found, place)];
        List<CutDifference> all = [];
        foreach ((LaidContour one, LaidContour other) in Pairs(should, [.. there.Where(c => !IsUncut(c.Layer))], (a, b) => Is(a.Layer, b.Layer) ? HalfAcross(a) : -1))
        {
            all.AddRange(Likeness.Departures(one.Contour, other.Contour, ToleranceMm).Select(d => Words(d, one, other)));
            should.Remove(one);
            there.Remove(other);
        }

        foreach ((LaidContour one, LaidContour other) in Pairs(should, there, (_, _) => SameBoxMm))
        {
            all.Add(new("against.layer", one.Layer, $"A contour round {At(one.Contour.Bounds.Centre)} lies on layer {other.Layer}; it belongs on {one.Layer}.") { At = one.Contour.Bounds.Centre, Source = other.Source });
            should.Remove(one);
            there.Remove(other);
        }

        all.AddRange(should.Select(c => new CutDifference("against.missing", c.Layer, $"Layer {c.Layer}: {What(c)} round {At(c.Contour.Bounds.Centre)} is missing.") { At = c.Contour.Bounds.Centre, SizeMm = 2 * HalfAcross(c) }));
        all.AddRange(there.Where(c => !IsUncut(c.Layer)).Select(c => new CutDifference("against.extra", c.Layer, $"Layer {c.Layer}: {What(c)} round {At(c.Contour.Bounds.Centre)} is not in the design.") { At = c.Contour.Bounds.Centre, SizeMm = 2 * HalfAcross(c), Source = c.Source }));
        return all;
    }

    /// <summary>Each contour with the one nearest to it, the nearest pairs first; none farther than allowed, and none at all where that is below 0.</summary>
    private static List<(LaidContour One, LaidContour Other)> Pairs(List<LaidContour> ones, List<LaidContour> others, Func<LaidContour, LaidContour, double> mostMm)
    {
        List<(double Mm, int One, int Other)> near = [];
        for (int i = 0; i < ones.Count; i++)
        {
            for (int k = 0; k < others.Count; k++)
            {
                double mm = Apart(ones[i].Contour.Bounds, others[k].Contour.Bounds);
                if (mm <= mostMm(ones[i], others[k]))
                {
                    near.Add((mm, i, k));
                }
            }
        }

        HashSet<int> taken = [], given = [];
        List<(LaidContour, LaidContour)> pairs = [];
        foreach ((_, int one, int other) in near.Order())
        {
            if (!taken.Contains(one) && !given.Contains(other))
            {
                taken.Add(one);
                given.Add(other);
                pairs.Add((ones[one], others[other]));
            }
        }

        return pairs;
    }

    private IEnumerable<CutDifference> OfLines(string layer)
    {
        (List<Piece> should, List<Piece> there) = (PiecesOf(wanted, layer, Placement.Identity), PiecesOf(found, layer, place));
        string word = Is(layer, "FOLD") ? "fold line" : "mark";
        foreach ((Piece piece, double mm, Point at) in Astray(should, there))
        {
            string how = double.IsInfinity(mm) ? "is missing" : $"has nothing nearer than {Wording.Mm(mm)} in the file";
            yield return new($"against.{layer.ToLowerInvariant()}", layer, $"Layer {layer}: a {word} at {At(at)} {how}.") { At = piece.PointAt(0.5), SizeMm = double.IsInfinity(mm) ? piece.Length : mm };
        }

        foreach ((Piece piece, double mm, Point at) in Astray(there, should))
        {
            string how = double.IsInfinity(mm) ? "" : $", the nearest one of the design is {Wording.Mm(mm)} off";
            yield return new($"against.{layer.ToLowerInvariant()}", layer, $"Layer {layer}: a {word} at {At(at)} is not in the design{how}.") { At = piece.PointAt(0.5), SizeMm = double.IsInfinity(mm) ? piece.Length : mm };
        }
    }

    private static IEnumerable<(Piece Piece, double Mm, Point At)> Astray(List<Piece> pieces, List<Piece> others)
    {
        foreach (Piece piece in pieces)
        {
            (double Mm, Point At) worst = (0, piece.Start);
            foreach (double share in (ReadOnlySpan<double>)[0, 0.25, 0.5, 0.75, 1])
            {
                Point at = piece.PointAt(share);
                double mm = Likeness.NearestOf(others, at).DistanceMm;
                worst = mm > worst.Mm ? (mm, at) : worst;
            }

            if (worst.Mm > ToleranceMm)
            {
                yield return (piece, worst.Mm, worst.At);
            }
        }
    }

    private IEnumerable<CutDifference> Areas() =>
        from layer in found.Layers
        where !Is(layer.Name, "NOTE")
        from area in layer.Areas
        select new CutDifference("against.extra", layer.Name, $"Layer {layer.Name}: a filled area round {At(place.Of(area.Outline.Bounds.Centre))} is not in the design.") { At = place.Of(area.Outline.Bounds.Centre), Source = area.Source };

    private static CutDifference Words(ContourDeparture d, LaidContour one, LaidContour other)
    {
        string size = Wording.Mm(d.SizeMm);
        string words = d.Kind switch
        {
            DepartureKind.Corner => $"a corner is at {At(d.Found)} instead of {At(d.At)}, {size} off",
            DepartureKind.OtherWay => $"the arc at {At(d.At)} bulges the other way, {size} off",
            DepartureKind.Bulge => $"the arc or line at {At(d.At)} is bent by {size} more or less",
            DepartureKind.Radius => $"the circle at {At(d.At)} has a radius {size} {(Size(other) > Size(one) ? "larger" : "smaller")} than {Wording.Mm(Size(one) / 2)}",
            DepartureKind.Moved => $"{What(one)} round {At(d.At)} lies round {At(d.Found)}, {size} off",
            _ => $"the contour round {At(one.Contour.Bounds.Centre)} is up to {size} off, at {At(d.At)}",
        };
        return new(CodeOf(d.Kind), one.Layer, $"Layer {one.Layer}: {words}.") { At = d.At, SizeMm = d.SizeMm, Source = other.Source };
    }

    private static string CodeOf(DepartureKind kind) => kind switch
    {
        DepartureKind.Corner => "against.corner",
        DepartureKind.OtherWay or DepartureKind.Bulge => "against.bulge",
        DepartureKind.Radius => "against.radius",
        DepartureKind.Moved => "against.place",
        _ => "against.shape",
    };

    private static double Size(LaidContour c) => c.Contour.Bounds.Width;

    private static double HalfAcross(LaidContour c) => new Vector(c.Contour.Bounds.Width, c.Contour.Bounds.Height).Length / 2;

    private static string What(LaidContour c) => c.Contour.Pieces.Count == 1 ? $"a circle of {Wording.Mm(c.Contour.Bounds.Width)}" : $"a contour of {Wording.Mm(c.Contour.Bounds.Width)} by {Wording.Mm(c.Contour.Bounds.Height)}";

    /// <summary>How far two boxes differ at most, mm.</summary>
    public static double Apart(Bounds a, Bounds b) =>
        Math.Max(Math.Max(Math.Abs(a.MinX - b.MinX), Math.Abs(a.MaxX - b.MaxX)), Math.Max(Math.Abs(a.MinY - b.MinY), Math.Abs(a.MaxY - b.MaxY)));

    /// <summary>A place to the micrometre.</summary>
    public static string At(Point p) => $"({Wording.Number(p.X, 3)}, {Wording.Number(p.Y, 3)})";

    private static IEnumerable<LaidContour> ContoursOf(ReadDrawing drawing, Placement place) =>
        drawing.Layers.SelectMany(l => l.Contours.Select(c => new LaidContour(l.Name, c.Contour.Placed(place), c.Source)));

    private static List<Piece> PiecesOf(ReadDrawing drawing, string layer, Placement place) =>
    [
        .. drawing.Layers.Where(l => Is(l.Name, layer))
            .SelectMany(l => l.Contours.SelectMany(c => c.Contour.Pieces).Concat(l.OpenPaths.SelectMany(p => p.Pieces)))
            .Select(p => p.Placed(place)),
    ];

    private static bool IsLine(string layer) => Lines.Contains(layer, StringComparer.OrdinalIgnoreCase);

    private static bool Is(string layer, string name) => string.Equals(layer, name, StringComparison.OrdinalIgnoreCase);

    private sealed record LaidContour(string Layer, Contour Contour, DxfSource Source);
}
