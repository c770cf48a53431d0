using CsCheck;
using WheelDraft.Drawing;
using Xunit;

namespace WheelDraft.Tests.Drawing;

public sealed class WordBreaksTests
{
    [Fact]
    public void WordsWereBrokenWithoutAHyphen() =>
        Assert.Equal(["Umwälzpum-", "pensteue-", "rung"], WordBreaks.Parts("Umwälzpumpensteuerung", p => p.Length <= 10));

    [Theory]
    [InlineData("Umwälz\u00ADpumpen\u00ADwerk", 12, "Umwälz-|pumpenwerk")]
    [InlineData("self-holding-relay", 13, "self-holding-|relay")]
    [InlineData("第二温室循环水泵", 4, "第二温室|循环水泵")]
    [InlineData("12345678", 4, "1234|5678")]
    [InlineData("short", 9, "short")]
    [InlineData("so\u00ADft", 9, "soft")]
    public void Parts_PlacesGiven_AreTaken(string word, int most, string parts)
    {
        string found = string.Join('|', WordBreaks.Parts(word, p => p.Length <= most));
        Assert.Equal(parts, found);
    }

    [Fact]
    public void Parts_AnyWord_FitAndLoseNothing()
    {
        // Oracle: put together again without the hyphens that were added they are the word.
        Gen.Select(Gen.String[Gen.Char["abeiouxyzäöΑλφήЖжщ漢字12"], 1, 45], Gen.Int[3, 20]).Sample(
            (word, most) =>
            {
                IReadOnlyList<string> parts = WordBreaks.Parts(word, p => p.Length <= most);
                Assert.All(parts, p => Assert.InRange(p.Length, 1, most));
                Assert.Equal(word, string.Concat(parts.Select(p => p.TrimEnd('-'))));
                Assert.All(parts.Zip(parts.Skip(1)), p => Assert.Equal(
                    p.First.EndsWith('-'),
                    char.IsLetter(p.First.TrimEnd('-')[^1]) && char.IsLetter(p.Second[0]) && !(p.First.TrimEnd('-')[^1] > '\u0E00' && p.Second[0] > '\u0E00')));
            },
            iter: 500);
    }
}
