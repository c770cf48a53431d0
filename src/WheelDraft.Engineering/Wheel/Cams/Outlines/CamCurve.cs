using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A point of a curve that a cam is cut along.</summary>
/// <param name="At">The place, in the wheel's frame.</param>
/// <param name="Tangent">Unit vector in the sense in which the programme angle grows.</param>
/// <param name="SpeedMm">Length of the curve by programme angle, mm/rad, above 0.</param>
/// <param name="Convexity">Curvature, 1/mm, positive where the cam bulges.</param>
internal readonly record struct CurvePoint(Point At, Vector Tangent, double SpeedMm, double Convexity);

/// <summary>A smooth curve over one stretch of a profile, known with its derivatives: the pitch curve of a roller, or the outline itself under a flat follower.</summary>
internal abstract class CamCurve(CamStretch stretch, double sigma)
{
    /// <summary>The stretch.</summary>
    public CamStretch Stretch => stretch;

    /// <summary>+1 where the wheel turns anticlockwise: the curve is then travelled clockwise.</summary>
    public double Sigma => sigma;

    /// <summary>The point at a programme angle of the stretch, unrolled.</summary>
    public abstract CurvePoint At(double programmeRad);

    /// <summary>Bounds over a part of the stretch within which no formula changes.</summary>
    public abstract CurveBounds Over(double fromRad, double toRad);

    /// <summary>Ends of the parts within which no formula changes.</summary>
    public IReadOnlyList<double> Cuts =>
        [stretch.FromRad, .. (stretch.Law is { } law ? MotionLaw.Breaks(law) : []).Select(u => stretch.FromRad + (u * stretch.SweepRad)), stretch.ToRad];

    /// <summary>How near the curve is to what its follower cannot follow at a programme angle: the convexity of a pitch curve, 1/mm; the radius of an outline under a
    /// flat face with its sign turned, mm.</summary>
    public abstract double Sharpness(double programmeRad);

    /// <summary>The greatest sharpness of the curve, to <see cref="SameShare"/> of it, and where: by halving, with a bound on how fast it changes.</summary>
    public (double Sharpness, double AtRad) Sharpest()
    {
        (double Sharpness, double AtRad) best = Sighted();
        Narrow(ref best, found => found.Sharpness + (SameShare * Math.Max(Math.Abs(found.Sharpness), LeastSharpness)), _ => false);
        return best;
    }

    /// <summary>Whether the curve is nowhere sharper than a limit, to <see cref="SameShare"/> of it; quicker than to look for its sharpest place.</summary>
    public bool IsNoSharperThan(double limit)
    {
        (double Sharpness, double AtRad) best = Sighted();
        double most = limit + (SameShare * Math.Max(Math.Abs(limit), LeastSharpness));
        Narrow(ref best, _ => most, found => found.Sharpness > most);
        return best.Sharpness <= most;
    }

    // The sharpest of a few places and what lies round it: a search that begins with it throws away almost all of the curve at once.
    private (double Sharpness, double AtRad) Sighted()
    {
        double[] places = [.. Cuts];
        if (stretch.Law is not null)
        {
            places = [.. places.Concat(Enumerable.Range(1, Sights - 1).Select(i => stretch.FromRad + (stretch.SweepRad * i / Sights))).Order()];
        }

        int sharpest = Enumerable.Range(0, places.Length).MaxBy(i => Sharpness(places[i]));
        (double Sharpness, double AtRad) best = (Sharpness(places[sharpest]), places[sharpest]);
        double low = places[Math.Max(sharpest - 1, 0)], high = places[Math.Min(sharpest + 1, places.Length - 1)];
        const double golden = 0.6180339887498949;
        for (int step = 0; step < SightSteps && high > low; step++)
        {
            double a = high - (golden * (high - low)), b = low + (golden * (high - low));
            double ofA = Sharpness(a), ofB = Sharpness(b);
            best = ofA > best.Sharpness ? (ofA, a) : best;
            best = ofB > best.Sharpness ? (ofB, b) : best;
            (low, high) = ofA >= ofB ? (low, b) : (a, high);
        }

        return best;
    }

    // Halves every part whose bound passes what may stay, which can grow with the sharpest place found.
    private void Narrow(ref (double Sharpness, double AtRad) best, Func<(double Sharpness, double AtRad), double> mayStay, Func<(double Sharpness, double AtRad), bool> isEnough)
    {
        Stack<(double From, double To)> open = new();
        IReadOnlyList<double> cuts = Cuts;
        for (int i = 1; i < cuts.Count && stretch.Law is not null; i++)
        {
            open.Push((cuts[i - 1], cuts[i]));
        }

        while (!isEnough(best) && open.TryPop(out (double From, double To) cell))
        {
            double middle = (cell.From + cell.To) / 2;
            double here = Sharpness(middle);
            best = here > best.Sharpness ? (here, middle) : best;
            double bound = here + (Over(cell.From, cell.To).SharpnessPerRad * (cell.To - cell.From) / 2);
            if (!(bound <= mayStay(best)) && cell.To - cell.From > LeastCellRad)
            {
                open.Push((middle, cell.To));
                open.Push((cell.From, middle));
            }
        }
    }

    // Places looked at before a search, and steps of the golden section between two of them.
    private const int Sights = 48;
    private const int SightSteps = 40;

    // A curve straighter than this, 1/mm, is straight.
    private const double LeastSharpness = 1e-3;

    /// <summary>How much sharper than found a place may be, as a share: a hundred-thousandth of a radius is some tens of nanometres.</summary>
    public const double SameShare = 1e-5;

    // A cell of this size, rad, is a point: less than a micrometre long on any cam.
    private const double LeastCellRad = 1e-8;
}

/// <summary>Bounds of a curve over a part of a stretch.</summary>
/// <param name="SpeedMm">Greatest length by programme angle, mm/rad.</param>
/// <param name="ConvexityPerRad">Greatest change of its convexity by programme angle; infinite where there is no bound.</param>
/// <param name="SharpnessPerRad">The same for what <see cref="CamCurve.Sharpness"/> gives.</param>
internal readonly record struct CurveBounds(double SpeedMm, double ConvexityPerRad, double SharpnessPerRad);

/// <summary>The path of a roller's axis in the wheel's frame.</summary>
internal sealed class PitchCurve(RollerPath path, CamStretch stretch, double sigma) : CamCurve(stretch, sigma)
{
    /// <inheritdoc/>
    public override CurvePoint At(double programmeRad)
    {
        (Vector place, Vector first, Vector second) = InHousing(programmeRad);
        double speed = first.Length;
        double turn = -Sigma * programmeRad;
        return new(Point.Origin + place.Turned(turn), (first / speed).Turned(turn), speed, -Sigma * first.Cross(second) / (speed * speed * speed));
    }

    /// <inheritdoc/>
    public override double Sharpness(double programmeRad) => At(programmeRad).Convexity;

    /// <summary>Pressure angle at a programme angle of the stretch: between the normal of the contact and the path of the roller's axis, rad, at least 0.</summary>
    public double PressureRad(double programmeRad)
    {
        Vector normal = InHousing(programmeRad).First.Unit().Left;
        Vector along = path.Along(Stretch.At(programmeRad).Lift).Unit();
        return Math.Atan2(Math.Abs(normal.Cross(along)), Math.Abs(normal.Dot(along)));
    }

    // Place and derivatives by programme angle, as the housing sees them at that angle: C, C_y y' − σJC, C_yy y'² + C_y y'' − 2σJ C_y y' − C.
    private (Vector Place, Vector First, Vector Second) InHousing(double programmeRad)
    {
        MotionPoint lift = Stretch.At(programmeRad);
        Vector place = path.At(lift.Lift) - Point.Origin;
        Vector along = path.Along(lift.Lift);
        Vector first = (along * lift.Velocity) - (place.Left * Sigma);
        Vector second = (path.Bend(lift.Lift) * (lift.Velocity * lift.Velocity)) + (along * lift.Acceleration) - (along.Left * (2 * Sigma * lift.Velocity)) - place;
        return (place, first, second);
    }

    /// <inheritdoc/>
    public override CurveBounds Over(double fromRad, double toRad)
    {
        double half = (toRad - fromRad) / 2;
        double middle = fromRad + half;
        (Vector place, Vector first, Vector second) = InHousing(middle);
        MotionPoint most = Stretch.Most(fromRad, toRad);
        double v = most.Velocity, a = most.Acceleration, j = most.Jerk, reach = path.Reach, bend = path.BendPerLift;

        // Third derivative in the turning frame: C_yyy y'³ + 3 C_yy y' y'' + C_y y''' − 3σJ (C_yy y'² + C_y y'') − 3 C_y y' + σJ C.
        double third = (reach * ((bend * v * v * v) + (3 * bend * v * a) + j + (3 * bend * v * v) + (3 * a) + (3 * v))) + place.Length + (reach * v * half);
        double mostSecond = second.Length + (third * half);
        double mostFirst = first.Length + (mostSecond * half);
        double leastFirst = first.Length - (mostSecond * half);

        // κ = N/D^(3/2), N = P'×P'', D = P'·P': |κ'| ≤ |P'''|/|P'|² + 3 |P''|²/|P'|³.
        double change = leastFirst > 0 ? (third / (leastFirst * leastFirst)) + (3 * mostSecond * mostSecond / (leastFirst * leastFirst * leastFirst)) : double.PositiveInfinity;
        return new(mostFirst, change, change);
    }
}
