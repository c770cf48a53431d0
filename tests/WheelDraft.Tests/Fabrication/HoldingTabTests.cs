using System.Globalization;
using System.Text;
using NetTopologySuite.Geometries;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Dxf.Checking;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
using WheelDraft.Tests.Geometry;
using WheelDraft.Tests.Sheets;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

/// <summary>Holding tabs and lead-ins over random designs: never where a contact slides or a strip springs, the outline between them as it was.</summary>
/// <remarks>Oracle: NetTopologySuite with chords, whose error is stated. WHEELDRAFT_CUT_DESIGNS=500 tries as many designs.</remarks>
public sealed class HoldingTabTests
{
    private static readonly GeometryFactory Plane = new();

    private static int Designs => int.Parse(Environment.GetEnvironmentVariable("WHEELDRAFT_CUT_DESIGNS") ?? "30", CultureInfo.InvariantCulture);

    private static ProcessBrief Tabbed(ProcessBrief process, int number) =>
        process with { HoldingTabs = 1 + (number % 4), TabWidthMm = 0.3 + (0.1 * (number % 8)) };

    /// <summary>Demos and random wheels with tabs, those that can be built.</summary>
    private static IEnumerable<Design> All()
    {
        for (int i = 0; i < Designs; i++)
        {
            Brief brief = i % 6 == 5 ? Demos.Of(Demos.Names[i / 6 % Demos.Names.Count]).Brief : SheetDesigns.Numbered(i);
            Design design;
            try
            {
                design = Design.Of(brief with { Process = Tabbed(brief.Process, i) });
            }
            catch (DesignRefusedException)
            {
                continue;
            }

            yield return design;
        }
    }

    [Fact]
    public void TabsAndLeadIns_OverRandomDesigns_StayOutOfForbiddenZonesAndLeaveTheOutline()
    {
        int tabs = 0, leads = 0;
        foreach (Design design in All())
        {
            foreach (Part part in design.Parts.Strips.Prepend(design.Parts.Wheel))
            {
                NetTopologySuite.Geometries.Geometry forbidden = part.Role == PartRole.Wheel ? Paths(design, HoldingTabs.FilingMm * 0.99) : Springs(design, part, withTerminal: true);
                IReadOnlyList<LeadIn> starts = LeadIns.Of(design.Strips, part, 1);
                foreach (LeadIn lead in starts)
                {
                    bool hole = part.Shapes.Any(s => s.ToCut.Holes.Contains(lead.Of));
                    Assert.True((part.Role == PartRole.Strip && hole) || !Flattened.Of(lead.Line.End).Within(part.Role == PartRole.Wheel ? Paths(design, 0) : Springs(design, part, withTerminal: false)), $"{design.Brief.Title}: a lead-in of {part.Name} at {lead.Line.End}");
                    leads++;
                }

                foreach (TabbedContour tabbed in HoldingTabs.Of(design.Brief, design.Wheel, design.Strips, part).Concat(HoldingTabs.Of(design.Brief, design.Wheel, design.Strips, part, starts)))
                {
                    tabs += tabbed.Tabs.Count;
                    Assert.All(tabbed.Tabs, t => Assert.False(Flattened.Line(t.Stretch).Intersects(forbidden), $"{design.Brief.Title}: a tab of {part.Name} at {t.At}"));
                    Assert.All(tabbed.Tabs, t => Assert.Equal(HoldingTabs.StretchMm(design.Brief.Process), t.Stretch.Length, 1e-9));
                    OutlineIsWhole(tabbed);
                }
            }
        }

        Assert.True(tabs > Designs && leads > Designs, FormattableString.Invariant($"{tabs} tabs and {leads} lead-ins in {Designs} designs: too few to prove anything"));
    }

    // Runs and tabs end to end are the contour: same length, and no point of theirs off it, none of it off them.
    private static void OutlineIsWhole(TabbedContour tabbed)
    {
        Piece[] all = [.. tabbed.Runs.SelectMany(r => r), .. tabbed.Tabs.Select(t => t.Stretch)];
        Assert.Equal(tabbed.Of.Length, all.Sum(p => p.Length), 1e-6);
        Assert.All(tabbed.Runs, r => Assert.All(r.Zip(r.Skip(1)), p => Assert.True(p.First.End.DistanceTo(p.Second.Start) < 1e-9)));
        Assert.All(all, p => Assert.All((double[])[0, 0.37, 1], s => Assert.True(Likeness.NearestOf(tabbed.Of.Pieces, p.PointAt(s)).DistanceMm < 1e-9)));
        Assert.All(tabbed.Of.Pieces, p => Assert.All((double[])[0, 0.21, 0.5, 0.83], s => Assert.True(Likeness.NearestOf(all, p.PointAt(s)).DistanceMm < 1e-9)));

        // Between a cut run and the next there is one tab, and no run touches a tab but at its ends.
        LineString[] left = [.. tabbed.Tabs.Select(t => Flattened.Line(t.Stretch.Part(0.01, 0.99)))];
        Assert.All(tabbed.Runs.SelectMany(r => r), p => Assert.All(left, l => Assert.True(l.Distance(Flattened.Line(p)) > 0 || p.Length < 1e-6)));
    }

    // All annuli that a patch covers, wider by play and run-out, and by so much for filing.
    private static NetTopologySuite.Geometries.Geometry Paths(Design design, double moreMm)
    {
        NetTopologySuite.Geometries.Geometry all = Plane.CreatePolygon();
        foreach (RingLayout ring in design.Wheel.AllRings)
        {
            double spread = moreMm > 0 ? moreMm + ring.SidePlayMm + (design.Brief.Wheel.RunOutMm / 2) : -1e-3;
            NetTopologySuite.Geometries.Geometry annulus = Plane.CreatePoint(new Coordinate(0, 0)).Buffer(ring.PathToMm + spread, 90).Difference(Plane.CreatePoint(new Coordinate(0, 0)).Buffer(Math.Max(0, ring.PathFromMm - spread), 90));
            all = all.Union(annulus);
        }

        return all;
    }

    // What of the blank lies beyond its clamp along the strip: the ribbon of the middle line from there on, as wide as the strip and its kerf.
    private static NetTopologySuite.Geometries.Geometry Springs(Design design, Part part, bool withTerminal)
    {
        StripForm form = design.Strips.Strips[part.StripIndex].Form;
        NetTopologySuite.Geometries.Geometry blank = Flattened.Polygon(part.Shapes[0].ToCut).Buffer(1e-3);
        double halfMm = form.Pieces.Where(p => p.FromMm < form.Clamp.ToMm).Max(p => Math.Max(p.WidthMm, p.WidthEndMm)) + 1;
        NetTopologySuite.Geometries.Geometry held = Plane.ToGeometry(new Envelope(-1, form.Clamp.ToMm + 2e-3, -halfMm, halfMm));
        NetTopologySuite.Geometries.Geometry terminal = form.Tab is null || !withTerminal ? Plane.CreatePolygon() : Plane.ToGeometry(new Envelope(-1, form.Tab.BladeMm, -halfMm, halfMm));
        return blank.Difference(held).Union(terminal);
    }

    [Fact]
    public void CutFiles_WithTabs_ReadBackWholeAndAgainstTheirDesign()
    {
        foreach (string name in Demos.Names)
        {
            Brief brief = Demos.Of(name).Brief;
            Design design = Design.Of(brief with { Process = brief.Process with { HoldingTabs = 3, TabWidthMm = 0.5 } });
            foreach (Part part in design.Parts.All.SelectMany(p => new[] { p, p.Nominal() }))
            {
                foreach ((DxfVersion version, double lead) in (ReadOnlySpan<(DxfVersion, double)>)[(DxfVersion.R2000, 0), (DxfVersion.R12, 0), (DxfVersion.R2000, 1)])
                {
                    byte[] bytes = Encoding.ASCII.GetBytes(DxfWriter.Write(PartCutFile.Of(design, part, lead), version));
                    AgainstCheck check = AgainstCheck.Of(DxfReader.Read(bytes, AgainstCheck.Reading(new(), design)), design, part.CutName);
                    Assert.True(check.Meets && check.Differences.Count == 0, $"{name} {part.CutName} {version}: {string.Join(" ", check.Findings.Select(f => f.Message))}");

                    // By its note alone, without the design.
                    ReadDrawing read = DxfReader.Read(bytes, new() { Heeds = layer => layer is "OUTLINE" or "WINDOW" or "TAB", UnitMm = brief.DrawingUnit == DrawingUnit.Inch ? 25.4 : 1 });
                    Assert.DoesNotContain(read.Remarks, r => r.Severity == FindingSeverity.Error);
                    Assert.Equal(part.Shapes.Count, read.Layers.Single(l => l.Name is "OUTLINE").Contours.Count);
                    Assert.DoesNotContain(read.Layers, l => l.Name is "TAB");
                }
            }
        }
    }

    [Fact]
    public void AgainstCheck_ATabThatWasMadeAway_IsFound()
    {
        Brief brief = Demos.Of("propagation-bench").Brief;
        Design design = Design.Of(brief with { Process = brief.Process with { HoldingTabs = 3, TabWidthMm = 0.5 } });
        string text = DxfWriter.Write(PartCutFile.Of(design, design.Parts.Wheel), DxfVersion.R2000);
        Assert.Contains("\nTAB\n", text.Replace("\r", "", StringComparison.Ordinal), StringComparison.Ordinal);
        byte[] bytes = Encoding.ASCII.GetBytes(text.Replace("TAB\r\n", "NOTE\r\n", StringComparison.Ordinal).Replace("\nTAB\n", "\nNOTE\n", StringComparison.Ordinal));
        AgainstCheck check = AgainstCheck.Of(DxfReader.Read(bytes, AgainstCheck.Reading(new(), design)), design, "wheel");
        Assert.False(check.Meets);
    }

    [Fact]
    public void Findings_ATabWithoutRoom_IsNamed()
    {
        Brief brief = Demos.Of("propagation-bench").Brief;
        Design design = Design.Of(brief with { Process = brief.Process with { HoldingTabs = 8, TabWidthMm = 5 } });
        Assert.Contains(design.Findings, f => string.Equals(f.Code, "cut.tabs", StringComparison.Ordinal) && f.Severity == FindingSeverity.Note);
        Assert.DoesNotContain(Demos.Of("propagation-bench").Findings, f => string.Equals(f.Code, "cut.tabs", StringComparison.Ordinal));
    }
}
