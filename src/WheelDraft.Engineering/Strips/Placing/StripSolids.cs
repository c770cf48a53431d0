using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Turns a strip's working shape into prisms: one a leg, a leg that slopes or bends split so that its height varies little in each.</summary>
/// <remarks>A leg that rises more steeply than 45° is split by its plan place instead: its prism is exact in height, and more of
/// them would say nothing. Each leg runs on to the outer mould line of its folds.</remarks>
internal sealed class StripSolids
{
    // Height (or, on a steep leg, plan place) within one prism, mm: the parameter of the method, and what a prism may be too thick by.
    private const double VariesMm = 0.05;

    // Prisms are gathered from steps a fifth as high, so that few more are made than need be.
    private const double StepMm = VariesMm / 5;

    private readonly PlacedStrip _strip;
    private readonly Solid _pattern;
    private readonly SolidTolerance _moved;
    private readonly NoseReach _reach;
    private readonly TextPlace _place;
    private readonly ILookup<int, WorkingStation> _stations;
    private readonly List<Solid> _solids = [];
    private int _steps;

    private StripSolids(PlacedStrip strip, Solid pattern, SolidTolerance moved, NoseReach reach, TextPlace place)
    {
        _place = place;
        _strip = strip;
        _reach = reach;
        _pattern = pattern;
        _moved = moved;
        _stations = strip.Working.ToLookup(s => s.Piece);
    }

    private double Half => _strip.Form.Strip.ThicknessMm / 2;

    /// <summary>All prisms of a strip, from the terminal end to the tip.</summary>
    /// <exception cref="DesignRefusedException">Its legs slope over more than <see cref="Budgets.StripSteps"/>.</exception>
    /// <param name="strip">The placed strip; its solids are not read.</param>
    /// <param name="held">Tolerance of what is clamped.</param>
    /// <param name="moved">Tolerance of what lies beyond the clamp.</param>
    /// <param name="place">Where its shape stands in the file.</param>
    /// <param name="reach">How far its nose reaches; null for a strip without one.</param>
    internal static IReadOnlyList<Solid> Of(PlacedStrip strip, SolidTolerance held, SolidTolerance moved, TextPlace place, NoseReach? reach = null)
    {
        SolidKind kind = string.Equals(strip.Net, "E", StringComparison.Ordinal) ? SolidKind.Earthed : SolidKind.Live;
        Solid pattern = new(strip.Form.Strip.Name, strip.Net, kind, Turns: false, 0, 0, NoOutline) { Tolerance = held };
        return new StripSolids(strip, pattern, moved, reach ?? new(0, 0, 0), place).Run();
    }

    private static readonly Outline NoOutline = new(Contour.Rectangle(new(0, 0), new(1, 1)));

    private List<Solid> Run()
    {
        IReadOnlyList<FormedPiece> pieces = _strip.Form.Pieces;
        for (int i = 0; i < pieces.Count; i++)
        {
            if (pieces[i].Kind != FormedKind.Fold)
            {
                AddPiece(i);
            }
            else
            {
                AddMouldLegs(i);
            }
        }

        if (_strip.Form.Nose?.Rivet is StripRivet rivet && _strip.WorkingContact is SpaceVector at)
        {
            Outline head = new(Contour.Circle(at.Plan, rivet.DiameterMm / 2));
            _solids.Add(_pattern with { FromZMm = at.Z, ToZMm = at.Z + rivet.HeightMm, Outline = head, IsNose = true, Tolerance = _moved });
        }

        return _solids;
    }

    private List<WorkingStation> StationsOf(int piece) => [.. _stations[piece]];

    private void AddPiece(int index)
    {
        List<WorkingStation> line = Refined(StationsOf(index));
        int fold = _strip.Form.Nose is { Rivet: null } nose ? nose.PieceIndex : -1;
        if (fold >= 0 && line.Count > 0 && ((_reach.After && index == fold + 1) || (_reach.Before && index == fold - 1)))
        {
            AddLeg(line, index, fromStart: index > fold);
        }
        else
        {
            AddRuns(line, index, isNose: false);
        }
    }

    // A leg beside a contact fold is nose up to where its underside is first high enough; stations are no more than a step apart there.
    private void AddLeg(List<WorkingStation> line, int index, bool fromStart)
    {
        bool IsHigh(WorkingStation s) => Corners(s).Min(c => c.Z) >= _reach.ToMm;
        int last = line.Count - 1;
        int cut = fromStart ? line.FindIndex(IsHigh) : line.FindLastIndex(IsHigh);
        cut = cut >= 0 ? cut : fromStart ? last : 0;
        int before = _solids.Count;
        AddRuns(line[..(cut + 1)], index, isNose: false);
        int between = _solids.Count;
        AddRuns(line[cut..], index, isNose: false);
        (int from, int to) = fromStart ? (before, between) : (between, _solids.Count);
        for (int i = from; i < to; i++)
        {
            _solids[i] = _solids[i] with { NoseRingMm = _reach.RingMm };
        }
    }

    // Gathers stations into runs within which the height varies little, one prism each.
    private void AddRuns(List<WorkingStation> line, int index, bool isNose)
    {
        if (line.Count < 2)
        {
            return;
        }

        bool steep = IsSteep(line);
        List<WorkingStation> run = [line[0]];
        HeightSpread spread = HeightSpread.Of(line[0]);
        foreach (WorkingStation next in line.Skip(1))
        {
            HeightSpread wider = spread.With(HeightSpread.Of(next));
            if (run.Count > 1 && (wider.Over(steep) > VariesMm || CrossesClamp(run[^1].AtMm, run[0].AtMm)))
            {
                Add(run, index, isNose);
                run = [run[^1]];
                wider = HeightSpread.Of(run[0]).With(HeightSpread.Of(next));
            }

            run.Add(next);
            spread = wider;
        }

        Add(run, index, isNose);
    }

    // A run stops where the clamp ends, so that what is held and what moves carry their own tolerances.
    private bool CrossesClamp(double lastMm, double firstMm) =>
        lastMm >= _strip.Form.Clamp.ToMm && firstMm < _strip.Form.Clamp.ToMm;

    private static bool IsSteep(List<WorkingStation> line) =>
        line.All(s => Math.Abs(s.Frame.Along.Z) > Math.Sqrt(0.5));

    // The two legs of a fold beyond its tangent lines, up to where their outer faces meet.
    private void AddMouldLegs(int index)
    {
        FormedPiece fold = _strip.Form.Pieces[index];
        List<WorkingStation> line = StationsOf(index);
        bool isNose = _strip.Form.Nose is { Rivet: null } nose && nose.PieceIndex == index;
        double reach = (fold.RadiusMm + Half) * MouldShare(fold.AngleRad);
        AddExtension(line[0], reach, index, isNose);
        AddExtension(line[^1], -reach, index, isNose);
    }

    // tan(θ/2) up to twice; past that (127°) the mould lines run away from the metal, which never goes further than R + t.
    private static double MouldShare(double angleRad)
    {
        const double most = 2;
        double half = Math.Abs(angleRad) / 2;
        return half < Math.Atan(most) ? Math.Tan(half) : most;
    }

    private void AddExtension(WorkingStation at, double byMm, int index, bool isNose)
    {
        StripFrame frame = at.Frame with { Origin = at.Frame.Origin + (at.Frame.Along * byMm) };
        List<WorkingStation> leg = byMm > 0 ? [at, at with { Frame = frame }] : [at with { Frame = frame }, at];
        AddRuns(Refined(leg), index, isNose);
    }

    // Stations close enough that the height (plan place of a steep leg) changes by one step at most: cubic between the given ones.
    private List<WorkingStation> Refined(List<WorkingStation> line)
    {
        List<WorkingStation> fine = [];
        bool steep = IsSteep(line);
        for (int i = 0; i + 1 < line.Count; i++)
        {
            double varies = HeightSpread.Of(line[i]).With(HeightSpread.Of(line[i + 1])).Over(steep);
            int cells = Math.Max(1, (int)Math.Min(Math.Ceiling(varies / StepMm), Budgets.StripSteps + 1));
            _steps += cells;
            if (_steps > Budgets.StripSteps)
            {
                throw TooLong();
            }

            for (int k = 0; k < cells; k++)
            {
                fine.Add(k == 0 ? line[i] : Between(line[i], line[i + 1], (double)k / cells));
            }
        }

        if (line.Count > 0)
        {
            fine.Add(line[^1]);
        }

        return fine;
    }

    private DesignRefusedException TooLong() => new(
        "strip.too-long",
        $"The sloping legs of strip \"{_strip.Form.Strip.Name}\" rise or reach over more than {Wording.Mm(Budgets.StripSteps * StepMm)} in all when it is pressed, too far for its spacing to be measured piece by piece. Shorter legs, or folds that leave them level or upright.",
        _place);

    // Hermite's cubic through two places with their directions: a bent leg is one to the fourth order of the step.
    private static WorkingStation Between(WorkingStation a, WorkingStation b, double u)
    {
        SpaceVector chord = b.Frame.Origin - a.Frame.Origin;
        double length = chord.Length;
        double v = 1 - u;
        SpaceVector origin = a.Frame.Origin
            + (chord * (u * u * (3 - (2 * u))))
            + (a.Frame.Along * (length * u * v * v))
            - (b.Frame.Along * (length * u * u * v));
        SpaceVector along = ((a.Frame.Along * v) + (b.Frame.Along * u)).Unit();
        SpaceVector up = (a.Frame.Up * v) + (b.Frame.Up * u);
        return new WorkingStation(
            a.Piece,
            a.AtMm + ((b.AtMm - a.AtMm) * u),
            new(origin, along, (up - (along * up.Dot(along))).Unit()),
            a.WidthMm + ((b.WidthMm - a.WidthMm) * u),
            a.LiftMm + ((b.LiftMm - a.LiftMm) * u));
    }

    private void Add(List<WorkingStation> run, int index, bool isNose)
    {
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        List<Point> corners = [];
        foreach (WorkingStation s in run)
        {
            foreach (SpaceVector corner in Corners(s))
            {
                (low, high) = (Math.Min(low, corner.Z), Math.Max(high, corner.Z));
                corners.Add(corner.Plan);
            }
        }

        // The nose itself ends at the face it rides on: what the mould lines add below it is not there.
        low = isNose ? Math.Max(low, _reach.RideMm) : low;
        Contour? contour = _strip.Form.Pieces[index].Kind == FormedKind.Sweep && !IsSloping(run) ? Sector(run) : Hull(corners);
        if (contour is null || high <= low)
        {
            return;
        }

        bool held = run[^1].AtMm <= _strip.Form.Clamp.ToMm + 1e-9 && _strip.Form.Pieces[index].Kind != FormedKind.Fold;
        bool seated = Math.Abs(low - _strip.Form.SeatLevelMm) < VariesMm;
        _solids.Add(_pattern with
        {
            FromZMm = low,
            ToZMm = high,
            Outline = new Outline(contour),
            IsNose = isNose,
            OnSurface = seated ? _strip.Form.Strip.SeatedOn : null,
            Tolerance = held ? _pattern.Tolerance : _moved,
        });
    }

    // A sweep's plan edges are arcs as long as it lies nearly level.
    private static bool IsSloping(List<WorkingStation> run) => run.Any(s => Math.Abs(s.Frame.Along.Z) > 0.5 || s.Frame.Up.Z < 0.85);

    private IEnumerable<SpaceVector> Corners(WorkingStation s)
    {
        double w = s.WidthMm / 2;
        yield return s.Frame.At(0, w, Half);
        yield return s.Frame.At(0, -w, Half);
        yield return s.Frame.At(0, w, -Half);
        yield return s.Frame.At(0, -w, -Half);
    }

    private static Contour Sector(List<WorkingStation> run)
    {
        WorkingStation middle = run.Count > 2 ? run[run.Count / 2] : Between(run[0], run[^1], 0.5);
        Point Edge(WorkingStation s, int side) => s.Frame.At(0, side * s.WidthMm / 2, 0).Plan;
        Piece right = Through(Edge(run[0], -1), Edge(middle, -1), Edge(run[^1], -1));
        Piece left = Through(Edge(run[^1], 1), Edge(middle, 1), Edge(run[0], 1));
        return new Contour([right, new Segment(right.End, left.Start), left, new Segment(left.End, right.Start)]);
    }

    // The arc through three points: the way turned at the middle one is half its sweep.
    private static Piece Through(Point from, Point by, Point to)
    {
        Vector first = by - from;
        Vector second = to - by;
        double turn = Math.Atan2(first.Cross(second), first.Dot(second));
        const double straightRad = 1e-9;
        return Math.Abs(turn) < straightRad ? new Segment(from, to) : Arc.FromBulge(from, to, Math.Tan(turn / 2));
    }

    // Convex hull by the monotone chain of Andrew (1979), anticlockwise; a straight piece of constant or tapering width is convex.
    private static Contour? Hull(List<Point> points)
    {
        const double flatMm2 = 1e-9;
        Point[] sorted = [.. points];
        Array.Sort(sorted, (a, b) => a.X.CompareTo(b.X) is var x and not 0 ? x : a.Y.CompareTo(b.Y));
        List<Point> hull = [];
        void Walk(IEnumerable<Point> way, int keep)
        {
            foreach (Point p in way)
            {
                while (hull.Count > keep && (hull[^1] - hull[^2]).Cross(p - hull[^1]) <= flatMm2)
                {
                    hull.RemoveAt(hull.Count - 1);
                }

                hull.Add(p);
            }
        }

        Walk(sorted, 1);
        Walk(sorted.Reverse().Skip(1), hull.Count);
        if (hull.Count > 1)
        {
            hull.RemoveAt(hull.Count - 1);
        }

        // Corners that rounding set apart are one.
        const double sameMm = 1e-7;
        List<Point> apart = [];
        foreach (Point p in hull)
        {
            if (apart.Count == 0 || apart[^1].DistanceTo(p) > sameMm)
            {
                apart.Add(p);
            }
        }

        if (apart.Count > 1 && apart[^1].DistanceTo(apart[0]) <= sameMm)
        {
            apart.RemoveAt(apart.Count - 1);
        }

        return apart.Count < 3 ? null : Contour.Polygon(apart);
    }

    /// <summary>How far two edges of a run of stations reach, in height and in plan.</summary>
    private readonly record struct HeightSpread(double LowLeft, double HighLeft, double LowRight, double HighRight, Bounds Plan)
    {
        internal static HeightSpread Of(WorkingStation s)
        {
            double left = s.Frame.At(0, s.WidthMm / 2, 0).Z;
            double right = s.Frame.At(0, -s.WidthMm / 2, 0).Z;
            return new(left, left, right, right, Bounds.Of(s.Frame.Origin.Plan));
        }

        internal HeightSpread With(HeightSpread o) => new(
            Math.Min(LowLeft, o.LowLeft),
            Math.Max(HighLeft, o.HighLeft),
            Math.Min(LowRight, o.LowRight),
            Math.Max(HighRight, o.HighRight),
            Plan.With(o.Plan));

        internal double Over(bool steep) =>
            steep ? new Vector(Plan.Width, Plan.Height).Length : Math.Max(HighLeft - LowLeft, HighRight - LowRight);
    }
}
