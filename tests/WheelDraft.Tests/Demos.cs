using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Tests;

/// <summary>The example wheels of the repository, worked out once for all tests.</summary>
internal static class Demos
{
    private static readonly Dictionary<string, Lazy<Design>> Worked = Names.ToDictionary(
        n => n,
        n => new Lazy<Design>(() => Design.Of(ParameterReader.Read(File.ReadAllBytes(PathOf(n))).Brief!)),
        StringComparer.Ordinal);

    private static readonly Dictionary<string, Lazy<IReadOnlyList<Sheet>>> Drawn = Worked.ToDictionary(
        w => w.Key,
        w => new Lazy<IReadOnlyList<Sheet>>(() => DesignSheets.Of(w.Value.Value)),
        StringComparer.Ordinal);

    /// <summary>File names without ending, in ordinal order.</summary>
    public static IReadOnlyList<string> Names =>
        [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "parameters"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    /// <summary>The mains ones with strips for feed and every output.</summary>
    public static IReadOnlyList<string> WithStrips => ["kiln-room", "propagation-bench"];

    public static string PathOf(string name) => Path.Combine(AppContext.BaseDirectory, "parameters", name + ".toml");

    public static Design Of(string name) => Worked[name].Value;

    /// <summary>All its sheets, as usual.</summary>
    public static IReadOnlyList<Sheet> SheetsOf(string name) => Drawn[name].Value;

    private static readonly Dictionary<string, Lazy<Design>> Started = WheelDraft.Cli.TemplateShelf.All.ToDictionary(t => t.Name, t => new Lazy<Design>(() => Settled(t.Bytes())), StringComparer.Ordinal);

    /// <summary>A starter file worked out, what it leaves to the program chosen with little effort.</summary>
    public static Design OfStarter(string name) => Started[name].Value;

    private static Design Settled(byte[] bytes)
    {
        Brief brief = ParameterReader.Read(bytes).Brief!;
        return SettingOut.IsNeeded(brief) ? SettledFile.Of(bytes, brief, new SearchRequest { Effort = SearchEffort.Quick }, null)!.Design : Design.Of(brief);
    }
}
