using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Wheel.Timing;

/// <summary>A ring drawn at random, set by the program: rectangle or disc, turned or not, adjusted or not, windowed or lands, worn.</summary>
internal sealed record DrawnRing(RingShop Shop, RingDemand Ring, RingTrial Trial)
{
    internal OnPeriod Period => Ring.Periods[0];

    internal PeriodCut Cut => Trial.Cuts[0];

    internal static Gen<DrawnRing?> Any { get; } =
        from shape in Gen.Select(Gen.Bool, Gen.Double[0.1, 0.6], Gen.Double[0.4, 2.0], Gen.OneOf(0, 0, 0.3, -0.5, 1.2, Math.PI / 2))
        from wear in Gen.Frequency((1, Gen.Const(1.0)), (2, Gen.Double[1, 2.2]))
        from place in Gen.Select(Gen.Double[9, 45], Gen.Double[4, 345], Gen.Double[0, 359])
        from motion in Gen.Select(Gen.Double[60, 900], Gen.Bool)
        from play in Gen.Select(Gen.Double[0, 0.02], Gen.Double[0, 0.3], Gen.Double[0, 0.12], Gen.Frequency((1, Gen.Const(0.0)), (3, Gen.Double[0, 0.3])), Gen.Double[0, 0.3])
        from kind in Gen.Int[0, 3]
        from adjust in Gen.Select(Gen.Double[0.2, 6], Gen.Double[0.5, 3], Gen.Bool, Gen.Bool)
        from apart in Gen.Double[10, 60]
        select Made(shape, wear, place, motion, play, kind, adjust, apart);

    private static DrawnRing? Made(
        (bool IsDisc, double Half, double Width, double Angle) shape,
        double wear,
        (double RadiusMm, double SweepDeg, double StartDeg) place,
        (double TurnS, bool Clockwise) motion,
        (double Frequency, double RunOut, double Cut, double Side, double Placing) play,
        int kind,
        (double RangeDeg, double TravelMm, bool IsOn, bool IsIn) adjust,
        double apartDeg)
    {
        Engineering.Motion turn = new(motion.TurnS, motion.Clockwise ? Turning.Clockwise : Turning.Anticlockwise);
        ContactPatch patch = new()
        {
            IsDisc = shape.IsDisc,
            HalfLengthMm = shape.Half,
            HalfWidthMm = shape.IsDisc ? shape.Half : shape.Width,
            WornHalfLengthMm = shape.Half * wear,
            AngleRad = shape.IsDisc ? 0 : shape.Angle,
        };
        RingShop shop = new(turn, play.Frequency, play.RunOut, new(null, 0, play.Cut, 0.1, 0.1, 0.1, 0.1)) { PlacingMm = play.Placing };
        RingDemand ring = new()
        {
            Name = "drawn",
            Where = default,
            Patch = patch,
            Periods = [new(Angles.RadFromDeg(place.StartDeg), Angles.RadFromDeg(place.SweepDeg), 0)],
            SidePlayMm = play.Side,
            ToleranceS = 1e9,
            SideGapMm = play.Side + play.RunOut + play.Cut + patch.SidewaysWearMm + 0.5,
            Adjust = kind == 1
                ? new(adjust.IsOn ? AdjustedEdge.On : AdjustedEdge.Off, adjust.RangeDeg / 360 * motion.TurnS, adjust.TravelMm, adjust.IsIn ? LongerWay.In : LongerWay.Out, "M3", 0.5, 1)
                : null,
            Land = kind == 2
                ? new(WiperPair.Of(new(patch, 1), new(patch with { HalfLengthMm = patch.HalfLengthMm * 0.9, HalfWidthMm = shape.IsDisc ? patch.HalfLengthMm * 0.9 : patch.HalfWidthMm }, 1 + Angles.RadFromDeg(apartDeg)), turn), 0, 0, "")
                : null,
        };
        RingTrial trial = kind == 2 ? new LandSetter(shop, ring).At(place.RadiusMm) : new RingSetter(shop, ring).At(place.RadiusMm);
        return trial.Fault is null ? new(shop, ring, trial) : null;
    }
}
