using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Draws one detail of the spacing plan.</summary>
internal sealed class SpacingDetailPen
{
    /// <summary>Below the circle: letter, scale and figures, mm.</summary>
    public const double CaptionMm = 10;

    /// <summary>Above the circle: nets that find no room in it, a line each, mm.</summary>
    public const double AboveMm = 9;

    // Between places that are tried for a name, and round a name to the next edge, mm.
    private const double StepMm = 1;
    private const double AirMm = 0.5;
    private const double DotMm = 0.5;

    private readonly GroupPen _pen;
    private readonly SpacingScene _scene;
    private readonly SpacingDetail _detail;
    private readonly SheetView _view;
    private readonly Point _centre;
    private readonly Arc _disc;
    private readonly List<DetailArea> _areas = [];
    private readonly List<(Point From, Point To)> _edges = [];

    /// <summary>A detail with its middle at a point of the paper.</summary>
    public SpacingDetailPen(SheetBuilder sheet, SpacingScene scene, SpacingDetail detail, Point centre)
    {
        _pen = sheet.Group(Invariant.Text($"detail-{detail.Place.Number}"), $"Detail {detail.Letter}", "detail");
        (_scene, _detail, _centre) = (scene, detail, centre);
        _view = SheetView.At(detail.Scale, detail.Middle, centre);
        _disc = new(centre, detail.RadiusMm, 0, Angles.TurnRad);
    }

    private TightPlace Place => _detail.Place;

    /// <summary>Draws everything in the circle, the circle, and what is said of it.</summary>
    public void Draw()
    {
        foreach (SpacingPart part in _scene.All)
        {
            Part(part);
        }

        foreach (Piece piece in (Place.Patch?.Pieces ?? []).SelectMany(InDisc))
        {
            _pen.Line([piece], LineStyle.Thin);
            Edge([piece]);
        }

        TightPen.Required(_pen, [.. RequiredCircle().SelectMany(InDisc)]);
        TightPen.Path(_pen, [.. Place.Path.Select(p => p.Placed(_view.ToPaper))]);
        Point[] ends = [_view.Of(Place.First), _view.Of(Place.Second)];
        TightPen.Ends(_pen, ends);
        Edge(ends.SelectMany(e => Contour.Circle(e, TightPen.EndMm).Pieces));
        _pen.Line(Contour.Circle(_centre, _detail.RadiusMm), LineStyle.Thin);
        Edge(Contour.Circle(_centre, _detail.RadiusMm).Pieces);
        Edge(RequiredCircle().Concat(Place.Path).Select(p => p.Placed(_view.ToPaper)));
        Nets();
        Caption();
    }

    private IEnumerable<Piece> RequiredCircle() => Place.RequiredMm is double required ? Contour.Circle(Place.First, required).Pieces : [];

    private IEnumerable<Piece> InDisc(Piece piece) => CircleClip.Inside(piece.Placed(_view.ToPaper), _disc);

    // An area without its edge, then the edges that are really there: the circle is no edge of a part.
    private void Part(SpacingPart part)
    {
        Placement turn = part.Turns && Place.TurnedRad is double turned ? Placement.Turn(turned) : Placement.Turn(0);
        LineStyle style = Place.Items.Contains(part.Name, StringComparer.Ordinal) ? LineStyle.Edge : LineStyle.Thin;
        foreach (Outline shape in part.Shapes.Select(s => s.Placed(turn.Then(_view.ToPaper))).Where(s => s.Bounds.Overlaps(_disc.Bounds)))
        {
            IReadOnlyList<Outline> clipped = CircleClip.Inside(shape, _centre, _detail.RadiusMm);
            if (clipped.Count > 0)
            {
                _pen.Add(new SheetArea(clipped, part.Look));
                _areas.AddRange(clipped.Select(c => new DetailArea(c, part.IsInsulation ? null : part.Net)));
            }

            Lines(shape.Pieces, style);
        }

        Lines(part.Marks.Select(m => m.Placed(turn.Then(_view.ToPaper))), LineStyle.Thin);
    }

    private void Lines(IEnumerable<Piece> onPaper, LineStyle style)
    {
        Piece[] inside = [.. onPaper.SelectMany(p => CircleClip.Inside(p, _disc))];
        foreach (Piece piece in inside)
        {
            _pen.Line([piece], style);
        }

        Edge(inside);
    }

    private void Edge(IEnumerable<Piece> onPaper) => _edges.AddRange(onPaper.SelectMany(TextRegistry.Chords));

    /// <summary>Names both nets: on their own copper where it is seen wide enough, else over the circle with a leader to it.</summary>
    private void Nets()
    {
        Dictionary<Point, string?> seen = [];
        for (double x = _centre.X - _detail.RadiusMm; x <= _centre.X + _detail.RadiusMm; x += StepMm)
        {
            for (double y = _centre.Y - _detail.RadiusMm; y <= _centre.Y + _detail.RadiusMm; y += StepMm)
            {
                Point at = new(x, y);
                if (at.DistanceTo(_centre) < _detail.RadiusMm)
                {
                    seen[at] = _areas.FindLast(a => a.Shape.Contains(at))?.Net;
                }
            }
        }

        List<(string Net, Point[] Own)> above = [];
        foreach ((string net, Point end) in Place.Nets.Zip((Point[])[_view.Of(Place.First), _view.Of(Place.Second)]))
        {
            Point[] own = [.. seen.Where(s => string.Equals(s.Value, net, StringComparison.Ordinal)).Select(s => s.Key).OrderBy(p => p.DistanceTo(end)).ThenBy(p => p.X).ThenBy(p => p.Y)];
            SheetText? inside = own.Select(p => new SheetText(net, new(p, TextAlong.Middle, TextAcross.Middle), TextStyle.Small))
                .FirstOrDefault(t => IsOn(t.Box.Grown(TextRegistry.AirMm + AirMm), seen, net));
            if (inside is null)
            {
                above.Add((net, own));
                continue;
            }

            _pen.PlatedText(net, inside.Place, TextStyle.Small);
            Edge(Contour.Polygon(inside.Box.Grown(TextRegistry.AirMm).Corners).Pieces);
        }

        Above(above);
    }

    private bool IsOn(TextBox box, Dictionary<Point, string?> seen, string net) =>
        box.Corners.All(c => c.DistanceTo(_centre) < _detail.RadiusMm)
        && !_edges.Exists(e => box.MeetsLine(e.From, e.To))
        && seen.Where(s => box.Bounds.Contains(s.Key)).All(s => string.Equals(s.Value, net, StringComparison.Ordinal));

    /// <summary>Names over the circle: that of what lies further left begins on the left, the other ends on the right, a line higher where both need the width.</summary>
    private void Above(List<(string Net, Point[] Own)> names)
    {
        SheetText? left = null;
        double MeanX(Point[] points) => points.Length == 0 ? _centre.X : points.Average(p => p.X);
        foreach ((string net, Point[] own) in names.OrderBy(n => MeanX(n.Own)))
        {
            bool isLeft = left is null && (names.Count > 1 || MeanX(own) < _centre.X);
            string words = TextFit.Shortened(own.Length > 0 ? net : $"{net}, hidden", (2 * _detail.RadiusMm) - 4, TextStyle.Small);
            SheetText At(int line) => new(
                words,
                new(new(_centre.X + ((isLeft ? -1 : 1) * _detail.RadiusMm), _centre.Y + _detail.RadiusMm + 1.2 + (line * 4)), isLeft ? TextAlong.Start : TextAlong.End),
                TextStyle.Small);
            SheetText text = left is not null && At(0).Box.Grown(1).Overlaps(left.Box) ? At(1) : At(0);
            _pen.Add(text);
            left ??= text;
            if (own.Length > 0)
            {
                Bounds box = text.Box.Bounds;
                double inwards = Math.Min(2, box.Width / 2);
                Point foot = new(isLeft ? box.MinX + inwards : box.MaxX - inwards, box.MinY - 0.3);
                TightPen.Leader(_pen, foot, PointedAt(own, foot), DotMm);
            }
        }
    }

    // Clear of edges by the dot and air where that is possible, then as near as can be.
    private Point PointedAt(Point[] own, Point from)
    {
        const double clearMm = 1.3;
        (Point At, double Clear)[] clear = [.. own.Select(p => (p, Math.Min(clearMm, _edges.Min(e => DistanceTo(p, e)))))];
        return clear.OrderByDescending(c => c.Clear).ThenBy(c => c.At.DistanceTo(from)).First().At;
    }

    private static double DistanceTo(Point p, (Point From, Point To) line)
    {
        Vector way = line.To - line.From;
        double along = way.Length < Tolerances.JoinMm ? 0 : Math.Clamp((p - line.From).Dot(way) / way.Dot(way), 0, 1);
        return p.DistanceTo(line.From + (way * along));
    }

    private void Caption()
    {
        DrawingNumbers numbers = new(_scene.Design.Brief.DrawingUnit);
        TightFigures figures = Place.Figures;
        Point top = _centre - new Vector(0, _detail.RadiusMm + 1.2);
        _pen.Text($"{_detail.Letter} ({_detail.Scale})", new(top, TextAlong.Middle, TextAcross.Top), new TextStyle(2.5, TextWeight.Heavy));
        _pen.Text(Invariant.Text($"{Place.Number}: {numbers.Length(figures.WorstMm)} of {numbers.LengthWithUnit(figures.RequiredMm)}"), new(top - new Vector(0, 4.4), TextAlong.Middle, TextAcross.Top), TextStyle.Small);
    }

    /// <summary>What is seen of a part in the circle, on the paper; no net for insulation.</summary>
    private sealed record DetailArea(Outline Shape, string? Net);
}
