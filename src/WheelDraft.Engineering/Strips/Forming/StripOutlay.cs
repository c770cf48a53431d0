using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>Widths at the two ends of one piece of a strip, mm.</summary>
internal readonly record struct PieceWidth(double FromMm, double ToMm);

/// <summary>A strip's shape read once from end to end: which piece is as wide as what, and which one touches the wheel.</summary>
/// <param name="Strip">The strip.</param>
/// <param name="Widths">One entry a piece.</param>
/// <param name="ContactPiece">The piece that touches: a contact fold or the rivet; null for none.</param>
internal sealed record StripOutlay(StripBrief Strip, IReadOnlyList<PieceWidth> Widths, int? ContactPiece)
{
    /// <summary>Reads the shape; what does not hang together is added to the reasons.</summary>
    internal static StripOutlay Of(StripBrief strip, Brief brief, int index, List<Finding> reasons)
    {
        List<PieceWidth> widths = [];
        int? contact = null;
        double? width = null;
        void Refuse(int piece, FormattableString message) =>
            reasons.Add(Finding.Error("strip.shape", FormattableString.Invariant(message), brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"strip[{index}].shape[{piece}]"))));

        for (int i = 0; i < strip.Shape.Count; i++)
        {
            (double? from, double? to) = WidthsOf(strip.Shape[i], width);
            if (from is null)
            {
                Refuse(i, $"piece {i + 1} of strip \"{strip.Name}\" has no width, and no piece before it has one; e.g. width = \"5 mm\"");
            }

            widths.Add(new(from ?? 1, to ?? 1));
            width = to ?? 1;
            if (strip.Shape[i] is StripTab && i > 0)
            {
                Refuse(i, $"the tab of strip \"{strip.Name}\" is piece {i + 1}; a tab is the terminal end, so the first piece");
            }

            if (strip.Shape[i] is StripRivet && i < strip.Shape.Count - 1)
            {
                Refuse(i, $"the rivet of strip \"{strip.Name}\" is piece {i + 1} of {strip.Shape.Count}; a contact rivet sits at the end, so it is the last piece");
            }

            if (strip.Shape[i] is StripRivet or StripBend { IsContact: true })
            {
                if (contact is int first)
                {
                    Refuse(i, $"strip \"{strip.Name}\" has two contacts, pieces {first + 1} and {i + 1}; one wiper touches in one place");
                }

                contact ??= i;
            }
        }

        int[] autos = [.. Enumerable.Range(0, strip.Shape.Count).Where(i => strip.Shape[i] is StripStraight { LengthMm: null })];
        if (autos.Length > 1)
        {
            Refuse(autos[1], $"strip \"{strip.Name}\" has {autos.Length} straights \"auto\", pieces {autos[0] + 1} and {autos[1] + 1}; only one can be solved for");
        }

        return new StripOutlay(strip, widths, contact);
    }

    private static (double? From, double? To) WidthsOf(StripPiece piece, double? before) => piece switch
    {
        StripTab tab => TabDimensions.Find(tab.Size)?.WidthMm is double w ? (w, w) : (before, before),
        StripStraight s => (s.WidthMm ?? before, s.WidthEndMm ?? s.WidthMm ?? before),
        StripSweep s => (s.WidthMm ?? before, s.WidthMm ?? before),
        _ => (before, before),
    };
}
