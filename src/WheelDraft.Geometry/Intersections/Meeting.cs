namespace WheelDraft.Geometry;

/// <summary>Where two pieces meet: single points and stretches that they have in common.</summary>
/// <param name="Points">Common points, in order along the first piece; those within a stretch are not repeated.</param>
/// <param name="Stretches">Common stretches (collinear or co-circular), in order along the first piece. One that contains
/// an end of either piece inside it is given in two parts.</param>
public sealed record Meeting(IReadOnlyList<CommonPoint> Points, IReadOnlyList<CommonStretch> Stretches)
{
    /// <summary>The two have nothing in common.</summary>
    public static Meeting None { get; } = new([], []);

    /// <summary>Whether they have nothing in common.</summary>
    public bool IsNone => Points.Count == 0 && Stretches.Count == 0;
}

/// <summary>A point that two pieces have in common.</summary>
/// <param name="At">The point; an end point of a piece exactly where it is one.</param>
/// <param name="ShareOnFirst">Its share of the first piece, in [0, 1].</param>
/// <param name="ShareOnSecond">Its share of the second piece, in [0, 1].</param>
public readonly record struct CommonPoint(Point At, double ShareOnFirst, double ShareOnSecond);

/// <summary>A stretch that two pieces have in common.</summary>
/// <param name="From">Where it starts, on the first piece.</param>
/// <param name="To">Where it ends, further along the first piece.</param>
/// <remarks>On the second piece the shares run backwards where the two pieces are travelled opposite ways.</remarks>
public readonly record struct CommonStretch(CommonPoint From, CommonPoint To)
{
    /// <summary>Whether both pieces run the same way along it.</summary>
    public bool SameWay => From.ShareOnSecond < To.ShareOnSecond;
}
