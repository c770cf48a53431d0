namespace WheelDraft.Engineering;

/// <summary>What may differ between the drawn strip and any one that is made and runs, each plus and minus, all at once.</summary>
public sealed record PressingLimits
{
    /// <summary>How exactly it is made.</summary>
    public required FormingBrief Forming { get; init; }

    /// <summary>A cut edge, normal to itself, mm: the width varies by twice as much.</summary>
    public double CutMm { get; init; }

    /// <summary>How far the copper face wobbles in height, total, mm.</summary>
    public double FaceRunOutMm { get; init; }

    /// <summary>How far the carrier lies below the copper where wipers ride, mm.</summary>
    public double StepMm { get; init; }

    /// <summary>Friction on copper and carrier; null when it is not given, and the drag is then left out.</summary>
    public FrictionBand? Friction { get; init; }

    /// <summary>Which way the copper goes, seen from the wiper side.</summary>
    public Geometry.Turning Direction { get; init; }

    /// <summary>What a brief says of them.</summary>
    public static PressingLimits Of(Brief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        return new PressingLimits
        {
            Forming = brief.Forming,
            CutMm = brief.Process.ToleranceMm,
            FaceRunOutMm = brief.Wheel.FaceRunOutMm,
            StepMm = brief.Carrier.StepMm,
            Friction = brief.Drive.Friction,
            Direction = brief.Drive.Direction,
        };
    }
}

/// <summary>How far friction winds a nose along the motion of the copper, mm, in steady turning.</summary>
/// <remarks>Make and break both come later by the shift over r ω. A nose meets copper while it rides on the carrier and leaves it
/// riding on copper; with friction on each anywhere in its band the on-time may be longer or shorter by
/// <see cref="RangeMm"/>/(r ω).</remarks>
/// <param name="LeastMm">With the least friction, the softest press and on the carrier.</param>
/// <param name="MostMm">With the greatest friction and press.</param>
public readonly record struct WindUp(double LeastMm, double MostMm)
{
    /// <summary>How far the nose shifts sideways, along the radius, at most, either way, mm: what a sloped edge turns into time.</summary>
    public double MostRadialMm { get; init; }

    /// <summary>From the least to the greatest shift, mm.</summary>
    public double RangeMm => MostMm - LeastMm;

    /// <summary>By how much an on-time may be longer or shorter, s.</summary>
    /// <param name="ringRadiusMm">Radius of its ring.</param>
    /// <param name="radPerSecond">Speed of the wheel, above 0.</param>
    public double OnTimeS(double ringRadiusMm, double radPerSecond) => RangeMm / (ringRadiusMm * radPerSecond);
}
