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
    /// <remarks>The blank is cut before it is folded, so a straight "auto" keeps its solved length, and what a fold takes more of the
    /// blank the straights beside it lose, half each; a clamp holds what lies in it flat.</remarks>
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
        FormedPiece[] pieces = [.. form.Pieces.Select(p => p with { WidthMm = p.WidthMm + WidthMm, WidthEndMm = p.WidthEndMm + WidthMm })];
        double[] lengths = [.. pieces.Select(p => p.DevelopedMm)];
        int fold = 0;
        for (int i = 0; i < pieces.Length; i++)
        {
            if (pieces[i].Kind == FormedKind.Fold)
            {
                Refold(pieces, lengths, i, (form.Folds[fold], thickness, fold));
                fold++;
            }
        }

        List<FormedPiece> chain = [];
        StripFrame frame = pieces[0].Start;
        double at = 0;
        for (int i = 0; i < pieces.Length; i++)
        {
            bool clamped = pieces[i].FromMm < form.Clamp.ToMm && pieces[i].ToMm >= form.Clamp.ToMm;
            double length = Math.Max(lengths[i], clamped ? form.Clamp.ToMm - at : 0);
            chain.Add(pieces[i] with { Start = frame, FromMm = at, DevelopedMm = length });
            frame = chain[^1].End;
            at = chain[^1].ToMm;
        }

        return chain;
    }

    private void Refold(FormedPiece[] pieces, double[] lengths, int index, (StripFold Fold, double Thickness, int Number) of)
    {
        double angle = of.Fold.AngleRad + (Math.Sign(of.Fold.AngleRad) * AnglesRad[of.Number]);
        double radius = Math.Max(0, of.Fold.RadiusMm + RadiiMm[of.Number]);
        double takes = BendRule.AllowanceMm(angle, radius, of.Thickness, of.Fold.K.Value);
        double more = takes - lengths[index];
        lengths[index] = takes;
        pieces[index] = pieces[index] with { AngleRad = angle, RadiusMm = radius + (of.Thickness / 2) };
        foreach (int beside in new[] { index - 1, index + 1 })
        {
            if (beside >= 0 && beside < pieces.Length && pieces[beside].Kind == FormedKind.Straight)
            {
                lengths[beside] -= more / 2;
            }
        }
    }
}
