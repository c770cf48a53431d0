using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

/// <summary>Addresses of a moment on the page, <c>#t=125&amp;closed=lid&amp;fault=lid-stuck-closed&amp;view=compact</c>, and the line that sets one into another page.</summary>
/// <remarks>t in seconds; closed and fault are lists of slugs parted by commas: of the inputs' names, and of the faults as the page words them.</remarks>
internal static class ShowLink
{
    // A picture that shows wheel, lamps, inputs and time side by side, pixels of a page.
    private const int WidthPx = 720;
    private const int HeightPx = 420;

    /// <summary>A line of HTML that shows the page, made small for it, in another page.</summary>
    /// <param name="design">The design.</param>
    /// <param name="page">The address of the page's file as seen from where the line will stand, e.g. <c>../show/index.html</c>.</param>
    /// <param name="timeS">The moment that it opens at, s from home.</param>
    public static string Frame(Design design, string page, double timeS = 0) => FormattableString.Invariant(
        $"<iframe src=\"{SvgMarkup.Escaped(page)}#t={FixedPoint.Short(timeS, 3)}&amp;view=compact\" title=\"{SvgMarkup.Escaped(design.Brief.Title)}: the wheel, turning\" width=\"{WidthPx}\" height=\"{HeightPx}\" loading=\"lazy\"></iframe>");

    /// <summary>Slugs of the inputs, in the circuit's order.</summary>
    public static IReadOnlyList<string> Inputs(Design design) => FileSlugs.Of(design.Circuit.Inputs);

    /// <summary>Slugs of the faults that the page can switch, in its order.</summary>
    public static IReadOnlyList<string> Faults(Design design) => FileSlugs.Of(ShowData.Faults(design).Select(f => f.Words));
}
