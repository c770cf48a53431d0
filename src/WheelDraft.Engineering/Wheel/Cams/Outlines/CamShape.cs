using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A cam to be shaped.</summary>
/// <param name="Profile">What its lever does.</param>
/// <param name="Lever">How the lever moves.</param>
/// <param name="RollerMm">Radius of the roller, mm; null for a flat follower.</param>
/// <param name="Sigma">+1 where the wheel turns anticlockwise.</param>
internal sealed record CamTask(CamProfile Profile, LeverBrief Lever, double? RollerMm, double Sigma);

/// <summary>A cam of one base radius: its curves, steps, and what can be asked of them before anything is fitted.</summary>
internal sealed class CamShape
{
    // Steps of a stretch at which pressure angles are looked at before the greatest is found between its neighbours.
    private const int Looks = 240;

    private readonly RollerPath? _path;
    private readonly FlatFace? _face;
    private readonly Lazy<(double PressureRad, double AtRad)> _pressure;
    private readonly Lazy<(double Sharpness, double AtRad)> _sharpest;

    private CamShape(CamTask task, double baseMm, RollerPath? path, FlatFace? face)
    {
        (Task, BaseMm, _path, _face) = (task, baseMm, path, face);
        _pressure = new(FindPressure);
        _sharpest = new(() => Curves!.Select(c => c.Sharpest()).MaxBy(s => s.Sharpness));
        Curves = [.. task.Profile.Stretches.Where(s => !s.Falls).Select(s => (CamCurve)(path is not null ? new PitchCurve(path, s, task.Sigma) : new FlatCurve(face!, s, task.Sigma)))];
        Drops = [.. task.Profile.Stretches.Where(s => s.Falls).Select(s => path is not null ? DropFaces.UnderRoller(path, (task.RollerMm!.Value, task.Sigma), s) : DropFaces.UnderFlat(face!, task.Sigma, s))];
    }

    /// <summary>What was asked.</summary>
    public CamTask Task { get; }

    /// <summary>From the axis to the cam's face at rest, mm.</summary>
    public double BaseMm { get; }

    /// <summary>One curve a stretch, falls left out, in turning order.</summary>
    public IReadOnlyList<CamCurve> Curves { get; }

    /// <summary>The steps.</summary>
    public IReadOnlyList<DropFace> Drops { get; }

    /// <summary>How far the outline runs inside the curves, mm.</summary>
    public double InwardMm => Task.RollerMm ?? 0;

    /// <summary>A cam of a base radius; null when its lever does not reach that circle, or its lift would at last bring the follower nearer to the axis.</summary>
    public static CamShape? Of(CamTask task, double baseMm)
    {
        double top = task.Profile.TopLift;
        if (task.RollerMm is not double roller)
        {
            FlatFace? face = FlatFace.Of(task.Lever, baseMm);
            bool fits = face is SlidingFace || (face is SwingingFace swinging && swinging.RestRad + top < Math.PI / 2);
            return fits ? new(task, baseMm, null, face) : null;
        }

        RollerPath? path = RollerPath.Of(task.Lever, baseMm + roller);
        return path is not null && (path.At(top) - Point.Origin).Dot(path.Along(top)) > 0 && (path.At(0) - Point.Origin).Dot(path.Along(0)) > 0 ? new(task, baseMm, path, null) : null;
    }

    /// <summary>The lift of the lever at a programme angle, resting on the cam, steps counted as they are.</summary>
    public double LiftAt(double programmeRad)
    {
        foreach (DropFace drop in Drops)
        {
            double at = drop.HeldToRad + Angles.InTurn(programmeRad - drop.HeldToRad);
            if (at < drop.ClearRad)
            {
                return drop.LiftAt(at);
            }
        }

        (CamStretch stretch, double unrolled) = Task.Profile.Find(programmeRad);
        return stretch.At(unrolled).Lift;
    }

    /// <summary>How fast the lift changes by programme angle while a law moves the lever; 0 on rides and steps.</summary>
    public MotionPoint MotionAt(double programmeRad)
    {
        (CamStretch stretch, double unrolled) = Task.Profile.Find(programmeRad);
        return IsOverStep(programmeRad) ? new(LiftAt(programmeRad), 0, 0, 0) : stretch.At(unrolled);
    }

    /// <summary>Pressure angle at a programme angle, rad; null over a step, 0 under a flat face.</summary>
    public double? PressureRad(double programmeRad)
    {
        if (IsOverStep(programmeRad))
        {
            return null;
        }

        (CamStretch stretch, double unrolled) = Task.Profile.Find(programmeRad);
        return Curves.First(c => ReferenceEquals(c.Stretch, stretch)) is PitchCurve pitch ? pitch.PressureRad(unrolled) : 0;
    }

    private bool IsOverStep(double programmeRad) => Drops.Any(d => Angles.InTurn(programmeRad - d.HeldToRad) < d.ClearRad - d.HeldToRad);

    /// <summary>The greatest pressure angle and where, programme angle unrolled.</summary>
    public (double PressureRad, double AtRad) MostPressure() => _pressure.Value;

    private (double PressureRad, double AtRad) FindPressure()
    {
        (double PressureRad, double AtRad) most = (0, Task.Profile.StartRad);
        foreach (PitchCurve curve in Curves.OfType<PitchCurve>())
        {
            if (curve.Stretch.Law is null)
            {
                // A ride has one pressure angle.
                double same = curve.PressureRad(curve.Stretch.FromRad);
                most = same > most.PressureRad ? (same, curve.Stretch.FromRad) : most;
                continue;
            }

            double step = curve.Stretch.SweepRad / Looks;
            int best = Enumerable.Range(0, Looks + 1).MaxBy(i => curve.PressureRad(curve.Stretch.FromRad + (i * step)));
            double at = Peak(curve.PressureRad, curve.Stretch.FromRad + (Math.Max(best - 1, 0) * step), curve.Stretch.FromRad + (Math.Min(best + 1, Looks) * step));
            double here = curve.PressureRad(at);
            most = here > most.PressureRad ? (here, at) : most;
        }

        return most;
    }

    /// <summary>The sharpest place of all curves, see <see cref="CamCurve.Sharpness"/>.</summary>
    private (double Sharpness, double AtRad) Sharpest() => _sharpest.Value;

    /// <summary>The least convex radius that its follower's curve has, mm: of a roller's pitch curve, or of the outline under a flat face.</summary>
    public (double RadiusMm, double AtRad) LeastRadius()
    {
        (double sharpness, double at) = Sharpest();
        return (_path is null ? -sharpness : sharpness > 0 ? 1 / sharpness : double.PositiveInfinity, at);
    }

    /// <summary>Whether <see cref="LeastRadius"/> is nowhere less than this, mm, above 0; quicker than to find it.</summary>
    public bool IsNowhereTighterThan(double radiusMm) => Curves.All(c => c.IsNoSharperThan(_path is null ? -radiusMm : 1 / radiusMm));

    /// <summary>Whether the follower loses the outline somewhere: the pitch curve bends more than the roller does, or the outline under a flat face turns back.</summary>
    public bool IsUndercut => LeastRadius().RadiusMm <= InwardMm + (2 * CamCurve.SameShare * InwardMm);

    /// <summary>How far along its face a flat follower is touched, from the foot of the axis, mm; 0 for a roller.</summary>
    public double MostAsideMm() => Curves.OfType<FlatCurve>().SelectMany(c => Enumerable.Range(0, Looks + 1).Select(i => c.AsideMm(c.Stretch.FromRad + (c.Stretch.SweepRad * i / Looks)))).DefaultIfEmpty(0).Max();

    /// <summary>The place of the roller's axis in the housing at a lift; null for a flat follower.</summary>
    public Point? RollerAt(double lift) => _path?.At(lift);

    /// <summary>The foot of the axis on a flat face in the housing at a lift, and the direction of its normal; null for a roller.</summary>
    public (Point Foot, double NormalRad)? FaceAt(double lift) => _face is null ? null : (Point.Polar(_face.DistanceMm(lift), _face.NormalRad(lift)), _face.NormalRad(lift));

    /// <summary>The outline of a ride: an arc about the axis.</summary>
    public Arc Ride(CamCurve curve, double fromRad, double toRad)
    {
        double lift = curve.Stretch.FromLift;
        double sweep = -Task.Sigma * (toRad - fromRad);
        return _path is not null
            ? new Arc(Point.Origin, _path.At(lift).RadiusMm - InwardMm, _path.At(lift).AngleRad - (Task.Sigma * fromRad), sweep)
            : new Arc(Point.Origin, _face!.DistanceMm(lift), _face.NormalRad(lift) - (Task.Sigma * fromRad), sweep);
    }

    // Golden section: the greatest value between two neighbours of a greatest look.
    private static double Peak(Func<double, double> f, double low, double high)
    {
        const double golden = 0.6180339887498949;
        const int steps = 60;
        for (int i = 0; i < steps; i++)
        {
            double a = high - (golden * (high - low)), b = low + (golden * (high - low));
            (low, high) = f(a) >= f(b) ? (low, b) : (a, high);
        }

        return (low + high) / 2;
    }
}
