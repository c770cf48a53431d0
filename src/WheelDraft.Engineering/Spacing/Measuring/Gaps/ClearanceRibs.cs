using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Ribs that stand in the way of the shortest line through air.</summary>
/// <remarks>Where a rib is in the way the clearance is a taut string over or round it; a rib that is in nobody's way changes nothing.
/// What moves an end by δ changes the string by no more, so tolerances are taken off its length.</remarks>
internal sealed class ClearanceRibs(IReadOnlyList<RibBox> boxes)
{
    /// <summary>No rib at all.</summary>
    internal static ClearanceRibs None { get; } = new([]);

    /// <summary>A gap as drawn, pulled over ribs.</summary>
    /// <param name="straight">The straight gap.</param>
    /// <param name="limitMm">Worst gaps from here on are of no interest.</param>
    internal SolidGap Over(SolidGap straight, double limitMm) =>
        boxes.Count == 0 || straight.WorstMm >= limitMm || straight.NominalMm == 0
            ? straight
            : WithString(straight, new TautString(StringEnd.Of(straight.First), StringEnd.Of(straight.Second), boxes).Pull(ReachMm(straight, limitMm)));

    /// <summary>A gap over the whole turn, pulled over ribs: the turning solid is everything that it sweeps.</summary>
    internal SolidGap OverSwept(SolidGap straight, double limitMm)
    {
        if (boxes.Count == 0 || straight.WorstMm >= limitMm || straight.NominalMm == 0)
        {
            return straight;
        }

        StringEnd swept = new(SweptShape.Whole(straight.Second.Outline), straight.Second.FromZMm, straight.Second.ToZMm);
        return WithString(straight, new TautString(StringEnd.Of(straight.First), swept, boxes).Pull(ReachMm(straight, limitMm)));
    }

    /// <summary>A certified gap over parts of the turn, pulled over ribs.</summary>
    internal SolidGap OverInPart(SolidGap straight, IReadOnlyList<TurnRange> ranges, double limitMm) =>
        boxes.Count == 0 || straight.WorstMm >= limitMm || straight.NominalMm == 0
            ? straight
            : StringInPart.Least(straight, ranges, boxes) is { } least
                ? WithString(straight with { TurnedRad = least.TurnedRad, Bounds = least.Bounds }, least.Pulled)
                : straight;

    /// <summary>How long a string is still of interest.</summary>
    private static double ReachMm(SolidGap gap, double limitMm) => limitMm + ToleranceMm(gap);

    private static double ToleranceMm(SolidGap gap) => SolidPair.Hypotenuse(
        SolidPair.PlanToleranceMm(gap.First, gap.Second), SolidPair.HeightToleranceMm(gap.First, gap.Second));

    private static SolidGap WithString(SolidGap straight, PulledString pulled)
    {
        if (pulled.Bends.Count <= 2)
        {
            return straight;
        }

        return straight with
        {
            NominalMm = Math.Max(straight.NominalMm, pulled.LengthMm),
            WorstMm = Math.Max(straight.WorstMm, pulled.LengthMm - ToleranceMm(straight)),
            OnFirst = pulled.Bends[0],
            OnSecond = pulled.Bends[^1],
            String = pulled.Bends,
        };
    }
}

/// <summary>One straight stretch of a rib as an upright box.</summary>
/// <param name="Name">The rib.</param>
/// <param name="Start">One end of its centre line.</param>
/// <param name="End">The other end.</param>
/// <param name="ThicknessMm">Thickness, above 0.</param>
/// <param name="LevelMm">Where it stands, z.</param>
/// <param name="TopMm">Its upper edge, z, above its level.</param>
internal sealed record RibBox(string Name, Point Start, Point End, double ThicknessMm, double LevelMm, double TopMm)
{
    /// <summary>How far the surface under a rib goes down at least, mm: nothing slips under a rib along the surface.</summary>
    private const double SurfaceMm = 1;

    /// <summary>A string may be this far inside and still lie on the wall, mm.</summary>
    private const double SkinMm = 1e-7;

    private readonly Vector _along = (End - Start).Unit();

    /// <summary>The edges over or round which a string can bend: four above, four upright.</summary>
    internal IReadOnlyList<StringEdge> Edges
    {
        get
        {
            Vector off = _along.Left * (ThicknessMm / 2);
            Point[] corners = [Start + off, End + off, End - off, Start - off];
            List<StringEdge> edges = [];
            for (int i = 0; i < 4; i++)
            {
                edges.Add(new StringEdge(SpacePoint.At(corners[i], TopMm), SpacePoint.At(corners[(i + 1) % 4], TopMm)));
                edges.Add(new StringEdge(SpacePoint.At(corners[i], LevelMm), SpacePoint.At(corners[i], TopMm)));
            }

            return edges;
        }
    }

    /// <summary>Whether a straight line runs through it.</summary>
    internal bool Blocks(SpacePoint from, SpacePoint to)
    {
        double enter = 0, leave = 1;
        Vector a = from.Plan - Start, b = to.Plan - Start;
        double length = (End - Start).Length;
        return Clip(a.Dot(_along), b.Dot(_along), SkinMm, length - SkinMm, ref enter, ref leave)
            && Clip(_along.Cross(a), _along.Cross(b), SkinMm - (ThicknessMm / 2), (ThicknessMm / 2) - SkinMm, ref enter, ref leave)
            && Clip(from.Z, to.Z, LevelMm - SurfaceMm, TopMm - SkinMm, ref enter, ref leave)
            && (leave - enter) * from.DistanceTo(to) > SkinMm;
    }

    private static bool Clip(double from, double to, double least, double most, ref double enter, ref double leave)
    {
        double step = to - from;
        if (step == 0)
        {
            return from > least && from < most;
        }

        double atLeast = (least - from) / step, atMost = (most - from) / step;
        enter = Math.Max(enter, Math.Min(atLeast, atMost));
        leave = Math.Min(leave, Math.Max(atLeast, atMost));
        return enter < leave;
    }
}

/// <summary>An edge that a string bends over.</summary>
internal sealed record StringEdge(SpacePoint Start, SpacePoint End)
{
    private readonly double _length = Start.DistanceTo(End);

    /// <summary>The place on it over which the way between two places is shortest.</summary>
    internal SpacePoint Tightest(SpacePoint from, SpacePoint to)
    {
        // Turned about the edge into one plane the way is straight.
        double alongFrom = Along(from), alongTo = Along(to);
        double offFrom = Off(from, alongFrom), offTo = Off(to, alongTo);
        double off = offFrom + offTo;
        double at = off > 0 ? ((alongFrom * offTo) + (alongTo * offFrom)) / off : alongFrom;
        return Start.Towards(End, Math.Clamp(at, 0, _length) / _length);
    }

    private double Along(SpacePoint p) =>
        (((p.X - Start.X) * (End.X - Start.X)) + ((p.Y - Start.Y) * (End.Y - Start.Y)) + ((p.Z - Start.Z) * (End.Z - Start.Z))) / _length;

    private double Off(SpacePoint p, double along) => p.DistanceTo(Start.Towards(End, along / _length));
}

/// <summary>What a string ends on: a plan shape over a range of heights.</summary>
internal sealed record StringEnd(Outline Outline, double FromZMm, double ToZMm)
{
    internal static StringEnd Of(Solid solid) => new(solid.Outline, solid.FromZMm, solid.ToZMm);

    /// <summary>Its nearest place.</summary>
    internal SpacePoint Nearest(SpacePoint to) =>
        SpacePoint.At(Distances.Between(to.Plan, Outline).OnSecond, Math.Clamp(to.Z, FromZMm, ToZMm));
}
