using System.Text;
using WheelDraft.Formats.Explaining;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Formats.Handbook;

/// <summary>All pages of the guide and their pictures.</summary>
internal static class HandbookPages
{
    /// <summary>What stands on every page: mains voltage is never far.</summary>
    public const string Caution = "Mains voltage kills. Work on a timer only when it is isolated from the supply and proved dead. WheelDraft is a drafting aid: it checks geometry against rules as given and certifies nothing. Local codes, and a licensed or qualified person, decide.";

    private const string Folder = "Handbook.";

    // As a person reads on.
    private static readonly string[] Written = ["index", "first-wheel", "old-wheel", "measuring-an-old-wheel", "checking-a-drawing", "figures-for-a-manual", "bench", "editor", "files"];

    /// <summary>The pages, in reading order.</summary>
    public static IReadOnlyList<HandbookPage> All() =>
    [
        .. Written.Select(n => new HandbookPage(n, Text(n + ".md"))),
        new("keys", KeyReference.Page()),
        new("codes", ExplanationPages.Page("pictures/codes")),
    ];

    /// <summary>A picture as SVG, by its place beside the pages; null for one that there is not.</summary>
    public static string? Picture(string place)
    {
        string name = Path.GetFileNameWithoutExtension(place);
        return place.StartsWith("pictures/codes/", StringComparison.Ordinal)
            ? ExplanationPictures.Names.Contains(name, StringComparer.Ordinal) ? ExplanationPictures.Svg(name) : null
            : typeof(HandbookPages).Assembly.GetManifestResourceStream(Folder + Path.GetFileName(place)) is Stream stream ? Read(stream) : null;
    }

    /// <summary>The look of the site.</summary>
    public static string Style() => Text("handbook.css");

    private static string Text(string file) =>
        Read(typeof(HandbookPages).Assembly.GetManifestResourceStream(Folder + file) ?? throw new InvalidOperationException($"The guide's file '{file}' is not in the program."));

    private static string Read(Stream stream)
    {
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
