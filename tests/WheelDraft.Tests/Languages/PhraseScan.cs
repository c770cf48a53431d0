using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using WheelDraft.Formats.Page;

namespace WheelDraft.Tests.Languages;

/// <summary>Reads from the sources every text that may come before a reader, with {1}, {2}, … where something is set in.</summary>
internal static partial class PhraseScan
{
    // Where what readers see is worded, and what in these folders is not for readers.
    private static readonly string[] Folders = ["WheelDraft.Engineering", "WheelDraft.Drawing", "WheelDraft.Formats/Guide", "WheelDraft.Formats/Outputs", "WheelDraft.Formats/Page", "WheelDraft.Formats/Pdf", "WheelDraft.Formats/Prose", "WheelDraft.Formats/Report"];
    private static readonly string[] NotForReaders = ["Json.cs", "/ReportSchema.cs", "Csv.cs", "/Words/Phrases/", "/Transliteration.cs", "/Primers/", "/Budgets.cs", "/Alphabet", "/LiveWidth", "/PdfFile.cs", "/PdfLettering.cs", "/PdfMetadata.cs", "/PdfPainter.cs", "/Markup.cs", "/MarkupWords.cs"];

    /// <summary>Every phrase of the project's sources, in ordinal order.</summary>
    /// <param name="src">The folder src.</param>
    public static IReadOnlyList<string> OfProject(string src)
    {
        SortedSet<string> phrases = new(StringComparer.Ordinal);
        foreach (string file in Folders.SelectMany(f => Directory.EnumerateFiles(Path.Combine(src, f), "*.cs", SearchOption.AllDirectories)).Select(f => f.Replace('\\', '/')))
        {
            if (!file.Contains("/obj/", StringComparison.Ordinal) && (file.EndsWith("/CircuitJson.cs", StringComparison.Ordinal) || !NotForReaders.Any(n => file.Contains(n, StringComparison.Ordinal))))
            {
                phrases.UnionWith(OfSource(File.ReadAllText(file)).SelectMany(Parts).Where(IsWording));
            }
        }

        string browser = Path.Combine(src, "WheelDraft.Formats/Page/Browser");
        phrases.UnionWith(WordsOf(Regex.Replace(File.ReadAllText(Path.Combine(browser, "page.html")), @"\{\{[^}]*\}\}", "", RegexOptions.CultureInvariant, TimeSpan.FromMinutes(1))).Where(IsWording));
        foreach (string script in Directory.EnumerateFiles(browser, "*.js"))
        {
            phrases.UnionWith(MarkupWords.OfScript(File.ReadAllText(script)));
        }

        return [.. phrases];
    }

    /// <summary>The texts of a source, in the order in which they stand; a sum of texts is one. What is thrown comes before no reader of a sheet or report.</summary>
    public static IEnumerable<string> OfSource(string source)
    {
        foreach (ExpressionSyntax text in CSharpSyntaxTree.ParseText(source).GetRoot().DescendantNodes().OfType<ExpressionSyntax>().Where(IsText))
        {
            if (!(text.Parent is BinaryExpressionSyntax sum && IsText(sum)) && !text.Ancestors().Any(a => a is AttributeSyntax or ThrowStatementSyntax or ThrowExpressionSyntax))
            {
                PhraseText phrase = new();
                phrase.Add(text);
                yield return phrase.ToString();
            }
        }
    }

    private static IEnumerable<string> WordsOf(string markup) => MarkupWords.Captures(markup).Select(c => System.Net.WebUtility.HtmlDecode(c.Value));

    // Markup is read text by text.
    private static IEnumerable<string> Parts(string phrase) => phrase.Contains('<', StringComparison.Ordinal) && phrase.Contains('>', StringComparison.Ordinal) ? WordsOf(phrase).Select(Renumbered) : [phrase];

    private static string Renumbered(string phrase)
    {
        int places = 0;
        return Place().Replace(phrase, _ => string.Create(CultureInfo.InvariantCulture, $"{{{++places}}}"));
    }

    private static bool IsText(SyntaxNode node) => node is InterpolatedStringExpressionSyntax || node.IsKind(SyntaxKind.StringLiteralExpression)
        || (node is BinaryExpressionSyntax sum && sum.IsKind(SyntaxKind.AddExpression) && (IsText(sum.Left) || IsText(sum.Right)));

    // Words: two letters together at least, and not what only programs read: ids, keys, patterns, style sheets, paths.
    private static bool IsWording(string phrase)
    {
        string words = Place().Replace(phrase, "");
        return TwoLetters().IsMatch(words) && !ForPrograms().IsMatch(phrase) && !phrase.Contains('\\', StringComparison.Ordinal)
            && (phrase.Contains(' ', StringComparison.Ordinal) || !Id().IsMatch(words));
    }

    [GeneratedRegex(@"\{\d+\}", RegexOptions.CultureInvariant, 60_000)]
    private static partial Regex Place();

    [GeneratedRegex(@"\p{L}{2}", RegexOptions.CultureInvariant, 60_000)]
    private static partial Regex TwoLetters();

    [GeneratedRegex(@"=""|\(\?|^https?:|^#|^\{1\}[a-z]+$|^\S*\p{Ll}[].]+\p{Ll}\S*$|\[\{1\}|^&|;$|^font|^rgb|^/|\p{Lu}{12,}|^\p{Lu}{2}\d\d$|\p{Ll}{10}[^\x00-\x7f]|yyyy|```", RegexOptions.CultureInvariant, 60_000)]
    private static partial Regex ForPrograms();

    [GeneratedRegex(@"^[a-z0-9]*[-_./#][a-z0-9._/#-]*$|\p{Ll}\p{Lu}", RegexOptions.CultureInvariant, 60_000)]
    private static partial Regex Id();

    /// <summary>A phrase under construction; what is set in without anything between is one place.</summary>
    private sealed class PhraseText
    {
        private readonly StringBuilder _text = new();
        private int _places;
        private bool _inPlace;

        public void Add(SyntaxNode part)
        {
            switch (part)
            {
                case BinaryExpressionSyntax sum when IsText(sum):
                    Add(sum.Left);
                    Add(sum.Right);
                    break;
                case LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.StringLiteralExpression):
                    Add(literal.Token.ValueText);
                    break;
                case InterpolatedStringExpressionSyntax text:
                    foreach (InterpolatedStringContentSyntax content in text.Contents)
                    {
                        if (content is InterpolatedStringTextSyntax plain)
                        {
                            Add(plain.TextToken.ValueText.Replace("{{", "{", StringComparison.Ordinal).Replace("}}", "}", StringComparison.Ordinal));
                        }
                        else
                        {
                            Place();
                        }
                    }

                    break;
                default:
                    Place();
                    break;
            }
        }

        public override string ToString() => _text.ToString();

        private void Add(string words)
        {
            _text.Append(words);
            _inPlace = words.Length == 0 && _inPlace;
        }

        private void Place()
        {
            if (!_inPlace)
            {
                _text.Append(CultureInfo.InvariantCulture, $"{{{++_places}}}");
            }

            _inPlace = true;
        }
    }
}
