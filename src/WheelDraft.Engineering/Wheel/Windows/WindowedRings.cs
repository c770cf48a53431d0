namespace WheelDraft.Engineering;

/// <summary>The rings of a windowed wheel: webs of copper between windows.</summary>
/// <param name="shop">What all rings share.</param>
/// <param name="wheel">What is asked of the wheel.</param>
/// <param name="copied">Whether it is copied as it is, see <see cref="CopiedWheel"/>.</param>
internal sealed class WindowedRings(RingShop shop, WheelBrief wheel, bool copied) : RingConstruction
{
    public override double ApartMm => wheel.WebMm;

    public override string Between => "copper";

    public override bool IsLastOpen => !wheel.Rim;

    public override string ApartAsked => "the web asked for is";

    public override RingTrial At(RingDemand ring, double radiusMm) => new RingSetter(shop, ring).At(radiusMm);

    public override double LeastCutMm(double neededMm) => copied ? Math.Min(neededMm, shop.Process.LeastWebMm) : neededMm;

    public override bool MissesInsteadOfRefusing(string code) => copied && code is "wheel.tolerance";

    public override double ReachMm(RingDemand ring) => ring.IsWhole ? ring.SidePlayMm + (shop.RunOutMm / 2) : ring.SideGapMm;

    public override double LackMm(RingDemand ring, RingTrial trial) => Math.Max(WindowCorners.Intrusion(shop, ring, trial), WornLackMm(ring, trial));

    public override string LackWhy(RingDemand ring, RingTrial trial) => WindowCorners.Intrusion(shop, ring, trial) >= WornLackMm(ring, trial)
        ? "so that the rounded corners at the sloped edge stay clear of the patch path"
        : ring.SideGapWhy;

    // What a worn patch reaches further in than the new one; what it reaches further out is in the band already.
    private static double WornLackMm(RingDemand ring, RingTrial trial) =>
        ring.IsWhole ? 0 : ring.PathFromMm(trial.RadiusMm) - ring.WornPathFromMm(trial.RadiusMm) + ring.WornSideGapMm + ring.CurvedMoreMm(trial.RadiusMm) - ring.SideGapMm;

    public override double BeyondLastMm(double apartMm) => apartMm;

    public override double OuterRadiusMm(IReadOnlyList<PackedRing> placed, double outermostMm, double apartMm, double hubMm)
    {
        PackedRing last = placed.OrderBy(r => r.Trial.BandToMm).Last();
        if (wheel.Rim || last.Ring.IsWhole || last.Trial.BandToMm < outermostMm)
        {
            return outermostMm + BeyondLastMm(apartMm);
        }

        // Without a rim the last ring's windows are open outwards: copper reaches a web beyond what the patch may touch.
        double touched = last.Ring.PathToMm(last.Trial.RadiusMm) + last.Ring.SidePlayMm + (shop.RunOutMm / 2);
        double inner = placed.Where(r => r != last).Select(r => r.Trial.BandToMm).Append(hubMm).Max();
        return Math.Max(touched, inner) + apartMm;
    }

    public override string Beside(double apartMm, RingDemand ring) =>
        $"a web of {Wording.Mm(apartMm)} apart" + (ring.IsWhole ? "" : $", its windows {Wording.Mm(ring.SideGapMm)} beyond the patch path ({ring.SideGapWhy})");
}
