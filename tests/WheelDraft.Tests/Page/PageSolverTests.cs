using WheelDraft.Formats.Page;
using Xunit;

namespace WheelDraft.Tests.Page;

/// <summary>The page's solver as it stands in the page. The browser tests run it against the real one; these need no browser.</summary>
public sealed class PageSolverTests
{
    [Fact]
    public void Solver_LoadAtExactlyItsPullIn_IsOn_AndAtItsDropOutOff()
    {
        // Definition of this project: on at or above pull-in, off at or below drop-out.
        Assert.Contains(
            "v >= network.loads[i].on ? \"on\" : v <= network.loads[i].off ? \"off\" : \"undecided\"",
            PageText.Read("solver.js"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Solver_StuckInput_LeavesWhatItSenses()
    {
        // A stuck contact changes what the input does, not what it senses: conditions on a meaning ask the checkbox.
        string solver = PageText.Read("solver.js");
        Assert.Contains("senses: [...inputs], inputs: [...inputs]", solver, StringComparison.Ordinal);
        Assert.Contains("case \"inputs\": state.inputs[fault.index] = fault.closed; break;", solver, StringComparison.Ordinal);
        Assert.Contains("interlock.true.every(senses) && !interlock.false.some(senses)", solver, StringComparison.Ordinal);
    }
}
