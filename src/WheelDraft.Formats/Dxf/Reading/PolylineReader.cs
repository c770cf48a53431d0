using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Polylines of both kinds.</summary>
internal static class PolylineReader
{
    private const int ClosedFlag = 1;

    internal static SourceEntity Light(DxfRecord record, Placement frame)
    {
        double width = record.Number(43, 0);
        List<WideCorner> corners = [];
        double? x = null;
        foreach (DxfPair pair in record.Pairs)
        {
            switch (pair.Code)
            {
                case 10:
                    x = record.NumberOf(pair);
                    break;
                case 20 when x is double left:
                    corners.Add(new(new(left, record.NumberOf(pair)), 0, width, width));
                    x = null;
                    break;
                case 40 when corners.Count > 0:
                    corners[^1] = corners[^1] with { StartWidth = record.NumberOf(pair) };
                    break;
                case 41 when corners.Count > 0:
                    corners[^1] = corners[^1] with { EndWidth = record.NumberOf(pair) };
                    break;
                case 42 when corners.Count > 0:
                    corners[^1] = corners[^1] with { Bulge = record.NumberOf(pair) };
                    break;
            }
        }

        int stated = record.Whole(90, corners.Count);
        return stated == corners.Count
            ? LineOrArea(record, corners, frame)
            : throw record.Fault($"it states {FixedPoint.Short(stated, 0)} vertices and has {FixedPoint.Short(corners.Count, 0)}: it is damaged");
    }

    internal static SourceEntity Heavy(DxfRecord record, IReadOnlyList<DxfRecord> vertices, Placement frame)
    {
        const int splined = 4;
        const int spatial = 8;
        const int mesh = 16 | 64;
        const int control = 16;
        int flags = record.Whole(70, 0);
        if ((flags & mesh) != 0)
        {
            throw record.Fault("it is a mesh; only drawings in the plane are read");
        }

        if ((flags & splined) != 0)
        {
            throw record.Fault("it was smoothed into chords of a spline whose tolerance is unknown; undo the smoothing or draw it with arcs");
        }

        List<WideCorner> corners = [];
        (double start, double end) = (record.Number(40, 0), record.Number(41, 0));
        double? z = null;
        foreach (DxfRecord vertex in vertices.Where(v => v.Kind is "VERTEX" && (v.Whole(70, 0) & control) == 0))
        {
            double height = vertex.Number(30, 0);
            EntityReader.Level(vertex, z ??= height, height);
            corners.Add(new(vertex.Point(10), vertex.Number(42, 0), vertex.Number(40, start), vertex.Number(41, end)));
        }

        return LineOrArea(record, corners, (flags & spatial) != 0 ? Placement.Identity : frame);
    }

    /// <summary>A polyline with a width anywhere is an area, one without is a line.</summary>
    private static SourceEntity LineOrArea(DxfRecord record, List<WideCorner> corners, Placement frame)
    {
        bool closed = (record.Whole(70, 0) & ClosedFlag) != 0;

        // The widths of an open polyline's last corner belong to no run.
        bool wide = corners.Take(closed ? corners.Count : corners.Count - 1).Any(c => c.StartWidth != 0 || c.EndWidth != 0);
        return wide ? WidePolyline.Shape(record, corners, closed, frame) : Shape(record, [.. corners.Select(c => (c.At, c.Bulge))], frame, closed);
    }

    internal static ExactShape Shape(DxfRecord record, IReadOnlyList<(Point At, double Bulge)> corners, Placement frame, bool closed)
    {
        List<Piece> pieces = [];
        for (int i = 0; i < (closed ? corners.Count : corners.Count - 1); i++)
        {
            Point next = corners[(i + 1) % corners.Count].At;
            if (corners[i].At.DistanceTo(next) > 0)
            {
                pieces.Add(corners[i].Bulge == 0 ? new Segment(corners[i].At, next) : Bulged(record, corners[i], next));
            }
        }

        return new(record.Layer, record.Source, frame, pieces, closed);
    }

    internal static Arc Bulged(DxfRecord record, (Point At, double Bulge) from, Point to)
    {
        // Between these lie arcs of a metre's radius over a micrometre, and of a micrometre short of a whole turn.
        double size = Math.Abs(from.Bulge);
        if (size is < 1e-9 or > 1e9)
        {
            throw record.Fault($"the bulge {FixedPoint.Short(from.Bulge, 15)} is no arc; 0 is a straight line");
        }

        try
        {
            return Arc.FromBulge(from.At, to, from.Bulge);
        }
        catch (ArgumentException)
        {
            throw record.Fault($"the bulge {FixedPoint.Short(from.Bulge, 15)} gives no arc between its two points");
        }
    }
}
