namespace WheelDraft.Formats.Parameters;

/// <summary>One statement of a TOML document by its outer look: a header or a key with its value, over one or more lines.</summary>
/// <param name="FirstLine">First line, from 0.</param>
/// <param name="LastLine">Last line, from 0.</param>
/// <param name="Name">What the statement seems to name: the text before "=", or in the brackets of a header.</param>
/// <param name="IsHeader">Whether it is a header.</param>
/// <param name="OpenAt">Line and column, from 0, of a bracket that it opens and does not close; null when all are closed.</param>
internal sealed record Statement(int FirstLine, int LastLine, string Name, bool IsHeader, (int Line, int Column, char Bracket)? OpenAt);
