using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests;

/// <summary>Random cams, and an outline that is measured by nothing but its corners and bulges.</summary>
internal static class CamCases
{
    /// <summary>How many random cams are drawn: a few in every build, as many as asked before a release.</summary>
    public static int Count => int.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_CAM_CASES"), out int asked) ? asked : 40;

    private static readonly CamLaw[] Smooth = [CamLaw.Harmonic, CamLaw.Cycloidal, CamLaw.ModifiedTrapezoid, CamLaw.ModifiedSine, CamLaw.Polynomial345, CamLaw.Polynomial4567];

    private static Gen<CamLaw> Law => Gen.Int[0, Smooth.Length - 1].Select(i => Smooth[i]);

    /// <summary>Profiles of one rise and a return or a drop, or of two rises and a drop, with rides between; lifts as shares of the greatest.</summary>
    public static Gen<CamProfile> Profile(double top, bool drops) =>
        from start in Gen.Double[0, 6.28]
        from first in Gen.Double[0.7, 1.6]
        from ride in Gen.Double[0.2, 0.7]
        from second in Gen.Double[0.7, 1.6]
        from law in Law
        from other in Law
        from step in Gen.Double[0.35, 0.8]
        from kind in Gen.Int[0, drops ? 2 : 0]
        select Make(start, (first, ride, second), (law, other), (top, step, kind));

    private static CamProfile Make(double start, (double First, double Ride, double Second) sweep, (CamLaw First, CamLaw Second) law, (double Top, double Step, int Kind) what)
    {
        double a = start + sweep.First, b = a + sweep.Ride, c = b + sweep.Second, d = c + sweep.Ride;
        double end = start + Angles.TurnRad;
        return what.Kind switch
        {
            0 => new([new(start, sweep.First, 0, what.Top, law.First), new(a, sweep.Ride, what.Top, what.Top, null), new(b, sweep.Second, what.Top, 0, law.Second), new(c, end - c, 0, 0, null)]),
            1 => new([new(start, sweep.First, 0, what.Top, law.First), new(a, sweep.Ride, what.Top, what.Top, null), new(b, 0, what.Top, 0, null), new(b, end - b, 0, 0, null)]),
            _ => new(
            [
                new(start, sweep.First, 0, what.Top * what.Step, law.First), new(a, sweep.Ride, what.Top * what.Step, what.Top * what.Step, null),
                new(b, sweep.Second, what.Top * what.Step, what.Top, law.Second), new(c, sweep.Ride, what.Top, what.Top, null),
                new(d, 0, what.Top, 0, null), new(d, end - d, 0, 0, null),
            ]),
        };
    }

    /// <summary>Sliding and swinging levers with a roller, their profile and base radius; some are undercut.</summary>
    public static Gen<(CamTask Task, double BaseMm)> Rollers =>
        from swings in Gen.Bool
        from lever in swings ? Swinging : Sliding
        from top in swings ? Gen.Double[0.08, 0.3] : Gen.Double[1, 8]
        from profile in Profile(top, drops: true)
        from roller in Gen.Double[0.8, 4]
        from rest in Gen.Double[8, 22]
        from turning in Gen.Bool
        select (new CamTask(profile, lever, roller, turning ? 1 : -1), rest);

    /// <summary>Levers with a flat face.</summary>
    public static Gen<(CamTask Task, double BaseMm)> Flats =>
        from swings in Gen.Bool
        from lever in swings ? Swinging : Sliding
        from top in swings ? Gen.Double[0.03, 0.15] : Gen.Double[1, 5]
        from profile in Profile(top, drops: true)
        from rest in Gen.Double[8, 22]
        from turning in Gen.Bool
        select (new CamTask(profile, lever, null, turning ? 1 : -1), rest);

    private static Gen<LeverBrief> Sliding => Gen.Select(Gen.Double[-4, 4], Gen.Double[-3, 3], (offset, direction) => (LeverBrief)new SlidingLever(offset, direction));

    private static Gen<LeverBrief> Swinging =>
        from distance in Gen.Double[38, 60]
        from direction in Gen.Double[-3, 3]
        from arm in Gen.Double[0.8, 1.0]
        from sense in Gen.Bool
        select (LeverBrief)new SwingingLever(Point.Polar(distance, direction), distance * arm, sense ? Turning.Anticlockwise : Turning.Clockwise);
}

/// <summary>An outline as a DXF has it, corners and bulges, measured by this class alone.</summary>
internal sealed class BulgedOutline(IReadOnlyList<(Point At, double Bulge)> corners)
{
    private readonly Arm[] _arms = [.. corners.Select((c, i) => Arm.Of(c.At, corners[(i + 1) % corners.Count].At, c.Bulge))];

    /// <summary>Distance of a point from the outline.</summary>
    public double DistanceMm(double x, double y)
    {
        double least = double.PositiveInfinity;
        foreach (Arm arm in _arms)
        {
            // A box first: most pieces are far.
            double reach = Math.Sqrt(((x - arm.MidX) * (x - arm.MidX)) + ((y - arm.MidY) * (y - arm.MidY))) - arm.Reach;
            if (reach < least)
            {
                least = Math.Min(least, arm.DistanceMm(x, y));
            }
        }

        return least;
    }

    /// <summary>The farthest that the outline reaches in a direction.</summary>
    public double SupportMm(double directionRad) => _arms.Max(a => a.SupportMm(directionRad));

    private readonly record struct Arm(double X0, double Y0, double X1, double Y1, double Bulge, double CX, double CY, double R, double MidX, double MidY, double Reach)
    {
        public static Arm Of(Point a, Point b, double bulge)
        {
            double dx = b.X - a.X, dy = b.Y - a.Y, chord = Math.Sqrt((dx * dx) + (dy * dy));
            double mx = (a.X + b.X) / 2, my = (a.Y + b.Y) / 2;
            if (bulge == 0)
            {
                return new(a.X, a.Y, b.X, b.Y, 0, 0, 0, 0, mx, my, chord / 2);
            }

            double k = (1 - (bulge * bulge)) / (4 * bulge);
            double r = chord * (1 + (bulge * bulge)) / (4 * Math.Abs(bulge));
            double reach = Math.Abs(bulge) <= 1 ? chord / 2 * Math.Sqrt(1 + (bulge * bulge)) : 2 * r;
            return new(a.X, a.Y, b.X, b.Y, bulge, mx - (dy * k), my + (dx * k), r, mx, my, reach);
        }

        public double DistanceMm(double x, double y)
        {
            if (Bulge == 0)
            {
                double dx = X1 - X0, dy = Y1 - Y0;
                double share = Math.Clamp((((x - X0) * dx) + ((y - Y0) * dy)) / ((dx * dx) + (dy * dy)), 0, 1);
                return Math.Sqrt(Sq(x - X0 - (share * dx)) + Sq(y - Y0 - (share * dy)));
            }

            return Faces(x - CX, y - CY)
                ? Math.Abs(Math.Sqrt(Sq(x - CX) + Sq(y - CY)) - R)
                : Math.Sqrt(Math.Min(Sq(x - X0) + Sq(y - Y0), Sq(x - X1) + Sq(y - Y1)));
        }

        public double SupportMm(double directionRad)
        {
            (double sin, double cos) = Math.SinCos(directionRad);
            double ends = Math.Max((X0 * cos) + (Y0 * sin), (X1 * cos) + (Y1 * sin));
            return Bulge != 0 && Faces(cos, sin) ? Math.Max(ends, (CX * cos) + (CY * sin) + R) : ends;
        }

        // Between start and end, in the sense of the bulge.
        private bool Faces(double x, double y)
        {
            double from = Math.Atan2(Y0 - CY, X0 - CX), sweep = 4 * Math.Atan(Bulge);
            double ahead = Math.Atan2(y, x) - from;
            ahead = sweep > 0 ? ahead : -ahead;
            ahead -= 2 * Math.PI * Math.Floor(ahead / (2 * Math.PI));
            return ahead <= Math.Abs(sweep);
        }

        private static double Sq(double v) => v * v;
    }
}
