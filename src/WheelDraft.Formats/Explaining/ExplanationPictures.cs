using WheelDraft.Drawing;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Explaining;

/// <summary>The pictures of the page of codes.</summary>
internal static class ExplanationPictures
{
    /// <summary>Their names.</summary>
    public static IReadOnlyList<string> Names => [.. Primer.All.Select(p => p.Name)];

    /// <summary>What a picture shows.</summary>
    /// <exception cref="ArgumentException">There is no such picture.</exception>
    public static string Caption(string name) => Find(name).Caption;

    /// <summary>A picture as SVG, lines ending in LF.</summary>
    /// <exception cref="ArgumentException">There is no such picture.</exception>
    public static string Svg(string name) => SvgWriter.Write(Find(name).ToSheet(), new SvgOptions { Text = SvgText.Strokes, IdPrefix = "primer-" });

    private static Primer Find(string name) =>
        Primer.All.FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.Ordinal)) ?? throw new ArgumentException($"There is no picture '{name}'.", nameof(name));
}
