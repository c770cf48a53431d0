using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>A parameter file with the flow that was measured, and on-times that give the doses wanted at it.</summary>
internal static class CalibratedFile
{
    // How nearly the doses of the new file must be those wanted: its times are written to a tenth of a millisecond.
    private const double NearShare = 1e-3;

    /// <summary>The new file; everything but flow and on-times as it was.</summary>
    /// <param name="bytes">The file as it is.</param>
    /// <param name="brief">What was read from it.</param>
    /// <param name="output">The output, by index.</param>
    /// <param name="flowLPerS">The flow that was measured, litres a second.</param>
    /// <param name="wantedMl">The dose wanted of each on-period in file order, mL.</param>
    /// <exception cref="DesignRefusedException">It does not work as a parameter file, or its values do not stand where they can be changed.</exception>
    public static byte[] Of(ReadOnlySpan<byte> bytes, Brief brief, int output, double flowLPerS, IReadOnlyList<double> wantedMl)
    {
        string path = FormattableString.Invariant($"output[{output}]");
        if (brief.Outputs[output].Measured is not null)
        {
            throw new DesignRefusedException("calibrate.copper", "The times of this output follow from its measured copper, which a new file would keep: give it 'on' in place of 'copper' first.", brief.PlaceOf(path));
        }

        string text = ValueEdit.Replaced(Encoding.UTF8.GetString(bytes), Values(brief, output, (path, flowLPerS), wantedMl))
            ?? throw new DesignRefusedException("calibrate.layout", "A value to be changed does not stand on the line of its key as a plain text in quotes; bring it there and try again.", brief.PlaceOf(path));
        byte[] made = Encoding.UTF8.GetBytes(text);
        ParameterResult read = ParameterReader.Read(made);
        Brief changed = read.Brief ?? throw new DesignRefusedException([.. read.Diagnostics.Select(d => Finding.Error("calibrate.file", $"in the corrected file {d.Message}", d.Place))]);
        Motion motion = Motion.Of(changed);
        foreach (OnPeriod period in Programme.Of(changed, motion).Outputs[output].Periods)
        {
            double dose = motion.SecondsFromRad(period.SweepRad) * flowLPerS * 1000;
            if (Math.Abs(dose - wantedMl[period.Index]) > NearShare * wantedMl[period.Index])
            {
                throw new DesignRefusedException("calibrate.layout", "The corrected file would not give the dose wanted: its values do not stand as plain texts where they can be changed.", brief.PlaceOf(path));
            }
        }

        return made;
    }

    private static IEnumerable<(TextPlace Key, string Value)> Values(Brief brief, int output, (string Path, double LPerS) flow, IReadOnlyList<double> wantedMl)
    {
        if (brief.Places.TryGetValue(flow.Path + ".flow", out TextPlace flowPlace))
        {
            yield return (flowPlace, Significant(flow.LPerS * 60) + " L/min");
        }

        Motion motion = Motion.Of(brief);
        foreach (OnPeriod period in Programme.Of(brief, motion).Outputs[output].Periods)
        {
            string at = FormattableString.Invariant($"{flow.Path}.on[{period.Index}]");
            double onS = wantedMl[period.Index] / 1000 / flow.LPerS;
            if (brief.Places.TryGetValue(at + ".for", out TextPlace place))
            {
                bool isVolume = brief.Outputs[output].On.Periods![period.Index].Extent is LastsForVolume;
                yield return (place, isVolume ? Significant(wantedMl[period.Index]) + " mL" : Wording.Number(onS, 4) + " s");
            }
            else if (brief.Places.TryGetValue(at + ".to", out place))
            {
                double to = motion.SecondsFromRad(Angles.InTurn(period.StartRad + motion.RadFromSeconds(onS)));
                yield return (place, Wording.Number(to, 4) + " s");
            }
        }
    }

    // Five figures: finer than anyone measures a flow.
    private static string Significant(double value) => Wording.Number(value, Math.Clamp(4 - (int)Math.Floor(Math.Log10(value)), 0, 10));
}
