using CsCheck;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Operation.Distance;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Geometry;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>Worst gaps of open contacts against a sweep of the cut copper.</summary>
/// <remarks>Oracle: NetTopologySuite. The outline as it is cut, windows and fillets, grown by the cutter's tolerance and shifted by the
/// centre offset in many directions; new and worn patches at many places of travel and side play; turned through many angles. It
/// knows no edges, no closed form and no bound. WHEELDRAFT_SWEPT_WHEELS in the environment tells how many wheels.</remarks>
public sealed class OpenContactSweepTests
{
    // Chords of arcs lie this far from them at most on wheels of this size, mm.
    private const double ChordMm = 0.003;

    private const int Directions = 24;
    private const int AngleCount = 41;

    private static readonly double?[] Noses = [null, 0.9, 2.5];
    private static readonly double[] Steps = [0, 0.1, 0.3];

    private static long Wheels => long.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_SWEPT_WHEELS"), System.Globalization.CultureInfo.InvariantCulture, out long wheels) ? wheels : 10;

    private static readonly Gen<ContactPatch> Patches = Gen.Select(
        Gen.Int[0, 2], Gen.Double[-1.5, 1.5], Gen.Double[0.15, 0.5], Gen.Double[0, 0.4], Gen.Int[0, 2]).Select(
        (kind, angle, half, worn, nose) => (kind == 0 ? MeasuredContacts.Rivet(Noses[nose], half) : MeasuredContacts.Fold(Noses[nose], kind == 1 ? angle : 0, half)) with { WornHalfLengthMm = half + worn });

    private static readonly Gen<Swept> Any = Gen.Select(
        Patches,
        Gen.Select(Gen.Double[0, 0.3], Gen.Double[0.02, 0.1], Gen.Double[0, 0.2], Gen.Int[0, 2]),
        Gen.Bool,
        Gen.Double[0, 3],
        Gen.Select(Gen.Double[0.02, 0.6], Gen.Double[0, 0.38]),
        Gen.Double[30, 100],
        (patch, play, isClockwise, travel, stands, offS) => new Swept(patch, play.Item1, play.Item2, play.Item3, Steps[play.Item4], isClockwise, travel < 1 ? 0 : travel, stands.Item1, stands.Item2, offS));

    [Fact]
    public void WorstGaps_RandomWheels_AreNeverMoreThanTheSweptOnesAndHardlyLess()
    {
        double mostOver = double.NegativeInfinity, mostUnder = 0, mostUnderGreatest = 0;
        int along = 0, closed = 0;
        Any.Sample(
            swept =>
            {
                MeasuredContacts measured = Measure(swept, out double fromRad, out double toRad);
                OpenContact open = measured.Only;
                CopperSweep sweep = new(measured, swept);
                double standing = sweep.LeastMm(fromRad, toRad);
                double over = open.Parked!.WorstMm - standing;
                Assert.True(over <= ChordMm, FormattableString.Invariant($"standing: told {open.Parked.WorstMm}, swept {standing}; {swept}"));
                Assert.True(over >= -0.02 - ChordMm, FormattableString.Invariant($"standing: told only {open.Parked.WorstMm}, swept {standing}; {swept}"));
                (mostOver, mostUnder) = (Math.Max(mostOver, over), Math.Max(mostUnder, -over));
                along += open.Parked.WorstMm < open.Sideways.WorstMm ? 1 : 0;
                closed += open.Parked.WorstMm == 0 ? 1 : 0;
                foreach (OpenPeriod period in open.Periods)
                {
                    double greatest = sweep.GreatestMm(period);
                    Assert.True(period.WorstGreatestMm <= greatest + ChordMm, FormattableString.Invariant($"greatest: told {period.WorstGreatestMm}, swept {greatest}; {swept}"));
                    mostUnderGreatest = Math.Max(mostUnderGreatest, greatest - period.WorstGreatestMm);
                    if (period.ReachedAfterRad is double after)
                    {
                        double there = sweep.LeastMm(period.BreakRad + after, period.BreakRad + after);
                        Assert.True(there >= Math.Min(open.Along!.RequiredMm!.Value, open.Sideways.RequiredMm!.Value) - ChordMm);
                    }
                }
            },
            iter: Wheels,
            threads: 1);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
            $"{Wheels} wheels: told at most {mostOver:0.0000} mm more than swept and {mostUnder:0.0000} mm less standing ({along} along, {closed} closed), {mostUnderGreatest:0.0000} mm less at the greatest"));
        Assert.True(along > 0);
    }

    private static MeasuredContacts Measure(Swept swept, out double fromRad, out double toRad)
    {
        OutputBrief output = Briefs.Output("fan", 20, 180 - swept.OffS, toleranceS: 60) with { SidePlayMm = swept.SidePlayMm };
        if (swept.TravelMm > 0)
        {
            output = output with { Adjust = new(AdjustedEdge.Off, 1.5, swept.TravelMm, LongerWay.In, "M3", 0.5, 1) };
        }

        Brief plain = Briefs.Plain(output);
        Brief brief = plain with
        {
            Wheel = plain.Wheel with { RunOutMm = swept.RunOutMm },
            Process = plain.Process with { ToleranceMm = swept.CutterMm },
            Carrier = plain.Carrier with { StepMm = swept.Patch.NoseRadiusMm is null ? 0 : swept.StepMm },
            Drive = plain.Drive with { Direction = swept.IsClockwise ? Turning.Clockwise : Turning.Anticlockwise },
        };
        double turn = Angles.TurnRad;
        fromRad = turn * ((20 + 180 - swept.OffS) / 180) + (swept.Stands * turn * swept.OffS / 180);
        toRad = fromRad + (swept.Longer * turn * swept.OffS / 180);
        return MeasuredContacts.Of(brief, swept.Patch, new ParkedPosition(fromRad, toRad, null));
    }

    private sealed record Swept(
        ContactPatch Patch, double RunOutMm, double CutterMm, double SidePlayMm, double StepMm, bool IsClockwise, double TravelMm, double Stands, double Longer, double OffS)
    {
        public override string ToString() => FormattableString.Invariant(
            $"{(Patch.IsDisc ? "disc" : "fold")} {Patch.HalfLengthMm} to {Patch.WornHalfLengthMm} at {Patch.AngleRad}, nose {Patch.NoseRadiusMm}, step {StepMm}, run-out {RunOutMm}, cut {CutterMm}, play {SidePlayMm}, clockwise {IsClockwise}, travel {TravelMm}, stands {Stands} for {Longer} of {OffS} s");
    }

    private sealed class CopperSweep
    {
        private readonly MeasuredContacts _measured;
        private readonly RingLayout _ring;
        private readonly Vector[] _shifts;
        private readonly NetTopologySuite.Geometries.Geometry _copper;
        private readonly IPreparedGeometry _holds;
        private readonly IndexedFacetDistance _facets;

        internal CopperSweep(MeasuredContacts measured, Swept swept)
        {
            _measured = measured;
            _ring = measured.Wheel.Rings[0];
            double offset = swept.RunOutMm / 2;
            _shifts = [.. Enumerable.Range(0, Directions).Select(k => Vector.Polar(offset, Angles.TurnRad * k / Directions))];
            _copper = Flattened.Polygon(measured.Wheel.Copper[0].Outline).Buffer(swept.CutterMm, 90);
            _holds = PreparedGeometryFactory.Prepare(_copper);
            _facets = new(_copper);
        }

        internal double LeastMm(double fromRad, double toRad)
        {
            double least = double.PositiveInfinity;
            for (int k = 0; k < AngleCount; k++)
            {
                double at = fromRad + ((toRad - fromRad) * k / (AngleCount - 1));
                foreach (double r in Places([-0.5, -0.25, 0, 0.25, 0.5], [-1, 0, 1]))
                {
                    foreach (Vector shift in _shifts)
                    {
                        least = Math.Min(least, GapMm(at, r, shift));
                    }
                }
            }

            return least;
        }

        // The greatest gap that each wheel of the box reaches, the least of them.
        internal double GreatestMm(OpenPeriod period)
        {
            double least = double.PositiveInfinity;
            foreach (double r in Places([-0.5, 0, 0.5], [-1, 1]))
            {
                foreach (Vector shift in _shifts.Where((_, i) => i % 3 == 0))
                {
                    (double low, double high) = (period.BreakRad, period.MakeRad);
                    double most = 0;
                    for (int k = 0; k < 30; k++)
                    {
                        (double a, double b) = (low + ((high - low) / 3), high - ((high - low) / 3));
                        (double atA, double atB) = (GapMm(a, r, shift), GapMm(b, r, shift));
                        most = Math.Max(most, Math.Max(atA, atB));
                        (low, high) = atA < atB ? (a, high) : (low, b);
                    }

                    least = Math.Min(least, most);
                }
            }

            return least;
        }

        private IEnumerable<double> Places(double[] travel, double[] play) =>
            travel.SelectMany(_ => play, (t, p) => _ring.RadiusMm + (t * _ring.TravelMm) + (p * _ring.SidePlayMm)).Distinct();

        private double GapMm(double programmeRad, double radiusMm, Vector shift)
        {
            Placement toWheel = Placement.Turn(-Motion.Of(_measured.Brief).Sigma * programmeRad).Then(Placement.Translation(-shift));
            double worn = _ring.Patch.WornHalfLengthMm;
            Point centre = toWheel.Of(Point.Polar(radiusMm, _ring.StationRad));
            if (_holds.Contains(Flattened.Of(centre)))
            {
                return 0;
            }

            if (_ring.Patch.IsDisc)
            {
                return Math.Max(0, _facets.Distance(Flattened.Of(centre)) - worn);
            }

            ContactPatch patch = _ring.Patch with { HalfLengthMm = worn };
            return _facets.Distance(Flattened.Polygon(patch.At(radiusMm, _ring.StationRad).Placed(toWheel)));
        }
    }
}
