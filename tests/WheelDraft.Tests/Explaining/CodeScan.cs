using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WheelDraft.Tests.Explaining;

/// <summary>Reads from the sources every code of a finding or refusal.</summary>
/// <remarks>Better one too many than one too few: every text of the form "chapter.matter" is a code, unless it is a file's name, is asked for as a place in the
/// parameter file, or stands in one of a few sources that speak of keys. Texts without a dot are codes where a finding or refusal is made with them.</remarks>
internal static partial class CodeScan
{
    // Sources whose dotted texts are keys of the parameter file, or files.
    private static readonly string[] OfKeys = ["/Assumptions.cs", "/SettledText.cs", "/Wishes.cs", "/Parameters/Keys/", "/Parameters/Schema/"];

    // Methods that take the path of a key.
    private static readonly string[] TakeKeys = ["PlaceOf", "Place", "At", "Find", "Of", "Replace"];

    // What makes a finding or a refusal; a code is its first text.
    private static readonly string[] Makers = ["Finding.Error", "Finding.Warning", "Finding.Note", "Engineering.Finding.Error", "DesignRefusedException", "RuleRefusedException"];

    /// <summary>Every code, with the source that gives it.</summary>
    /// <param name="src">The folder src.</param>
    public static IReadOnlyDictionary<string, string> OfProject(string src)
    {
        SortedDictionary<string, string> codes = new(StringComparer.Ordinal);
        SyntaxNode[] roots = [.. Directory.EnumerateFiles(src, "*.cs", SearchOption.AllDirectories).Select(f => f.Replace('\\', '/'))
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(f => CSharpSyntaxTree.ParseText(File.ReadAllText(f), path: f).GetRoot())];
        foreach (SyntaxNode root in roots)
        {
            foreach (string code in OfSource(root, roots))
            {
                codes.TryAdd(code, Path.GetFileName(root.SyntaxTree.FilePath));
            }
        }

        return codes;
    }

    /// <summary>The codes of one source.</summary>
    /// <param name="root">The source.</param>
    /// <param name="all">All sources, for codes that are put together from an argument.</param>
    public static IEnumerable<string> OfSource(SyntaxNode root, IReadOnlyList<SyntaxNode> all) =>
    [
        .. root.DescendantNodes().OfType<LiteralExpressionSyntax>().Where(l => l.IsKind(SyntaxKind.StringLiteralExpression) && IsCode(l)).Select(l => l.Token.ValueText),
        .. root.DescendantNodes().OfType<InterpolatedStringExpressionSyntax>().Where(IsMade).SelectMany(t => PutTogether(t, all)),
    ];

    private static bool IsCode(LiteralExpressionSyntax text) =>
        IsMade(text) ? OneWord().IsMatch(text.Token.ValueText) : !OfKeys.Any(k => text.SyntaxTree.FilePath.Contains(k, StringComparison.Ordinal)) && Dotted().IsMatch(text.Token.ValueText) && !FileName().IsMatch(text.Token.ValueText) && !IsKey(text);

    // The first argument of what makes a finding.
    private static bool IsMade(ExpressionSyntax text) => text.Parent is ArgumentSyntax { Parent: ArgumentListSyntax list } argument && list.Arguments.IndexOf(argument) == 0 && list.Parent switch
    {
        InvocationExpressionSyntax call => Makers.Contains(call.Expression.ToString(), StringComparer.Ordinal),
        ObjectCreationExpressionSyntax made => Makers.Contains(made.Type.ToString(), StringComparer.Ordinal),
        _ => false,
    };

    private static bool IsKey(LiteralExpressionSyntax text) => text.Parent is ArgumentSyntax { Parent: ArgumentListSyntax { Parent: InvocationExpressionSyntax call } }
        && TakeKeys.Contains(call.Expression is MemberAccessExpressionSyntax member ? member.Name.Identifier.Text : call.Expression.ToString(), StringComparer.Ordinal);

    // $"arguments.{option}": a code for each text with which the method round it is called.
    private static IEnumerable<string> PutTogether(InterpolatedStringExpressionSyntax text, IReadOnlyList<SyntaxNode> all)
    {
        MethodDeclarationSyntax method = text.Ancestors().OfType<MethodDeclarationSyntax>().First();
        string parameter = text.Contents.OfType<InterpolationSyntax>().Single().Expression.ToString();
        int at = method.ParameterList.Parameters.IndexOf(p => string.Equals(p.Identifier.Text, parameter, StringComparison.Ordinal));
        foreach (InvocationExpressionSyntax call in all.SelectMany(r => r.DescendantNodes().OfType<InvocationExpressionSyntax>()).Where(c => string.Equals(NameOf(c), method.Identifier.Text, StringComparison.Ordinal) && c.ArgumentList.Arguments.Count > at))
        {
            if (call.ArgumentList.Arguments[at].Expression is LiteralExpressionSyntax argument)
            {
                yield return string.Concat(text.Contents.Select(c => c is InterpolatedStringTextSyntax plain ? plain.TextToken.ValueText : argument.Token.ValueText));
            }
        }
    }

    private static string NameOf(InvocationExpressionSyntax call) => call.Expression is MemberAccessExpressionSyntax member ? member.Name.Identifier.Text : call.Expression.ToString();

    [GeneratedRegex(@"^[a-z]+(-[a-z]+)*\.[a-z]+(-[a-z]+)*$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Dotted();

    [GeneratedRegex(@"^[a-z]+(-[a-z]+)*(\.[a-z]+(-[a-z]+)*)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex OneWord();

    [GeneratedRegex(@"\.(csv|md|json|txt|js|css|html|toml|dxf|svg|png|pdf|xml|exe)$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex FileName();
}
