using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The forces at a nose that the copper holds at its height, that a screw may hold off its ring radius, and that rubs.</summary>
/// <remarks>Three unit loads at the nose make it up: up, outward, and onward where it touches. The copper drags the nose along its
/// motion with μ times the force, and that drag lifts or sinks the arm too, so it changes the force itself: a trailing arm
/// on a riser is pulled over and presses harder, a leading one presses less.</remarks>
internal sealed class NoseBalance
{
    private readonly SpaceVector _up;
    private readonly SpaceVector _outward;
    private readonly SpaceVector _motion;
    private readonly SpaceVector _radial;
    private readonly SpaceVector _way;
    private readonly double _sense;

    /// <summary>For one strip.</summary>
    /// <param name="chain">Its chain.</param>
    /// <param name="nose">Its nose.</param>
    /// <param name="radial">Outward along the radius, seat coordinates: the chain's own.</param>
    /// <param name="direction">Which way the copper goes.</param>
    internal NoseBalance(SpringChain chain, StripNose nose, SpaceVector radial, Turning direction)
    {
        _sense = direction == Turning.Anticlockwise ? 1 : -1;
        _radial = radial;
        _way = SpaceVector.Upward.Cross(radial) * _sense;
        _up = chain.Vertical.Shift(nose.Centre);
        _outward = chain.Outward.Shift(nose.Centre);
        _motion = chain.Onward.Shift(nose.Centre) * _sense;
    }

    /// <summary>Whether friction of this coefficient holds the nose down however it is pushed: the arm digs in and jams.</summary>
    internal bool Jams(double friction) => !(_up.Z + (friction * _motion.Z) > 0);

    /// <summary>Loads that press the nose back by a depth, and that move it off its place along the radius.</summary>
    /// <param name="depthMm">How far the copper pushes it back; none or less does not touch.</param>
    /// <param name="friction">Coefficient of friction; not one at which it jams.</param>
    /// <param name="offRadiusMm">How far outward the screw holds it from where it would ride without; 0 without a screw.</param>
    internal NoseLoads At(double depthMm, double friction, double offRadiusMm)
    {
        double gives = _up.Z + (friction * _motion.Z);
        double sideways = (_up + (_motion * friction)).Dot(_radial);
        double screw = offRadiusMm == 0 ? 0 : offRadiusMm / (_outward.Dot(_radial) - (_outward.Z * sideways / gives));
        double force = (depthMm - (_outward.Z * screw)) / gives;
        return new(force, screw, friction * force * _sense);
    }

    /// <summary>How far the nose lies along the motion, and outward, from its free place, mm.</summary>
    internal (double AlongMm, double OutwardMm) Place(NoseLoads loads)
    {
        SpaceVector shift = (_up * loads.UpN) + (_outward * loads.OutwardN) + (_motion * (loads.OnwardN * _sense));
        return (shift.Dot(_way), shift.Dot(_radial));
    }
}
