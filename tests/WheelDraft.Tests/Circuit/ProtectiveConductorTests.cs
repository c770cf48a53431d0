using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Circuit;

/// <summary>Nothing of the circuit may lie on E: a protective conductor carries no current in use (IEC 61140, from memory).</summary>
public sealed class ProtectiveConductorTests
{
    [Fact]
    public void Findings_ALoadToEarth_IsAnErrorThatNamesIt()
    {
        Finding told = Assert.Single(Told(Brief() with { Loads = [Lamp("pilot lamp", "hold", "E")] }));
        Assert.Equal(FindingSeverity.Error, told.Severity);
        Assert.Contains("'pilot lamp'", told.Message, StringComparison.Ordinal);
        Assert.Contains("belongs on N", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Findings_ALoadToNeutral_IsNone() => Assert.Empty(Told(Brief() with { Loads = [Lamp("pilot lamp", "hold", "N")] }));

    [Fact]
    public void Findings_MotorInputOutputAndFeedOnEarth_AreEachTold()
    {
        Brief brief = Brief();
        Brief wrong = brief with
        {
            Loads = [Lamp("lamp", "N", "E")],
            DriveMotor = Lamp("motor", "E", "N"),
            Inputs = [new InputBrief("lid", "hold", "E", null)],
            Outputs = [brief.Outputs[0] with { Net = "E" }, .. brief.Outputs.Skip(1)],
            Feed = brief.Feed! with { Net = "E" },
        };
        Assert.Equal(5, ProtectiveConductor.Findings(wrong).Count());
        Assert.All(ProtectiveConductor.Findings(wrong), f => Assert.Equal(FindingSeverity.Error, f.Severity));
    }

    [Fact]
    public void Findings_AReturnWiperOnEarth_IsTold()
    {
        OutputBrief output = Briefs.TwoWipers(Briefs.Output("fan", 10, 60), 0, 30) with { ReturnNet = "E" };
        Assert.Contains("'fan' is on E", Assert.Single(ProtectiveConductor.Findings(Briefs.Lands(output))).Message, StringComparison.Ordinal);
    }

    private static Brief Brief() => Briefs.Worked() with { Loads = [], Inputs = [], Interlocks = [], DriveMotor = null, Scenarios = [] };

    private static IEnumerable<Finding> Told(Brief brief) =>
        Design.Of(brief).Findings.Where(f => string.Equals(f.Code, "circuit.protective-conductor", StringComparison.Ordinal));

    private static LoadBrief Lamp(string name, string from, string to) => new(name, from, to, new RatedPower(5, 1), 0.8, 0.2);
}
