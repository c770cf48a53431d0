namespace WheelDraft.Engineering;

/// <summary>How far one edge is from where it is wanted, at the nominal turn time.</summary>
/// <param name="Output">The output, by its place in the file.</param>
/// <param name="Period">The on-period, by start.</param>
/// <param name="IsMake">Whether it is the make.</param>
/// <param name="OffS">Late, s.</param>
/// <param name="UncertaintyS">Standard uncertainty, s.</param>
internal readonly record struct EdgeResidual(int Output, int Period, bool IsMake, double OffS, double UncertaintyS);

/// <summary>What may be wrong with a made wheel.</summary>
internal enum BenchFaultKind
{
    /// <summary>Everything takes longer or shorter: supply frequency, motor or gear.</summary>
    Scaled,

    /// <summary>Everything comes later or sooner after home.</summary>
    WheelShifted,

    /// <summary>All edges of one output come later or sooner.</summary>
    WiperMisplaced,

    /// <summary>All on-periods of one output are longer, or shorter, at both ends.</summary>
    PatchLength,

    /// <summary>One edge is off.</summary>
    EdgeOff,

    /// <summary>Edges of an output are off in a way that no one cause explains.</summary>
    Several,
}

/// <summary>What is wrong, as far as the figures tell.</summary>
/// <param name="Kind">What.</param>
/// <param name="Value">How much: s, and for <see cref="BenchFaultKind.Scaled"/> a share of the turn; positive is later or longer.</param>
/// <param name="Uncertainty">Standard uncertainty of that.</param>
/// <param name="Words">In a sentence.</param>
internal sealed record BenchFault(BenchFaultKind Kind, double Value, double Uncertainty, string Words)
{
    /// <summary>The output, by its place in the file; null for the whole wheel.</summary>
    public int? Output { get; init; }

    /// <summary>The edge, for <see cref="BenchFaultKind.EdgeOff"/>.</summary>
    public EdgeResidual? Edge { get; init; }
}

/// <summary>Parts what is off by causes, by least squares.</summary>
/// <remarks>The turn time takes what is scaled, the middle of all outputs what is common. Of each output's edges then each cause alone is fitted: all
/// late by w; make early and break late by p; one edge late by d. The one that leaves the least squares is named when it is beyond four times
/// its uncertainty and beyond a twentieth of the output's tolerance, which is ordinary. What it leaves unexplained is told.</remarks>
internal static class BenchFaults
{
    private const double Sure = 4;
    private const double OrdinaryShare = 0.05;

    // Turns of one synchronous motor on one supply repeat better than this share of a turn; less is no fault.
    private const double OrdinaryScale = 5e-4;

    public static IReadOnlyList<BenchFault> Of(BenchDesign design, BenchTurns turns, IReadOnlyList<EdgeResidual> residuals, double? shiftS)
    {
        List<BenchFault> faults = [];
        double nominal = design.Motion.TurnTimeS;
        double scale = (turns.TurnTime.MeanS / nominal) - 1, u = turns.TurnTime.UncertaintyS / nominal;
        if (turns.IsTurnFound && Math.Abs(scale) > Math.Max(3 * u, OrdinaryScale))
        {
            faults.Add(new(BenchFaultKind.Scaled, scale, u, FormattableString.Invariant($"everything takes {Math.Abs(scale) * 100:0.###} % {(scale > 0 ? "longer" : "less")} (uncertainty {u * 100:0.###} %): a supply of {design.Brief.Supply.FrequencyHz / (1 + scale):0.###} Hz would do it, or a motor or gear of another speed; the log cannot part them")));
        }

        if (shiftS is double shift && residuals.Count > 0)
        {
            double us = residuals.Max(r => r.UncertaintyS);
            if (Math.Abs(shift) > Math.Max(Sure * us, OrdinaryScale * nominal))
            {
                faults.Add(new(BenchFaultKind.WheelShifted, shift, us, FormattableString.Invariant($"everything comes {Side(shift)} after home (uncertainty {us:0.###} s): the wheel sits turned on its shaft, or home was taken elsewhere")));
            }
        }

        foreach (IGrouping<int, EdgeResidual> output in residuals.GroupBy(r => r.Output))
        {
            if (One(design, [.. output], residuals.Select(r => r.Output).Distinct().Count()) is BenchFault fault)
            {
                faults.Add(fault with { Output = output.Key });
            }
        }

        return faults;
    }

    private static string Side(double offS) => FormattableString.Invariant($"{Math.Abs(offS):0.###} s {(offS > 0 ? "late" : "early")}");

    private static BenchFault? One(BenchDesign design, EdgeResidual[] edges, int outputs)
    {
        OutputBrief output = design.Brief.Outputs[edges[0].Output];
        double u = Math.Max(Math.Sqrt(edges.Average(e => e.UncertaintyS * e.UncertaintyS)), 1e-6);
        double ordinary = OrdinaryShare * (output.ToleranceS ?? 0);
        double shift = edges.Average(e => e.OffS);
        double grown = edges.Average(e => e.IsMake ? -e.OffS : e.OffS);
        EdgeResidual worst = edges.MaxBy(e => Math.Abs(e.OffS));
        double all = edges.Sum(e => e.OffS * e.OffS);
        double mean = u / Math.Sqrt(edges.Length);
        (BenchFaultKind Kind, double Value, double U, double Left)[] causes =
        [
            (BenchFaultKind.WiperMisplaced, shift, mean, all - (edges.Length * shift * shift)),
            (BenchFaultKind.PatchLength, grown, mean, all - (edges.Length * grown * grown)),
            (BenchFaultKind.EdgeOff, worst.OffS, u, all - (worst.OffS * worst.OffS)),
        ];
        (BenchFaultKind kind, double value, double valueU, double left) = causes.MinBy(c => c.Left);
        if (Math.Abs(value) <= Math.Max(Sure * valueU, ordinary))
        {
            return null;
        }

        string sure = FormattableString.Invariant($"(uncertainty {valueU:0.###} s)");
        if (Math.Sqrt(left / edges.Length) > Math.Max(Sure * u, ordinary))
        {
            return new(BenchFaultKind.Several, value, valueU, FormattableString.Invariant($"the edges of '{output.Name}' are off in a way that no one cause explains: on the mean {Side(shift)}, and {Math.Abs(grown):0.###} s {(grown > 0 ? "longer" : "shorter")} at each end {sure}"));
        }

        return kind switch
        {
            BenchFaultKind.WiperMisplaced => new(kind, value, valueU, FormattableString.Invariant($"all edges of '{output.Name}' come {Side(value)} {sure}: its wiper is misplaced, by {Math.Abs(value) * design.Motion.SpeedDegPerS:0.##}°{Millimetres(design, edges[0].Output, value)} {(value > 0 ? "with" : "against")} the turning{(outputs < 3 ? "; with so few outputs measured it may as well be the others that are" : "")}")),
            BenchFaultKind.PatchLength => new(kind, value, valueU, FormattableString.Invariant($"'{output.Name}' is {Math.Abs(value):0.###} s {(value > 0 ? "longer" : "shorter")} at each of its edges {sure}: {(value > 0 ? "a worn or longer contact patch" : "a shorter contact patch than drawn")}{Millimetres(design, edges[0].Output, 2 * value)} in length{(edges.Length == 2 ? ", or copper cut so at both ends" : "")}")),
            _ => new(kind, value, valueU, FormattableString.Invariant($"one edge of '{output.Name}', the {(worst.IsMake ? "make" : "break")} of its on-period {worst.Period + 1}, comes {Side(value)} {sure}: that edge of the copper is not as drawn")) { Edge = worst },
        };
    }

    private static string Millimetres(BenchDesign design, int output, double offS) =>
        FormattableString.Invariant($", {Math.Abs(offS) * design.Motion.SpeedRadPerS * design.Wheel.Rings[output].RadiusMm:0.##} mm");
}
