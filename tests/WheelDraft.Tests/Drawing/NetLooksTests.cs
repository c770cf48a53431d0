using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Page;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Drawing;

public sealed class NetLooksTests
{
    [Fact]
    public void Of_MoreNetsThanLooks_BeginsAgainAndSaysSo()
    {
        NetLooks looks = NetLooks.Of(Enumerable.Range(1, 11).Select(i => Invariant.Text($"net{i}")), []);
        Assert.Equal("net1 net2 net3", string.Join(' ', looks.Nets.Take(3)));
        Assert.Equal("net11", looks.Nets[^1]);
        Assert.Equal(looks.FillOf("net1"), looks.FillOf("net9"));
        Assert.Equal("net net9 (looks as net net1)", looks.Words("net9"));
        Assert.Equal("net net4", looks.Words("net4"));
        Assert.Equal("net1 net2 net3 net9 net10 net11", string.Join(' ', looks.Nets.Where(looks.IsNamed)));
    }

    [Fact]
    public void FillOf_OneNet_IsTheSameOnAssemblyAndSpacing()
    {
        // Each sheet numbered the nets that it drew by itself, so that earth pushed all others on by one on the spacing plan.
        int compared = 0;
        foreach (Design design in Demos.Names.Select(Demos.Of).Where(AssemblySheet.IsWanted))
        {
            Dictionary<string, Fill> onAssembly = Fills(AssemblySheet.Of(design), "strip", design);
            Dictionary<string, Fill> onSpacing = Fills(SpacingSheet.Of(design), "part", design);
            Assert.All(onAssembly, s => Assert.Equal(onSpacing[s.Key], s.Value));
            compared += onAssembly.Count;
            foreach (Sheet sheet in (Sheet[])[AssemblySheet.Of(design), SpacingSheet.Of(design)])
            {
                AssertLegendIsTrue(sheet, NetLooks.Of(design));
            }
        }

        Assert.True(compared >= 8);
    }

    [Fact]
    public void Legend_AboveEightNets_NamesEveryNetRightly()
    {
        // The legend listed the first eight nets by name while looks repeated, and "pin 10" stood before "pin 2".
        PartBrief[] parts = [.. Enumerable.Range(1, 12).Select(i => new PartBrief(
            FormattableString.Invariant($"pin {i}"), PartKind.Live, FormattableString.Invariant($"wire {i}"),
            new Outline(Contour.Circle(Point.Polar(70, i * Angles.TurnRad / 12), 3)), -1, 3))];
        Design design = Design.Of(Briefs.Plain(Briefs.Output("fan", 3, (10, 60)) with { OverOpenContact = null }) with { Parts = parts });
        foreach (Sheet sheet in (Sheet[])[SpacingSheet.Of(design), AssemblySheet.Of(design)])
        {
            PaperTests.AssertTidy(sheet);
            Assert.Empty(sheet.Warnings);
            string[] legend = [.. AssertLegendIsTrue(sheet, NetLooks.Of(design))];
            Assert.Equal(12, legend.Count(l => l.StartsWith("wire", StringComparison.Ordinal)));
            Assert.True(Array.IndexOf(legend, "wire 2") < Array.IndexOf(legend, "wire 10"));

            // Wire 9 looks as another: it is named at its part.
            Assert.Contains(sheet.Groups.Where(g => g.Id is "numbers" or "labels").SelectMany(g => g.Items).OfType<SheetText>(), t => t.Text.Contains("(wire 9)", StringComparison.Ordinal));
        }
    }

    // Oracle: digits padded to one length, compared by code point.
    [Fact]
    public void Compare_RandomNames_OrdersFiguresByValue()
    {
        Gen<string> names = Gen.OneOf(Gen.Int[0, 30].Select(i => FormattableString.Invariant($"{i}")), Gen.Int[0, 3].Select(i => ((string[])["a", "b", " ", "-"])[i])).Array[1, 5].Select(string.Concat);
        Gen.Select(names, names).Sample(
            (a, b) =>
            {
                int padded = Math.Sign(string.CompareOrdinal(Padded(a), Padded(b)));
                int found = Math.Sign(NaturalOrder.Names.Compare(a, b));
                Assert.Equal(found, -Math.Sign(NaturalOrder.Names.Compare(b, a)));
                Assert.True(found == padded || string.Equals(Padded(a), Padded(b), StringComparison.Ordinal), $"{a} and {b}");
                Assert.Equal(string.Equals(a, b, StringComparison.Ordinal), found == 0);
            },
            iter: 5000);
    }

    [Fact]
    public void Bars_ContactsAndLoads_HaveTheColoursOfThePage()
    {
        // The timing sheet drew contacts in copper and loads in blue, the page contacts in blue and loads in yellow.
        string css = Encoding.UTF8.GetString(ShowPage.Write(Demos.Of("propagation-bench")));
        Assert.Matches(@"\.chart \.row rect \{ fill: var\(--copper\)", css);
        Assert.Matches(@"\.chart \.row\[data-load\] rect \{ fill: var\(--lit\)", css);
        Assert.Matches(@"\.lamp\.on \.glass \{ fill: var\(--lit\)", css);
        Assert.Matches("#cursor line { stroke: var\\(--now\\)", css);
        Assert.Equal(TimingPen.FillOf(TimingState.Closed), Fill.Of(FillKind.Copper));
        Assert.Equal(TimingPen.FillOf(TimingState.On), MomentView.FillOf(LoadState.On));
        foreach ((string name, Rgb colour) in ((string, Rgb)[])
            [("copper", Theme.Light.Of(Fill.Of(FillKind.Copper))), ("lit", Theme.Light.Of(Fill.Of(FillKind.Lit))), ("live", Theme.Light.Of(Fill.Of(FillKind.Live))), ("now", Theme.Light.Of(Ink.Accent))])
        {
            Match[] given = [.. (IEnumerable<Match>)Regex.Matches(css, $@"--{name}: #([0-9a-f]{{6}});", RegexOptions.None, TimeSpan.FromSeconds(5))];
            Assert.Equal(2, given.Length);
            Assert.All(given, g => Assert.True(Math.Abs(Math.IEEERemainder(Hue(Rgb.Of(Convert.ToInt32(g.Groups[1].Value, 16))) - Hue(colour), 360)) < 12, $"--{name} {g.Value} beside {colour.Hex}"));
        }
    }

    private static string Padded(string name) => Regex.Replace(name, "[0-9]+", m => m.Value.PadLeft(20, '0'), RegexOptions.None, TimeSpan.FromSeconds(5));

    // Degrees round the colour circle (HSV, Smith 1978).
    private static double Hue(Rgb c)
    {
        double most = Math.Max(c.Red, Math.Max(c.Green, c.Blue));
        double span = most - Math.Min(c.Red, Math.Min(c.Green, c.Blue));
        double sixth = most == c.Red ? (c.Green - c.Blue) / span : most == c.Green ? 2 + ((c.Blue - c.Red) / span) : 4 + ((c.Red - c.Green) / span);
        return sixth * 60;
    }

    private static Dictionary<string, Fill> Fills(Sheet sheet, string role, Design design) => design.Strips.Strips
        .Select(s => (s.Net, Fill: sheet.AllGroups.Where(g => string.Equals(g.Name.Role, role, StringComparison.Ordinal))
            .First(g => string.Equals(g.Name.Title, s.Form.Strip.Name, StringComparison.Ordinal) || g.Name.Title.StartsWith($"{s.Form.Strip.Name}, net", StringComparison.Ordinal)).Items.OfType<SheetArea>().First().Fill))
        .DistinctBy(s => s.Net, StringComparer.Ordinal).ToDictionary(s => s.Net, s => s.Fill, StringComparer.Ordinal);

    /// <summary>Every net in the legend beside the filling that it has; the names.</summary>
    private static List<string> AssertLegendIsTrue(Sheet sheet, NetLooks looks)
    {
        List<string> names = [];
        Fill? last = null;
        foreach (SheetItem item in sheet.Groups.Single(g => g.Id is "legend").Items)
        {
            last = item is SheetArea area ? area.Fill : last;
            if (item is SheetText text && text.Text.StartsWith("net ", StringComparison.Ordinal))
            {
                string net = Regex.Replace(text.Text[4..], @" \(looks as .*\)$", "", RegexOptions.None, TimeSpan.FromSeconds(5));
                Assert.Equal(looks.FillOf(net), last);
                names.Add(net);
            }
        }

        return names;
    }
}
