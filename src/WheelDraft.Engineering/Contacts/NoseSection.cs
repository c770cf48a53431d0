namespace WheelDraft.Engineering;

/// <summary>The two legs beside a contact fold, as the copper sees them: tangents to its round.</summary>
/// <remarks>What is nearer to the copper than these is not there: the slope is that of the flattest leg in any position that the wiper
/// rides in, within all its limits.</remarks>
/// <param name="SlopeRad">Between the copper face and the flattest leg, rad in (0, π/2].</param>
/// <param name="WidensShare">By how much each side of a leg reaches further along the fold, per length of leg; 0 for legs that keep their width or taper away.</param>
internal sealed record NoseSection(double SlopeRad, double WidensShare);
