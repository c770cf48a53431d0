using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>The cautions that every report, drawing and page carries.</summary>
internal static class Cautions
{
    /// <summary>In one line, by the design's voltage.</summary>
    public static string Short(Design design) => design.Brief.Supply.IsExtraLow
        ? "Extra-low voltage burns and starts fires: fuse it, and feed it from a safety transformer only. A drafting aid, no certificate; local codes and a qualified person decide."
        : "Mains voltage kills: isolate before work. A drafting aid, no certificate; local codes and a qualified person decide.";

    /// <summary>The cautions for a design, in order.</summary>
    public static IReadOnlyList<string> For(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        bool extraLow = design.Brief.Supply.IsExtraLow;
        List<string> cautions =
        [
            extraLow
                ? "Extra-low voltage still burns and starts fires: isolate and fuse the supply before work, and keep it separated from mains by a safety transformer."
                : "Mains voltage kills. Work on the timer only when it is isolated from the supply, and prove it dead.",
            "This is a drafting aid: it checks geometry against rules as given and certifies nothing. Local codes and a licensed or qualified person decide.",
            extraLow
                ? "The safety transformer's other side is mains, which kills: leave it closed. Keep the fuse and the thermal cut-out of the design in place for every test."
                : "Test with an isolating transformer and a residual-current device; keep the fuse and the thermal cut-out of the design in place.",
            "An open contact of this kind is a contact gap (micro-interruption unless tested), never a means of isolation.",
            "Breaking capacity, arcing and contact life are not proved by this drawing; contacts that break inductive loads or more than about 0.5 A need a test of their own.",
        ];
        if (design.Brief.Spacing.OwnResponsibility is string own)
        {
            cautions.Add($"Distances or grades of insulation below the rules stand in this design on own responsibility: \"{own}\".");
        }

        cautions.Add("Rule data: tables are quoted from public texts and memory, graded in the steps; check against a controlled copy of the standard before signing.");
        return cautions;
    }
}
