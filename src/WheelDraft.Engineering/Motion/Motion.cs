using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

// The chapter "Motion": how time becomes angle, and where programme angle, wheel angle and housing angle meet.
// DEVELOPERS.md, "Words", defines the three; ψ is the programme angle and σ the sense of turning.

/// <summary>The turning of the wheel at the nominal supply frequency.</summary>
/// <param name="TurnTimeS">One turn, s, above 0.</param>
/// <param name="Direction">As seen from the wiper side.</param>
public sealed record Motion(double TurnTimeS, Turning Direction)
{
    /// <summary>+1 for anticlockwise, −1 for clockwise.</summary>
    public double Sigma => Direction == Turning.Anticlockwise ? 1 : -1;

    /// <summary>Speed, rad/s, above 0.</summary>
    public double SpeedRadPerS => Angles.TurnRad / TurnTimeS;

    /// <summary>Speed, degrees a second.</summary>
    public double SpeedDegPerS => 360 / TurnTimeS;

    /// <summary>The motion that a brief asks for.</summary>
    public static Motion Of(Brief brief) => new(brief.Drive.TurnTimeS, brief.Drive.Direction);

    /// <summary>The programme angle of a part of the turn, rad.</summary>
    public double RadOf(TurnAmount amount) => amount.IsAngle ? amount.Value : RadFromSeconds(amount.Value);

    /// <summary>Time to angle.</summary>
    public double RadFromSeconds(double seconds) => seconds / TurnTimeS * Angles.TurnRad;

    /// <summary>Angle to time.</summary>
    public double SecondsFromRad(double angleRad) => angleRad / Angles.TurnRad * TurnTimeS;

    /// <summary>The wheel angle that a station stands over at a programme angle, in [0, 2π).</summary>
    public double WheelRad(double stationRad, double programmeRad) => Angles.InTurn(stationRad - (Sigma * programmeRad));

    /// <summary>Where the wheel has turned to at a programme angle: the placement from wheel to housing.</summary>
    public Placement WheelAt(double programmeRad) => Placement.Turn(Sigma * programmeRad);
}
