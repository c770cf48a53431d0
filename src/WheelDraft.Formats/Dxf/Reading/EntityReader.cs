using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Turns records into shapes in the frame in which they are drawn.</summary>
/// <remarks>A frame whose axis points down (extrusion 0, 0, -1) shows x mirrored; a tilted one is refused.</remarks>
internal static class EntityReader
{
    /// <summary>Words and pictures: drawn, but copper only where somebody etches or cuts them.</summary>
    private static readonly HashSet<string> Drawn = new(StringComparer.Ordinal)
    {
        "TEXT", "MTEXT", "ATTRIB", "RTEXT", "ARCALIGNEDTEXT", "XLINE", "RAY", "IMAGE", "WIPEOUT", "OLE2FRAME", "PDFUNDERLAY", "DWFUNDERLAY", "DGNUNDERLAY",
    };

    /// <summary>What describes a drawing and is never made.</summary>
    private static readonly HashSet<string> Describing = new(StringComparer.Ordinal)
    {
        "ATTDEF", "DIMENSION", "ARC_DIMENSION", "LARGE_RADIAL_DIMENSION", "LEADER", "MULTILEADER", "MLEADER", "TOLERANCE", "POINT", "VIEWPORT",
        "ACAD_TABLE", "LIGHT", "SUN", "SECTION", "CAMERA", "GEOPOSITIONMARKER",
    };

    /// <summary>Mirrors x, as an axis that points down does: a mirror in the x axis and half a turn.</summary>
    private static readonly Placement Upturned = Placement.MirrorInX.Then(Placement.Turn(Math.PI));

    /// <summary>The entity as a shape, or as something that is not taken in.</summary>
    /// <exception cref="DxfReadException">A value in it cannot be read: the file is damaged.</exception>
    internal static SourceEntity Read(DxfRecord record, IReadOnlyList<DxfRecord> parts)
    {
        if (record.Find(67) is DxfPair space && record.WholeOf(space) != 0)
        {
            return new UnreadEntity(record.Layer, record.Source, LeftOutKind.PaperSpace, "it lies on another sheet of the file");
        }

        if (Drawn.Contains(record.Kind) || Describing.Contains(record.Kind))
        {
            return Drawn.Contains(record.Kind)
                ? new UnreadEntity(record.Layer, record.Source, LeftOutKind.Words, "words, pictures and construction lines have no outline here; if they are copper draw them with lines, if they are not move them to another layer")
                : new UnreadEntity(record.Layer, record.Source, LeftOutKind.Annotation, "it describes the drawing and is never made");
        }

        try
        {
            return Shape(record, parts);
        }
        catch (UnreadException why)
        {
            return new UnreadEntity(record.Layer, record.Source, LeftOutKind.Shape, why.Message);
        }
        catch (ArgumentException)
        {
            // Lengths that vanish in rounding, radii beyond all numbers.
            return new UnreadEntity(record.Layer, record.Source, LeftOutKind.Shape, "its numbers give no shape: they are too small or too large");
        }
    }

    private static SourceEntity Shape(DxfRecord record, IReadOnlyList<DxfRecord> parts) => record.Kind switch
    {
        "LINE" => Line(record),
        "CIRCLE" => Circle(record),
        "ARC" => ArcOf(record),
        "LWPOLYLINE" => PolylineReader.Light(record, Frame(record)),
        "POLYLINE" => PolylineReader.Heavy(record, parts, Frame(record)),
        "ELLIPSE" => EllipseShape.Read(record, Frame(record)),
        "SPLINE" => SplineShape.Read(record),
        "INSERT" => ReferenceReader.Read(record, Frame(record)),
        "SOLID" or "TRACE" => FaceReader.Filled(record, Frame(record)),
        "3DFACE" => FaceReader.Face(record),
        "HATCH" => HatchReader.Read(record, Frame(record)),
        _ => throw record.Fault("this kind of entity is not understood; draw it with lines, arcs, circles or polylines"),
    };

    /// <summary>The frame of an entity as a placement.</summary>
    private static Placement Frame(DxfRecord record)
    {
        double x = record.Number(210, 0);
        double y = record.Number(220, 0);
        double z = record.Number(230, 1);

        // What still counts as upright: over a metre, a tilt of 1e-9 moves a point by less than a millionth of a millimetre.
        double flat = 1e-9 * Math.Abs(z);
        return Math.Abs(x) > flat || Math.Abs(y) > flat || z == 0 ? throw record.Fault("it lies in a tilted plane; only drawings in the plane are read")
            : z > 0 ? Placement.Identity
            : Upturned;
    }

    private static ExactShape Line(DxfRecord record)
    {
        Level(record, record.Number(30, 0), record.Number(31, 0));
        Point start = record.Point(10);
        Point end = record.Point(11);
        return new(record.Layer, record.Source, Placement.Identity, start == end ? [] : [new Segment(start, end)], false);
    }

    private static ExactShape Circle(DxfRecord record) =>
        new(record.Layer, record.Source, Frame(record), [new Arc(record.Point(10), Radius(record), 0, Angles.TurnRad)], true);

    private static ExactShape ArcOf(DxfRecord record)
    {
        double start = Angles.RadFromDeg(record.Number(50));
        double sweep = Angles.InTurn(Angles.RadFromDeg(record.Number(51)) - start);

        // An arc from an angle to itself is the whole circle.
        const double roundingRad = 1e-12;
        bool whole = sweep < roundingRad || sweep > Angles.TurnRad - roundingRad;
        return new(record.Layer, record.Source, Frame(record), [new Arc(record.Point(10), Radius(record), start, whole ? Angles.TurnRad : sweep)], whole);
    }

    private static double Radius(DxfRecord record)
    {
        double radius = record.Number(40);
        return radius > 0 ? radius : throw record.Fault($"its radius is {FixedPoint.Short(radius, 6)}; it must be above 0");
    }

    /// <summary>Refuses what climbs; what lies at one height is seen from above.</summary>
    internal static void Level(DxfRecord record, double z, double otherZ)
    {
        if (z != otherZ)
        {
            throw record.Fault($"it climbs from z = {FixedPoint.Short(z, 6)} to {FixedPoint.Short(otherZ, 6)}; only drawings in the plane are read");
        }
    }
}
