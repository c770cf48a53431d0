using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Which legs beside a contact fold belong to its nose, and how steep they are.</summary>
/// <param name="Section">The legs as an open contact is judged by them.</param>
/// <param name="Before">Whether the leg on the side of the arm belongs to the nose.</param>
/// <param name="After">Whether the one on the side of the tip does.</param>
internal sealed record NoseLegs(NoseSection Section, bool Before, bool After)
{
    // A leg flatter than this lies along the copper instead of standing on it: it is no nose, and is measured as any other part of a strip.
    private static readonly double LeastSlopeRad = Angles.RadFromDeg(10);

    // Widths that differ by no more are the same.
    private const double SameMm = 1e-6;

    /// <summary>The legs of a pressed strip; null with a rivet, or where no leg stands steeply enough.</summary>
    /// <remarks>A leg is the one straight beside the fold, no wider there than the fold; what lies beyond the next bend is none.</remarks>
    internal static NoseLegs? Of(StripForm form, StripSpring spring, StripContact contact)
    {
        if (form.Nose is not { Rivet: null } nose)
        {
            return null;
        }

        int fold = nose.PieceIndex;
        double moves = Moves(spring, contact);
        double? before = Slope(form, spring, fold, fold - 1, moves);
        double? after = Slope(form, spring, fold, fold + 1, moves);
        double[] slopes = [.. new[] { before, after }.OfType<double>()];
        if (slopes.Length == 0)
        {
            return null;
        }

        double widens = Math.Max(before is null ? 0 : Widens(form.Pieces[fold - 1], -1), after is null ? 0 : Widens(form.Pieces[fold + 1], 1));
        return new(new(Math.Min(slopes.Min(), Math.PI / 2), Math.Max(0, widens)), before is not null, after is not null);
    }

    // How far the nose may turn from where it is drawn, pressed more or less than that: wear, face run-out, height, and the step that it rides down.
    private static double Moves(StripSpring spring, StripContact contact)
    {
        PressingLimits limits = spring.Limits;
        double heightMm = limits.Forming.HeightMm.Value + (limits.FaceRunOutMm / 2) + limits.StepMm + (contact.WearDepthMm ?? 0);
        return spring.Chain.Vertical.Turn.Length / spring.GivesMmPerN.Z * heightMm;
    }

    // The flattest slope of a leg; null where it is no part of the nose.
    private static double? Slope(StripForm form, StripSpring spring, int fold, int leg, double movesRad)
    {
        if (leg < 0 || leg >= form.Pieces.Count || form.Pieces[leg] is not { Kind: FormedKind.Straight } piece)
        {
            return null;
        }

        int away = leg < fold ? -1 : 1;
        double atFold = away < 0 ? piece.WidthEndMm : piece.WidthMm;
        double folds = form.Pieces.Take(away < 0 ? fold : fold + 1).Count(p => p.Kind == FormedKind.Fold);
        double slope = Frames(form, spring, leg).Min(f => Math.Asin(Math.Clamp(away * f.Along.Z, -1, 1)))
            - movesRad - (folds * spring.Limits.Forming.FoldRad.Value);
        return atFold <= form.Pieces[fold].WidthMm + SameMm && slope >= LeastSlopeRad ? slope : null;
    }

    private static IEnumerable<StripFrame> Frames(StripForm form, StripSpring spring, int leg)
    {
        FormedPiece piece = form.Pieces[leg];
        foreach (ChainStation at in spring.Chain.Stations.Where(s => s.Piece == leg))
        {
            yield return (at.Vertical * spring.ForceN).Carry(at.Frame);
        }

        // Beyond the nose all is carried as the end of the chain is; what is clamped stays as it is.
        yield return piece.FromMm >= form.Nose!.AtMm ? (spring.Chain.Vertical * spring.ForceN).Carry(piece.End)
            : piece.FromMm < form.Clamp.ToMm ? piece.Start
            : (spring.Chain.Vertical * spring.ForceN).Carry(piece.End);
    }

    private static double Widens(FormedPiece leg, int away) => away * (leg.WidthEndMm - leg.WidthMm) / 2 / leg.DevelopedMm;
}
