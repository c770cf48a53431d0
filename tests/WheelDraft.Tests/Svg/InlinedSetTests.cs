using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Tests.Raster;
using WheelDraft.Tests.Sheets;
using Xunit;

namespace WheelDraft.Tests.Svg;

/// <summary>All pictures of a set in one HTML page.</summary>
public sealed partial class InlinedSetTests(OutsideBrowser browser)
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";
    private static readonly XNamespace Xml = XNamespace.Xml;

    public static TheoryData<string> Demos => [.. SheetDesigns.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void PicturesOfASetCollidedInOnePage(string demo)
    {
        Design design = SheetDesigns.Demo(demo);
        HashSet<string> ids = new(StringComparer.Ordinal);
        HashSet<string> rules = new(StringComparer.Ordinal);
        string drawing = FileSlugs.Of([design.Brief.DrawingNumber ?? design.Brief.Title])[0];
        foreach (string svg in Pictures(design))
        {
            XElement root = XDocument.Parse(svg).Root!;
            string prefix = root.Attribute("id")!.Value;
            Assert.Contains(drawing + "-", prefix, StringComparison.Ordinal);
            Assert.All(root.DescendantsAndSelf().Attributes("id"), id => Assert.True(ids.Add(id.Value) && id.Value.StartsWith(prefix, StringComparison.Ordinal), id.Value));
            Assert.Equal(("en", "en"), (root.Attribute("lang")?.Value, root.Attribute(Xml + "lang")?.Value));

            // A rule is one class of this picture alone, and every class has its rule.
            string[] lines = root.Element(Ns + "style")!.Value.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            string[] classes = [.. lines.Select(l => Rule().Match(l).Groups["class"].Value)];
            Assert.All(classes, c => Assert.True(c.StartsWith(prefix + "-", StringComparison.Ordinal) && rules.Add(c), c));
            Assert.Empty(root.Descendants().Attributes("class").SelectMany(c => c.Value.Split(' ')).Except(classes, StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Write_EachLeader_IsOneGroup()
    {
        // A leader is its line, its arrow head and its words: taken apart in an editor they would be moved by threes.
        foreach (Sheet sheet in SheetDesigns.Demos.SelectMany(d => Tests.Demos.SheetsOf(d)))
        {
            foreach (SheetGroup leader in sheet.AllGroups.Where(g => g.Name.Role is "callout"))
            {
                Assert.Single(leader.Items.OfType<SheetText>());
                Assert.Single(leader.Items.OfType<SheetArea>());
                Assert.NotEmpty(leader.Items.OfType<SheetLine>());
                Assert.Equal(leader.Name.Title, leader.Items.OfType<SheetText>().Single().Text);
            }
        }
    }

    [Fact]
    [Trait("Needs", "chromium")]
    public async Task Write_SetInOnePage_LooksAsEachAlone()
    {
        const double pixelsPerMm = 2.5;
        string[] svgs = [.. Pictures(SheetDesigns.Demo("seed-drier")).Take(6)];
        (string Svg, PixelWindow Size)[] pictures = [.. svgs.Select(s => (s, Size(s, pixelsPerMm)))];
        IReadOnlyList<Picture> together = await OutsideRenderers.ChromiumInlineAsync(pictures, browser);
        foreach (((string svg, PixelWindow size), Picture inside) in pictures.Zip(together))
        {
            Assert.False(PictureDifference.IsSeenBetween(await OutsideRenderers.ChromiumAsync(svg, size, browser), inside));
        }
    }

    private static PixelWindow Size(string svg, double pixelsPerMm)
    {
        double[] box = [.. XDocument.Parse(svg).Root!.Attribute("viewBox")!.Value.Split(' ').Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture))];
        return new(0, 0, (int)(box[2] * pixelsPerMm), (int)(box[3] * pixelsPerMm));
    }

    private static IEnumerable<string> Pictures(Design design) =>
        OutputFiles.Of(design, new OutputRequest { Kinds = [OutputKind.Draw] }).Select(f => Encoding.UTF8.GetString(f.Bytes));

    [GeneratedRegex(@"^\.(?<class>[a-z][a-z0-9\-]*)\{[^{}]*\}$", RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex Rule();
}
