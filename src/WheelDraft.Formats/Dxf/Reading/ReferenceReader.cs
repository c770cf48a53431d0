using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>References to blocks (INSERT).</summary>
internal static class ReferenceReader
{
    internal static SourceReference Read(DxfRecord record, Placement frame)
    {
        string block = record.Text(2) ?? throw record.Fault("it names no block (group 2)");
        double sx = record.Number(41, 1);
        double sy = record.Number(42, 1);
        double turn = Angles.RadFromDeg(record.Number(50, 0));
        Mapping local = Scaled(record, sx, sy)
            .Then(Placement.Turn(turn))
            .Then(Placement.Translation(record.Point(10) - Point.Origin))
            .Then(frame);
        int columns = Count(record, 70);
        int rows = Count(record, 71);
        Placement direction = Placement.Turn(turn).Then(frame);
        return new(record.Layer, record.Source, block, new(
            local,
            columns,
            rows,
            direction.Of(new Vector(record.Number(44, 0), 0)),
            direction.Of(new Vector(0, record.Number(45, 0)))));
    }

    /// <summary>One scale both ways keeps arcs arcs; negative ones mirror.</summary>
    private static Mapping Scaled(DxfRecord record, double sx, double sy)
    {
        const double rounding = 1e-9;
        double size = Math.Abs(sx);
        if (sx == 0 || sy == 0)
        {
            throw record.Fault($"its scales {FixedPoint.Short(sx, 6)} and {FixedPoint.Short(sy, 6)} leave nothing of it; neither may be 0");
        }

        if (Math.Abs(size - Math.Abs(sy)) > rounding * size)
        {
            return Mapping.Scaling(sx, sy);
        }

        Placement mirror = (sx < 0) != (sy < 0) ? Placement.MirrorInX : Placement.Identity;
        return Mapping.Of(mirror.Then(Placement.Scaling(size)).Then(Placement.Turn(sx < 0 ? Math.PI : 0)));
    }

    private static int Count(DxfRecord record, int code)
    {
        int count = record.Whole(code, 1);
        return count >= 0 ? Math.Max(count, 1) : throw record.Fault($"it asks for {FixedPoint.Short(count, 0)} rows or columns");
    }
}
