using System.Security.Cryptography;
using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

// The chapter "Parameters": from the text of a parameter file to a brief, or to every fault with its place. The way is one line:
// text -> clean syntax (Syntax) -> keys checked one by one against the definitions (Keys, Checking) -> rules between keys (Rules) -> records
// (Building). The JSON Schema is made from the same definitions. Nothing is computed here beyond what decides whether a file is right.

/// <summary>Reads parameter files of format 1.</summary>
public static class ParameterReader
{
    /// <summary>Reads a file's bytes: UTF-8, with or without a byte order mark.</summary>
    /// <param name="bytes">All bytes of the file, at most <see cref="Budgets.ParameterFileBytes"/>; their SHA-256 goes into the brief.</param>
    /// <param name="beside">Gives the bytes of another file by its path from this one's folder, null where it cannot be read: for the font that it may name.
    /// When null, fonts are not looked for.</param>
    /// <returns>A brief, or all that is wrong; never throws for what the file holds.</returns>
    public static ParameterResult Read(ReadOnlySpan<byte> bytes, Func<string, byte[]?>? beside = null) => Read(bytes, beside, []);

    /// <summary>Reads a file with other values for some of its keys.</summary>
    /// <inheritdoc cref="Read(ReadOnlySpan{byte}, Func{string, byte[]})"/>
    /// <param name="bytes">All bytes of the file; their SHA-256 goes into the brief.</param>
    /// <param name="beside">As above.</param>
    /// <param name="changes">The other values, put in before anything is checked.</param>
    /// <exception cref="DesignRefusedException">There is no such key.</exception>
    internal static ParameterResult Read(ReadOnlySpan<byte> bytes, Func<string, byte[]?>? beside, IReadOnlyList<ValueChange> changes)
    {
        DiagnosticList diagnostics = new();
        return FileText.Of(bytes, "a parameter file", diagnostics) is string text
            ? Read(text, (Convert.ToHexStringLower(SHA256.HashData(bytes)), beside), changes)
            : new ParameterResult(null, diagnostics.InFileOrder());
    }

    /// <summary>Reads a text.</summary>
    /// <inheritdoc cref="Read(ReadOnlySpan{byte}, Func{string, byte[]})"/>
    /// <param name="text">The whole text; the SHA-256 is that of its UTF-8 form.</param>
    public static ParameterResult Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Read(Encoding.UTF8.GetBytes(text));
    }

    private static ParameterResult Read(string text, (string Sha256, Func<string, byte[]?>? Beside) file, IReadOnlyList<ValueChange> changes)
    {
        DiagnosticList diagnostics = new();
        if (text.Split('\n').All(l => l.TrimStart() is "" or ['#', ..]))
        {
            diagnostics.Add(new TextPlace(1, 1), "there is nothing in the file", "begin with one that works: wheeldraft new --list shows the starters, and wheeldraft new my-wheel.toml --like damp-mains writes one");
            return new ParameterResult(null, diagnostics.InFileOrder());
        }

        SyntaxPass syntax = new(text, diagnostics);
        if (syntax.Parse() is not { } document)
        {
            return new ParameterResult(null, diagnostics.InFileOrder());
        }

        TomlTable tree = new TomlTree(diagnostics).Build(document);
        foreach (ValueChange change in changes)
        {
            change.Apply(tree);
        }

        StructureCheck structure = new(diagnostics, syntax.Unread);
        CheckedTable root = structure.Check(tree, FileKeys.Root, "");

        // What could not be read may hold the names that the rest refers to: then rules between keys would report faults that are not there.
        if (syntax.Unread.Count == 0)
        {
            FileRules.CheckAll(root, diagnostics);
        }

        FontBrief? font = FontFile.Of(root, file.Beside, diagnostics);
        Brief? brief = diagnostics.Count == 0 ? BriefMaker.Make(root, structure.Places, file.Sha256) : null;
        brief = brief is null || font is null ? brief : brief with { Office = brief.Office with { Font = font } };
        return new ParameterResult(brief, diagnostics.InFileOrder());
    }
}
