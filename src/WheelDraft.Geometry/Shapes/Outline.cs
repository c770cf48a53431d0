namespace WheelDraft.Geometry;

/// <summary>A plane shape: one outer contour and any number of holes.</summary>
/// <remarks>The outer contour runs anticlockwise, holes clockwise, so that the material lies on the left all along;
/// the constructor reverses what comes the other way. Whether contours cross is asked separately. Immutable.</remarks>
public sealed class Outline
{
    private readonly Contour[] _holes;
    private object? _kept;

    /// <summary>A shape without holes.</summary>
    public Outline(Contour outer)
        : this(outer, [])
    {
    }

    /// <summary>A shape with holes.</summary>
    public Outline(Contour outer, IEnumerable<Contour> holes)
    {
        ArgumentNullException.ThrowIfNull(outer);
        ArgumentNullException.ThrowIfNull(holes);
        Outer = outer.Travelled(Turning.Anticlockwise);
        _holes = [.. holes.Select(h => h.Travelled(Turning.Clockwise))];
    }

    /// <summary>The outer contour, anticlockwise.</summary>
    public Contour Outer { get; }

    /// <summary>The holes, each clockwise.</summary>
    public IReadOnlyList<Contour> Holes => _holes;

    /// <summary>All contours, the outer one first.</summary>
    public IEnumerable<Contour> Contours => _holes.Prepend(Outer);

    /// <summary>All pieces of all contours.</summary>
    public IEnumerable<Piece> Pieces => Contours.SelectMany(c => c.Pieces);

    /// <summary>Area of the material, mm².</summary>
    public double AreaMm2 => Contours.Sum(c => c.SignedAreaMm2);

    /// <summary>The smallest upright rectangle round it, exact.</summary>
    public Bounds Bounds => Outer.Bounds;

    /// <summary>Centroid of the material.</summary>
    public Point Centroid
    {
        get
        {
            Vector moment = default;
            foreach (Contour c in Contours)
            {
                moment += c.MomentMm3;
            }

            return Point.Origin + (moment / AreaMm2);
        }
    }

    /// <summary>The shape moved, turned, scaled or mirrored.</summary>
    public Outline Placed(Placement placement) => new(Outer.Placed(placement), _holes.Select(h => h.Placed(placement)));

    /// <summary>What a chapter above this one made of the outline once and wants to find again; this class does not look into it.</summary>
    internal T Kept<T>(Func<Outline, T> make)
        where T : class => (_kept ??= make(this)) as T ?? make(this);

    /// <summary>All contours, as in messages.</summary>
    public override string ToString() => string.Join(" / ", Contours);
}
