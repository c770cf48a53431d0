using WheelDraft.Formats.Languages;
using WheelDraft.Tests.Floors;
using Xunit;

namespace WheelDraft.Tests.Languages;

/// <summary>The list of phrases is that of the sources.</summary>
public sealed class EnglishPhrasesTests
{
    private const string Renew = "WHEELDRAFT_RENEW_PHRASES";

    [Fact]
    public void All_IsWhatTheSourcesSay()
    {
        IReadOnlyList<string> said = PhraseScan.OfProject(Path.Combine(Sources.Root, "src"));
        if (Environment.GetEnvironmentVariable(Renew) is "1")
        {
            File.WriteAllText(Path.Combine(Sources.Root, "src/WheelDraft.Formats/Languages/english.txt"), string.Concat(said.Select(p => Line(p) + "\n")));
            return;
        }

        string[] unlisted = [.. said.Except(EnglishPhrases.All, StringComparer.Ordinal)];
        string[] gone = [.. EnglishPhrases.All.Except(said, StringComparer.Ordinal)];
        Assert.True(unlisted.Length + gone.Length == 0, $"{Renew}=1 writes the list anew. Said but not listed: {string.Join(" | ", unlisted.Take(5))}. Listed but not said: {string.Join(" | ", gone.Take(5))}.");
    }

    private static string Line(string phrase) => phrase.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal);
}
