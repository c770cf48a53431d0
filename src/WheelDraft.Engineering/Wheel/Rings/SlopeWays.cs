namespace WheelDraft.Engineering;

/// <summary>Ways out of an adjusting edge that is too steep: the most that its travel gives, and the travel that its range needs.</summary>
/// <remarks>The edge's slope is r dφ/dr: for the same range over the same travel it grows with the radius, so a larger ring never helps.</remarks>
internal static class SlopeWays
{
    /// <summary>The code of such a fault.</summary>
    public const string Code = "wheel.slope";

    // A millisecond and a hundredth of a millimetre: no screw is set more finely.
    private const double RangeResolutionS = 1e-3;
    private const double TravelResolutionMm = 0.01;

    // No spring strip is drawn further along the radius.
    private const double MostTravelMm = 100;

    /// <summary>The ways out in words, beginning with a space.</summary>
    /// <param name="construction">How rings are set.</param>
    /// <param name="ring">The ring, with an adjusting edge.</param>
    /// <param name="radiusMm">The smallest radius that it can have.</param>
    public static string Of(RingConstruction construction, RingDemand ring, double radiusMm)
    {
        AdjustBrief asked = ring.Adjust!;
        double failing = RootFinding.LeastWhere(s => IsSteep(asked with { RangeS = s }, radiusMm), 0, asked.RangeS, RangeResolutionS);
        double most = Math.Floor((failing - RangeResolutionS) / RangeResolutionS) * RangeResolutionS;
        string range = most > 0 ? $" On a radius of {Wording.Mm(radiusMm)} a travel of {Wording.Mm(asked.TravelMm)} gives a range of {Wording.Seconds(most)} at most" : " This travel gives no range at all";
        return range + (LeastTravelMm() is double travel ? $"; a range of {Wording.Seconds(asked.RangeS)} needs a travel of {Wording.Mm(travel)}." : ", and no travel gives what is asked.");

        // The inner end of the travel stays where it is.
        double? LeastTravelMm()
        {
            bool IsTooShort(double travelMm) => IsSteep(asked with { TravelMm = travelMm }, radiusMm + ((travelMm - asked.TravelMm) / 2));
            return IsTooShort(MostTravelMm)
                ? null
                : Math.Ceiling(RootFinding.LeastWhere(t => !IsTooShort(t), asked.TravelMm, MostTravelMm, TravelResolutionMm) / TravelResolutionMm) * TravelResolutionMm;
        }

        bool IsSteep(AdjustBrief adjust, double atMm) => construction.At(ring with { Adjust = adjust }, atMm).Objection is { Code: Code };
    }
}
