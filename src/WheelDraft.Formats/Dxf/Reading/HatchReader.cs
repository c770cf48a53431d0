using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Hatches by their boundaries; whatever the pattern, the whole area is taken as filled.</summary>
internal static class HatchReader
{
    private const int Polyline = 2;
    private const int TextBox = 8;

    internal static AreaShape Read(DxfRecord record, Placement frame)
    {
        PairCursor pairs = new(record);
        pairs.SkipTo(91);
        int paths = pairs.Whole(91);
        List<IReadOnlyList<SourceShape>> loops = [];
        for (int i = 0; i < paths; i++)
        {
            int flags = pairs.Whole(92);
            IReadOnlyList<SourceShape> loop = (flags & Polyline) != 0 ? [Corners(record, pairs, frame)] : Edges(record, pairs, frame);
            int sources = pairs.Has(97) ? pairs.Whole(97) : 0;
            for (int k = 0; k < sources && pairs.Has(330); k++)
            {
                pairs.Skip();
            }

            // The box round a text leaves room for it: taken as filled.
            if ((flags & TextBox) == 0)
            {
                loops.Add(loop);
            }
        }

        const int wholeArea = 2;
        return loops.Count == 0 ? throw record.Fault("it has no boundary")
            : new(record.Layer, record.Source, frame, record.Whole(75, 0) == wholeArea ? [.. loops.Select(l => new AreaRegion([l]))] : [new AreaRegion(loops)]);
    }

    private static ExactShape Corners(DxfRecord record, PairCursor pairs, Placement frame)
    {
        bool bulges = pairs.Whole(72) != 0;
        pairs.Whole(73);
        int count = pairs.Whole(93);
        List<(Point At, double Bulge)> corners = [];
        for (int i = 0; i < count; i++)
        {
            Point at = pairs.Point(10);
            corners.Add((at, bulges && pairs.Has(42) ? pairs.Number(42) : 0));
        }

        return PolylineReader.Shape(record, corners, frame, closed: true);
    }

    private static List<SourceShape> Edges(DxfRecord record, PairCursor pairs, Placement frame)
    {
        int count = pairs.Whole(93);
        List<SourceShape> edges = [];
        for (int i = 0; i < count; i++)
        {
            edges.Add(pairs.Whole(72) switch
            {
                1 => Line(record, pairs, frame),
                2 => ArcOf(record, pairs, frame),
                3 => Ellipse(record, pairs, frame),
                4 => Spline(record, pairs, frame),
                int other => throw record.Fault($"its boundary holds an edge of the unknown kind {FixedPoint.Short(other, 0)}"),
            });
        }

        return edges;
    }

    private static ExactShape Line(DxfRecord record, PairCursor pairs, Placement frame)
    {
        Point from = pairs.Point(10);
        Point to = pairs.Point(11);
        return new(record.Layer, record.Source, frame, from == to ? [] : [new Segment(from, to)], false);
    }

    /// <summary>A clockwise edge gives its angles clockwise too.</summary>
    private static ExactShape ArcOf(DxfRecord record, PairCursor pairs, Placement frame)
    {
        Point centre = pairs.Point(10);
        double radius = pairs.Number(40);
        (double from, double sweep) = Span(Angles.RadFromDeg(pairs.Number(50)), Angles.RadFromDeg(pairs.Number(51)), pairs.Whole(73) == 0);
        return radius > 0
            ? new(record.Layer, record.Source, frame, [new Arc(centre, radius, from, sweep)], false)
            : throw record.Fault("its boundary holds an arc whose radius is not above 0");
    }

    private static EllipseShape Ellipse(DxfRecord record, PairCursor pairs, Placement frame)
    {
        Point centre = pairs.Point(10);
        Point major = pairs.Point(11);
        double ratio = pairs.Number(40);
        (double from, double sweep) = Span(Angles.RadFromDeg(pairs.Number(50)), Angles.RadFromDeg(pairs.Number(51)), pairs.Whole(73) == 0);
        Vector axis = major - Point.Origin;
        return ratio > 0 && axis.Length > 0
            ? new(record.Layer, record.Source, frame, centre, axis, axis.Left * ratio, from, sweep)
            : throw record.Fault("its boundary holds an ellipse whose half axes are not above 0");
    }

    private static (double FromRad, double SweepRad) Span(double from, double to, bool clockwise)
    {
        const double roundingRad = 1e-9;
        double sweep = Angles.InTurn(to - from);
        sweep = sweep < roundingRad || sweep > Angles.TurnRad - roundingRad ? Angles.TurnRad : sweep;
        return clockwise ? (-from, -sweep) : (from, sweep);
    }

    private static SplineShape Spline(DxfRecord record, PairCursor pairs, Placement frame)
    {
        int degree = pairs.Whole(94);
        bool rational = pairs.Whole(73) != 0;
        pairs.Whole(74);
        int knots = pairs.Whole(95);
        int controls = pairs.Whole(96);
        List<double> at = [];
        for (int i = 0; i < knots; i++)
        {
            at.Add(pairs.Number(40));
        }

        List<(Point At, double Weight)> points = [];
        for (int i = 0; i < controls; i++)
        {
            Point p = pairs.Point(10);
            points.Add((p, pairs.Has(42) ? pairs.Number(42) : 1));
        }

        SkipFitPoints(pairs);
        return SplineShape.Of(record, degree, [.. at], [.. points.Select(p => p.At)], rational ? [.. points.Select(p => p.Weight)] : [], frame);
    }

    /// <summary>From R2010 on the number of fit points follows (97); before, a 97 here counts what the boundary was made from.</summary>
    private static void SkipFitPoints(PairCursor pairs)
    {
        if (!pairs.Has(97) || !(pairs.IsFollowedBy(11) || pairs.IsFollowedBy(97) || pairs.IsFollowedBy(72)))
        {
            return;
        }

        int fits = pairs.Whole(97);
        for (int i = 0; i < fits; i++)
        {
            pairs.Point(11);
        }

        foreach (int tangent in (int[])[12, 13])
        {
            if (pairs.Has(tangent))
            {
                pairs.Point(tangent);
            }
        }
    }
}

/// <summary>The pairs of a record, one after the other.</summary>
internal sealed class PairCursor(DxfRecord record)
{
    private int _at;

    internal void SkipTo(int code)
    {
        while (_at < record.Pairs.Count && record.Pairs[_at].Code != code)
        {
            _at++;
        }
    }

    internal void Skip() => _at++;

    internal bool Has(int code) => _at < record.Pairs.Count && record.Pairs[_at].Code == code;

    internal bool IsFollowedBy(int code) => _at + 1 < record.Pairs.Count && record.Pairs[_at + 1].Code == code;

    internal double Number(int code) => record.NumberOf(Next(code));

    internal int Whole(int code) => record.WholeOf(Next(code));

    internal Point Point(int code)
    {
        double x = Number(code);
        double y = Number(code + 10);

        // A height may follow; boundaries lie in their own plane.
        if (Has(code + 20))
        {
            Skip();
        }

        return new(x, y);
    }

    private DxfPair Next(int code) => Has(code)
        ? record.Pairs[_at++]
        : throw record.Fault($"group {FixedPoint.Short(code, 0)} is missing where its boundary needs it");
}
