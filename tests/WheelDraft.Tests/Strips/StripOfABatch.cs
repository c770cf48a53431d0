using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Strips;

/// <summary>One strip of a batch, formed from a parameter brief of its own, every length written out, and bent as a frame.</summary>
/// <remarks>Errors are shares in [−1, 1] of their limits: angle and radius of each fold, thickness, width, height, friction. It shares
/// nothing with the search for bands but the forming of a strip without errors, which has oracles of its own.</remarks>
internal sealed class StripOfABatch(StripBrief drawn, PressingLimits limits, SpaceVector radial)
{
    internal const double K = 0.45;
    private const int Cells = 8;

    private readonly StripForm _nominal = StripForm.Of(StripBriefs.With(drawn with { KFactor = K }), 0);

    internal StripForm Nominal => _nominal;

    internal int Count => (2 * _nominal.Folds.Count) + 4;

    private SpaceVector Way => SpaceVector.Upward.Cross(radial) * (limits.Direction == Turning.Anticlockwise ? 1 : -1);

    /// <summary>Force and friction wind-up of a member; a member that does not reach the copper presses with nothing.</summary>
    internal (double ForceN, double WindMm) Of(double[] at)
    {
        StripForm form;
        try
        {
            form = StripForm.Of(Brief(at), 0);
        }
        catch (DesignRefusedException refused) when (refused.Message.Contains("does not touch", StringComparison.Ordinal))
        {
            return (0, 0);
        }

        double friction = (limits.Friction?.Most ?? 0) * (1 + at[^1]) / 2;
        SpaceVector up = StripFrames.Gives(form, SpaceVector.Upward, default, Cells);
        SpaceVector drag = StripFrames.Gives(form, default, Way, Cells);
        double depth = form.Nose!.DepthMm;
        double force = depth / (up.Z + (friction * drag.Z));
        double wind = ((up * force) + (drag * (friction * force)) - (up * (depth / up.Z))).Dot(Way);
        return (force, wind);
    }

    private Brief Brief(double[] at)
    {
        int folds = _nominal.Folds.Count;
        FormingBrief forming = limits.Forming;
        double t = drawn.ThicknessMm * (1 + (at[2 * folds] * forming.ThicknessShare.Value));
        double wider = at[(2 * folds) + 1] * 2 * limits.CutMm;
        double lower = at[(2 * folds) + 2] * (forming.HeightMm.Value + (limits.FaceRunOutMm / 2));
        StripPiece[] shape = [.. drawn.Shape];
        double[] lengths = [.. shape.Select((p, i) => p is StripStraight ? _nominal.Pieces.First(f => f.ShapeIndex == i).DevelopedMm : 0)];
        int fold = 0;
        for (int i = 0; i < shape.Length; i++)
        {
            if (drawn.Shape[i] is StripBend bend)
            {
                double angle = bend.AngleRad + (Math.Sign(bend.AngleRad) * at[fold] * forming.FoldRad.Value);
                double radius = bend.RadiusMm + (at[folds + fold] * forming.RadiusMm.Value);
                double more = (Math.Abs(angle) * (radius + (K * t))) - (Math.Abs(bend.AngleRad) * (bend.RadiusMm + (K * drawn.ThicknessMm)));
                shape[i] = new StripBend(angle, radius, bend.IsContact);
                Lose(i - 1, more / 2);
                Lose(i + 1, more / 2);
                fold++;
            }
        }

        void Lose(int piece, double by)
        {
            if (shape[piece] is StripStraight)
            {
                lengths[piece] -= by;
            }
        }

        for (int i = 0; i < shape.Length; i++)
        {
            shape[i] = shape[i] switch
            {
                StripStraight s => new StripStraight(lengths[i], s.WidthMm + wider, s.WidthEndMm + wider),
                StripSweep s => s with { WidthMm = s.WidthMm + wider },
                _ => shape[i],
            };
        }

        StripBrief made = drawn with { ThicknessMm = t, Shape = shape, DeflectionMm = null, KFactor = K };
        return StripBriefs.With(made) with { Surfaces = [new("floor", MaterialGroup.IIIa, -7 - lower, null)] };
    }
}
