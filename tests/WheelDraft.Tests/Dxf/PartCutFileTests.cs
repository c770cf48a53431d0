using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Dxf;

/// <summary>Blanks as the shop gets them, read back from the file.</summary>
public sealed class PartCutFileTests
{
    public static TheoryData<string> Files => [.. Demos.WithStrips];

    [Theory]
    [MemberData(nameof(Files))]
    public void Of_EveryBlank_ReadsBackWithTheDevelopedLength(string file)
    {
        Design design = Demos.Of(file);
        double kerf = design.Brief.Process.KerfMm;
        for (int i = 0; i < design.Strips.Strips.Count; i++)
        {
            StripForm form = design.Strips.Strips[i].Form;
            ReadDrawing read = Read(design, i);
            Contour outer = Assert.Single(Layer(read, "OUTLINE").Contours).Contour;

            // By hand: lengths of flats plus θ(R + K t) for each fold; half a kerf is left outside at either end.
            double byHand = form.Pieces.Sum(p => p.Kind == FormedKind.Fold ? 0 : p.DevelopedMm)
                + form.Folds.Sum(f => Math.Abs(f.AngleRad) * (f.RadiusMm + (f.K.Value * form.Strip.ThicknessMm)));
            Assert.Equal(byHand, outer.Bounds.Width - kerf, 1e-6);
            Assert.Equal(-kerf / 2, outer.Bounds.MinX, 1e-6);
            Assert.Equal(0, outer.Bounds.Centre.Y, 1e-6);
            Assert.Equal(form.Blank.Outline.Holes.Count, Layer(read, "WINDOW").Contours.Count);
            Assert.Empty(Layer(read, "OUTLINE").OpenPaths);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Of_EveryBlank_HasItsFoldLinesAtMidAllowanceAndItsHoles(string file)
    {
        Design design = Demos.Of(file);
        for (int i = 0; i < design.Strips.Strips.Count; i++)
        {
            StripForm form = design.Strips.Strips[i].Form;
            ReadDrawing read = Read(design, i);
            double[] folds = [.. Layer(read, "FOLD").OpenPaths.Select(p => p.Pieces[0].PointAt(0.5).X).Order()];
            Assert.Equal(form.Folds.Select(f => f.AtMm), folds, (a, b) => Math.Abs(a - b) < 1e-6);
            foreach (StripHole hole in form.Strip.Holes)
            {
                Contour found = Assert.Single(Layer(read, "WINDOW").Contours, c => Math.Abs(c.Contour.Bounds.Centre.X - hole.AtMm) < 1e-6).Contour;
                Assert.Equal(hole.DiameterMm, found.Bounds.Width + design.Brief.Process.KerfMm, 1e-6);
            }
        }
    }

    // A scribe across a stressed part is a notch: only crosses of rivet and dimple stand outside the clamp.
    [Theory]
    [MemberData(nameof(Files))]
    public void Of_EveryBlank_IsLetteredWhereTheClampHoldsIt(string file)
    {
        Design design = Demos.Of(file);
        for (int i = 0; i < design.Strips.Strips.Count; i++)
        {
            StripForm form = design.Strips.Strips[i].Form;
            ReadLayer marks = Layer(Read(design, i), "MARK");
            Bounds[] letters = [.. marks.OpenPaths.Select(p => p.Pieces.Select(q => q.Bounds).Aggregate((a, b) => a.With(b)))
                .Concat(marks.Contours.Select(c => c.Contour.Bounds))
                .Where(b => form.Blank.Marks.All(m => Math.Abs(b.Centre.X - m.At.X) > m.DiameterMm))];
            Assert.NotEmpty(letters);
            Assert.All(letters, b => Assert.True(b.MinX >= form.Clamp.FromMm && b.MaxX <= form.Clamp.ToMm));
        }
    }

    [Fact]
    public void Slugs_OfNamesAlike_AreNumbered()
    {
        Assert.Equal(["mist-strip", "mist-strip-2", "2", "a-b", "a-b-2", "3"], FileSlugs.Of(["Mist strip", "mist  strip!", "§", "a/b", "A b", "%"]));
    }

    private static ReadLayer Layer(ReadDrawing drawing, string name) => drawing.Layers.Single(l => string.Equals(l.Name, name, StringComparison.Ordinal));

    private static ReadDrawing Read(Design design, int index) =>
        DxfReader.Read(Encoding.ASCII.GetBytes(DxfWriter.Write(PartCutFile.Of(design, design.Parts.Strips[index]), DxfVersion.R2000)));
}
