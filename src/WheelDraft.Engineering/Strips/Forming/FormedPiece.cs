namespace WheelDraft.Engineering;

/// <summary>What a piece of a formed strip does to the way of the strip.</summary>
public enum FormedKind
{
    /// <summary>Goes straight on.</summary>
    Straight,

    /// <summary>Folds out of the plane.</summary>
    Fold,

    /// <summary>Curves in the plane.</summary>
    Sweep,
}

/// <summary>One piece of a formed strip, where it lies in space and on the blank.</summary>
/// <param name="ShapeIndex">Which piece of the strip's shape in the file, from 0.</param>
/// <param name="Kind">Straight, fold or sweep.</param>
/// <param name="Start">The frame at its terminal side.</param>
public sealed record FormedPiece(int ShapeIndex, FormedKind Kind, StripFrame Start)
{
    /// <summary>Developed position of its terminal side, mm.</summary>
    public double FromMm { get; init; }

    /// <summary>Developed length, mm; the bend allowance of a fold.</summary>
    public double DevelopedMm { get; init; }

    /// <summary>Developed position of its tip side, mm.</summary>
    public double ToMm => FromMm + DevelopedMm;

    /// <summary>Width at its terminal side, mm.</summary>
    public double WidthMm { get; init; }

    /// <summary>Width at its tip side, mm.</summary>
    public double WidthEndMm { get; init; }

    /// <summary>Angle of a fold (positive toward the wiper side) or sweep (positive anticlockwise), radians; 0 for a straight.</summary>
    public double AngleRad { get; init; }

    /// <summary>Radius of the middle surface of a fold, of the centre line of a sweep, mm; 0 for a straight.</summary>
    public double RadiusMm { get; init; }

    /// <summary>Length along the middle surface in space, mm.</summary>
    public double LengthMm => Kind == FormedKind.Straight ? DevelopedMm : Math.Abs(AngleRad) * RadiusMm;

    /// <summary>The frame at its tip side.</summary>
    public StripFrame End => FrameAt(1);

    /// <summary>Centre of curvature of a fold or sweep.</summary>
    public SpaceVector Centre => Start.Origin + ((Kind == FormedKind.Fold ? Start.Up : Start.Left) * (Math.Sign(AngleRad) * RadiusMm));

    /// <summary>Width at a share of its length, mm.</summary>
    public double WidthAt(double share) => WidthMm + ((WidthEndMm - WidthMm) * share);

    /// <summary>The frame at a share of its length: 0 at the terminal side, 1 at the tip side.</summary>
    public StripFrame FrameAt(double share)
    {
        if (Kind == FormedKind.Straight)
        {
            return Start with { Origin = Start.Origin + (Start.Along * (DevelopedMm * share)) };
        }

        (double sin, double cos) = Math.SinCos(AngleRad * share);
        SpaceVector inward = Kind == FormedKind.Fold ? Start.Up : Start.Left;
        SpaceVector along = (Start.Along * cos) + (inward * sin);
        SpaceVector turned = (inward * cos) - (Start.Along * sin);
        SpaceVector origin = Centre - (turned * (Math.Sign(AngleRad) * RadiusMm));
        return Kind == FormedKind.Fold ? new(origin, along, turned) : new(origin, along, Start.Up);
    }
}
