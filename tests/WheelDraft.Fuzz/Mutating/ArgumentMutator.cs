using System.CommandLine;
using System.Text;
using WheelDraft.Cli;

namespace WheelDraft.Fuzz;

/// <summary>Changes argument lists: options of the real commands, values, files, order.</summary>
internal sealed class ArgumentMutator
{
    private static readonly string[] Values =
    [
        "wheel.toml", "lands.toml", "bad.toml", "drawing.dxf", "missing.toml", ".", "out", "out2", "", " ", "-", "--", "@wheel.toml", "new-wheel", "damp-mains", "low-voltage", "A=L:230 V@0", "B=N:0 V", "H", "A", "B=PE:earthed", "A=", "=", "A=L:",
        "report", "cut", "draw,png", "pdf,print", "show", "bench", "report,report", "light", "dark", "print", "live", "strokes", "words", "numbers", "r12", "r2000", "basic", "reinforced", "functional", "IEC 60664-1", "IEC 60335-1", "II", "IIIa", "3", "4", "temporary",
        "laser", "photo-etch", "fretsaw", "mm", "in", "true", "false", "clearance", "creepage", "open-contact", "pair", "L", "N", "first", "door",
    ];

    private readonly string[] _names;

    public ArgumentMutator()
    {
        IEnumerable<Command> commands = CommandList.All().Select(c => c.Describe()).SelectMany(c => c.Subcommands.Prepend(c));
        List<string> names = ["--help", "-h", "-?", "--version", "--json", "--quiet", "--no-such"];
        foreach (Command command in commands)
        {
            names.Add(command.Name);
            names.AddRange(command.Options.SelectMany(o => o.Aliases.Prepend(o.Name)));
        }

        _names = [.. names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    public static List<string> List(byte[] file) => [.. Encoding.UTF8.GetString(file).Split('\n').Where((l, i) => i > 0 || l.Length > 0)];

    public static byte[] Bytes(IEnumerable<string> args) => Encoding.UTF8.GetBytes(string.Join('\n', args));

    /// <summary>A changed list.</summary>
    public IReadOnlyList<string> Mutate(List<string> parent, List<string> donor, Chance chance)
    {
        List<string> args = [.. parent];
        for (int left = 1 + chance.Below(4); left > 0; left--)
        {
            Change(args, donor, chance);
        }

        return args;
    }

    private void Change(List<string> args, List<string> donor, Chance chance)
    {
        int at = chance.Below(args.Count);
        switch (chance.Below(9))
        {
            case 0 when args.Count > 0:
                args.RemoveAt(at);
                break;
            case 1 when args.Count > 0:
                args.Insert(at, args[at]);
                break;
            case 2 when args.Count > 0:
                int second = chance.Below(args.Count);
                (args[at], args[second]) = (args[second], args[at]);
                break;
            case 3 when args.Count > 0:
                args[at] = Value(args[at], chance);
                break;
            case 4:
                args.Insert(chance.Below(args.Count + 1), chance.Of(_names));
                break;
            case 5:
                args.InsertRange(chance.Below(args.Count + 1), [chance.Of(_names), Value("", chance)]);
                break;
            case 6:
                args.Insert(chance.Below(args.Count + 1), $"{chance.Of(_names)}{chance.Of(["=", ":", " ", ""])}{Value("", chance)}");
                break;
            case 7 when donor.Count > 0:
                args.AddRange(donor.Skip(chance.Below(donor.Count)));
                break;
            default:
                args.Insert(chance.Below(args.Count + 1), Value("", chance));
                break;
        }
    }

    private static string Value(string now, Chance chance) => chance.Below(6) switch
    {
        0 => NastyValues.Number(chance),
        1 => NastyValues.Quantity(chance),
        2 => NastyValues.Text(chance),
        3 when now.Length > 0 => Encoding.UTF8.GetString(ByteMutator.Mutate(Encoding.UTF8.GetBytes(now), [], chance)).Replace('\n', ' '),
        _ => chance.Of(Values),
    };
}
