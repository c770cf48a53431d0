using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>What the person should know about a lands wheel although it can be cut.</summary>
internal static class LandFindings
{
    public static IEnumerable<Finding> Of(Brief brief, IReadOnlyList<RingLayout> rings, StationSpread stations)
    {
        int lands = rings.Sum(r => r.Lands.Count);
        yield return Finding.Note(
            "wheel.lands",
            $"The wheel has {(lands == 1 ? "1 separate land" : $"{Wording.Number(lands, 0)} separate lands")}; each must be fixed to the carrier by itself, flush with what the wipers ride on between lands.",
            brief.PlaceOf("wheel.construction"));
        for (int i = 0; i < rings.Count; i++)
        {
            foreach (Finding upright in WheelFindings.Nose(brief, rings[i], i))
            {
                yield return upright;
            }
        }

        foreach (Finding common in WheelFindings.Common(brief, stations))
        {
            yield return common;
        }
    }
}

/// <summary>What cannot be asked of a lands wheel.</summary>
internal static class LandRefusals
{
    /// <exception cref="DesignRefusedException">Something is asked that lands do not give; every reason.</exception>
    public static void Check(Brief brief)
    {
        List<Finding> reasons = [];
        if (brief.Feed is not null)
        {
            reasons.Add(Finding.Error("wheel.feed", "A lands wheel has no feed: each output has a second wiper on its ring. Leave [feed] out and give return_station and return_net to every output.", brief.PlaceOf("feed")));
        }

        for (int i = 0; i < brief.Outputs.Count; i++)
        {
            reasons.AddRange(Of(brief, brief.Outputs[i], string.Create(CultureInfo.InvariantCulture, $"output[{i}]")));
        }

        if (reasons.Count > 0)
        {
            throw new DesignRefusedException(reasons);
        }
    }

    private static IEnumerable<Finding> Of(Brief brief, OutputBrief output, string path)
    {
        if (output.ReturnNet is not string other)
        {
            yield return Finding.Error("wheel.return", $"'{output.Name}' has no return_net, which decides what its contact joins to net '{output.Net}'; write return_net = \"L\".", brief.PlaceOf(path));
        }
        else if (string.Equals(other, output.Net, StringComparison.OrdinalIgnoreCase))
        {
            yield return Finding.Error("wheel.return", $"Both wipers of '{output.Name}' are on net '{other}': the contact would join it to itself; give return_net another net.", brief.PlaceOf(path + ".return_net"));
        }

        if (output.Adjust is not null)
        {
            yield return Finding.Error(
                "wheel.adjust",
                $"'{output.Name}' asks for an adjusting edge, which moves the one wiper of a ring along the radius; a ring of lands has two, of which one makes and the other breaks, and both ride on the same path. "
                    + "Leave 'adjust' out and set the on-time by moving return_station (each degree further from station shortens it by a degree of the turn), or choose construction = \"windowed\".",
                brief.PlaceOf(path + ".adjust"));
        }
    }
}

/// <summary>Names for lands that are no net of the file: a land is a net of its own.</summary>
internal sealed class LandNames
{
    private readonly HashSet<string> _taken;

    public LandNames(Brief brief) => _taken = new(
        [
            .. brief.Outputs.SelectMany(o => new[] { o.Name, o.Net, o.ReturnNet ?? o.Net }),
            .. brief.Parts.SelectMany(p => new[] { p.Name, p.Net }),
            .. brief.Strips.SelectMany(s => s.Task is ServesNet plain ? new[] { s.Name, plain.Net } : [s.Name]),
            .. brief.Loads.SelectMany(l => new[] { l.From, l.To }),
            .. brief.Inputs.SelectMany(i => new[] { i.From, i.To }),
            brief.Wheel.ShaftNet ?? ItemNames.Shaft,
        ],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>The name of a land of an output.</summary>
    public string Next(string output, int count, int index)
    {
        string name = count <= 1 ? $"{output} land" : FormattableString.Invariant($"{output} land {index + 1}");
        while (!_taken.Add(name))
        {
            name += "'";
        }

        return name;
    }
}
