using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A fixed and a turning solid over the whole turn.</summary>
/// <remarks>Over a whole turn every two points come into line with the axis, so the plan distance of two connected shapes is exactly the
/// gap between the radii that they occupy; nothing is sampled.</remarks>
internal static class WholeTurn
{
    /// <summary>Nearest plan points in the housing, and how far the wheel is turned then.</summary>
    internal static (Nearest Plan, double TurnedRad) Nearest(Outline still, Outline turning)
    {
        RadialInterval a = Distances.Radii(still, Point.Origin);
        RadialInterval b = Distances.Radii(turning, Point.Origin);
        (Point onStill, Point drawn) = PointsOf(still, a, turning, b);
        double turned = drawn.RadiusMm == 0 || onStill.RadiusMm == 0 ? 0 : Angles.InTurn(onStill.AngleRad - drawn.AngleRad);
        Point onTurning = onStill.RadiusMm == 0 ? drawn : Point.Origin + ((onStill - Point.Origin) * (drawn.RadiusMm / onStill.RadiusMm));
        return (new Nearest(a.GapMm(b), onStill, onTurning), turned);
    }

    private static (Point OnStill, Point OnTurning) PointsOf(Outline still, RadialInterval a, Outline turning, RadialInterval b)
    {
        if (a.GreatestMm < b.LeastMm)
        {
            return (a.AtGreatest, b.AtLeast);
        }

        if (b.GreatestMm < a.LeastMm)
        {
            return (a.AtLeast, b.AtGreatest);
        }

        double common = Math.Max(a.LeastMm, b.LeastMm);
        return a.LeastMm >= b.LeastMm ? (a.AtLeast, AtRadius(turning, common)) : (AtRadius(still, common), b.AtLeast);
    }

    /// <summary>A point of a connected shape at a radius that it occupies.</summary>
    internal static Point AtRadius(Outline outline, double radiusMm)
    {
        foreach (Piece piece in outline.Pieces)
        {
            RadialInterval radii = Distances.Radii(piece, Point.Origin);
            if (radii.LeastMm <= radiusMm && radiusMm <= radii.GreatestMm)
            {
                return AtRadius(piece, radiusMm, piece.ShareNearest(radii.AtLeast), piece.ShareNearest(radii.AtGreatest));
            }
        }

        // No edge at that radius: the whole circle lies in the material.
        return new Point(radiusMm, 0);
    }

    private static Point AtRadius(Piece piece, double radiusMm, double near, double far)
    {
        // The radius is continuous along a piece: halving finds it to the last place.
        const int halvings = 60;
        for (int i = 0; i < halvings; i++)
        {
            double middle = (near + far) / 2;
            (near, far) = piece.PointAt(middle).RadiusMm <= radiusMm ? (middle, far) : (near, middle);
        }

        return piece.PointAt(near);
    }
}
