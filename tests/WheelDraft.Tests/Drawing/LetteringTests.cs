using System.Text;
using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Drawing;

public sealed class LetteringTests
{
    private const double Hair = 1e-9;

    // Proportions of type B (d = h / 10): ISO 3098-0, as reproduced in an extract of NF EN ISO 3098-0.
    [Theory]
    [InlineData(2.5, 0.25, 1.75)]
    [InlineData(3.5, 0.35, 2.45)]
    [InlineData(10, 1, 7)]
    [InlineData(20, 2, 14)]
    public void Layout_CapitalAndSmallLetter_HaveHeightsOfTypeB(double heightMm, double strokeMm, double smallMm)
    {
        Assert.Equal(strokeMm, Lettering.StrokeMm(heightMm, TextWeight.Regular), Hair);
        Assert.Equal(heightMm, Lettering.Layout("H", heightMm).Box.Height, Hair);
        Assert.Equal(smallMm, Lettering.Layout("x", heightMm).Box.Height, Hair);
    }

    [Fact]
    public void Layout_LettersOnTheLine_StandOnIt()
    {
        foreach (char c in "ABDEFHIKLMNPRTXZabdhiklmnoruxz0123456789")
        {
            Assert.Equal(0, Lettering.Layout(c.ToString(), 10).Box.MinY, Hair);
        }
    }

    [Theory]
    [InlineData("p")]
    [InlineData("q")]
    [InlineData("g")]
    [InlineData("µ")]
    public void Layout_Descender_IsThreeTenths(string letter) => Assert.Equal(-3, Lettering.Layout(letter, 10).Box.MinY, 0.5 + Hair);

    // Between letters 2 d, between words 6 d (same source).
    [Fact]
    public void Layout_LettersAndWords_KeepTheGapsOfTypeB()
    {
        double one = Lettering.Layout("H", 10).WidthMm;
        Assert.Equal((2 * one) + 2, Lettering.Layout("HH", 10).WidthMm, Hair);
        Assert.Equal((2 * one) + 6, Lettering.Layout("H H", 10).WidthMm, Hair);
    }

    [Fact]
    public void Layout_EveryFigure_IsAsWide()
    {
        double zero = Lettering.Layout("00", 10).WidthMm;
        Assert.All("123456789", c => Assert.Equal(zero, Lettering.Layout($"{c}0", 10).WidthMm, Hair));
    }

    [Fact]
    public void Has_AsciiLatin1AndTheSigns_AllThere()
    {
        string signs = "°±Ø×µΩ≤≥–—←↑→↓↻↺²³·σψφχΔπ";
        IEnumerable<int> wanted = Enumerable.Range(32, 95).Concat(Enumerable.Range(0xA0, 96)).Concat(signs.Select(c => (int)c));
        Assert.Empty(wanted.Where(c => !Lettering.Has(new Rune(c))).Select(c => ((char)c).ToString()));
    }

    [Fact]
    public void GreekCyrillicAndLatinMarksWereBoxes()
    {
        // Every assigned letter of Latin-1, Latin Extended-A, Greek (monotonic), Cyrillic (Slavic) and Vietnamese, by the Unicode blocks.
        int[] wanted = [.. Range(0xA1, 0x17F), .. Range(0x386, 0x3CE), .. Range(0x401, 0x45F), 0x490, 0x491, .. Range(0x1EA0, 0x1EF9), 0x1E9E];
        Assert.Empty(wanted.Where(c => c is not (0x38B or 0x38D or 0x3A2) && !Lettering.Has(new Rune(c))).Select(char.ConvertFromUtf32));
        static IEnumerable<int> Range(int first, int last) => Enumerable.Range(first, last - first + 1);
    }

    [Theory]
    [InlineData("é", "e\u0301")]
    [InlineData("Ǖ", "U\u0308\u0304")]
    [InlineData("ấ", "a\u0302\u0301")]
    [InlineData("й", "и\u0306")]
    [InlineData("ΐ", "ι\u0308\u0301")]
    [InlineData("ķ", "k\u0326")]
    [InlineData("ï", "i\u0308")]
    public void Layout_LetterAndMarks_AreDrawnAsTheOneCharacter(string one, string apart)
    {
        // Oracle: canonical equivalence (Unicode Standard, UAX 15); ķ by its usual form, a comma.
        Assert.Equal(Lettering.Layout(one, 10).Pieces.Select(p => p.Bounds), Lettering.Layout(apart, 10).Pieces.Select(p => p.Bounds));
        Assert.Empty(Lettering.Missing(apart));
    }

    [Fact]
    public void Layout_MarkOnAnyLetter_StandsClearOfIt()
    {
        foreach (char letter in "abdghiklopxyABGHQΑΩαβζψЖжщ")
        {
            double top = Lettering.Layout(letter is 'i' ? "ı" : letter.ToString(), 10).Box.MaxY;
            foreach (char mark in "\u0300\u0301\u0302\u0303\u0304\u0306\u0307\u0308\u030A\u030C")
            {
                LetteredText marked = Lettering.Layout($"{letter}{mark}", 10);
                int own = Lettering.Layout(letter is 'i' ? "ı" : letter.ToString(), 10).Pieces.Count;
                Assert.True(marked.Pieces.Skip(own).Min(p => p.Bounds.MinY) - 0.5 >= Math.Min(top, 9.5) - 1e-9, $"{letter}{mark}");
            }
        }
    }

    [Fact]
    public void Layout_EveryLetter_KeepsBetweenLinesOfThePitchAndInItsWidth()
    {
        foreach (int code in Enumerable.Range(0, 0x10000).Where(c => !char.IsSurrogate((char)c) && Alphabet.Has(c)))
        {
            LetteredText text = Lettering.Layout(char.ConvertFromUtf32(code), 10);
            string name = $"U+{code:X4}";
            Assert.True(text.Box.Height <= Lettering.LinePitch * 10, name);
            Assert.True(text.Box.MinX >= -Hair - 0.35 && text.Box.MaxX <= text.WidthMm + 0.5, Invariant.Text($"{name}: {text.Box} in {text.WidthMm}"));
            Assert.Empty(Lettering.Missing(char.ConvertFromUtf32(code)));
        }
    }

    [Fact]
    public void Layout_CharacterWithoutLetter_IsABoxAndIsTold()
    {
        LetteredText text = Lettering.Layout("a漢b😀", 10);
        Assert.Equal(["漢", "😀"], Lettering.Missing("a漢b😀"));
        Assert.True(text.Pieces.Count > Lettering.Layout("ab", 10).Pieces.Count + 8);
    }

    [Fact]
    public void Layout_IsoAccents_MakeRoomForThemselves()
    {
        // Seen on a specimen: the accents of Î and its neighbours ran into each other.
        LetteredText text = Lettering.Layout("ÎÎ", 10);
        LetteredText one = Lettering.Layout("Î", 10);
        Assert.Equal((2 * one.Box.Width) + 2, text.Box.Width, 1e-6);
    }

    [Fact]
    public void Layout_Arcs_JoinTheirLines()
    {
        // A rounded corner is drawn as one stroke: no gap between line and arc.
        StrokeRun run = Assert.Single(StrokeRun.Of(Lettering.Layout("S", 10).Pieces));
        Assert.False(run.IsClosed);
        Assert.True(Assert.Single(StrokeRun.Of(Lettering.Layout("O", 10).Pieces)).IsClosed);
        Assert.Contains(true, run.Pieces.Select(p => p is Arc));
    }

    [Fact]
    public void WidthMm_AnyText_IsThatOfTheLayout() =>
        Gen.String[Gen.Char[" abcIlWM.,0189°Ωé→"], 1, 30].Sample(
            s =>
            {
                LetteredText text = Lettering.Layout(s, 3.5);
                Assert.Equal(text.WidthMm, Lettering.WidthMm(s, 3.5), 1e-9);
                Assert.Equal(text.Pieces.Count == 0 ? 0 : text.Pieces.Max(p => p.Bounds.MaxX) + 0.175, text.Pieces.Count == 0 ? 0 : text.Box.MaxX, 1e-9);
            },
            iter: 300);

    // Widths of Helvetica (Adobe core font metrics, thousandths), from memory: the box of live text must never be narrower.
    [Theory]
    [InlineData("A", 667)]
    [InlineData("W", 944)]
    [InlineData("a", 556)]
    [InlineData("i", 222)]
    [InlineData("m", 833)]
    [InlineData("0", 556)]
    [InlineData("@", 1015)]
    [InlineData(".", 278)]
    public void LiveWidths_AgainstHelvetica_AreNotNarrower(string letter, double thousandths)
    {
        TextStyle style = new(LiveWidths.CapitalShare);
        Assert.True(LiveWidths.WidthMm(letter, style) >= thousandths / 1000);
    }

    [Fact]
    public void Box_AnyTextAtAnyAngle_HoldsItsStrokes()
    {
        Gen<SheetText> texts =
            from text in Gen.String[Gen.Char["ABCgjpqyÅÇ 0123°Ø→.,|_"], 1, 20].Where(s => !string.IsNullOrWhiteSpace(s))
            from x in Gen.Double[-50, 50]
            from turn in Gen.Double[-Math.PI, Math.PI]
            from along in Gen.Enum<TextAlong>()
            from across in Gen.Enum<TextAcross>()
            from weight in Gen.Enum<TextWeight>()
            select new SheetText(text, new TextSpot(new Point(x, 3), along, across, turn), new TextStyle(3.5, weight));
        texts.Sample(
            text =>
            {
                Placement level = Placement.Turn(-text.Place.TurnRad, text.Box.Centre);
                Bounds box = (text.Box with { TurnRad = 0 }).Bounds.Grown(1e-9);
                foreach (Piece stroke in text.Strokes)
                {
                    Bounds inked = stroke.Placed(level).Bounds.Grown(text.Style.StrokeMm / 2);
                    Assert.True(box.Contains(new(inked.MinX, inked.MinY)) && box.Contains(new(inked.MaxX, inked.MaxY)));
                }
            },
            iter: 300);
    }
}
