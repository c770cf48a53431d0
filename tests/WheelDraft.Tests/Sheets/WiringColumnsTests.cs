using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Tests.Drawing;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>Long wiring diagrams, folded into columns.</summary>
public sealed class WiringColumnsTests
{
    [Fact]
    public void Of_AnyLevels_PutsEachInOneColumnThatIsNotTooLong() =>
        // Oracle: counting. Bars of random length, columns of random height.
        Gen.Select(Gen.Int[1, 60], Gen.Int[1, 20], Gen.Select(Gen.Int[0, 59], Gen.Int[0, 59]).Array[0, 12]).Sample((count, most, spans) =>
        {
            double[] levels = [.. Enumerable.Range(0, count).Select(i => 10.0 * i)];
            WiringBar[] bars = [.. spans.Select(s => new WiringBar("net", false, 0, 10.0 * (Math.Min(s.Item1, s.Item2) % count), 10.0 * (Math.Max(s.Item1, s.Item2) % count))).Where(b => b.TopMm <= b.BottomMm)];
            WiringColumns columns = WiringColumns.Of(levels, most, bars);
            Assert.InRange(columns.Levels.Max(l => l.Count), 1, most);
            Assert.Equal(count, Enumerable.Range(0, columns.Count).Sum(c => columns.Levels[c].Count));
            (int Column, int Rung)[] places = [.. levels.Select(columns.At)];
            Assert.Equal(places.Order(), places);
            Assert.Equal(count, places.Distinct().Count());
            foreach (WiringBar bar in bars)
            {
                Assert.Equal(1 + ((bar.BottomMm - bar.TopMm) / 10), columns.Parts(bar.TopMm, bar.BottomMm).Sum(p => p.Last - p.First + 1));
            }
        });

    [Fact]
    public void Of_CutWithAChoice_GoesWhereFewestNetsGoOn()
    {
        // Ten rungs, at most six a column: a net over the third to the fifth rung would be cut after four, none after six.
        double[] levels = [.. Enumerable.Range(0, 10).Select(i => (double)i)];
        Assert.Equal(6, WiringColumns.Of(levels, 6, [new WiringBar("a", false, 0, 2, 4)]).Levels[0].Count);
        Assert.Equal(4, WiringColumns.Of(levels, 6, [new WiringBar("a", false, 0, 4, 7)]).Levels[0].Count);
    }

    [Fact]
    public void CircuitSheet_OfTwentySixLoads_FoldsOntoPaperThatCanBeHandled()
    {
        // In one column such a diagram ran off the largest paper, under its own caution.
        OutputBrief[] outputs = [.. Enumerable.Range(0, 26).Select(i => Briefs.Output(FormattableString.Invariant($"circuit {i + 1} of the greenhouse"), 3, (5 + (6 * i), 4)))];
        Brief brief = Briefs.Plain(outputs) with { Loads = [.. outputs.Select((o, i) => new LoadBrief(FormattableString.Invariant($"valve {i + 1}"), o.Net, "N", new RatedPower(3, 1), 0.8, 0.2))] };
        Sheet sheet = CircuitSheet.Of(Design.Of(brief));
        PaperTests.AssertTidy(sheet);
        Assert.Empty(sheet.Warnings);
        Assert.Contains(sheet.Size.Name, (string[])["A3", "A2"], StringComparer.Ordinal);
        string[] words = [.. sheet.Texts.Select(t => t.Text)];
        int columns = words.Count(w => w is "N");
        Assert.InRange(columns, 2, 6);

        // Only the feed joins L: in the other columns its bar ended in nothing.
        Assert.Equal(1, words.Count(w => w is "L"));
        Assert.Equal(columns, words.Count(w => w is "wheel, L"));
        Assert.All(outputs.Select((_, i) => FormattableString.Invariant($"valve {i + 1}")), v => Assert.Contains(v, words, StringComparer.Ordinal));
        Assert.Contains(words, w => w.StartsWith("Columns go on", StringComparison.Ordinal));
    }
}
