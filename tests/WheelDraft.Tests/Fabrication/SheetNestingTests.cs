using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Dxf.Checking;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Formats.Guide;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

/// <summary>Parts nested on sheets by [[sheet]], the bill of materials and the work of cutting.</summary>
public sealed class SheetNestingTests
{
    private static readonly Lazy<Design> Nested = new(() => new ChangedDemo("propagation-bench").And("""

        [[sheet]]
        material = "C51000-H04"
        thickness = "0.5 mm"
        size = ["150 mm", "100 mm"]
        gap = "2 mm"
        sets = 5

        [[sheet]]
        material = "C11000-H02"
        thickness = "0.5 mm"
        size = ["150 mm", "100 mm"]
        gap = "2 mm"
        sets = 3
        """).Design());

    [Fact]
    public void Nested_PartsOfOneStock_LieOnItsSheetsForAllSets()
    {
        IReadOnlyList<NestedStock> all = Nested.Value.Parts.Nested;
        Assert.Equal(2, all.Count);
        Assert.All(all[0].Pieces, p => Assert.Equal(PartRole.Strip, p.Part.Role));
        Assert.Equal(4 * 5, all[0].Result.Sheets.Sum(s => s.Items.Count));
        Assert.Equal(3, all[1].Result.Sheets.Sum(s => s.Items.Count));
        Assert.Equal(1 + all[0].Result.Sheets.Count, all[1].FirstNumber);
    }

    [Fact]
    public void Nested_FoldedStrips_KeepTheRollingDirection()
    {
        NestedStock strips = Nested.Value.Parts.Nested[0];
        Assert.All(strips.Result.Sheets.SelectMany(s => s.Items), i => Assert.True(Math.Abs(Math.Sin(i.Place.TurnRad)) < 1e-12));
        Assert.All(strips.Pieces, p => Assert.True(p.Part.HasFolds));
    }

    [Fact]
    public void SheetCutFile_ReadBack_HoldsEveryContourOfEveryPart()
    {
        foreach (NestedStock nested in Nested.Value.Parts.Nested)
        {
            for (int i = 0; i < nested.Result.Sheets.Count; i++)
            {
                CutDrawing drawing = SheetCutFile.Of(Nested.Value, nested, i, nominal: false);
                ReadDrawing read = DxfReader.Read(System.Text.Encoding.ASCII.GetBytes(DxfWriter.Write(drawing, DxfVersion.R2000)), new() { Heeds = layer => layer is "OUTLINE" or "WINDOW" });
                Assert.DoesNotContain(read.Remarks, r => r.Severity == FindingSeverity.Error);
                NestPiece[] laid = [.. nested.Result.Sheets[i].Items.Select(n => nested.Pieces[n.Item])];
                Assert.Equal(laid.Length, Layer(read, "OUTLINE").Contours.Count);
                Assert.Equal(laid.Sum(p => p.Outline.Holes.Count), Layer(read, "WINDOW").Contours.Count);
                Assert.All(laid.Select(p => p.Mark).Distinct(StringComparer.Ordinal), m => Assert.Contains(read.Texts, t => string.Equals(t.Text, m, StringComparison.Ordinal)));
            }
        }

        static ReadLayer Layer(ReadDrawing read, string name) => read.Layers.Single(l => string.Equals(l.Name, name, StringComparison.Ordinal));
    }

    // Every sheet untouched, both versions and nominal; then with a part moved by 2 µm, a part gone, and one doubled.
    [Fact]
    public void AgainstCheck_OfSheets_FindsWhatWasChangedAndNothingElse()
    {
        Design design = Nested.Value;
        foreach (NestedStock nested in design.Parts.Nested)
        {
            for (int i = 0; i < nested.Result.Sheets.Count; i++)
            {
                string name = FormattableString.Invariant($"sheet-{nested.FirstNumber + i}");
                foreach ((DxfVersion version, bool nominal) in (ReadOnlySpan<(DxfVersion, bool)>)[(DxfVersion.R2000, false), (DxfVersion.R12, false), (DxfVersion.R2000, true)])
                {
                    CutDrawing drawing = SheetCutFile.Of(design, nested, i, nominal);
                    AgainstCheck check = Against(design, drawing, version, name + (nominal ? "-nominal" : ""));
                    Assert.True(check.Meets && check.Differences.Count == 0, string.Join(" ", check.Findings.Select(f => f.Message)));
                    Assert.Equal(name.Replace("sheet-", "SHEET ", StringComparison.Ordinal), check.Name);
                }

                CutDrawing whole = SheetCutFile.Of(design, nested, i, nominal: false);
                int last = whole.Contours.Count - 1;
                Placement aside = Placement.Translation(new(0.002, 0));
                CutContour[][] changed =
                [
                    [.. whole.Contours.Select((c, k) => k == last ? c with { Contour = c.Contour.Placed(aside) } : c)],
                    [.. whole.Contours.Take(last)],
                    [.. whole.Contours, whole.Contours[last] with { Contour = whole.Contours[last].Contour.Placed(Placement.Translation(new(0, 500))) }],
                ];
                Assert.All(changed, c => Assert.False(Against(design, new(whole.Unit, c, whole.Paths, whole.Notes), DxfVersion.R2000, name).Meets));

                // Without its notes its name says what it is.
                AgainstCheck unnamed = Against(design, new(whole.Unit, whole.Contours, whole.Paths), DxfVersion.R2000, name);
                Assert.True(unnamed.Meets && unnamed.Differences.Count == 0);
                Assert.Contains(unnamed.Remarks, r => r.Code is "against.note");
            }
        }
    }

    private static AgainstCheck Against(Design design, CutDrawing drawing, DxfVersion version, string name) =>
        AgainstCheck.Of(DxfReader.Read(System.Text.Encoding.ASCII.GetBytes(DxfWriter.Write(drawing, version)), AgainstCheck.Reading(new(), design)), design, name);

    [Fact]
    public void Nested_Attended_TellsHowFarItIsAndStops()
    {
        List<(string What, double Share)> told = [];
        Brief brief = Nested.Value.Brief;
        Assert.NotEmpty(Design.Of(brief, new((what, share) => told.Add((what, share)), default)).Parts.Nested);
        Assert.All(told, t => Assert.Equal("nesting", t.What));
        Assert.True(told.Count > 2 && told[^1].Share == 1);
        using CancellationTokenSource stop = new();
        Design stopped = Design.Of(brief, new((_, _) => stop.Cancel(), stop.Token));
        Assert.Throws<OperationCanceledException>(() => stopped.Parts.Nested);
    }

    [Fact]
    public void Sheet_TooSmallOrOfNothing_IsSaid()
    {
        Design design = new ChangedDemo("propagation-bench").And("""

            [[sheet]]
            material = "C51000-H04"
            thickness = "0.5 mm"
            size = ["60 mm", "100 mm"]
            gap = "2 mm"
            sets = 5

            [[sheet]]
            material = "C26000-H04"
            thickness = "0.5 mm"
            size = ["150 mm", "100 mm"]
            gap = "2 mm"
            sets = 1
            """).Design();
        Assert.Contains(design.Findings, f => f.Code is "sheet.small" && f.Severity == FindingSeverity.Error);
        Assert.Contains(design.Findings, f => f.Code is "sheet.empty" && f.Severity == FindingSeverity.Warning);
        Assert.Empty(design.Parts.Nested);
    }

    // A disc of radius 10 with a hole of radius 2 in 1 mm C11000 (8.94 g/cm³, its data sheet): π (100 − 4) mm², 2.696 g; cut 2π 12 mm, two starts.
    [Fact]
    public void CutWork_DiscWithHole_AsByHand()
    {
        Outline disc = new(Contour.Circle(Point.Origin, 10), [Contour.Circle(Point.Origin, 2)]);
        Part part = new()
        {
            Role = PartRole.Wheel,
            Name = "disc",
            FileName = "disc",
            Stock = new("C11000-H02", 1, null),
            Shapes = [new CutShape(disc, disc, "the disc", null)],
            KerfMm = 0,
        };
        CutWork work = CutWork.Of(Nested.Value.Brief, part);
        Assert.Equal(24 * Math.PI, work.CutLengthMm, 1e-9);
        Assert.Equal(2, work.Pierces);
        Assert.Equal(96 * Math.PI * 8.94 / 1000, work.MassG!.Value, 1e-9);
        Assert.True(work.TimeS!.Value.LeastS < work.TimeS.Value.MostS);
    }

    [Fact]
    public void BillOfMaterials_HasEveryPartAndItsHardware()
    {
        string[] rows = BillOfMaterials.Write(Nested.Value).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.StartsWith("item,quantity,material,", rows[0], StringComparison.Ordinal);
        Assert.All(Nested.Value.Parts.All, p => Assert.Contains(rows, r => r.Contains($"cut/{p.FileName}.dxf", StringComparison.Ordinal)));
        Assert.Contains(rows, r => r.Contains("contact rivet", StringComparison.Ordinal));
    }

    [Fact]
    public void OrderNote_SaysWhoCompensates()
    {
        Assert.Contains("do not compensate again", OrderNote.Write(Nested.Value, nominal: false), StringComparison.Ordinal);
        string nominal = OrderNote.Write(Nested.Value, nominal: true);
        Assert.Contains("allow for your kerf yourselves", nominal, StringComparison.Ordinal);
        Assert.Contains("1 x wheel-nominal:", nominal, StringComparison.Ordinal);
    }
}
