using MathNet.Numerics.LinearAlgebra;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class FrameOracleTests
{
    // D. L. Logan, A First Course in the Finite Element Method, Example 5.1: portal of 120 in columns and beam, E 30e6 psi,
    // A 10 in², I 200 (columns) and 100 in⁴ (beam), 10 000 lb across at node 2, 5 000 lb in at node 3.
    [Fact]
    public void Solve_LogansPortal_GivesThePrintedForces()
    {
        FrameOracle frame = new(30e6, 12e6);
        int[] n = [frame.Node(0, 0, 0), frame.Node(0, 120, 0), frame.Node(120, 120, 0), frame.Node(120, 0, 0)];
        frame.Add(n[0], n[1], (10, 1, 200, 1), [-1, 0, 0]);
        frame.Add(n[1], n[2], (10, 1, 100, 1), [0, 1, 0]);
        frame.Add(n[2], n[3], (10, 1, 200, 1), [1, 0, 0]);
        frame.Fix(n[0]);
        frame.Fix(n[3]);
        frame.Fix(n[1], 2, 3, 4);
        frame.Fix(n[2], 2, 3, 4);
        frame.Load(n[1], 0, 10_000);
        frame.Load(n[2], 5, 5_000);
        Vector<double> u = frame.Solve();

        // Printed (own recomputation to more digits): node 2 (0.21136, 0.0014813, −0.0015260), node 3 (0.20936, −0.0014813, −0.0014860).
        Assert.Equal(0.21136, u[6], 5e-6);
        Assert.Equal(0.0014813, u[7], 5e-8);
        Assert.Equal(-0.0015260, u[11], 5e-8);
        Assert.Equal(0.20936, u[12], 5e-6);
        Assert.Equal(-0.0014860, u[17], 5e-8);

        // Left column 3700 lb axial, 4990 lb shear, 376 000 and 223 000 lb in; right column 375 000 at its foot.
        Vector<double> left = frame.EndForces(0, u);
        Assert.Equal(3700, Math.Abs(left[0]), 5.0);
        Assert.Equal(4990, Math.Abs(left[1]), 5.0);
        Assert.Equal(376_000, Math.Abs(left[5]), 500.0);
        Assert.Equal(223_000, Math.Abs(left[11]), 500.0);
        Assert.Equal(375_000, Math.Abs(frame.EndForces(2, u)[11]), 500.0);
    }

    // "2D Frame" worked element: E 2e8, A 4.533e-3, I 6.933e-5, L 6: 770.333, 2311, 9244, 4622, 151 100.
    [Fact]
    public void Element_WorkedNumbers_AreInTheMatrix()
    {
        FrameOracle frame = new(2e8, 1e8);
        frame.Add(frame.Node(0, 0, 0), frame.Node(6, 0, 0), (4.533e-3, 1, 6.933e-5, 1), [0, 1, 0]);
        Matrix<double> k = frame.LocalOf(0);
        Assert.Equal(770.333, k[1, 1], 1e-3);
        Assert.Equal(2311, k[1, 5], 1e-9);
        Assert.Equal(9244, k[5, 5], 1e-9);
        Assert.Equal(4622, k[5, 11], 1e-9);
        Assert.Equal(151_100, k[0, 0], 1e-6);
    }

    public static TheoryData<string> Strips => [.. StripCases.All.Keys];

    // Real strips, with their tapers, folds and sweeps cut into short straight beams of the same section: the frame's stiffness
    // and sideways shift of the nose, against the strip's. Stretch is in the frame and not in the strip (below 1e-4).
    [Theory]
    [MemberData(nameof(Strips))]
    public void Spring_RealStrip_AgreesWithTheFrame(string name)
    {
        Brief brief = StripBriefs.With(StripCases.All[name]);
        StripForm form = StripForm.Of(brief, 0);
        StripSpring spring = StripSpring.Of(form, StripContact.OfFeed(brief), null);
        SpaceVector gives = StripFrames.Gives(form);
        Assert.InRange(spring.GivesMmPerN.Z / gives.Z, 0.999, 1.001);
        Assert.Equal(gives.X, spring.GivesMmPerN.X, 0.002 * gives.Z);
        Assert.Equal(gives.Y, spring.GivesMmPerN.Y, 0.002 * gives.Z);
    }

    // A stiff portal of strips cannot be: but the frame that stands for a strip must itself meet the cantilever.
    [Fact]
    public void Gives_PlainCantilever_IsExact()
    {
        StripForm form = StripForm.Of(StripBriefs.Deflected(StripBriefs.Cantilever(25, 5, null, 0.3), 1.5), 0);
        double ei = 110_000 * 5 * 0.027 / 12;
        Assert.Equal(25.0 * 25 * 25 / (3 * ei), StripFrames.Gives(form).Z, 1e-5);
    }
}
