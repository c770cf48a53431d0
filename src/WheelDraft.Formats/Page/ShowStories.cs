using System.Text.Json;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Page;

/// <summary>The scenarios of a design as stories that the page plays: one event after the other, each with a sentence.</summary>
internal static class ShowStories
{
    // Moments are given to a nanosecond, as edges are.
    private const int SecondDecimals = 9;

    /// <summary>The card that tells them; empty where the design has no scenario.</summary>
    public static string Write(Design design)
    {
        IReadOnlyList<ScenarioBrief> scenarios = design.Brief.Scenarios;
        if (scenarios.Count == 0)
        {
            return "";
        }

        Markup html = new Markup().Add("<section class=\"card stories\" aria-labelledby=\"h-stories\">\n<h2 id=\"h-stories\">Stories <small>what happens, told event by event</small></h2>\n<div class=\"story\">\n");
        html.Add("<label><span>Story</span> <select id=\"story\" autocomplete=\"off\">\n");
        for (int s = 0; s < scenarios.Count; s++)
        {
            html.Put($"<option value=\"{s}\">{SvgMarkup.Escaped(scenarios[s].Name)}</option>\n");
        }

        return html.Add("</select></label>\n<button type=\"button\" id=\"tell\">Tell the story</button>\n<button type=\"button\" id=\"event-back\">Event before</button>\n<button type=\"button\" id=\"event-on\">Next event</button>\n</div>\n")
            .Add("<p id=\"event\" class=\"event\" aria-hidden=\"true\"></p>\n<p id=\"told\" class=\"told\" aria-live=\"polite\"></p>\n</section>\n").ToString();
    }

    /// <summary>The events of every scenario, as the page's script takes them.</summary>
    public static void Write(Utf8JsonWriter json, Design design)
    {
        json.WriteStartArray("stories");
        foreach (ScenarioBrief scenario in design.Brief.Scenarios)
        {
            Story(json, design, design.Circuit.Play(scenario).Beginning(Math.Max(1, Budgets.DrawnMoments / design.Brief.Scenarios.Count)));
        }

        json.WriteEndArray();
    }

    private static void Story(Utf8JsonWriter json, Design design, ScenarioRun run)
    {
        IReadOnlyList<string> sentences = StoryWords.Of(design, run);
        json.WriteStartObject();
        json.WriteNumber("end", Math.Round(run.EndS, SecondDecimals));
        json.WriteStartArray("events");
        for (int m = 0; m < run.Moments.Count; m++)
        {
            RunMoment moment = run.Moments[m];
            json.WriteStartObject();
            json.WriteNumber("t", Math.Round(moment.TimeS, SecondDecimals));
            json.WriteNumber("at", Math.Round(Angles.InTurn(moment.AngleRad) / Angles.TurnRad * design.Motion.TurnTimeS, SecondDecimals));
            json.WriteBoolean("turning", moment.IsTurning);
            json.WriteStartArray("closed");
            foreach (string input in moment.ClosedInputs.Where(i => design.Circuit.Network.LeverOf(i) is null))
            {
                json.WriteNumberValue(design.Circuit.Network.InputOf(input));
            }

            json.WriteEndArray();
            json.WriteString("say", ReadersWords.Read(sentences[m]));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
