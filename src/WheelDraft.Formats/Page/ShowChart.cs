using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Page;

/// <summary>The timing chart: one row an output as cut, one a load as the inputs make it; the script moves its cursor.</summary>
internal static class ShowChart
{
    // Steps of a time axis that people count in, s.
    private static readonly double[] Steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 300, 600, 900, 1800, 3600, 7200, 14400];

    // Most labels that an axis has room for on a telephone.
    private const int MostLabels = 7;

    // Height of one row, pixels of the page; page.css has the same.
    private const int RowPx = 30;

    /// <summary>Labels and bars.</summary>
    public static string Write(Design design, CircuitNetwork network, BenchComparison? measured)
    {
        Markup html = new();
        int rows = network.Contacts.Count + network.Loads.Count;
        html.Add("<div class=\"chart\">\n<ul class=\"chart-names\">\n");
        foreach (NetworkSwitch contact in network.Contacts)
        {
            html.Put($"<li><span class=\"kind\">{(network.LeverOf(contact.Name) is null ? "ring" : "lever")}</span> {SvgMarkup.Escaped(contact.Name)}</li>\n");
        }

        for (int l = 0; l < network.Loads.Count; l++)
        {
            // The motor's own name says what it is.
            html.Put($"<li class=\"of-load\"><span class=\"kind\">{(l == network.Motor ? "" : "load")}</span> {SvgMarkup.Escaped(network.Loads[l].Name)}</li>\n");
        }

        int height = (rows * RowPx) + 24;
        html.Put($"</ul>\n<svg id=\"chart\" class=\"chart-bars\" width=\"100%\" height=\"{height}\" role=\"img\" aria-label=\"Timing chart of one turn; the tables below give the same in words\">\n");
        Axis(html, design.Motion.TurnTimeS, rows * RowPx);
        for (int c = 0; c < network.Contacts.Count; c++)
        {
            Row(html, c, FormattableString.Invariant($"data-contact=\"{c}\""), Bars(network.Schedules[c], design.Motion.TurnTimeS, c), measured is null ? "" : Measured(design, measured, network.Contacts[c].Name, c));
        }

        for (int l = 0; l < network.Loads.Count; l++)
        {
            Row(html, network.Contacts.Count + l, FormattableString.Invariant($"data-load=\"{l}\""), "");
        }

        html.Put($"<g id=\"cursor\"><line x1=\"0\" x2=\"0\" y1=\"0\" y2=\"{rows * RowPx}\"/><circle cx=\"0\" cy=\"{rows * RowPx}\" r=\"5\"/></g>\n</svg>\n</div>\n");
        if (measured is not null)
        {
            html.Put($"<p class=\"measured-key\"><span class=\"measured-mark\" aria-hidden=\"true\"></span> measured: slim bars are means over the turns of a bench log, brought to the nominal turn time; wide bars are as cut. By the log the wheel {(measured.Misses ? "misses" : "meets")} what its file asks; home is where most edges fit.</p>\n");
        }

        return html.ToString();
    }

    private static string Percent(double share) => $"{FixedPoint.Short(share * 100, 5)}%";

    private static void Row(Markup html, int row, string data, string bars, string measured = "")
    {
        int top = row * RowPx;
        html.Put($"<g class=\"row\" {data}><line class=\"rest\" x1=\"0\" x2=\"100%\" y1=\"{top + (RowPx / 2)}\" y2=\"{top + (RowPx / 2)}\"/><g class=\"bars\">{bars}</g>{measured}</g>\n");
    }

    private static string Bars(ContactSchedule schedule, double turnS, int row)
    {
        Markup bars = new();
        foreach (CircleArc closed in schedule.Periods.Select(p => p.Closed).Where(a => !a.IsEmpty))
        {
            double from = Angles.InTurn(closed.StartRad) / Angles.TurnRad;
            double to = from + (closed.SweepRad / Angles.TurnRad);
            string words = closed.IsFull ? "always on"
                : $"{Wording.Seconds(from * turnS)} to {Wording.Seconds(to * turnS % turnS)}";
            Bar(bars, row, (closed.IsFull ? 0 : from, closed.IsFull ? 1 : Math.Min(to, 1)), words);
            if (!closed.IsFull && to > 1 + 1e-12)
            {
                Bar(bars, row, (0, to - 1), words);
            }
        }

        return bars.ToString();
    }

    // Slim bars on the wide ones, out of the way of the script, which draws those anew.
    private static string Measured(Design design, BenchComparison measured, string contact, int row)
    {
        double turnS = design.Motion.TurnTimeS, scale = measured.TurnTime.WantedS / measured.TurnTime.Measured.MeanS;
        Markup bars = new();
        foreach (ComparedPeriod period in measured.Periods.Where(p => string.Equals(design.Brief.Outputs[p.Output].Name, contact, StringComparison.Ordinal)))
        {
            double from = period.Start.Measured.MeanS * scale / turnS, share = period.On.Measured.MeanS * scale / turnS;
            from -= Math.Floor(from);
            string words = $"measured: from {Wording.Seconds(Math.Round(from * turnS, 2))} for {Wording.Seconds(Math.Round(share * turnS, 2))}";
            Slim(from, Math.Min(1, from + share), words);
            if (from + share > 1 + 1e-12)
            {
                Slim(0, from + share - 1, words);
            }
        }

        return $"<g class=\"measured\">{bars}</g>";

        void Slim(double start, double end, string words) =>
            bars.Put($"<rect x=\"{Percent(start)}\" width=\"{Percent(end - start)}\" y=\"{(row * RowPx) + 11}\" height=\"{RowPx - 22}\"><title>{SvgMarkup.Escaped(words)}</title></rect>");
    }

    private static void Bar(Markup bars, int row, (double From, double To) share, string words) =>
        bars.Put($"<rect x=\"{Percent(share.From)}\" width=\"{Percent(share.To - share.From)}\" y=\"{(row * RowPx) + 7}\" height=\"{RowPx - 14}\"><title>{SvgMarkup.Escaped(words)}</title></rect>");

    private static void Axis(Markup html, double turnS, int bottom)
    {
        double step = Steps.FirstOrDefault(s => turnS / s <= MostLabels, turnS / MostLabels);
        html.Add("<g class=\"axis\">");
        for (int k = 0; k * step <= turnS * (1 + 1e-9); k++)
        {
            double share = k * step / turnS;
            string anchor = share < 0.02 ? "start" : share > 0.97 ? "end" : "middle";
            html.Put($"<line x1=\"{Percent(share)}\" x2=\"{Percent(share)}\" y1=\"0\" y2=\"{bottom}\"/><text x=\"{Percent(share)}\" y=\"{bottom + 18}\" text-anchor=\"{anchor}\">{Wording.Number(k * step, 3)}{(k == 0 ? " s" : "")}</text>");
        }

        html.Add("</g>\n");
    }
}
