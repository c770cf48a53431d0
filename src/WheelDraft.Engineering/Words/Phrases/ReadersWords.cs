namespace WheelDraft.Engineering;

/// <summary>The words in which the people of this run read: English, or the table that they asked for.</summary>
/// <remarks>What .NET's own culture of the user interface is: set for everything that is drawn and written within one <c>using</c>, on all its threads, and gone after it.
/// Texts pass here where they are measured and set, not where they are made.</remarks>
internal static class ReadersWords
{
    // Stands before a text that is finished, so that it is not looked up again, and never leaves for a file. No character of Unicode, so nobody's text has it.
    private const char Finished = '\uFDD0';

    private static readonly AsyncLocal<PhraseBook?> Book = new();

    /// <summary>The language, as BCP 47 has it: "en" unless a table is in use.</summary>
    public static string Language => Book.Value?.Language ?? "en";

    /// <summary>Whether texts are read in other words than the program's own.</summary>
    public static bool AreOthers => Book.Value is not null;

    /// <summary>Uses a table until what is returned is disposed of; null for English.</summary>
    public static IDisposable Use(PhraseBook? book)
    {
        PhraseBook? before = Book.Value;
        Book.Value = book;
        return new Ending(before);
    }

    /// <summary>A text as it is read.</summary>
    public static string Read(string text) => Book.Value is not PhraseBook book ? text : text.Contains(Finished) ? text.Replace(Finished.ToString(), "", StringComparison.Ordinal) : book.Say(text);

    /// <summary>A text that is read as it stands: a part of one that was looked up whole.</summary>
    public static string AsItStands(string text) => Book.Value is null || text.StartsWith(Finished) ? text : Finished + text;

    private sealed class Ending(PhraseBook? before) : IDisposable
    {
        public void Dispose() => Book.Value = before;
    }
}
