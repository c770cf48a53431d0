using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>The lands of a wheel for people: the second wipers, and when each land is live or floating.</summary>
internal static class LandsMarkdown
{
    /// <summary>Nothing for a windowed wheel.</summary>
    public static void Write(ProsePage page, Design design)
    {
        IReadOnlyList<RingLayout> rings = [.. design.Wheel.Rings.Where(r => r.Return is not null)];
        if (rings.Count == 0)
        {
            return;
        }

        page.Heading(3, "Second wipers")
            .Paragraph("A land makes when it reaches the downstream wiper and breaks when it leaves the upstream one, the short way round.")
            .Table(["Ring", "Net", "Station", "Return net", "Return station", "Apart", "Upstream", "Between patches, mm"], rings.Select(r => (IReadOnlyList<string>)
            [
                r.Name,
                r.Net,
                Deg(r.StationRad),
                r.Return!.Net,
                Deg(r.Return.StationRad),
                Deg(r.Return.ApartRad),
                r.Return.IsUpstream ? "return" : "output",
                page.Mm(r.Return.PatchGapMm),
            ]));
        page.Heading(3, "Lands, live and floating")
            .Paragraph("Programme angles from home. Under no wiper a land floats: it splits a creepage path into parts, each counted only if it is long enough.")
            .Table(["Land", "On the output's wiper", "On the return wiper", "Joins both", "Floats"], rings.SelectMany(r => r.Lands).Select(l => (IReadOnlyList<string>)
            [
                l.Name,
                Span(l.OnWiper),
                Span(l.OnReturn),
                string.Join(", ", l.Joins.Select(Span)),
                string.Join(", ", l.Floats.Select(Span)),
            ]));
    }

    private static string Span(CircleArc arc) => arc.IsFull ? "always" : $"{Deg(arc.StartRad)} – {Deg(Angles.InTurn(arc.EndRad))}";

    private static string Deg(double angleRad) => Wording.Number(Angles.DegFromRad(angleRad), 3);
}
