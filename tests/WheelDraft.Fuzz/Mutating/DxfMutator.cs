using System.Globalization;
using System.Text;

namespace WheelDraft.Fuzz;

/// <summary>Changes drawings by what they are made of: values, group codes, entities, sections; by bytes; by setting two together.</summary>
internal static class DxfMutator
{
    private static readonly string[] Words =
    [
        "A", "B", "H", "X", "OUTLINE", "WINDOW", "NOTE", "0", "LINE", "ARC", "CIRCLE", "LWPOLYLINE", "POLYLINE", "VERTEX", "SEQEND", "SOLID", "TRACE", "3DFACE", "HATCH", "INSERT", "ELLIPSE", "SPLINE", "TEXT", "MTEXT",
        "ATTRIB", "DIMENSION", "POINT", "BLOCK", "ENDBLK", "SECTION", "ENDSEC", "TABLE", "ENDTAB", "LAYER", "EOF", "HEADER", "ENTITIES", "BLOCKS", "TABLES", "$INSUNITS", "$ACADVER", "AC1009", "AC1015", "AC1032", "*U1", "SQ", "NEST", "",
    ];

    private static readonly string[] Codes = ["0", "2", "5", "6", "8", "9", "10", "11", "12", "13", "20", "21", "30", "39", "40", "41", "42", "43", "44", "45", "50", "51", "62", "66", "67", "70", "71", "72", "73", "74", "75", "76", "90", "91", "92", "93", "97", "98", "210", "220", "230", "290", "310", "999", "1000", "-1", "x", ""];

    /// <summary>A changed drawing.</summary>
    public static byte[] Mutate(byte[] parent, byte[] donor, Chance chance)
    {
        if (parent.AsSpan().StartsWith("AutoCAD Binary DXF"u8) || chance.OneIn(6))
        {
            return ByteMutator.Mutate(parent, donor, chance);
        }

        List<(string Code, string Value)> pairs = Pairs(parent);
        List<(string Code, string Value)> others = Pairs(donor);
        for (int left = 1 + chance.Below(chance.OneIn(3) ? 10 : 4); left > 0 && pairs.Count > 0; left--)
        {
            Change(pairs, others, chance);
        }

        byte[] bytes = Bytes(pairs, chance.OneIn(20) ? "\r\n" : "\n");
        return chance.OneIn(40) ? ByteMutator.Mutate(bytes, donor, chance) : bytes;
    }

    private static void Change(List<(string Code, string Value)> pairs, List<(string Code, string Value)> others, Chance chance)
    {
        int at = chance.Below(pairs.Count);
        (string code, string value) = pairs[at];
        switch (chance.Below(10))
        {
            case < 4:
                pairs[at] = (code, Value(value, chance));
                break;
            case 4:
                pairs[at] = (chance.Of(Codes), value);
                break;
            case 5:
                pairs.RemoveAt(at);
                break;
            case 6:
                pairs.Insert(at, (chance.Of(Codes), chance.OneIn(2) ? NastyValues.Number(chance) : chance.Of(Words)));
                break;
            case 7:
                (int from, int length) = Entity(pairs, at);
                pairs.RemoveRange(from, length);
                break;
            case 8 when pairs.Count < 4000:
                (int start, int many) = Entity(pairs, at);
                pairs.InsertRange(start, pairs.GetRange(start, many));
                break;
            default:
                if (others.Count > 0 && pairs.Count < 4000)
                {
                    (int first, int taken) = Entity(others, chance.Below(others.Count));
                    pairs.InsertRange(Entity(pairs, at).From, others.GetRange(first, taken));
                }

                break;
        }
    }

    private static string Value(string value, Chance chance) =>
        double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out _) && !chance.OneIn(8)
            ? NastyValues.Near(value.Trim(), chance)
            : chance.OneIn(5) ? NastyValues.Text(chance) : chance.Of(Words);

    /// <summary>From one code 0 to the next, round a place.</summary>
    private static (int From, int Length) Entity(List<(string Code, string Value)> pairs, int at)
    {
        int from = pairs.FindLastIndex(at, p => p.Code.Trim() is "0");
        from = Math.Max(from, 0);
        int end = from + 1 < pairs.Count ? pairs.FindIndex(from + 1, p => p.Code.Trim() is "0") : -1;
        return (from, (end < 0 ? pairs.Count : end) - from);
    }

    private static List<(string Code, string Value)> Pairs(byte[] file)
    {
        string[] lines = Encoding.Latin1.GetString(file).Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n');
        List<(string, string)> pairs = [];
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            pairs.Add((lines[i], lines[i + 1]));
        }

        return pairs;
    }

    private static byte[] Bytes(List<(string Code, string Value)> pairs, string end)
    {
        StringBuilder text = new();
        foreach ((string code, string value) in pairs)
        {
            text.Append(code).Append(end).Append(value).Append(end);
        }

        return Encoding.Latin1.GetBytes(text.ToString());
    }
}
