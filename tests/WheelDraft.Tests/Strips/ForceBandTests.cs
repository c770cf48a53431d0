using System.Globalization;
using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>Bands of force and wind-up against frames of random strips, by the stiffness method (MathNet), written apart.</summary>
public sealed class ForceBandTests(ITestOutputHelper output)
{
    // 200 with WHEELDRAFT_STRIPS=200.
    private static readonly int Strips = int.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_STRIPS"), CultureInfo.InvariantCulture, out int n) ? n : 8;

    // Chords of eight beams a piece, and stretch, which strips leave out: measured below 0.4 %.
    private const double Frame = 0.004;

    private static double Between(Random draw, double least, double most) => least + ((most - least) * draw.NextDouble());

    /// <summary>A Z with a riser, an arm, perhaps a sweep, and a rivet or a fold at its end.</summary>
    private static StripBrief Drawn(Random draw)
    {
        double riser = Between(draw, 60, 95);
        double width = Between(draw, 4, 6);
        bool onFold = draw.Next(2) == 0;
        List<StripPiece> shape =
        [
            new StripStraight(15, width, null),
            new StripBend(StripBriefs.Deg(riser), 1, false),
            new StripStraight(null, width, null),
            new StripBend(StripBriefs.Deg(-riser - Between(draw, 4, 9)), Between(draw, 0.9, 1.5), false),
        ];
        if (draw.Next(3) == 0)
        {
            shape.Add(new StripSweep(StripBriefs.Deg(Between(draw, -40, 40)), 8, width));
        }

        shape.Add(new StripStraight(Between(draw, 18, 30), width, Between(draw, 3, width)));
        shape.AddRange(onFold
            ? [new StripBend(StripBriefs.Deg(40), 1, true), new StripStraight(3, 3, null)]
            : [new StripRivet(2.2, 1.5, 2.5)]);
        return new("feed strip", new ServesFeed(), "C51000-H04", Between(draw, 0.3, 0.6), shape)
        {
            Grain = StripGrain.Along,
            Clamp = new(3, 14),
            DeflectionMm = Between(draw, 2, 4),
            ApproachRad = StripBriefs.Deg(Between(draw, 0, 360)),
            SeatedOn = "floor",
            KFactor = StripOfABatch.K,
        };
    }

    private static PressingLimits Limits(Random draw) => new()
    {
        Forming = new()
        {
            FoldRad = new(StripBriefs.Deg(Between(draw, 0.2, 1.5)), true),
            ThicknessShare = new(Between(draw, 0, 0.08), true),
            HeightMm = new(Between(draw, 0, 0.2), true),
            RadiusMm = new(Between(draw, 0, 0.15), true),
        },
        CutMm = Between(draw, 0, 0.05),
        FaceRunOutMm = Between(draw, 0, 0.1),
        Friction = new(0, Between(draw, 0, 0.5)),
        Direction = draw.Next(2) == 0 ? Turning.Clockwise : Turning.Anticlockwise,
    };

    // Random members never leave the bands, and the corner that the frame's own slopes point to attains every end within 1 %
    // (of the drawn force, where the end itself is small).
    [Fact]
    public void Band_OfRandomStrips_HoldsEveryMemberAndIsAttained()
    {
        int strips = 0;
        double nearest = double.PositiveInfinity;
        double slackest = 0;
        Gen.Int[1, 1_000_000].Sample(
            seed =>
            {
                Random draw = new(seed);
                StripBrief drawn = Drawn(draw);
                PressingLimits limits = Limits(draw);
                StripForm form = StripForm.Of(StripBriefs.With(drawn), 0);
                SpaceVector radial = StripSpring.RadialOf(form.Nose!, drawn.ApproachRad!.Value);
                StripContact contact = new() { Shape = ContactShape.FoldLine, LengthMm = 0.4, WornLengthMm = 0.4, WidthMm = 3, AngleRad = 0, NoseRadiusMm = 1.5, ApproachRad = drawn.ApproachRad };
                StripSpring spring = StripSpring.Of(form, contact, null, limits);
                if (spring.Band.Fails is not null)
                {
                    return;
                }

                StripOfABatch batch = new(drawn, limits, radial);
                double drawnN = spring.ForceN;
                double windScale = spring.WindUp!.Value.MostMm;
                for (int i = 0; i < 5; i++)
                {
                    (double force, double wind) = batch.Of([.. Enumerable.Range(0, batch.Count).Select(_ => Between(draw, -1, 1))]);
                    Assert.InRange(force, spring.LeastForceN - (Frame * drawnN), spring.MostForceN + (Frame * spring.MostForceN));
                    Assert.InRange(wind, spring.WindUp.Value.LeastMm - (Frame * windScale), windScale * (1 + (2 * Frame)));
                    nearest = Math.Min(nearest, Math.Min(force - spring.LeastForceN, spring.MostForceN - force) / drawnN);
                }

                (double least, double most, double furthest) = Corners(batch);
                double low = (least - spring.LeastForceN) / drawnN;
                double high = (spring.MostForceN - most) / most;
                double along = (windScale - furthest) / windScale;
                slackest = Math.Max(slackest, Math.Max(low, Math.Max(high, along)));
                Assert.InRange(low, -Frame, 0.01);
                Assert.InRange(high, -Frame, 0.01);
                Assert.InRange(along, -2 * Frame, 0.01);
                strips++;
            },
            iter: Strips);
        output.WriteLine(FormattableString.Invariant($"{strips} of {Strips} strips, the others jam; random members keep {nearest:0.####} of the drawn force from the ends, corners attain them within {slackest:0.####}"));
        Assert.True(strips >= 0.7 * Strips);
    }

    // The corners that slopes at the middle point to, by one frame a side and error.
    private static (double Least, double Most, double Wind) Corners(StripOfABatch batch)
    {
        double[] up = new double[batch.Count];
        double[] wound = new double[batch.Count];
        for (int i = 0; i < batch.Count; i++)
        {
            double[] at = new double[batch.Count];
            at[i] = 1;
            (double high, double far) = batch.Of(at);
            at[i] = -1;
            (double low, double near) = batch.Of(at);
            up[i] = high >= low ? 1 : -1;
            wound[i] = far >= near ? 1 : -1;
        }

        return (batch.Of([.. up.Select(s => -s)]).ForceN, batch.Of(up).ForceN, batch.Of(wound).WindMm);
    }
}
