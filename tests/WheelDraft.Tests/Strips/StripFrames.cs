using MathNet.Numerics.LinearAlgebra;
using WheelDraft.Engineering;

namespace WheelDraft.Tests.Strips;

/// <summary>A strip as a frame of short straight beams, for the oracle.</summary>
internal static class StripFrames
{
    private const int UsualCells = 16;

    /// <summary>How far the nose goes for 1 N up, by the stiffness method.</summary>
    internal static SpaceVector Gives(StripForm form) => Gives(form, SpaceVector.Upward);

    /// <summary>How far the nose goes under a load through its centre, N, by the stiffness method.</summary>
    internal static SpaceVector Gives(StripForm form, SpaceVector loadN) => Gives(form, loadN, default, UsualCells);

    /// <summary>The same with a second load where the nose touches, a radius below its centre.</summary>
    /// <param name="form">The strip.</param>
    /// <param name="loadN">Through the centre of the nose.</param>
    /// <param name="touchingN">Where it touches.</param>
    /// <param name="cells">Straight beams a piece.</param>
    internal static SpaceVector Gives(StripForm form, SpaceVector loadN, SpaceVector touchingN, int cells)
    {
        double e = form.Material.ModulusGpa.Value * 1000;
        double g = e / (2 * (1 + 0.34));
        double t = form.Strip.ThicknessMm;
        FrameOracle frame = new(e, g);
        StripNose nose = form.Nose!;
        int before = -1;
        SpaceVector at = default;
        foreach (FormedPiece piece in form.Pieces.Where(p => p.DevelopedMm > 0))
        {
            double a = Math.Max(piece.FromMm, form.Clamp.ToMm);
            double b = Math.Min(piece.ToMm, nose.AtMm);
            for (int i = 0; i < cells && b > a; i++)
            {
                StripFrame from = piece.FrameAt((a + ((b - a) * i / cells) - piece.FromMm) / piece.DevelopedMm);
                StripFrame to = piece.FrameAt((a + ((b - a) * (i + 1) / cells) - piece.FromMm) / piece.DevelopedMm);
                double middle = (a + ((b - a) * (i + 0.5) / cells) - piece.FromMm) / piece.DevelopedMm;
                if (before < 0)
                {
                    before = frame.Node(from.Origin.X, from.Origin.Y, from.Origin.Z);
                    frame.Fix(before);
                }

                int next = frame.Node(to.Origin.X, to.Origin.Y, to.Origin.Z);
                SpaceVector up = piece.FrameAt(middle).Up;
                double w = piece.WidthAt(middle);

                // Local y along the normal of the strip: own-axis bending is about local z.
                double j = w * t * t * t / 3 * (1 - (0.630 * t / w));
                frame.Add(before, next, (w * t, t * w * w * w / 12, w * t * t * t / 12, j), [up.X, up.Y, up.Z]);
                before = next;
                at = to.Origin;
            }
        }

        // The nose hangs on the end by a short, all but rigid arm.
        int end = before;
        if ((nose.Centre - at).Length > 1e-6)
        {
            end = frame.Node(nose.Centre.X, nose.Centre.Y, nose.Centre.Z);
            frame.Add(before, end, (1e4, 1e4, 1e4, 1e4), [nose.Frame.Along.X, nose.Frame.Along.Y, nose.Frame.Along.Z]);
        }

        SpaceVector all = loadN + touchingN;
        SpaceVector moment = (SpaceVector.Upward * -nose.RadiusMm).Cross(touchingN);
        double[] loads = [all.X, all.Y, all.Z, moment.X, moment.Y, moment.Z];
        for (int i = 0; i < loads.Length; i++)
        {
            frame.Load(end, i, loads[i]);
        }

        Vector<double> u = frame.Solve();
        return new(u[6 * end], u[(6 * end) + 1], u[(6 * end) + 2]);
    }
}
