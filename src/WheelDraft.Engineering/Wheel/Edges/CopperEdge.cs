using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Which end of the copper an edge is.</summary>
public enum EdgeEnd
{
    /// <summary>The contact makes here.</summary>
    Make,

    /// <summary>The contact breaks here.</summary>
    Break,
}

/// <summary>A straight edge at one end of a ring's copper, in the programme frame of its wiper.</summary>
/// <remarks>In the programme frame a wheel point lies at the programme angle at which it passes the station's radius, so the
/// wiper moves towards growing angles. A break edge is the line n·p = offset, n pointing out of the copper; a make edge is
/// the same in the frame mirrored in its zero direction, so that one set of formulas serves both ends.</remarks>
/// <param name="End">Which end.</param>
/// <param name="NormalRad">Direction of n, in the frame of a break.</param>
/// <param name="OffsetMm">Distance of the line from the axis along n; 0 for a radial edge.</param>
public sealed record CopperEdge(EdgeEnd End, double NormalRad, double OffsetMm)
{
    /// <summary>Whether the edge is sloped to the radius, as an adjusting edge is.</summary>
    public bool IsSloped => OffsetMm != 0;

    private double Sense => End == EdgeEnd.Break ? 1 : -1;

    /// <summary>The radial edge on which the patch makes or breaks at a programme angle.</summary>
    /// <param name="end">Which end.</param>
    /// <param name="patch">The patch in the programme frame.</param>
    /// <param name="ringRadiusMm">Ring radius.</param>
    /// <param name="programmeRad">When it makes or breaks.</param>
    public static CopperEdge Radial(EdgeEnd end, ProgrammePatch patch, double ringRadiusMm, double programmeRad)
    {
        double sense = end == EdgeEnd.Break ? 1 : -1;
        LineTouch touch = patch.For(end).LeavesLine(Math.PI / 2, 0, ringRadiusMm);
        return new(end, (sense * programmeRad) - touch.AtRad + (Math.PI / 2), 0);
    }

    /// <summary>The sloped edge that lies with its normal at an angle to the wiper's radius when the patch leaves it.</summary>
    /// <param name="end">Which end.</param>
    /// <param name="patch">The patch in the programme frame.</param>
    /// <param name="ringRadiusMm">Ring radius at mid travel.</param>
    /// <param name="programmeRad">When the patch makes or breaks there.</param>
    /// <param name="normalRad">Direction of the normal from the wiper's radius at that moment, frame of a break; π/2 is nearly radial.</param>
    public static CopperEdge Sloped(EdgeEnd end, ProgrammePatch patch, double ringRadiusMm, double programmeRad, double normalRad)
    {
        double sense = end == EdgeEnd.Break ? 1 : -1;
        double offset = patch.For(end).LeastAlong(normalRad, ringRadiusMm);
        return new(end, (sense * programmeRad) + normalRad, offset);
    }

    /// <summary>The programme angle of the edge at a radius, rad (not reduced to one turn).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The line does not reach that radius.</exception>
    public double AngleAt(double radiusMm)
    {
        double share = OffsetMm / radiusMm;
        return Math.Abs(share) <= 1
            ? Sense * (NormalRad - Math.Acos(share))
            : throw new ArgumentOutOfRangeException(nameof(radiusMm), radiusMm, "The edge does not reach this radius.");
    }

    /// <summary>The same edge further on in the turn: seen from a station that it passes later, or earlier when negative.</summary>
    internal CopperEdge Later(double byRad) => this with { NormalRad = NormalRad + (Sense * byRad) };

    /// <summary>When a wiper on a ring radius first or last touches the edge, and how that changes along its travel.</summary>
    public EdgeTouch TouchOf(ProgrammePatch patch, double ringRadiusMm)
    {
        LineTouch touch = patch.For(End).LeavesLine(NormalRad, OffsetMm, ringRadiusMm);
        return new(Sense * touch.AtRad, Sense * touch.RadPerMm);
    }
}

/// <summary>The moment at which a patch first or last touches an edge.</summary>
/// <param name="AtRad">Programme angle of the wiper.</param>
/// <param name="RadPerMm">Change of the programme angle per millimetre that the wiper moves outward.</param>
public readonly record struct EdgeTouch(double AtRad, double RadPerMm);

/// <summary>The same in the frame of a break, inside this chapter only.</summary>
internal readonly record struct LineTouch(double AtRad, double RadPerMm);

/// <summary>A contact patch seen in the programme frame, where the wiper moves towards growing angles.</summary>
/// <remarks>Turning clockwise, programme angles run as wheel angles do; turning anticlockwise the frame is a mirror image.</remarks>
public sealed class ProgrammePatch
{
    private readonly Vector[] _corners;
    private readonly Vector[] _mirrored;
    private readonly double _discMm;

    /// <summary>A patch on a wheel that turns a given way.</summary>
    public ProgrammePatch(ContactPatch patch, Turning direction)
    {
        ArgumentNullException.ThrowIfNull(patch);
        _discMm = patch.IsDisc ? patch.HalfLengthMm : 0;
        double sense = direction == Turning.Clockwise ? 1 : -1;
        _corners = patch.IsDisc ? [] : [.. patch.Corners.Select(c => new Vector(c.X, sense * c.Y))];
        _mirrored = [.. _corners.Select(c => new Vector(c.X, -c.Y))];
    }

    /// <summary>How far the patch reaches beyond its station on a ring radius, as an angle: ahead at a radial make edge, behind at
    /// a radial break edge.</summary>
    public double ReachRad(EdgeEnd end, double ringRadiusMm) => For(end).LeavesLine(Math.PI / 2, 0, ringRadiusMm).AtRad;

    internal EdgePatchPoints PointsFor(EdgeEnd end) => new(end == EdgeEnd.Break ? _corners : _mirrored, _discMm);

    internal EdgePatch For(EdgeEnd end) => new(end == EdgeEnd.Break ? _corners : _mirrored, _discMm);
}

/// <summary>A patch in the frame of a break: corners about its centre, or a disc.</summary>
internal readonly ref struct EdgePatch(ReadOnlySpan<Vector> corners, double discMm)
{
    private readonly ReadOnlySpan<Vector> _corners = corners;

    /// <summary>When the last point of the patch passes the line n·p = offset.</summary>
    /// <remarks>A corner c on ring radius r passes when n is at atan2(c_y, r + c_x) + acos(offset / |c|) from the wiper's
    /// radius; a disc of radius ρ when it is at acos((offset + ρ) / r). Closed forms, no iteration.</remarks>
    public LineTouch LeavesLine(double normalRad, double offsetMm, double ringRadiusMm)
    {
        if (_corners.IsEmpty)
        {
            double cos = (offsetMm + discMm) / ringRadiusMm;
            double alpha = Math.Acos(cos);
            return new(normalRad - alpha, -cos / (ringRadiusMm * Math.Sin(alpha)));
        }

        double least = double.PositiveInfinity;
        Point last = default;
        foreach (Vector c in _corners)
        {
            Point corner = new(ringRadiusMm + c.X, c.Y);
            double alpha = corner.AngleRad + Math.Acos(offsetMm / corner.RadiusMm);
            if (alpha < least)
            {
                least = alpha;
                last = corner;
            }
        }

        (double sin, double cosine) = Math.SinCos(least);
        return new(normalRad - least, -cosine / ((last.X * sin) - (last.Y * cosine)));
    }

    /// <summary>The least of n·p over the patch, n at an angle from the wiper's radius.</summary>
    public double LeastAlong(double normalRad, double ringRadiusMm)
    {
        (double sin, double cos) = Math.SinCos(normalRad);
        if (_corners.IsEmpty)
        {
            return (ringRadiusMm * cos) - discMm;
        }

        double least = double.PositiveInfinity;
        foreach (Vector c in _corners)
        {
            least = Math.Min(least, ((ringRadiusMm + c.X) * cos) + (c.Y * sin));
        }

        return least;
    }
}
