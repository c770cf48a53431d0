using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Ribs that stand in the way of the shortest line through air.</summary>
/// <remarks>Where a rib is in the way the clearance is a taut string over or round it; a rib beside the way changes nothing.
/// What moves an end by δ changes the string by no more, so tolerances are taken off its length.</remarks>
internal sealed class ClearanceRibs(IReadOnlyList<RibBox> boxes, IReadOnlyList<RibBox>? worstBoxes = null)
{
    /// <summary>Ribs as small as their tolerance lets them be: what the worst figures go over; the drawn ones when there is none.</summary>
    private readonly IReadOnlyList<RibBox> _worst = worstBoxes ?? boxes;

    /// <summary>No rib at all.</summary>
    internal static ClearanceRibs None { get; } = new([]);

    /// <summary>The ribs of fixed surfaces.</summary>
    internal static ClearanceRibs On(IReadOnlyList<InsulatingSurface> surfaces)
    {
        InsulatingSurface[] still = [.. surfaces.Where(s => !s.Turns)];
        RibBox[] drawn = [.. still.SelectMany(s => s.RibBoxes())];
        return new(drawn, still.All(s => s.FaceMm == 0) ? drawn : [.. still.Select(WorstBarriers.On).SelectMany(s => s.RibBoxes())]);
    }

    /// <summary>A gap as drawn, pulled over ribs.</summary>
    /// <param name="straight">The straight gap.</param>
    /// <param name="limitMm">Worst gaps from here on are of no interest.</param>
    internal SolidGap Over(SolidGap straight, double limitMm) => IsFree(straight, limitMm)
        ? straight
        : Pulled(straight, limitMm, StringEnd.Of(straight.Second));

    /// <summary>A gap over the whole turn, pulled over ribs: the turning solid is everything that it sweeps.</summary>
    internal SolidGap OverSwept(SolidGap straight, double limitMm) => IsFree(straight, limitMm)
        ? straight
        : Pulled(straight, limitMm, new(SweptShape.Whole(straight.Second.Outline), straight.Second.FromZMm, straight.Second.ToZMm));

    /// <summary>A certified gap over parts of the turn, pulled over ribs.</summary>
    internal SolidGap OverInPart(SolidGap straight, IReadOnlyList<TurnRange> ranges, double limitMm)
    {
        if (IsFree(straight, limitMm) || StringInPart.Least(straight, ranges, _worst) is not { } least)
        {
            return straight;
        }

        SolidGap worst = WithString(straight with { TurnedRad = least.TurnedRad, Bounds = least.Bounds }, least.Pulled);
        return ReferenceEquals(_worst, boxes) || StringInPart.Least(straight, ranges, boxes) is not { } drawn
            ? worst
            : WithString(straight with { TurnedRad = drawn.TurnedRad, Bounds = drawn.Bounds }, drawn.Pulled) with
            {
                WorstMm = Math.Max(0, worst.WorstMm - (least.Bounds.UpperMm - least.Bounds.LowerMm)),
            };
    }

    private bool IsFree(SolidGap straight, double limitMm) => boxes.Count == 0 || straight.WorstMm >= limitMm || straight.NominalMm == 0;

    private SolidGap Pulled(SolidGap straight, double limitMm, StringEnd second)
    {
        StringEnd first = StringEnd.Of(straight.First);
        SolidGap worst = WithString(straight, new TautString(first, second, _worst).Pull(ReachMm(straight, limitMm)));
        return ReferenceEquals(_worst, boxes) || worst.WorstMm >= limitMm
            ? worst
            : WithString(straight, new TautString(first, second, boxes).Pull()) with { WorstMm = worst.WorstMm };
    }

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

    /// <summary>How many edges a box has over or round which a string can bend.</summary>
    internal const int EdgeCount = 8;

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

    /// <summary>Its plan; null for an upright one, and for one too short to be a piece.</summary>
    internal Segment? Plan { get; } = Start.Plan.DistanceTo(End.Plan) <= Tolerances.ShortestPieceMm ? null : new Segment(Start.Plan, End.Plan);

    internal double LowMm => Math.Min(Start.Z, End.Z);

    internal double HighMm => Math.Max(Start.Z, End.Z);

    /// <summary>The place on it over which the way between two places is shortest; for a string that is thick there, √(d² + t²) long where it is d to the next place.</summary>
    internal SpacePoint Tightest(SpacePoint from, SpacePoint to, double thickMm = 0)
    {
        // Turned about the edge into one plane the way is straight.
        double alongFrom = Along(from), alongTo = Along(to);
        double offFrom = Off(from, alongFrom), offTo = Off(to, alongTo);
        if (thickMm > 0)
        {
            (offFrom, offTo) = (SolidPair.Hypotenuse(offFrom, thickMm), SolidPair.Hypotenuse(offTo, thickMm));
        }

        double off = offFrom + offTo;
        double at = off > 0 ? ((alongFrom * offTo) + (alongTo * offFrom)) / off : alongFrom;
        return Start.Towards(End, Math.Clamp(at, 0, _length) / _length);
    }

    /// <summary>Where a place on it comes that has moved once and moves on by so many of that step; null where it would come to an end. One that has not moved stays.</summary>
    internal SpacePoint? Moved(SpacePoint before, SpacePoint now, double steps)
    {
        double along = Along(now), ahead = along + (steps * (along - Along(before)));
        return ahead == along ? now : ahead > 0 && ahead < _length ? Start.Towards(End, ahead / _length) : null;
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
