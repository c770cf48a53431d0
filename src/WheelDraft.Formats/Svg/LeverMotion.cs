using System.Globalization;
using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Svg;

/// <summary>How the levers of a film move between its moments: a lever goes with its cam, on which straight lines from picture to picture would cut every corner.</summary>
internal static class LeverMotion
{
    // While the wheel turns a lever is looked at every half degree, as on the page.
    private static readonly double LookRad = Angles.RadFromDeg(0.5);

    // A key that is on the line between its neighbours is left out: of an angle in degrees and of a length in mm of paper less than a line is wide.
    private const double Straight = 0.02;

    /// <summary>The keys of a lever: share of the film in percent, and how far it has turned in degrees or slid in mm of the housing.</summary>
    public static IReadOnlyList<(double AtS, double Lift)> Keys(MomentReel reel, LeverReel lever, double jumpS)
    {
        List<(double AtS, double Lift)> keys = [];
        double unit = lever.Swings ? Angles.DegFromRad(1) : 1;
        double startS = 0;
        for (int i = 0; i < reel.Frames.Count; i++)
        {
            ReelFrame frame = reel.Frames[i];
            double endS = startS + frame.ForS - (i + 1 < reel.Frames.Count ? jumpS : 0);
            int looks = Math.Max(1, (int)Math.Ceiling((frame.ToRad - frame.TurnedRad) / LookRad));
            for (int k = 0; k <= looks; k++)
            {
                double share = (double)k / looks;
                keys.Add((startS + (share * (endS - startS)), unit * lever.LiftOf(frame, frame.TurnedRad + (share * (frame.ToRad - frame.TurnedRad)))));
            }

            startS += frame.ForS;
        }

        return Thinned(keys);
    }

    /// <summary>How far the lever has come, as a style rule puts it; on the screen y runs down.</summary>
    public static string Transform(LeverReel lever, double lift) => lever.Way.Pivot is not null
        ? string.Create(CultureInfo.InvariantCulture, $"rotate({FixedPoint.Short(-lever.Way.Sense * lift, 3)}deg)")
        : string.Create(CultureInfo.InvariantCulture, $"translate({FixedPoint.Short(lever.Way.AlongMm.X * lift, 3)}px,{FixedPoint.Short(-lever.Way.AlongMm.Y * lift, 3)}px)");

    /// <summary>The rules of a lever.</summary>
    /// <param name="reel">The film.</param>
    /// <param name="lever">The lever.</param>
    /// <param name="rule">Name of its rule.</param>
    /// <param name="time">What its keys stand at: how a time is written, and how long a jump takes.</param>
    public static string Rules(MomentReel reel, LeverReel lever, string rule, (Func<double, string> Share, double JumpS) time)
    {
        StringBuilder keys = new();
        foreach ((double atS, double lift) in Keys(reel, lever, time.JumpS))
        {
            keys.Append(CultureInfo.InvariantCulture, $"{time.Share(atS)}{{transform:{Transform(lever, lift)}}}");
        }

        string origin = lever.Way.Pivot is Point pivot ? string.Create(CultureInfo.InvariantCulture, $"transform-origin:{SvgMarkup.Number(pivot.X)}px {SvgMarkup.Number(reel.Size.HeightMm - pivot.Y)}px;") : "";

        // Who wants no motion is shown the first moment: there the lever is where it begins, not at rest.
        string first = Transform(lever, Keys(reel, lever, time.JumpS)[0].Lift);
        return string.Create(CultureInfo.InvariantCulture, $"@keyframes {rule}{{{keys}}}\n.{rule}{{{origin}transform:{first};animation:{rule} {SvgMarkup.Number(reel.ForS)}s linear infinite}}\n");
    }

    // From each kept key as far as all keys between lie on the line.
    private static List<(double AtS, double Lift)> Thinned(List<(double AtS, double Lift)> keys)
    {
        List<(double AtS, double Lift)> kept = [keys[0]];
        int from = 0;
        for (int to = 2; to < keys.Count; to++)
        {
            if (!IsStraight(keys, from, to))
            {
                from = to - 1;
                kept.Add(keys[from]);
            }
        }

        kept.Add(keys[^1]);
        return kept;
    }

    private static bool IsStraight(List<(double AtS, double Lift)> keys, int from, int to)
    {
        (double t0, double l0) = keys[from];
        (double t1, double l1) = keys[to];
        for (int k = from + 1; k < to; k++)
        {
            double line = t1 > t0 ? l0 + ((l1 - l0) * (keys[k].AtS - t0) / (t1 - t0)) : l0;
            if (Math.Abs(keys[k].Lift - line) > Straight)
            {
                return false;
            }
        }

        return true;
    }
}
