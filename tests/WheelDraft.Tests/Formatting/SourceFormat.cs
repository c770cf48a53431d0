using System.Text;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WheelDraft.Tests.Formatting;

/// <summary>What the rules of .editorconfig ask of a source and the compiler's analysers do not look at.</summary>
/// <remarks>All else that <c>dotnet format</c> knows stops the build: IDE0055 for blanks and lines, IDE0005, IDE0040, IDE0065, IDE0161 for style, the analysers' own rules.
/// Left over are the four below, found by planting each kind of fault and seeing which the build let pass.</remarks>
internal static partial class SourceFormat
{
    private static readonly byte[] ByteOrderMark = [0xEF, 0xBB, 0xBF];

    /// <summary>Every fault of a source, in words; none when it is as it should be.</summary>
    /// <param name="source">The file's bytes, UTF-8.</param>
    internal static IReadOnlyList<string> FaultsOf(byte[] source)
    {
        List<string> faults = [];
        if (source.AsSpan().StartsWith(ByteOrderMark))
        {
            faults.Add("begins with a byte order mark");
        }

        if (source.AsSpan().Contains((byte)'\r'))
        {
            faults.Add("has line ends other than LF");
        }

        if (source.Length > 0 && source[^1] != '\n')
        {
            faults.Add("does not end with a line end");
        }

        string text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(source.AsSpan(source.AsSpan().StartsWith(ByteOrderMark) ? 3 : 0));
        faults.AddRange(Usings(text.Replace("\r", "", StringComparison.Ordinal)));
        faults.AddRange(NeedlessThis(text));
        return faults;
    }

    // System first, then by name, part by part: as "sort usings" of editors has it. Static ones and aliases follow.
    private static IEnumerable<string> Usings(string text)
    {
        string[] found = [.. Using().Matches(text).Select(m => m.Groups["name"].Value)];
        string[] sorted = [.. found.OrderBy(Kind).ThenBy(n => !IsSystem(n)).ThenBy(n => n.Replace('.', '\0'), StringComparer.OrdinalIgnoreCase)];
        return found.Zip(sorted).Where(p => !string.Equals(p.First, p.Second, StringComparison.Ordinal)).Take(1).Select(p => $"has using {p.First} where {p.Second} should be");
    }

    private static int Kind(string name) => name.Contains('=', StringComparison.Ordinal) ? 2 : name.StartsWith("static ", StringComparison.Ordinal) ? 1 : 0;

    private static bool IsSystem(string name)
    {
        string bare = name.Replace("static ", "", StringComparison.Ordinal);
        return bare is "System" || bare.StartsWith("System.", StringComparison.Ordinal);
    }

    // IDE0003: not reported by builds. Few sources have the word with its full stop at all, and those in texts and comments.
    private static IEnumerable<string> NeedlessThis(string text) => !text.Contains("this.", StringComparison.Ordinal) ? [] : CSharpSyntaxTree.ParseText(text).GetRoot()
        .DescendantNodes()
        .OfType<MemberAccessExpressionSyntax>()
        .Where(m => m.Expression is ThisExpressionSyntax)
        .Select(m => $"says {m.ToString()} with a needless this");

    [GeneratedRegex(@"^using (?<name>[^;(]+);$", RegexOptions.Multiline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Using();
}
