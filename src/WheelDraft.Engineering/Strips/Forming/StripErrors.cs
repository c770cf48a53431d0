namespace WheelDraft.Engineering;

/// <summary>By how much one strip of a batch differs from the drawn one.</summary>
/// <param name="AnglesRad">By fold of <see cref="StripForm.Folds"/>: how much further it is folded, radians.</param>
/// <param name="RadiiMm">By fold: how much larger its inside radius is, mm.</param>
/// <param name="ThicknessMm">How much thicker the stock is, mm.</param>
/// <param name="HeightMm">How much lower the contact lies against the copper face, from seat, rivet and carrier, mm.</param>
/// <param name="WidthMm">How much wider the blank is cut, both edges together, mm.</param>
internal sealed record StripErrors(IReadOnlyList<double> AnglesRad, IReadOnlyList<double> RadiiMm, double ThicknessMm, double HeightMm, double WidthMm)
{
    /// <summary>The strip as it comes out: cut from the drawn blank, folded on the drawn lines.</summary>
    /// <remarks>The blank is cut before it is folded, so a straight "auto" keeps its solved length, and where a fold takes more of the
    /// blank the straights beside it lose as much, half each; a clamp holds what lies in it flat.</remarks>
    /// <returns>Pieces, nose, seat and thickness of that strip, blank and fold table of the drawn one; null when its contact fold no
    /// longer faces the wheel.</returns>
    internal StripForm? Of(StripForm form)
    {
        double thickness = form.Strip.ThicknessMm + ThicknessMm;
        double seat = form.SeatLevelMm - HeightMm;
        List<FormedPiece> chain = StripForming.Seated(Chain(form, thickness), form.Clamp, seat, thickness);
        StripNose drawn = form.Nose!;
        StripNose? nose = drawn.Rivet is StripRivet rivet ? StripNoses.OnRivet(chain, rivet, thickness) : StripNoses.OnFold(chain, drawn.PieceIndex, thickness);
        return nose is null ? null : form with { Strip = form.Strip with { ThicknessMm = thickness }, Pieces = chain, SeatLevelMm = seat, Nose = nose };
    }

    private List<FormedPiece> Chain(StripForm form, double thickness)
    {
        IReadOnlyList<FormedPiece> drawn = form.Pieces;
        double[] lengths = new double[drawn.Count];
        for (int i = 0; i < lengths.Length; i++)
        {
            lengths[i] = drawn[i].DevelopedMm;
        }

        int[] folds = Refold(form, lengths, thickness);
        List<FormedPiece> chain = new(drawn.Count);
        StripFrame frame = drawn[0].Start;
        double at = 0;
        for (int i = 0; i < drawn.Count; i++)
        {
            FormedPiece piece = drawn[i];
            bool clamped = piece.FromMm < form.Clamp.ToMm && piece.ToMm >= form.Clamp.ToMm;
            bool isFold = piece.Kind == FormedKind.Fold;
            chain.Add(piece with
            {
                Start = frame,
                FromMm = at,
                DevelopedMm = Math.Max(lengths[i], clamped ? form.Clamp.ToMm - at : 0),
                WidthMm = piece.WidthMm + WidthMm,
                WidthEndMm = piece.WidthEndMm + WidthMm,
                AngleRad = isFold ? AngleOf(form, folds[i]) : piece.AngleRad,
                RadiusMm = isFold ? RadiusOf(form, folds[i]) + (thickness / 2) : piece.RadiusMm,
            });
            frame = chain[^1].End;
            at = chain[^1].ToMm;
        }

        return chain;
    }

    private double AngleOf(StripForm form, int fold) => form.Folds[fold].AngleRad + (Math.Sign(form.Folds[fold].AngleRad) * AnglesRad[fold]);

    private double RadiusOf(StripForm form, int fold) => Math.Max(0, form.Folds[fold].RadiusMm + RadiiMm[fold]);

    // Lengthens every fold by the extra blank that it takes, and shortens the straights beside it; returns each piece's fold, from 0.
    private int[] Refold(StripForm form, double[] lengths, double thickness)
    {
        int[] folds = new int[lengths.Length];
        int fold = 0;
        for (int i = 0; i < lengths.Length; i++)
        {
            if (form.Pieces[i].Kind != FormedKind.Fold)
            {
                continue;
            }

            double takes = BendRule.AllowanceMm(AngleOf(form, fold), RadiusOf(form, fold), thickness, form.Folds[fold].K.Value);
            double more = takes - lengths[i];
            lengths[i] = takes;
            Shorten(form, lengths, i - 1, more / 2);
            Shorten(form, lengths, i + 1, more / 2);
            folds[i] = fold++;
        }

        return folds;
    }

    private static void Shorten(StripForm form, double[] lengths, int index, double byMm)
    {
        if (index >= 0 && index < lengths.Length && form.Pieces[index].Kind == FormedKind.Straight)
        {
            lengths[index] -= byMm;
        }
    }
}
