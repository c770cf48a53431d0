using System.Globalization;
using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Dxf.Checking;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Dxf;

/// <summary>Cutting files held against their design: untouched ones give nothing, every edit is found and named.</summary>
/// <remarks>The oracle is the edit itself: the pairs of the file are changed by a program that knows no geometry of ours.
/// WHEELDRAFT_AGAINST_EDITS=200 draws as many edits of each kind.</remarks>
public sealed class AgainstCheckTests
{
    private static long Edits => long.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_AGAINST_EDITS"), NumberStyles.None, CultureInfo.InvariantCulture, out long more) ? more : 12;

    private static readonly DxfVersion[] Versions = [DxfVersion.R2000, DxfVersion.R12];

    private static IReadOnlyList<Case> Files { get; } =
    [
        .. from name in Demos.Names
           let design = Demos.Of(name)
           from part in design.Parts.All
           from version in Versions
           select new Case(design, part, version),
    ];

    private static Gen<Case> AnyFile => Gen.Int[0, Files.Count - 1].Select(i => Files[i]);

    private static Gen<double> Share => Gen.Double[0, 1];

    private static EditedDxf Written(Case file) =>
        new(DxfWriter.Write(PartCutFile.Of(file.Design, file.Part), file.Version));

    private static AgainstCheck Check(Case file, EditedDxf edited) =>
        AgainstCheck.Of(DxfReader.Read(edited.Bytes, AgainstCheck.Reading(new(), file.Design)), file.Design, file.Part.CutName);

    private static int Pick(double share, int count) => Math.Min((int)(share * count), count - 1);

    private static double Unit(Design design) => design.Brief.DrawingUnit == DrawingUnit.Inch ? 25.4 : 1;

    [Fact]
    public void Untouched_EveryPartBothVersions_NoDifference()
    {
        foreach (Case file in Files.SelectMany(f => new[] { f, f with { Part = f.Part.Nominal() } }))
        {
            AgainstCheck check = Check(file, Written(file));
            Assert.True(check.Meets && check.Differences.Count == 0, $"{file.Design.Brief.Title} {file.Part.CutName} {file.Version}: {string.Join(" ", check.Findings.Select(f => f.Message))}");
            Assert.Equal(file.Part.Name, check.Name);
            Assert.Equal(file.Part.KerfLeftToShop ? 0 : file.Part.KerfMm ?? 0, check.KerfMm);
        }
    }

    // From a micrometre to a millimetre in any direction.
    [Fact]
    public void Corner_Moved_IsFoundWithPlaceAndSize() =>
        Gen.Select(AnyFile, Share, Gen.Double[-3, 0], Gen.Double[0, Angles.TurnRad]).Sample(
            (file, which, tenPower, wayRad) =>
            {
                EditedDxf edited = Written(file);
                EditedDxf.Corner[] corners = [.. edited.Corners().Where(c => c.Layer is "OUTLINE" or "WINDOW" or "RECESS")];
                if (corners.Length == 0)
                {
                    return;
                }

                EditedDxf.Corner corner = corners[Pick(which, corners.Length)];
                double unit = Unit(file.Design), sizeMm = Math.Pow(10, tenPower);
                edited.Move(corner.At, Vector.Polar(sizeMm / unit, wayRad));
                AgainstCheck check = Check(file, edited);
                Assert.False(check.Meets);
                CutDifference found = Assert.Single(check.Differences, d => d.Code is "against.corner");
                Assert.Equal(sizeMm, found.SizeMm!.Value, 1e-6);
                Assert.True(new Point(corner.Place.X * unit, corner.Place.Y * unit).DistanceTo(found.At!.Value) < 1e-6);
            },
            Edits);

    [Fact]
    public void Bulge_Flipped_IsFoundAndNamed() =>
        Gen.Select(AnyFile, Share).Sample(
            (file, which) =>
            {
                EditedDxf edited = Written(file);
                double unit = Unit(file.Design);

                // Arcs that stand less than a micrometre over their chord are lines to a shop.
                EditedDxf.Corner[] arcs = [.. edited.Corners().Where(c => c.Layer is "OUTLINE" or "WINDOW" or "RECESS" && Math.Abs(c.Bulge) * c.Place.DistanceTo(c.Next) * unit / 2 > 1e-3)];
                if (arcs.Length == 0)
                {
                    return;
                }

                edited.FlipBulge(arcs[Pick(which, arcs.Length)]);
                AgainstCheck check = Check(file, edited);
                Assert.False(check.Meets);
                Assert.Contains(check.Differences, d => d.Code is "against.bulge" && d.Message.Contains("other way", StringComparison.Ordinal));
            },
            Edits);

    [Fact]
    public void Hole_Missing_IsFoundAndNamed() =>
        Gen.Select(AnyFile, Share).Sample(
            (file, which) =>
            {
                EditedDxf edited = Written(file);
                IReadOnlyList<int> holes = edited.Of("WINDOW", "LWPOLYLINE", "POLYLINE", "CIRCLE");
                if (holes.Count == 0)
                {
                    return;
                }

                edited.Delete(holes[Pick(which, holes.Count)]);
                AgainstCheck check = Check(file, edited);
                Assert.False(check.Meets);
                Assert.Equal(["against.missing"], check.Differences.Select(d => d.Code), StringComparer.Ordinal);
            },
            Edits);

    [Fact]
    public void Hole_WiderOrMoved_IsFoundWithItsSize() =>
        Gen.Select(AnyFile, Share, Gen.Double[-3, -1], Gen.Bool).Sample(
            (file, which, tenPower, moves) =>
            {
                EditedDxf edited = Written(file);
                IReadOnlyList<int> circles = edited.Of("WINDOW", "CIRCLE");
                if (circles.Count == 0)
                {
                    return;
                }

                double sizeMm = Math.Pow(10, tenPower);
                edited.Change(circles[Pick(which, circles.Count)], moves ? 10 : 40, v => v + (sizeMm / Unit(file.Design)));
                CutDifference found = Assert.Single(Check(file, edited).Differences);
                Assert.Equal(moves ? "against.place" : "against.radius", found.Code);
                Assert.Equal(sizeMm, found.SizeMm!.Value, 1e-6);
            },
            Edits);

    [Fact]
    public void Drawing_Scaled_IsFoundAndNamed() =>
        Gen.Select(AnyFile, Gen.Double[-4, -1], Gen.Bool).Sample(
            (file, tenPower, grows) =>
            {
                EditedDxf edited = Written(file);
                double factor = grows ? 1 + Math.Pow(10, tenPower) : 1 - Math.Pow(10, tenPower);
                edited.Scale(factor);
                AgainstCheck check = Check(file, edited);
                Assert.False(check.Meets);
                Assert.Equal(["against.scale"], check.Differences.Select(d => d.Code), StringComparer.Ordinal);
                Assert.Contains($"{Wording.Number(factor, 6)} times as large", check.Differences[0].Message, StringComparison.Ordinal);
            },
            Edits);

    [Fact]
    public void Drawing_InTheOtherUnit_IsFoundAndNamed() =>
        Gen.Select(AnyFile, Gen.Bool).Sample(
            (file, bySize) =>
            {
                EditedDxf edited = Written(file);
                bool inches = Unit(file.Design) > 1;
                if (bySize || !edited.SetUnits(inches ? 4 : 1))
                {
                    edited.Scale(inches ? 1 / 25.4 : 25.4);
                }

                AgainstCheck check = Check(file, edited);
                Assert.False(check.Meets);
                Assert.Equal(["against.unit"], check.Differences.Select(d => d.Code), StringComparer.Ordinal);
            },
            Edits);

    [Fact]
    public void FoldLine_Moved_IsFound()
    {
        foreach (Case file in Files.Where(f => f.Part.Role == PartRole.Strip))
        {
            EditedDxf edited = Written(file);
            edited.Change(edited.Of("FOLD", "LINE")[0], 10, x => x + (0.002 / Unit(file.Design)));
            AgainstCheck check = Check(file, edited);
            Assert.False(check.Meets);
            Assert.All(check.Differences, d => Assert.Equal("against.fold", d.Code));
            Assert.Equal(0.002, check.Differences.Max(d => d.SizeMm!.Value), 1e-4);
        }
    }

    [Fact]
    public void Window_OnAnotherLayer_IsFoundAndNamed()
    {
        Case file = Files.First(f => f.Part.Role == PartRole.Wheel);
        EditedDxf edited = Written(file);
        edited.SetLayer(edited.Of("WINDOW", "LWPOLYLINE")[0], "0");
        Assert.Equal(["against.layer"], Check(file, edited).Differences.Select(d => d.Code), StringComparer.Ordinal);
    }

    // A shop lays a part where its sheet begins: the part is the same, and the file is not called wrong.
    [Fact]
    public void Drawing_MovedAsAWhole_IsSaidAndNoError()
    {
        Case file = Files.First(f => f.Part.Role == PartRole.Wheel);
        CutDrawing drawing = PartCutFile.Of(file.Design, file.Part);
        Placement shift = Placement.Translation(new Vector(100, 50));
        CutDrawing moved = new(
            drawing.Unit,
            drawing.Contours.Select(c => c with { Contour = c.Contour.Placed(shift) }),
            drawing.Paths.Select(p => new CutPath(p.Layer, p.Pieces.Select(q => q.Placed(shift)))),
            drawing.Notes);
        AgainstCheck check = Check(file, new(DxfWriter.Write(moved, DxfVersion.R2000)));
        Assert.True(check.Meets, string.Join(" ", check.Findings.Select(f => f.Message)));
        Assert.Equal(["against.moved"], check.Differences.Select(d => d.Code), StringComparer.Ordinal);
    }

    [Fact]
    public void Drawing_Mirrored_IsAnError()
    {
        Case file = Files.First(f => f.Part.Role == PartRole.Wheel);
        CutDrawing drawing = PartCutFile.Of(file.Design, file.Part);
        CutDrawing mirrored = new(
            drawing.Unit,
            drawing.Contours.Select(c => c with { Contour = c.Contour.Placed(Placement.MirrorInX) }),
            drawing.Paths.Select(p => new CutPath(p.Layer, p.Pieces.Select(q => q.Placed(Placement.MirrorInX)))),
            drawing.Notes);
        AgainstCheck check = Check(file, new(DxfWriter.Write(mirrored, DxfVersion.R2000)));
        Assert.False(check.Meets);
        Assert.Equal(["against.mirrored"], check.Differences.Select(d => d.Code), StringComparer.Ordinal);
    }

    [Fact]
    public void Note_OfAnotherKerfOrInput_IsSaid()
    {
        Case file = Files.First(f => f.Part is { Role: PartRole.Wheel, KerfMm: > 0 } && f.Design.Brief.DrawingUnit == DrawingUnit.Millimetre);
        EditedDxf edited = Written(file);
        edited.SetText($"KERF OF {Wording.Mm(file.Part.KerfMm!.Value)}", "KERF OF 0.3 mm");
        Assert.Contains(Check(file, edited).Findings, f => f.Code is "against.kerf");
    }

    [Fact]
    public void NoNote_TakesTheNameAndTheLikelierKerf()
    {
        Case file = Files.First(f => f.Part is { Role: PartRole.Wheel, KerfMm: > 0 });
        foreach (Part part in (Part[])[file.Part, file.Part.Nominal()])
        {
            EditedDxf edited = new(DxfWriter.Write(PartCutFile.Of(file.Design, part), DxfVersion.R2000));
            edited.SetText(file.Design.Brief.DrawingNumber ?? file.Design.Brief.Title, "X");
            AgainstCheck check = Check(new(file.Design, part, DxfVersion.R2000), edited);
            Assert.True(check.Meets);
            Assert.Equal(part.KerfLeftToShop ? 0 : part.KerfMm, check.KerfMm);
            Assert.Contains(check.Findings, f => f.Code is "against.note");
        }
    }

    private sealed record Case(Design Design, Part Part, DxfVersion Version)
    {
        public override string ToString() => $"{Design.Brief.Title}, {Part.CutName}, {Version}";
    }
}
