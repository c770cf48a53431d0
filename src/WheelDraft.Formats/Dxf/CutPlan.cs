using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>A drawing lowered to the few entities that are written, in file units and in file order.</summary>
internal sealed record CutPlan(DrawingUnit Unit, Bounds Bounds, IReadOnlyList<CutLayer> Layers, IReadOnlyList<CutEntity> Entities)
{
    /// <summary>Decimals of coordinates: a millimetre to a millionth of a micrometre, an inch to a comparable length.</summary>
    internal int Decimals => Unit == DrawingUnit.Inch ? 10 : 9;

    internal static CutPlan Of(CutDrawing drawing)
    {
        double scale = drawing.Unit == DrawingUnit.Inch ? 1 / 25.4 : 1;
        Placement toUnit = Placement.Scaling(scale);
        IEnumerable<CutEntity> contours = drawing.Contours.SelectMany(c => Lowered(c, toUnit));
        IEnumerable<CutEntity> paths = drawing.Paths.Select(p => Lowered(p.Layer, p.Pieces, p.IsClosed, toUnit));
        IEnumerable<CutEntity> notes = drawing.Notes.Select(n => new CutText(toUnit.Of(n.At), n.HeightMm * scale, n.Text));
        CutEntity[] entities = [.. contours.Concat(paths).Concat(notes).OrderBy(e => e.Layer)];
        Bounds b = drawing.Bounds;
        return new(
            drawing.Unit,
            new Bounds(b.MinX * scale, b.MinY * scale, b.MaxX * scale, b.MaxY * scale),
            [.. entities.Select(e => e.Layer).Distinct()],
            entities);
    }

    private static IEnumerable<CutEntity> Lowered(CutContour contour, Placement toUnit) => contour.Tabbed is TabbedContour tabbed
        ? tabbed.Runs.Select(r => Lowered(contour.Layer, r, false, toUnit)).Concat(tabbed.Tabs.Select(t => Lowered(CutLayer.Tab, [t.Stretch], false, toUnit)))
        : [Lowered(contour.Layer, contour.Contour.Pieces, true, toUnit)];

    private static CutEntity Lowered(CutLayer layer, IReadOnlyList<Piece> source, bool closed, Placement toUnit)
    {
        Piece[] pieces = [.. source.Select(p => p.Placed(toUnit))];
        if (WholeCircle(pieces) is Arc circle)
        {
            return new CutCircle(layer, circle.Centre, circle.RadiusMm);
        }

        if (!closed && pieces.Length == 1)
        {
            return pieces[0] is Arc arc ? new CutArc(layer, arc) : new CutLine(layer, pieces[0].Start, pieces[0].End);
        }

        return new CutPolyline(layer, closed, Vertices(pieces, closed));
    }

    /// <summary>The circle, when the pieces go once round one and nothing else.</summary>
    private static Arc? WholeCircle(Piece[] pieces)
    {
        // Far above rounding in angles, far below any angle between two pieces that differs from none.
        const double roundingRad = 1e-11;
        if (pieces[0] is not Arc first || !pieces.All(p => p is Arc a && a.Centre == first.Centre && a.RadiusMm == first.RadiusMm))
        {
            return null;
        }

        double sweep = pieces.Sum(p => ((Arc)p).SweepRad);
        bool oneWay = pieces.All(p => Math.Sign(((Arc)p).SweepRad) == Math.Sign(first.SweepRad));
        return oneWay && Math.Abs(Math.Abs(sweep) - Angles.TurnRad) < roundingRad ? first : null;
    }

    private static List<CutVertex> Vertices(Piece[] pieces, bool closed)
    {
        List<CutVertex> vertices = [];
        foreach (Piece piece in pieces.SelectMany(AtMostHalfTurns))
        {
            vertices.Add(new(piece.Start, piece.Bulge));
        }

        if (!closed)
        {
            vertices.Add(new(pieces[^1].End, 0));
        }

        return vertices;
    }

    private static IEnumerable<Piece> AtMostHalfTurns(Piece piece)
    {
        // Half a turn found by adding up degrees may be a few units in the last place too long: still one part.
        const double roundingRad = 1e-12;
        if (piece is not Arc arc || Math.Abs(arc.SweepRad) <= Math.PI + roundingRad)
        {
            yield return piece;
            yield break;
        }

        double half = arc.SweepRad / 2;
        yield return Arc.FromBulge(arc.Start, arc.PointAt(0.5), Math.Tan(half / 4));
        yield return Arc.FromBulge(arc.PointAt(0.5), arc.End, Math.Tan(half / 4));
    }
}

/// <summary>One entity of a cutting file, in file units.</summary>
internal abstract record CutEntity(CutLayer Layer);

/// <summary>A polyline.</summary>
internal sealed record CutPolyline(CutLayer Layer, bool Closed, IReadOnlyList<CutVertex> Vertices) : CutEntity(Layer);

/// <summary>A corner of a polyline and the bulge of the piece that starts there.</summary>
internal readonly record struct CutVertex(Point At, double Bulge);

/// <summary>A whole circle.</summary>
internal sealed record CutCircle(CutLayer Layer, Point Centre, double Radius) : CutEntity(Layer);

/// <summary>A single straight line.</summary>
internal sealed record CutLine(CutLayer Layer, Point Start, Point End) : CutEntity(Layer);

/// <summary>A single arc.</summary>
internal sealed record CutArc(CutLayer Layer, Arc Arc) : CutEntity(Layer)
{
    /// <summary>Direction in which the arc starts when travelled anticlockwise, degrees in [0, 360).</summary>
    internal double FromDeg => Degrees(Arc.SweepRad > 0 ? Arc.StartRad : Arc.EndRad);

    /// <summary>Direction in which it ends when travelled anticlockwise, degrees in [0, 360).</summary>
    internal double ToDeg => Degrees(Arc.SweepRad > 0 ? Arc.EndRad : Arc.StartRad);

    private static double Degrees(double angleRad)
    {
        double rounded = Math.Round(Angles.DegFromRad(Angles.InTurn(angleRad)), DxfTags.AngleDecimals);
        return rounded >= 360 ? 0 : rounded;
    }
}

/// <summary>A text that is not cut.</summary>
internal sealed record CutText(Point At, double Height, string Text) : CutEntity(CutLayer.Note);
