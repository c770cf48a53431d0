namespace WheelDraft.Engineering;

/// <summary>How far the nose of a wiper reaches up its strip.</summary>
/// <param name="RideMm">Height of the face that it rides on, mm: the copper's, or the carrier's below it.</param>
/// <param name="ToMm">Height over the copper face at which the legs beside a contact fold stop being nose, by their underside, mm.</param>
/// <param name="RingMm">Radius of its ring, mm.</param>
internal sealed record NoseReach(double RideMm, double ToMm, double RingMm)
{
    /// <summary>Whether the leg on the side of the arm is nose.</summary>
    public bool Before { get; init; }

    /// <summary>Whether the leg on the side of the tip is nose.</summary>
    public bool After { get; init; }
}
