namespace WheelDraft.Engineering;

/// <summary>Where a chain touches, by its geometry alone.</summary>
internal static class StripNoses
{
    /// <summary>The dome of a rivet, its axis half its diameter before the end of the chain.</summary>
    internal static StripNose OnRivet(IReadOnlyList<FormedPiece> chain, StripRivet rivet, double thicknessMm)
    {
        FormedPiece last = chain[^1];
        double at = last.ToMm - (rivet.DiameterMm / 2);
        double share = (at - last.FromMm) / last.DevelopedMm;
        StripFrame frame = last.FrameAt(share);
        SpaceVector centre = frame.At(0, 0, -((thicknessMm / 2) + rivet.HeightMm - rivet.DomeRadiusMm));
        return new StripNose(at, frame, centre, rivet.DomeRadiusMm) { Rivet = rivet, PieceIndex = chain.Count - 1, WidthMm = last.WidthAt(share) };
    }

    /// <summary>The outside of a fold where the strip is level; null when it is level nowhere on the wheel side.</summary>
    internal static StripNose? OnFold(IReadOnlyList<FormedPiece> chain, int index, double thicknessMm)
    {
        FormedPiece fold = chain[index];
        double alongZ = fold.Start.Along.Z;
        double upZ = fold.Start.Up.Z;
        double lowest = fold.AngleRad > 0 ? Math.Atan2(-alongZ, upZ) : Math.Atan2(alongZ, -upZ);
        double share = lowest / fold.AngleRad;
        return share is >= 0 and <= 1
            ? new StripNose(fold.FromMm + (share * fold.DevelopedMm), fold.FrameAt(share), fold.Centre, fold.RadiusMm + (thicknessMm / 2)) { PieceIndex = index, WidthMm = fold.WidthMm }
            : null;
    }
}
