using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

/// <summary>Adjusting screws on the page: one slider each, which moves the wiper over its sloped edge and so changes the on-time.</summary>
internal static class ShowScrews
{
    /// <summary>The card with the sliders; empty where nothing can be adjusted.</summary>
    public static string Write(Design design)
    {
        (RingLayout Ring, AdjustLayout Adjust)[] screws = [.. Of(design)];
        if (screws.Length == 0)
        {
            return "";
        }

        Markup html = new Markup().Add("<section class=\"card screws\" aria-labelledby=\"h-screws\">\n<h2 id=\"h-screws\">Adjusting <small>what is proved, and the truth table, stand for mid travel</small></h2>\n");
        for (int s = 0; s < screws.Length; s++)
        {
            (RingLayout ring, AdjustLayout adjust) = screws[s];
            double half = adjust.Turns / 2;
            html.Put($"<div class=\"screw\"><label for=\"screw-{s}\">Screw of {SvgMarkup.Escaped(ring.Name)}</label><input type=\"range\" id=\"screw-{s}\" data-screw=\"{s}\" min=\"{FixedPoint.Short(-half, 6)}\" max=\"{FixedPoint.Short(half, 6)}\" step=\"any\" value=\"0\" autocomplete=\"off\" aria-describedby=\"screw-{s}-on\"><p id=\"screw-{s}-on\" class=\"hint\"></p></div>\n");
        }

        return html.Add("</section>\n").ToString();
    }

    /// <summary>What the script needs to know of each.</summary>
    public static void Write(Utf8JsonWriter json, Design design, CircuitNetwork network)
    {
        IReadOnlyList<string> slugs = FileSlugs.Of(design.Wheel.Rings.Select(r => r.Name));
        ReadersUnit unit = ReadersUnit.Of(design.Brief);
        json.WriteStartArray("screws");
        foreach ((RingLayout ring, AdjustLayout adjust) in Of(design))
        {
            bool isOuterLonger = adjust.Steps[^1].OnS > adjust.Steps[0].OnS;
            json.WriteStartObject();
            json.WriteString("slug", slugs[design.Wheel.Rings.ToList().IndexOf(ring)]);
            json.WriteNumber("contact", network.ContactOf(ring.Name));
            json.WriteString("edge", adjust.Asked.Edge == AdjustedEdge.On ? "on" : "off");
            json.WriteNumber("turns", adjust.Turns);
            json.WriteString("longer", adjust.Asked.Longer == LongerWay.In ? "in" : "out");
            json.WriteNumber("travel", adjust.Asked.TravelMm * (isOuterLonger ? 1 : -1));
            // Adding zero turns a negative zero into a plain one.
            json.WriteNumber("x", Math.Round(Math.Cos(ring.StationRad), 9) + 0.0);
            json.WriteNumber("y", Math.Round(Math.Sin(ring.StationRad), 9) + 0.0);
            json.WriteString("span", unit.Words(Wording.Mm(adjust.Asked.TravelMm)));
            if (design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal)).FlowLPerS is double flow)
            {
                json.WriteNumber("flow", flow * 1000);
            }

            // From the shortest on-time to the longest.
            IEnumerable<AdjustStep> steps = isOuterLonger ? adjust.Steps : adjust.Steps.Reverse();
            json.WriteStartArray("steps");
            foreach (AdjustStep step in steps)
            {
                json.WriteStartArray();
                json.WriteNumberValue(Math.Round(step.OnS, 9));
                json.WriteNumberValue(Math.Round(step.OnS - step.ShorterS, 6));
                json.WriteNumberValue(Math.Round(step.OnS + step.LongerS, 6));
                json.WriteEndArray();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static IEnumerable<(RingLayout Ring, AdjustLayout Adjust)> Of(Design design) =>
        design.Wheel.Rings.Where(r => r.Adjust is not null).Select(r => (r, r.Adjust!));
}
