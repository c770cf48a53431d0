using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A formed strip as the wiper side sees it: its edges in plan, mm.</summary>
/// <remarks>A leg that stands upright is a step in the way; a strip that turns back over itself is drawn as one ribbon for each way,
/// the lower first.</remarks>
internal static class StripRibbon
{
    // Legs shorter than this in plan stand upright, mm: a tenth of the thinnest stock.
    private const double UprightMm = 0.01;

    // An upright leg that leans back this little, as a share of its length, does not turn the strip: pressing alone leans one by some degrees.
    private const double LeaningShare = 0.3;

    /// <summary>The ribbons of a strip, free of the wheel, in seat coordinates.</summary>
    /// <param name="form">The strip.</param>
    public static IReadOnlyList<Contour> Of(StripForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return [.. WaysOf(form.Pieces.Select(RibbonPiece.Free)).Select(w => w.Closed())];
    }

    /// <summary>A strip as it lies when pressed on the wheel, in the housing: ribbons that reach as far as its thickness does, and its folds.</summary>
    /// <param name="strip">The strip in its place.</param>
    public static StripPlan Working(PlacedStrip strip)
    {
        ArgumentNullException.ThrowIfNull(strip);
        ILookup<int, WorkingStation> stations = strip.Working.ToLookup(s => s.Piece);
        RibbonPiece[] pieces = [.. strip.Form.Pieces.Select((p, i) => RibbonPiece.Pressed(p.Kind, [.. stations[i]])).Where(p => p.Places.Count > 1)];
        double half = strip.Form.Strip.ThicknessMm / 2;
        return new(
            [.. WaysOf(pieces).Select(w => w.Closed(half))],
            [.. pieces.Where(p => p.Kind == FormedKind.Fold).Select(p => new Segment(p.Middle.Edge(-1), p.Middle.Edge(1)))]);
    }

    /// <summary>From seat coordinates to the housing's plan.</summary>
    public static Placement ToHousing(SpacePlacement placement) =>
        Placement.Turn(placement.TurnRad).Then(Placement.Translation(new(placement.Shift.X, placement.Shift.Y)));

    private static IEnumerable<RibbonWay> WaysOf(IEnumerable<RibbonPiece> pieces)
    {
        List<RibbonWay> ways = [new()];
        List<RibbonPiece> upright = [];
        foreach (RibbonPiece piece in pieces)
        {
            bool turnsBack = piece.Way.Length >= UprightMm && ways[^1].Leaving is Vector before && before.Dot(piece.Entering) < 0;
            if (piece.Way.Length < UprightMm || (turnsBack && piece.Way.Length < piece.LengthMm * LeaningShare))
            {
                upright.Add(piece);
                continue;
            }

            if (turnsBack)
            {
                ways[^1].After.AddRange(upright);
                ways.Add(new());
            }

            if (ways[^1].Pieces.Count == 0)
            {
                ways[^1].Before.AddRange(upright);
            }

            ways[^1].Pieces.Add(piece);
            upright = [];
        }

        ways[^1].After.AddRange(upright);
        return ways.Where(w => w.Pieces.Count > 0);
    }

    /// <summary>What lies in one direction, as far as nothing turns back.</summary>
    private sealed class RibbonWay
    {
        public List<RibbonPiece> Pieces { get; } = [];

        /// <summary>Upright pieces before the first and after the last.</summary>
        public List<RibbonPiece> Before { get; } = [];

        public List<RibbonPiece> After { get; } = [];

        public Vector? Leaving => Pieces.Count == 0 ? null : Pieces[^1].Leaving;

        /// <summary>Its edge, ending where the middle of the sheet does, or as much further as the faces beside it reach.</summary>
        public Contour Closed(double halfMm = 0)
        {
            List<Piece> right = Chained(Pieces.Select(p => p.Side(-1)));
            List<Piece> left = Chained(Enumerable.Reverse(Pieces).Select(p => p.Side(1).Reversed()));
            if (halfMm > 0)
            {
                Vector back = Pieces[0].Entering * -BeyondMm([Pieces[0].First, .. Round(Pieces[0], Before)], (Pieces[0].First, -Pieces[0].Entering), halfMm);
                Vector on = Pieces[^1].Leaving * BeyondMm([Pieces[^1].Last, .. Round(Pieces[^1], After)], (Pieces[^1].Last, Pieces[^1].Leaving), halfMm);
                (Point rightStart, Point rightEnd, Point leftStart, Point leftEnd) = (right[0].Start + back, right[^1].End + on, left[0].Start + on, left[^1].End + back);
                right = [.. To(rightStart, right[0].Start), .. right, .. To(right[^1].End, rightEnd)];
                left = [.. To(leftStart, left[0].Start), .. left, .. To(left[^1].End, leftEnd)];
            }

            return new Contour([.. right, .. To(right[^1].End, left[0].Start), .. left, .. To(left[^1].End, right[0].Start)]);
        }

        // Behind a leg that leans back the next piece begins before the last one ended: there the next one's edge counts alone.
        private static List<Piece> Chained(IEnumerable<Piece> edges)
        {
            List<Piece> chain = [];
            foreach (Piece edge in edges)
            {
                bool IsBehind(Point end) => chain[^1] is Segment last && (edge.Start - end).Dot(last.Direction) < -Tolerances.JoinMm;
                while (chain.Count > 1 && IsBehind(chain[^1].Start))
                {
                    chain.RemoveAt(chain.Count - 1);
                }

                if (chain.Count > 0 && IsBehind(chain[^1].End) && chain[^1].Start.DistanceTo(edge.Start) > Tolerances.JoinMm)
                {
                    chain[^1] = new Segment(chain[^1].Start, edge.Start);
                }
                else if (chain.Count > 0)
                {
                    chain.AddRange(To(chain[^1].End, edge.Start));
                }

                chain.Add(edge);
            }

            return chain;
        }

        // Round a sweep the far end may lie behind the near one; what stands upright beside it does not.
        private static IEnumerable<RibbonPlace> Round(RibbonPiece piece, IEnumerable<RibbonPiece> upright) =>
            upright.Append(piece).Where(p => p.Kind != FormedKind.Sweep).SelectMany(p => p.Places);

        private static double BeyondMm(IEnumerable<RibbonPlace> places, (RibbonPlace End, Vector Way) from, double halfMm) =>
            places.SelectMany(p => new[] { halfMm, -halfMm }.Select(h => (p.Frame.At(0, 0, h).Plan - from.End.Frame.Origin.Plan).Dot(from.Way))).Append(0).Max();

        private static IEnumerable<Piece> To(Point from, Point to) =>
            from.DistanceTo(to) > Tolerances.JoinMm ? [new Segment(from, to)] : [];
    }

    /// <summary>A piece of a strip between places along it.</summary>
    private sealed record RibbonPiece(FormedKind Kind, IReadOnlyList<RibbonPlace> Places)
    {
        // A sweep that lies nearly level has arcs for edges, the cosine of its tilt.
        private const double NearlyLevel = 0.85;

        public RibbonPlace First => Places[0];

        public RibbonPlace Middle => Places[Places.Count / 2];

        public RibbonPlace Last => Places[^1];

        public Vector Way => Last.Frame.Origin.Plan - First.Frame.Origin.Plan;

        /// <summary>Length in space.</summary>
        public double LengthMm => Places.Zip(Places.Skip(1), (a, b) => (b.Frame.Origin - a.Frame.Origin).Length).Sum();

        public Vector Entering => (Kind == FormedKind.Sweep ? Level(First) : Way).Unit();

        public Vector Leaving => (Kind == FormedKind.Sweep ? Level(Last) : Way).Unit();

        public static RibbonPiece Free(FormedPiece piece) =>
            new(piece.Kind, [.. ((double[])[0, 0.5, 1]).Select(share => new RibbonPlace(piece.FrameAt(share), piece.WidthAt(share)))]);

        public static RibbonPiece Pressed(FormedKind kind, IReadOnlyList<WorkingStation> stations) =>
            new(kind, [.. stations.Select(s => new RibbonPlace(s.Frame, s.WidthMm))]);

        public Piece Side(int side)
        {
            (Point from, Point by, Point to) = (First.Edge(side), Middle.Edge(side), Last.Edge(side));
            bool isRound = Kind == FormedKind.Sweep && Places.All(p => p.Frame.Up.Z > NearlyLevel);
            return isRound ? Through(from, by, to) : new Segment(from, to);
        }

        private static Vector Level(RibbonPlace place) => new(place.Frame.Along.X, place.Frame.Along.Y);

        // The way turned at the middle point is half the arc's sweep.
        private static Piece Through(Point from, Point by, Point to)
        {
            const double straightRad = 1e-9;
            double turn = Math.Atan2((by - from).Cross(to - by), (by - from).Dot(to - by));
            return Math.Abs(turn) < straightRad ? new Segment(from, to) : Arc.FromBulge(from, to, Math.Tan(turn / 2));
        }
    }

    private readonly record struct RibbonPlace(StripFrame Frame, double WidthMm)
    {
        public Point Edge(int side) => Frame.At(0, side * WidthMm / 2, 0).Plan;
    }
}

/// <summary>A pressed strip in plan.</summary>
/// <param name="Ribbons">Its edges, one closed line for each way that it goes, the lower first.</param>
/// <param name="Folds">Its folds, each across the strip in the middle of the fold.</param>
internal sealed record StripPlan(IReadOnlyList<Contour> Ribbons, IReadOnlyList<Segment> Folds);
