using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Enlarged views of the tightest gaps and paths, side by side: the edges of everything within a circle round each.</summary>
/// <remarks>Turning parts stand as they do where the distance is least. Only edges are drawn, cut at the circle.</remarks>
internal sealed class SpacingDetails
{
    private const double DiscMm = 17;
    private const double PitchMm = 42;
    private const double CaptionMm = 10;

    // Where the name of the first net stands, as a share of the way to the circle.
    private const double NameShare = 0.68;

    // Round what is shown: a third more, so that the parts on either side are seen.
    private const double Round = 1.35;

    // Shares of a piece closer than this are one cut.
    private const double SameShare = 1e-9;

    private readonly IReadOnlyList<TightPlace> _places;

    private SpacingDetails(IReadOnlyList<TightPlace> places) => _places = places;

    /// <summary>Height that they take, mm; 0 without any.</summary>
    public double HeightMm => _places.Count == 0 ? 0 : (2 * DiscMm) + CaptionMm;

    /// <summary>As many of the tightest as stand side by side in a width.</summary>
    public static SpacingDetails Of(TightPlaces places, double widthMm) =>
        new([.. places.Numbered.Where(p => p.Path.Count > 0).Take((int)((widthMm - (2 * DiscMm)) / PitchMm) + 1)]);

    /// <summary>Draws them, the lower left corner of the first at a point.</summary>
    public void Draw(SheetBuilder sheet, Design design, Point lowerLeft)
    {
        for (int i = 0; i < _places.Count; i++)
        {
            Draw(sheet, design, _places[i], lowerLeft + new Vector(DiscMm + (i * PitchMm), CaptionMm + DiscMm));
        }
    }

    private static void Draw(SheetBuilder sheet, Design design, TightPlace place, Point middle)
    {
        GroupPen pen = sheet.Group(Invariant.Text($"detail-{place.Number}"), Invariant.Text($"Detail of {place.Number}"), "detail");
        double reach = Round * Math.Max(place.RequiredMm ?? 0, place.Path.SelectMany(p => new[] { p.Start, p.End }).Max(p => p.DistanceTo(place.First)));
        DrawingScale scale = DrawingScale.Fitting(new(-reach, -reach, reach, reach), new(-DiscMm, -DiscMm, DiscMm, DiscMm));
        SheetView view = SheetView.At(scale, place.First, middle);
        Arc disc = new(place.First, DiscMm / scale.Factor, 0, Angles.TurnRad);
        ViewPen parts = pen.In(view);
        foreach (SpacingPart part in SpacingPart.Of(design))
        {
            Placement turn = part.Turns && place.TurnedRad is double turned ? Placement.Turn(turned) : Placement.Turn(0);
            LineStyle style = place.Items.Contains(part.Name, StringComparer.Ordinal) ? LineStyle.Edge : LineStyle.Thin;
            foreach (Piece piece in part.Shapes.SelectMany(s => s.Pieces).Concat(part.Marks).SelectMany(p => Within(p.Placed(turn), disc)))
            {
                parts.Line([piece], style);
            }
        }

        foreach (Piece piece in place.Patch?.Pieces.SelectMany(p => Within(p, disc)) ?? [])
        {
            parts.Line([piece], LineStyle.Edge);
        }

        if (place.RequiredMm is double required)
        {
            parts.Line(Contour.Circle(place.First, required), TightPen.RequiredStyle);
        }

        parts.Line(place.Path, TightPen.PathStyle);
        pen.Line(Contour.Circle(middle, DiscMm), LineStyle.Thin);
        Nets(pen, place, (view.Of(place.First), view.Of(place.Second)));
        Caption(pen, new DrawingNumbers(design.Brief.DrawingUnit), (place, scale), middle - new Vector(0, DiscMm + 1.2));
    }

    /// <summary>The nets on either side, beyond the ends of the path, where the words are short enough to stand in the circle.</summary>
    private static void Nets(GroupPen pen, TightPlace place, (Point First, Point Second) onPaper)
    {
        const double beyondMm = 3.2;
        const double widestMm = 9;
        if (place.Nets.Count < 2 || onPaper.First.DistanceTo(onPaper.Second) < Tolerances.JoinMm || place.Nets.Any(n => TextFit.WidthMm(n, TextStyle.Small) > widestMm))
        {
            return;
        }

        // The first point is the middle of the circle: its name stands near the rim, clear of a nose there.
        Vector way = (onPaper.Second - onPaper.First).Unit();
        pen.PlatedText(place.Nets[0], new(onPaper.First - (way * (DiscMm * NameShare)), TextAlong.Middle, TextAcross.Middle), TextStyle.Small);
        pen.PlatedText(place.Nets[1], new(onPaper.Second + (way * beyondMm), TextAlong.Middle, TextAcross.Middle), TextStyle.Small);
    }

    private static void Caption(GroupPen pen, DrawingNumbers numbers, (TightPlace Place, DrawingScale Scale) of, Point top)
    {
        TightFigures figures = of.Place.Figures;
        pen.Text(Invariant.Text($"{of.Place.Number}, scale {of.Scale}"), new(top, TextAlong.Middle, TextAcross.Top), new TextStyle(2.5, TextWeight.Heavy));
        pen.Text($"{numbers.Length(figures.WorstMm)} of {numbers.LengthWithUnit(figures.RequiredMm)}", new(top - new Vector(0, 4.4), TextAlong.Middle, TextAcross.Top), TextStyle.Small);
    }

    /// <summary>The parts of a piece that lie inside a circle, cut where it crosses it.</summary>
    internal static IEnumerable<Piece> Within(Piece piece, Arc disc)
    {
        if (!piece.Bounds.Overlaps(disc.Bounds))
        {
            yield break;
        }

        Meeting meeting = Intersections.Of(piece, disc);
        double[] cuts = [0, .. meeting.Points.Select(p => p.ShareOnFirst).Concat(meeting.Stretches.SelectMany(s => new[] { s.From.ShareOnFirst, s.To.ShareOnFirst })).Order(), 1];
        for (int i = 0; i + 1 < cuts.Length; i++)
        {
            if (cuts[i + 1] - cuts[i] > SameShare && piece.PointAt((cuts[i] + cuts[i + 1]) / 2).DistanceTo(disc.Centre) < disc.RadiusMm)
            {
                yield return piece.Part(cuts[i], cuts[i + 1]);
            }
        }
    }
}
