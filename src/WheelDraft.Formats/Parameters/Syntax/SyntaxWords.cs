namespace WheelDraft.Formats.Parameters;

/// <summary>Puts the parser's messages into words for a person who writes parameter files.</summary>
internal static class SyntaxWords
{
    private static readonly (string Part, string Complaint)[] Known =
    [
        ("Invalid newline in a string", "this text is not closed on its line; end it with the same quotation mark that it begins with"),
        ("Invalid End-Of-File found on string", "this text is not closed before the end of the file; end it with the same quotation mark that it begins with"),
        ("Expecting `=` after a key", "a key stands without \"=\" and a value; write one key = value a line, texts and quantities in quotation marks"),
        ("while expecting token `newline`", "something is left over after the value; write one key = value a line, quantities in quotation marks, e.g. \"0.5 mm\""),
        ("for a value", "this is no value; write texts and quantities in quotation marks, e.g. \"0.5 mm\", numbers, true, false, lists and tables without"),
        ("while expecting a value", "the value is missing; write key = value, quantities in quotation marks, e.g. \"0.5 mm\""),
        ("Unexpected escape character", "this text has a backslash before a letter that makes no escape; write \\\\ for a backslash, or the text in single quotation marks"),
        ("Unexpected leading zero", "a number begins with a superfluous zero; leave it out"),
        ("Unable to parse integer", "this whole number is too large; leave out digits"),
        ("Invalid control character", "there is a control character in the text; take it out"),
        ("Missing a `,`", "a comma is missing between two items of a list; part items by commas"),
        ("closing `]`", "the list is not closed here; end it with ]"),
        ("while expecting `]`", "the header is not closed; write [name], or [[name]] for one of several"),
        ("while expecting `]]`", "the header is not closed; write [[name]]"),
        ("parsing inline table", "the table in braces is not well formed; write { key = value, key = value }"),
        ("maximum depth", "lists and tables are nested too deeply; nothing in a parameter file needs more than a few levels"),
    ];

    /// <summary>The complaint for a message of the parser, parted by a semicolon.</summary>
    public static string Of(string message)
    {
        string? known = Known.FirstOrDefault(k => message.Contains(k.Part, StringComparison.Ordinal)).Complaint;
        return known ?? $"this is not TOML ({message.Replace(';', ',').TrimEnd('.')}); write [table] headers and key = value lines, see https://toml.io";
    }
}
