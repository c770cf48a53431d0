using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>The set-out of a wheel. Oracle: the copper as it is cut, and plain coordinates.</summary>
public sealed partial class SetOutTests
{
    // Rounded corners take no more of an edge than this from its ends, mm.
    private const double OnEdgeMm = 1e-6;

    public static TheoryData<string> Files => [.. Demos.Names];

    [Theory]
    [MemberData(nameof(Files))]
    public void Of_Demo_EveryPointLiesOnTheCopperThatIsCut(string file) => AssertOnCopper(Demos.Of(file));

    [Fact]
    public void Of_RandomDesigns_EveryPointLiesOnTheCopperThatIsCut()
    {
        int built = 0;
        for (int number = 0; number < 40; number++)
        {
            try
            {
                AssertOnCopper(Design.Of(SheetDesigns.Numbered(number)));
                built++;
            }
            catch (DesignRefusedException)
            {
                // Some of the numbered briefs ask for what cannot be built.
            }
        }

        Assert.InRange(built, 20, 40);
    }

    [Theory]
    [InlineData(Turning.Clockwise)]
    [InlineData(Turning.Anticlockwise)]
    public void Of_Lands_EveryPointLiesOnTheirEnds(Turning direction)
    {
        Brief lands = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("fan", 3, (20, 60)), 30, 90));
        AssertOnCopper(Design.Of(lands with { Drive = lands.Drive with { Direction = direction } }));
    }

    // A fretsaw holds 0.3 mm, and the table gave thousandths of a degree.
    [Theory]
    [InlineData(0.3, "mm", 0.05)]
    [InlineData(0.05, "mm", 0.005)]
    [InlineData(0.1, "mm", 0.01)]
    [InlineData(0.01, "mm", 0.001)]
    [InlineData(0.3, "in", 0.002)]
    public void Table_OfAProcess_IsAsFineAsATenthOfItsToleranceAndNoFiner(double toleranceMm, string unit, double step)
    {
        Brief worked = Briefs.Worked();
        Design design = Design.Of(worked with
        {
            Process = worked.Process with { ToleranceMm = toleranceMm },
            DrawingUnit = unit is "in" ? DrawingUnit.Inch : DrawingUnit.Millimetre,
            Outputs = [.. worked.Outputs.Select(o => o with { ToleranceS = 20 })],
        });
        double mm = unit is "in" ? 25.4 : 1;
        Assert.True(step >= toleranceMm / mm / 10 * (1 - 1e-9) && step / 2 <= toleranceMm / mm / 10);
        IReadOnlyList<IReadOnlyList<string>> rows = SetOutWords.Table(design).Rows;
        SetOutEdge[] edges = [.. SetOutWords.Edges(design)];
        Assert.Equal(edges.Length, rows.Count);
        for (int i = 0; i < rows.Count; i++)
        {
            SetOutPoint[] points = [edges[i].Inner, edges[i].OnRing, edges[i].Outer];
            double[] exact = [.. points.SelectMany(p => new[] { p.RadiusMm * Math.Cos(p.WheelRad), p.RadiusMm * Math.Sin(p.WheelRad), Chord(p) })];
            for (int k = 0; k < exact.Length; k++)
            {
                double written = double.Parse(rows[i][k + 2], CultureInfo.InvariantCulture);
                Assert.InRange(Math.Abs(written - (exact[k] / mm)), 0, toleranceMm / mm / 10);
                Assert.Equal(Math.Round(written / step) * step, written, 1e-9);
            }

            // An angle is as fine as the length that it stands for on its ring: half its step moves the edge by no more than a tenth of the tolerance.
            double angle = double.Parse(rows[i][1], CultureInfo.InvariantCulture);
            double off = Math.Abs(Math.IEEERemainder(angle - Angles.DegFromRad(edges[i].OnRing.WheelRad), 360));
            Assert.InRange(off * Math.PI / 180 * edges[i].OnRing.RadiusMm, 0, toleranceMm / 10);
        }
    }

    [Fact]
    public void StepOf_AnyValue_IsNotBelowItAndHalfOfItNotAbove()
    {
        Gen.Double[-4, 2].Sample(
            power =>
            {
                double least = Math.Pow(10, power);
                double step = CutNumbers.StepOf(least);
                Assert.InRange(step, least * (1 - 1e-8), least * 2 * (1 + 1e-8));
                double lead = step / Math.Pow(10, Math.Floor(Math.Log10(step) + 1e-9));
                Assert.Contains((double[])[1, 2, 4, 5], f => Math.Abs(f - lead) < 1e-6);
            },
            iter: 200);
    }

    // The note gave the sloped edge's ends "of the programme" among wheel angles: marked from home it landed 150° off.
    // Oracle: the sloped side of the window that is cut.
    [Theory]
    [InlineData(Turning.Clockwise)]
    [InlineData(Turning.Anticlockwise)]
    public void Notes_AdjustingEdge_EndsAtWheelAnglesFromHome(Turning direction)
    {
        Brief worked = Briefs.Worked();
        Design design = Design.Of(worked with { Drive = worked.Drive with { Direction = direction } });
        string note = Assert.Single(WheelEdges.Notes(design), n => n.Contains("sloped", StringComparison.Ordinal));
        Point[] ends = [.. End().Matches(note).Select(m => Point.Polar(Number(m.Groups["radius"].Value), Angles.RadFromDeg(Number(m.Groups["angle"].Value))))];
        Assert.Equal(2, ends.Length);
        Assert.Contains(design.Wheel.Copper[0].Outline.Pieces.OfType<Segment>(), s => ends.All(e => OffLine(s, e) < 0.01 && s.Length > 0.8 * ends[0].DistanceTo(ends[1])));
        Assert.DoesNotContain("programme", string.Join(' ', WheelEdges.Notes(design)), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Of_WheelSheet_DrawsHowAnglesCount()
    {
        Sheet sheet = WheelSheet.Of(Design.Of(Briefs.Worked()));
        Arc arc = sheet.Groups.Single(g => g.Id is "sense").Items.OfType<SheetLine>().SelectMany(l => l.Pieces).OfType<Arc>().Single();
        Assert.True(arc.SweepRad > 0);
        Assert.Equal(0, Angles.Signed(arc.StartRad), 1e-12);
        Assert.Contains(sheet.Texts, t => t.Text is "0° home");
    }

    private static void AssertOnCopper(Design design)
    {
        Piece[] copper = [.. design.Wheel.Copper.SelectMany(c => c.Outline.Pieces)];
        IReadOnlyList<SetOutEdge> setOut = SetOutWords.Edges(design);
        Assert.Equal(2 * design.Wheel.Rings.Sum(r => r.Periods.Count), setOut.Count);
        foreach (SetOutEdge edge in setOut)
        {
            (double make, double off) = WheelEdges.MakeAndBreak(design, edge.Ring.Periods.MinBy(p => Math.Min(Apart(design, p, true, edge), Apart(design, p, false, edge)))!);
            Assert.Equal(0, Angles.Signed((edge.End == EdgeEnd.Make ? make : off) - edge.OnRing.WheelRad), 1e-9);
            Segment cut = copper.OfType<Segment>().MinBy(s => Distances.Between(edge.OnRing.At, s).DistanceMm)!;
            Assert.InRange(Distances.Between(edge.OnRing.At, cut).DistanceMm, 0, OnEdgeMm);
            foreach (SetOutPoint corner in (SetOutPoint[])[edge.Inner, edge.Outer])
            {
                // A corner is where the edge's line meets the window's circle: rounding takes it off the copper, not off the line.
                Assert.InRange(OffLine(cut, corner.At), 0, OnEdgeMm);
                Assert.Contains(copper.OfType<Arc>(), a => a.Centre.RadiusMm < OnEdgeMm && Math.Abs(a.RadiusMm - corner.RadiusMm) < OnEdgeMm);
                Assert.Equal(Chord(corner), corner.ChordMm, 1e-9);
            }
        }
    }

    private static double Apart(Design design, RingPeriod period, bool make, SetOutEdge edge)
    {
        (double first, double second) = WheelEdges.MakeAndBreak(design, period);
        return Math.Abs(Angles.Signed((make ? first : second) - edge.OnRing.WheelRad));
    }

    // Straight from where the home line crosses the point's own radius.
    private static double Chord(SetOutPoint point)
    {
        (double x, double y) = (point.RadiusMm * Math.Cos(point.WheelRad), point.RadiusMm * Math.Sin(point.WheelRad));
        return Math.Sqrt(((x - point.RadiusMm) * (x - point.RadiusMm)) + (y * y));
    }

    private static double OffLine(Segment line, Point point) => Math.Abs((line.End - line.Start).Unit().Cross(point - line.Start));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"R(?<radius>[0-9.]+) at (?<angle>[0-9.]+)°", RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex End();
}
