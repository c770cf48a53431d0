using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

/// <summary>The programme in words, for readers, screen readers and the printed handout.</summary>
internal static class ShowTables
{
    /// <summary>When each ring is on, with its worst-case limits.</summary>
    public static string Times(Design design)
    {
        Markup html = new Markup().Add("<table>\n<thead><tr><th scope=\"col\">Ring</th><th scope=\"col\">On from</th><th scope=\"col\">to</th><th scope=\"col\">for</th><th scope=\"col\">at worst</th></tr></thead>\n<tbody>\n");
        double turn = design.Motion.TurnTimeS;
        foreach (RingLayout ring in design.Wheel.Rings)
        {
            string name = SvgMarkup.Escaped(ring.Name);
            int contact = design.Circuit.Network.ContactOf(ring.Name);
            if (ring.IsWhole)
            {
                html.Put($"<tr><th scope=\"row\">{name}</th><td colspan=\"4\">always on</td></tr>\n");
            }

            for (int p = 0; p < ring.Periods.Count; p++)
            {
                RingPeriod period = ring.Periods[p];
                double from = design.Motion.SecondsFromRad(period.Wanted.StartRad);
                double lasts = design.Motion.SecondsFromRad(period.Wanted.SweepRad);
                html.Put($"<tr data-period=\"{contact} {p}\"><th scope=\"row\">{name}</th><td>{Wording.Seconds(from)}</td><td>{Wording.Seconds((from + lasts) % turn)}</td><td>{Wording.Seconds(lasts)}</td><td>{Wording.Number(lasts - period.Limits.ShorterS, 2)} to {Wording.Number(lasts + period.Limits.LongerS, 2)} s</td></tr>\n");
            }
        }

        return html.Add("</tbody>\n</table>\n").ToString();
    }
}
