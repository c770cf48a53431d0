namespace WheelDraft.Engineering;

/// <summary>What the nets of strips must keep from the wheel's copper.</summary>
internal sealed class CopperClearances(Brief brief, WheelLayout wheel, VoltageBook voltages)
{
    private readonly SpacingDemands _demands = JudgedSpacing.Demands(brief, new(wheel), voltages);

    /// <summary>The clearance that a net must keep from the wheel's copper, margin included, mm; 0 where none is asked, or the rules refuse to give one,
    /// which stops the design when its pairs are judged.</summary>
    public double ToWheelMm(string net)
    {
        SolidKind kind = string.Equals(net, "E", StringComparison.Ordinal) ? SolidKind.Earthed : SolidKind.Live;
        try
        {
            return _demands.Grade(kind, SolidKind.Live) is not Insulation grade ? 0 : wheel.Copper
                .Where(c => !string.Equals(c.Net, net, StringComparison.Ordinal))
                .Select(c => string.CompareOrdinal(net, c.Net) < 0 ? (net, c.Net) : (c.Net, net))
                .Select(p => _demands.Required(new(p.Item1, p.Item2, grade, _demands.WorkingVoltageV(p.Item1, p.Item2)), null).Clearance.RequiredMm)
                .DefaultIfEmpty(0).Max();
        }
        catch (RuleRefusedException)
        {
            return 0;
        }
    }
}
