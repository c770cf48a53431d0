using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

/// <summary>The carrier as the shop gets it, read back from its file.</summary>
public sealed class CarrierTests
{
    public static TheoryData<string> Files => [.. Demos.Names];

    // A windowed wheel's carrier was drawn nowhere. Oracle: points along the copper's own edge, measured to the file's recess.
    [Theory]
    [MemberData(nameof(Files))]
    public void CutFile_EveryConstruction_HasTheRecessBesideTheCopperAllRound(string file)
    {
        Design design = Demos.Of(file);
        ReadDrawing read = Read(design);
        Contour outline = Assert.Single(Layer(read, "OUTLINE")!.Contours).Contour;
        Assert.Equal(design.Brief.Carrier.DiameterMm ?? design.Wheel.OuterDiameterMm, outline.Bounds.Width, 1e-6);
        Assert.Equal(1 + design.Wheel.Fixings.Count, Layer(read, "WINDOW")!.Contours.Count);
        Outline[] recess = [.. Layer(read, "RECESS")!.Contours.Select(c => new Outline(c.Contour.Travelled(Turning.Anticlockwise)))];
        double fit = design.Brief.Process.ToleranceMm;
        foreach (Piece edge in design.Wheel.Copper.SelectMany(c => c.Outline.Pieces).Where(p => !IsThrough(p, design.Wheel)))
        {
            // In the middle of a piece the wall runs beside it, moved out by the fit; rounded corners may be sharper.
            Point at = edge.PointAt(0.5);
            Assert.Equal(fit, recess.Min(r => Distances.ToEdge(at, r).DistanceMm), 1e-5);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Recess_OfADemo_IsAsDeepAsTheCopperAndTheStepLeave(string file)
    {
        Design design = Demos.Of(file);
        CarrierRecess recess = design.Parts.Carrier.Recess!;
        Assert.Equal(design.Brief.Wheel.ThicknessMm - design.Brief.Carrier.StepMm, recess.DepthMm, 1e-12);
        Assert.Equal(design.Brief.Carrier.ThicknessMm, recess.DepthMm + recess.FloorMm, 1e-12);
        Assert.Equal(0, recess.LostWindows);

        // Exactly the copper's own holes apart from bore and fixings are left standing.
        int windows = design.Wheel.Feed is null ? design.Wheel.Copper.Sum(c => c.Outline.Holes.Count) : design.Wheel.Copper[0].Outline.Holes.Count - 1 - design.Wheel.Fixings.Count;
        Assert.Equal(windows, recess.Pockets.Sum(p => p.Holes.Count));
    }

    [Fact]
    public void Recess_CopperOnTheFace_IsNone()
    {
        OutputBrief fan = Briefs.Output("fan", 6, (20, 60));
        Brief plain = Briefs.Plain(fan with { Contact = fan.Contact with { NoseRadiusMm = 1 } });
        Design design = Design.Of(plain with { Carrier = plain.Carrier with { StepMm = 0.5 } });
        Assert.Null(design.Parts.Carrier.Recess);
        Assert.DoesNotContain(Read(design).Layers, l => l.Name is "RECESS");
    }

    [Fact]
    public void Recess_AsDeepAsTheCarrier_IsAnError()
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 3, (20, 60)));
        Design design = Design.Of(plain with { Carrier = plain.Carrier with { ThicknessMm = 0.5 } });
        Assert.Contains(design.Findings, f => f.Code is "carrier.floor" && f.Severity == FindingSeverity.Error);
    }

    // Oracle: the copper's outline itself, asked point by point along the home line.
    [Theory]
    [MemberData(nameof(Files))]
    public void Section_AlongTheHomeLine_StandsWhereTheCopperIsNot(string file)
    {
        Design design = Demos.Of(file);
        IReadOnlyList<(double From, double To, double Top)> section = CarrierPicture.SectionOf(design.Parts.Carrier);
        double half = design.Parts.Carrier.CutBounds.Width / 2;
        double fit = design.Brief.Process.ToleranceMm;
        for (double x = -half + 0.01; x < half - 0.01; x += 0.05)
        {
            Point at = new(x, 0);
            if (design.Wheel.Copper.SelectMany(c => c.Outline.Pieces).Any(p => Distances.Between(at, p).DistanceMm < fit + 0.01))
            {
                continue;
            }

            bool isCopper = design.Wheel.Copper.Any(c => c.Outline.Contains(at));
            bool isCarrier = design.Wheel.Carrier.Contains(at);
            (double From, double To, double Top)? there = section.Where(s => s.From <= x && x <= s.To).Cast<(double, double, double)?>().FirstOrDefault();
            Assert.Equal(isCarrier, there is not null);
            Assert.True(there is null || isCopper == (there.Value.Top < 0), FormattableString.Invariant($"at x {x}"));
        }
    }

    private static bool IsThrough(Piece piece, WheelLayout wheel) =>
        piece.PointAt(0.5).RadiusMm <= wheel.Bore.Pieces.Max(p => p.PointAt(0.5).RadiusMm) + 1e-6
        || (piece is Arc arc && wheel.Fixings.Any(f => f.DistanceTo(arc.Centre) < 1e-6));

    private static ReadDrawing Read(Design design) =>
        DxfReader.Read(Encoding.ASCII.GetBytes(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Carrier), DxfVersion.R2000)));

    private static ReadLayer? Layer(ReadDrawing drawing, string name) => drawing.Layers.SingleOrDefault(l => string.Equals(l.Name, name, StringComparison.Ordinal));
}
