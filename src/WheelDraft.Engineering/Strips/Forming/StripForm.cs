namespace WheelDraft.Engineering;

/// <summary>A strip as it is cut, folded and seated, free of the wheel: the stage between the brief and the spring.</summary>
/// <remarks>API: <c>StripForm.Of(brief, index)</c>. It does not know the rings: it lies in <em>seat coordinates</em>, origin on the
/// axis of the wheel's height scale (z is the true height over the copper face), x and y from the end of the clamp, x along the strip
/// there. <see cref="StripPlacing"/> turns and shifts it to its station.</remarks>
public sealed record StripForm
{
    /// <summary>Which strip of the brief, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>What was asked for.</summary>
    public required StripBrief Strip { get; init; }

    /// <summary>Alloy and temper.</summary>
    public required Material Material { get; init; }

    /// <summary>The pieces from the terminal end to the tip, in seat coordinates.</summary>
    public required IReadOnlyList<FormedPiece> Pieces { get; init; }

    /// <summary>The folds from the terminal end to the tip.</summary>
    public required IReadOnlyList<StripFold> Folds { get; init; }

    /// <summary>The flat blank.</summary>
    public required StripBlank Blank { get; init; }

    /// <summary>Where it is held, developed positions, mm.</summary>
    public required StripClamp Clamp { get; init; }

    /// <summary>Height of the underside of the seated part over the copper face, mm.</summary>
    public required double SeatLevelMm { get; init; }

    /// <summary>Where it touches; null for a plain strip.</summary>
    public StripNose? Nose { get; init; }

    /// <summary>The solved length of the straight "auto", mm; null without one.</summary>
    public double? AutoLengthMm { get; init; }

    /// <summary>The tab at its terminal end; null without one.</summary>
    public TabDimensions? Tab { get; init; }

    /// <summary>Developed length, mm.</summary>
    public double LengthMm => Pieces[^1].ToMm;

    /// <summary>How far the wheel pushes the contact back from its free position, mm; null for a plain strip.</summary>
    public double? DeflectionMm => Nose?.DepthMm;

    /// <summary>What the person should know.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Forms one strip of a brief.</summary>
    /// <param name="brief">The whole brief.</param>
    /// <param name="index">Which strip, from 0.</param>
    /// <exception cref="DesignRefusedException">It cannot be made as asked; every reason with numbers.</exception>
    public static StripForm Of(Brief brief, int index)
    {
        ArgumentNullException.ThrowIfNull(brief);
        List<Finding> reasons = [];
        StripForm? form = StripForming.Form(brief, index, reasons);
        return form is not null && reasons.Count == 0 ? form : throw new DesignRefusedException(reasons);
    }

    /// <summary>The frame at a developed position, mm.</summary>
    public StripFrame FrameAt(double atMm)
    {
        FormedPiece piece = PieceAt(atMm);
        return piece.FrameAt(piece.DevelopedMm > 0 ? Math.Clamp((atMm - piece.FromMm) / piece.DevelopedMm, 0, 1) : 0);
    }

    /// <summary>The piece at a developed position, mm: the one before where two meet.</summary>
    public FormedPiece PieceAt(double atMm) => Pieces.FirstOrDefault(p => atMm <= p.ToMm) ?? Pieces[^1];
}

/// <summary>One fold of a strip, as the fold table of its drawing gives it.</summary>
/// <param name="ShapeIndex">Which piece of the strip's shape, from 0.</param>
/// <param name="AtMm">Developed position of the fold line, at mid-allowance.</param>
/// <param name="AllowanceMm">Length of blank that it takes.</param>
/// <param name="AngleRad">Angle turned through when free, positive toward the wiper side.</param>
/// <param name="RadiusMm">Inside radius when free.</param>
public sealed record StripFold(int ShapeIndex, double AtMm, double AllowanceMm, double AngleRad, double RadiusMm)
{
    /// <summary>Neutral-axis factor and its source.</summary>
    public required MaterialValue K { get; init; }

    /// <summary>What to set so that it springs back to angle and radius.</summary>
    public required SpringbackSetting Setting { get; init; }

    /// <summary>How much further than the wanted angle it is bent, radians, at least 0.</summary>
    public double OverbendRad => Math.Abs(Setting.AngleRad) - Math.Abs(AngleRad);

    /// <summary>In which order it is made, from 1.</summary>
    /// <remarks>From the tip to the terminal end, so that the long flat end always lies in the tool (common practice, no source).</remarks>
    public required int Order { get; init; }

    /// <summary>Whether the outside of this fold is the contact.</summary>
    public bool IsContact { get; init; }

    /// <summary>The inside radius of the fold over the thickness that the alloy needs here; null when none is known.</summary>
    public MaterialValue? LeastRadius { get; init; }
}

/// <summary>Where a strip touches the wheel, free of it, in seat coordinates.</summary>
/// <param name="AtMm">Developed position.</param>
/// <param name="Frame">The frame there.</param>
/// <param name="Centre">Centre of the nose: of the dome, or of the fold.</param>
/// <param name="RadiusMm">Radius of the nose: of the dome, or outside of the fold.</param>
public sealed record StripNose(double AtMm, StripFrame Frame, SpaceVector Centre, double RadiusMm)
{
    /// <summary>How far the free contact lies below the copper face, mm.</summary>
    public double DepthMm => RadiusMm - Centre.Z;

    /// <summary>The rivet; null when a fold touches.</summary>
    public StripRivet? Rivet { get; init; }

    /// <summary>Index of the piece in <see cref="StripForm.Pieces"/> that carries it.</summary>
    public required int PieceIndex { get; init; }

    /// <summary>Width of the strip there, mm.</summary>
    public required double WidthMm { get; init; }
}
