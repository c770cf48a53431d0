using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

// The folder "Measuring": what a design has. Gaps through air and paths along surfaces between solids, over the whole turn or part of
// it, nominal and worst, each with its place. What is required comes from "Rules"; here the two are only compared.

/// <summary>A place in the housing, mm: plan and height.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Up the drawing.</param>
/// <param name="Z">Towards the wiper side, 0 on the copper face.</param>
public readonly record struct SpacePoint(double X, double Y, double Z)
{
    /// <summary>Its plan.</summary>
    public Point Plan => new(X, Y);

    /// <summary>A plan point at a height.</summary>
    public static SpacePoint At(Point plan, double zMm) => new(plan.X, plan.Y, zMm);

    /// <summary>Straight distance to another place, mm.</summary>
    public double DistanceTo(SpacePoint other)
    {
        double dx = X - other.X, dy = Y - other.Y, dz = Z - other.Z;
        return Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
    }

    /// <summary>The place a share of the way to another.</summary>
    public SpacePoint Towards(SpacePoint other, double share) =>
        new(X + ((other.X - X) * share), Y + ((other.Y - Y) * share), Z + ((other.Z - Z) * share));
}
