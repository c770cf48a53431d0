using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Nets are made by naming them: this finds the ones that were meant to be the same, and the ones that lead nowhere.</summary>
internal sealed class NetRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    private readonly List<Mention> _mentions = [];

    private sealed record Mention(string Net, TextPlace Place, bool MustLead);

    /// <inheritdoc/>
    public override void Check()
    {
        Collect();
        foreach (IGrouping<string, Mention> spelled in _mentions.GroupBy(m => m.Net, StringComparer.OrdinalIgnoreCase))
        {
            SameSpelling(spelled);
            LeadsOn(spelled);
            NoOtherLine(spelled);
        }

        PartsOfTheirOwn();
    }

    private IEnumerable<string> Supply => [.. Lines, "N", "E"];

    // L always means line: where the lines have other names it is none of them.
    private void NoOtherLine(IGrouping<string, Mention> mentions)
    {
        if (string.Equals(mentions.Key, "L", StringComparison.OrdinalIgnoreCase) && !Lines.Contains("L", StringComparer.Ordinal))
        {
            Wrong(mentions.First().Place, $"the net \"{mentions.First().Net}\" is none of the lines that [supply] names", $"write {Words.Or(Lines.Select(Words.Quoted))}");
        }
    }

    private void Collect()
    {
        Mentioned(Root.Table("feed")?.Find("net"));
        foreach (CheckedTable output in Root.Tables("output"))
        {
            Mentioned(output.Find("net") ?? output.Find("name"));
            Mentioned(output.Find("return_net"));
        }

        Mentioned(Root.Table("wheel")?.Find("shaft_net"));
        foreach (CheckedTable part in Root.Tables("part"))
        {
            Mentioned(part.Find("net"));
        }

        foreach (CheckedTable strip in Root.Tables("strip"))
        {
            Mentioned(strip.Find("net"), mustLead: true);
        }

        foreach (CheckedTable table in Root.Tables("load").Concat(Root.Tables("input")).Append(Root.Table("drive_motor")).OfType<CheckedTable>())
        {
            Ends(table);
        }
    }

    private void Ends(CheckedTable table)
    {
        IReadOnlyList<CheckedValue> ends = table.Items("between");
        foreach (CheckedValue end in ends)
        {
            Mentioned(end, mustLead: true);
        }

        if (ends.Count == 2 && ends[0].Text is { } net && string.Equals(net, ends[1].Text, StringComparison.Ordinal))
        {
            Wrong(ends[1].Place, $"both ends are on net \"{net}\"", "it lies between two different nets, e.g. between = [\"mist\", \"N\"]");
        }
    }

    private void Mentioned(CheckedValue? value, bool mustLead = false)
    {
        if (value?.Text is { } net)
        {
            _mentions.Add(new Mention(net, value.Place, mustLead));
        }
    }

    private void SameSpelling(IGrouping<string, Mention> mentions)
    {
        string first = Supply.FirstOrDefault(s => string.Equals(s, mentions.Key, StringComparison.OrdinalIgnoreCase)) ?? mentions.First().Net;
        foreach (Mention other in mentions.Where(m => !string.Equals(m.Net, first, StringComparison.Ordinal)))
        {
            Wrong(other.Place, $"the net \"{other.Net}\" differs from \"{first}\" only in upper and lower case", $"write \"{first}\" if it is the same net, or give it another name");
        }
    }

    private void LeadsOn(IGrouping<string, Mention> mentions)
    {
        Mention first = mentions.First();
        bool supply = Supply.Append("L").Contains(first.Net, StringComparer.OrdinalIgnoreCase);
        if (supply || mentions.Count() > 1 || !first.MustLead)
        {
            return;
        }

        string[] others = [.. _mentions.Select(m => m.Net).Concat([.. Lines, "N"]).Where(n => !string.Equals(n, first.Net, StringComparison.Ordinal)).Distinct(StringComparer.Ordinal)];
        string? near = NearMiss.Of(first.Net, others);
        Wrong(
            first.Place,
            $"nothing else is on the net \"{first.Net}\"",
            near is null ? $"it is one of {Words.Or(others.Order(NaturalOrder.Names).Select(Words.Quoted))}, or something else must be on it too" : $"did you mean \"{near}\"?");
    }

    private void PartsOfTheirOwn()
    {
        foreach (CheckedTable part in Root.Tables("part").Where(p => p.Is("kind", "touchable") || p.Is("kind", "floating")))
        {
            string? name = part.Text("name");
            if (name is not null && NameRules.ReservedMeaning(name) is null && _mentions.Find(m => string.Equals(m.Net, name, StringComparison.OrdinalIgnoreCase)) is { } mention)
            {
                string line = mention.Place.Line.ToString(CultureInfo.InvariantCulture);
                Wrong(part.PlaceOf("name"), $"the {part.Text("kind")} part \"{name}\" is a net of its own name, which line {line} uses for a net already", "give the part another name");
            }
        }
    }
}
