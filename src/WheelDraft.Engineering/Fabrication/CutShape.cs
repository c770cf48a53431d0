using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

// The chapter "Fabrication": what leaves for the shop. Finished shapes come in; shapes to cut by go out, or a reason why not.

/// <summary>A shape as the cutter is to be led: compensated for kerf, checked before it is written.</summary>
/// <param name="Finished">The shape when it is cut.</param>
/// <param name="ToCut">The path of the cutter's middle: half a kerf outside the outline, half a kerf inside every window and hole.</param>
/// <param name="What">What it is, for messages.</param>
/// <param name="Where">Where it stands in the file.</param>
public sealed record CutShape(Outline Finished, Outline ToCut, string What, TextPlace? Where)
{
    /// <summary>Compensates and checks a shape.</summary>
    /// <param name="finished">The shape.</param>
    /// <param name="process">How it is cut.</param>
    /// <param name="what">What it is, for messages.</param>
    /// <param name="where">Where it stands in the file.</param>
    /// <exception cref="DesignRefusedException">A feature would vanish, contours cross, or the kerf does not fit the inside radius.</exception>
    public static CutShape Of(Outline finished, ProcessBrief process, string what, TextPlace? where)
    {
        ArgumentNullException.ThrowIfNull(finished);
        ArgumentNullException.ThrowIfNull(process);
        if (process.KerfMm == 0)
        {
            return new(finished, finished, what, where);
        }

        if (process.InsideRadiusMm < process.KerfMm / 2)
        {
            throw new DesignRefusedException(
                "cut.kerf",
                $"A kerf of {Wording.Mm(process.KerfMm)} cannot leave inside corners of {Wording.Mm(process.InsideRadiusMm)}: inside_radius is at least half the kerf, {Wording.Mm(process.KerfMm / 2)}.",
                where);
        }

        OffsetResult compensated = Offsets.Of(finished, process.KerfMm / 2);
        if (compensated.Changes.Count > 0 || compensated.Outlines.Count != 1)
        {
            string lost = string.Join("; ", compensated.Changes.Select(c => c.InWords(CutChecks.At(c.At))));
            throw new DesignRefusedException(
                "cut.vanishes",
                $"With a kerf of {Wording.Mm(process.KerfMm)} {what} loses features: {lost}. A finer process or larger windows would do.",
                where);
        }

        return new(finished, compensated.Outlines[0], what, where);
    }
}
