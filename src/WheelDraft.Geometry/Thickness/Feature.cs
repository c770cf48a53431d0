namespace WheelDraft.Geometry;

/// <summary>An edge or corner as its normals into the region on the left see it: a line, or a circle with a fan of normals.</summary>
/// <param name="Line">The line; nothing for a round feature.</param>
/// <param name="Centre">Centre of a round feature.</param>
/// <param name="RadiusMm">Its radius; 0 for a corner.</param>
/// <param name="Inward">+1 when the region lies towards the centre (travelled anticlockwise), −1 when it lies outside.</param>
/// <param name="Span">Directions from the centre that it covers.</param>
/// <param name="Start">Where it starts.</param>
/// <param name="End">Where it ends.</param>
internal sealed record Feature(Segment? Line, Point Centre, double RadiusMm, int Inward, CircleArc Span, Point Start, Point End)
{
    // Ends belong to the fan, and rounding must not lose the common normal of two edges that end on one ray.
    private const double SlackRad = 1e-9;

    internal static Feature Of(Piece piece) => piece is Arc arc
        ? new(null, arc.Centre, arc.RadiusMm, Math.Sign(arc.SweepRad), Widened(arc.Span), arc.Start, arc.End)
        : new((Segment)piece, default, 0, 0, CircleArc.Empty, piece.Start, piece.End);

    /// <summary>A corner that pokes into the region is a circle of radius 0 travelled clockwise.</summary>
    internal static Feature Of(Corner corner) =>
        new(null, corner.At, 0, -1, Widened(CircleArc.Sweep(corner.Leaving.Left.AngleRad, -corner.TurnRad)), corner.At, corner.At);

    internal bool Faces(Vector outward) => Span.Contains(outward.AngleRad);

    /// <summary>Whether the two follow each other along a contour.</summary>
    internal bool Joins(Feature other) =>
        End.DistanceTo(other.Start) <= Tolerances.JoinMm || other.End.DistanceTo(Start) <= Tolerances.JoinMm;

    private static CircleArc Widened(CircleArc arc) =>
        CircleArc.Sweep(arc.StartRad - SlackRad, Math.Min(Angles.TurnRad, arc.SweepRad + (2 * SlackRad)));
}
