using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using WheelDraft.Drawing;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Svg;

public partial class SvgWriterTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    [Theory]
    [InlineData(SvgText.Live)]
    [InlineData(SvgText.Strokes)]
    public void Write_Card_IsNamedForReadersWhoDoNotSeeIt(SvgText text)
    {
        XElement root = XDocument.Parse(SvgWriter.Write(SampleSheets.Card, new() { Text = text })).Root!;
        Assert.Equal(("img", "card-title card-desc"), (root.Attribute("role")!.Value, root.Attribute("aria-labelledby")!.Value));
        Assert.Equal(("120mm", "90mm", "0 0 120 90"), (root.Attribute("width")!.Value, root.Attribute("height")!.Value, root.Attribute("viewBox")!.Value));
        Assert.Equal("Sample card <1> & \"more\"", root.Elements(Ns + "title").Single(t => t.Attribute("id")?.Value is "card-title").Value);
        Assert.Equal("A disc, patches & texts.", root.Elements(Ns + "desc").Single(t => t.Attribute("id")?.Value is "card-desc").Value);
        Assert.Equal("card-copper card-patches card-lines card-texts", string.Join(' ', root.Descendants(Ns + "g").Select(g => g.Attribute("id")!.Value)));
        Assert.All(root.Descendants(Ns + "g"), g => Assert.False(string.IsNullOrEmpty(g.Element(Ns + "title")!.Value)));
    }

    [Fact]
    public void Write_Card_DefinesEveryClassOfItsItemsAndNoOther()
    {
        XElement root = XDocument.Parse(SvgWriter.Write(SampleSheets.Card)).Root!;
        string[] used = [.. root.DescendantsAndSelf().Where(e => e.Name != Ns + "g" && e.Attribute("class") is not null).SelectMany(e => e.Attribute("class")!.Value.Split(' ')).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        string[] defined = [.. ClassRule().Matches(root.Element(Ns + "style")!.Value).Select(m => m.Groups["name"].Value)];
        Assert.Equal(string.Join(' ', used), string.Join(' ', defined));
        Assert.DoesNotContain("var(", root.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(root.Descendants(), e => e.Attribute("style") is not null);
    }

    [Fact]
    public void Write_LiveTexts_AreReadableAndPlaced()
    {
        XElement[] texts = [.. XDocument.Parse(SvgWriter.Write(SampleSheets.Card)).Descendants(Ns + "text")];
        Assert.Equal("Ring 1 <mist> & co|2.5 mm|Ø 50 ± 0.1|two  blanks", string.Join('|', texts.Select(t => t.Value)));
        Assert.Equal("|middle|end|", string.Join('|', texts.Select(t => t.Attribute("text-anchor")?.Value)));

        // Turned a quarter anticlockwise about (80, 10): the base line lies half a capital to the right of the anchor.
        Assert.Equal("rotate(-90 81.25 80)", texts[1].Attribute("transform")!.Value);
    }

    [Fact]
    public void Write_Strokes_HasNoTextButItsWords()
    {
        XElement root = XDocument.Parse(SvgWriter.Write(SampleSheets.Card, new() { Text = SvgText.Strokes })).Root!;
        Assert.Empty(root.Descendants(Ns + "text"));
        Assert.Equal("Ring 1 <mist> & co|2.5 mm|Ø 50 ± 0.1|two  blanks", string.Join('|', root.Descendants(Ns + "path").Select(p => p.Attribute("aria-label")?.Value).OfType<string>()));
    }

    [Fact]
    public void Write_WidthAsked_ScalesTheShowAndNotTheDrawing()
    {
        XElement root = XDocument.Parse(SvgWriter.Write(SampleSheets.Card, new() { WidthMm = 60 })).Root!;
        Assert.Equal(("60mm", "45mm", "0 0 120 90"), (root.Attribute("width")!.Value, root.Attribute("height")!.Value, root.Attribute("viewBox")!.Value));
        Assert.Throws<ArgumentOutOfRangeException>(() => SvgWriter.Write(SampleSheets.Card, new() { WidthMm = 0 }));
    }

    [Fact]
    public void Write_Prefix_StandsBeforeEveryId()
    {
        XElement root = XDocument.Parse(SvgWriter.Write(SampleSheets.Card, new() { IdPrefix = "a-" })).Root!;
        Assert.All(root.DescendantsAndSelf().Attributes("id"), id => Assert.StartsWith("a-", id.Value, StringComparison.Ordinal));
        Assert.Equal("a-card-title a-card-desc", root.Attribute("aria-labelledby")!.Value);
    }

    [Fact]
    public void Write_Arcs_KeepTheirCentresToTheRounding()
    {
        // Oracle: centre of an elliptical arc command, SVG 1.1 appendix F.6.5, with equal radii and no rotation.
        Point[] centres = [new(35, 50), new(3, 7)];
        double[] sweeps = [0.05, 1.2, Math.PI / 2, 3.1, Math.PI, 3.3, 5, 6.2];
        foreach (double sweep in sweeps.SelectMany(s => (double[])[s, -s]))
        {
            Arc arc = new(centres[1], 31.4159, 0.7, sweep);
            Sheet sheet = Lone(new SheetLine([arc], LineStyle.Edge));
            foreach (PlainArc part in PlainArc.Of(XDocument.Parse(SvgWriter.Write(sheet)).Descendants(Ns + "path").Single().Attribute("d")!.Value))
            {
                double limit = 2e-4 / Math.Max(0.05, Math.Min(1, Math.Abs(sweep)));
                Assert.InRange(new Point(part.CentreX, 100 - part.CentreY).DistanceTo(arc.Centre), 0, limit);
                Assert.Equal(sweep > 0 ? 0 : 1, part.SweepFlag);
            }
        }
    }

    [Fact]
    public void Write_WholeCircles_AreCirclesOrTwoHalves()
    {
        Sheet alone = Lone(new SheetLine(Contour.Circle(new(10.00004, 20), 5), LineStyle.Edge));
        XElement circle = XDocument.Parse(SvgWriter.Write(alone)).Descendants(Ns + "circle").Single();
        Assert.Equal(("10", "80", "5"), (circle.Attribute("cx")!.Value, circle.Attribute("cy")!.Value, circle.Attribute("r")!.Value));
        Sheet ring = Lone(new SheetArea(new Outline(Contour.Circle(new(10, 20), 5), [Contour.Circle(new(10, 20), 3)]), Fill.Of(FillKind.Copper)));
        Assert.Equal(
            "M15 80A5 5 0 0 0 5 80A5 5 0 0 0 15 80ZM13 80A3 3 0 0 1 7 80A3 3 0 0 1 13 80Z",
            XDocument.Parse(SvgWriter.Write(ring)).Descendants(Ns + "path").Single().Attribute("d")!.Value);
    }

    [Fact]
    public void Write_ControlCharacter_StaysWellFormed()
    {
        Sheet sheet = Lone(new SheetText("a\u0001b\uFFFE", new(new(1, 1)), TextStyle.Small));
        Assert.Equal("a\uFFFDb\uFFFD", XDocument.Parse(SvgWriter.Write(sheet)).Descendants(Ns + "text").Single().Value);
    }

    [Fact]
    public void Write_EveryTheme_DiffersInColoursOnly()
    {
        string[] bodies = [.. Theme.All.Select(t => Colour().Replace(SvgWriter.Write(SampleSheets.Card, new() { Theme = t }), "#"))];
        Assert.Single(bodies.Distinct(StringComparer.Ordinal));
        Assert.Equal(3, Theme.All.Select(t => SvgWriter.Write(SampleSheets.Card, new() { Theme = t })).Distinct(StringComparer.Ordinal).Count());
    }

    private static Sheet Lone(SheetItem item) =>
        new(new("lone", "Lone", "One item."), new PaperSize("square", 100, 100), [new SheetGroup(new("all", "All", "all"), [item])], []);

    [GeneratedRegex(@"\.(?<name>[a-z0-9-]+)\{", RegexOptions.NonBacktracking)]
    private static partial Regex ClassRule();

    [GeneratedRegex("#[0-9a-f]{6}", RegexOptions.NonBacktracking)]
    private static partial Regex Colour();

    private sealed record PlainArc(double CentreX, double CentreY, int SweepFlag)
    {
        internal static IEnumerable<PlainArc> Of(string data)
        {
            double[] Numbers(string words) => [.. words.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => double.Parse(w, CultureInfo.InvariantCulture))];
            double[] at = [];
            foreach (string command in Regex.Split(data, "(?=[MLAZ])", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(30)).Where(c => c.Length > 1))
            {
                double[] n = Numbers(command[1..]);
                if (command[0] == 'A')
                {
                    double hx = (at[0] - n[5]) / 2;
                    double hy = (at[1] - n[6]) / 2;
                    double root = Math.Sqrt(Math.Max(0, ((n[0] * n[0]) - (hx * hx) - (hy * hy)) / ((hx * hx) + (hy * hy)))) * (n[3] == n[4] ? -1 : 1);
                    yield return new((root * hy) + ((at[0] + n[5]) / 2), (-root * hx) + ((at[1] + n[6]) / 2), (int)n[4]);
                }

                at = n[^2..];
            }
        }
    }
}
