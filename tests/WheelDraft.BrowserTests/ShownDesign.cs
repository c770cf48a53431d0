using System.Collections.Concurrent;
using Microsoft.Playwright;
using WheelDraft.Engineering;
using WheelDraft.Formats.Page;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Tests;

/// <summary>A demo's page, opened from disk, with everything noted that it says to the console or asks of anybody.</summary>
internal sealed class ShownDesign : IAsyncDisposable
{
    private static readonly ConcurrentDictionary<string, Lazy<Design>> Worked = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<Design, Lazy<byte[]>> Pages = new(ReferenceEqualityComparer.Instance);

    private readonly string _folder = Directory.CreateTempSubdirectory("wheeldraft-show-").FullName;
    private readonly List<string> _noise = [];
    private IBrowserContext? _context;

    private ShownDesign(Design design) => Design = design;

    public static IReadOnlyList<string> Demos => ["propagation-bench", "kiln-room", "tank-doser", "seed-drier", "fry-feeder"];

    public Design Design { get; }

    public IPage Page { get; private set; } = null!;

    /// <summary>Console messages, faults of the script, requests for anything but the page itself.</summary>
    public IReadOnlyList<string> Noise => _noise;

    public static Design Work(string demo) => WorkText(TextOf(demo));

    /// <summary>The same text is worked out once for all tests.</summary>
    public static Design WorkText(string toml) => Worked.GetOrAdd(toml, t => new(() => Design.Of(ParameterReader.Read(System.Text.Encoding.UTF8.GetBytes(t)).Brief!))).Value;

    public static string TextOf(string demo) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "parameters", demo + ".toml"));

    public static Task<ShownDesign> Open(Chromium chromium, string demo, BrowserNewContextOptions? options = null, string fragment = "") =>
        Open(chromium, Work(demo), options, fragment);

    public static async Task<ShownDesign> Open(Chromium chromium, Design design, BrowserNewContextOptions? options = null, string fragment = "")
    {
        ShownDesign shown = new(design);
        string file = Path.Combine(shown._folder, "index.html");
        await File.WriteAllBytesAsync(file, Pages.GetOrAdd(design, d => new(() => ShowPage.Write(d))).Value);
        shown._context = options is null ? null : await chromium.Browser.NewContextAsync(options);
        shown.Page = await (shown._context?.NewPageAsync() ?? chromium.NewPageAsync());
        string address = "file://" + file;
        shown.Page.Console += (_, message) => shown._noise.Add($"console: {message.Text}");
        shown.Page.PageError += (_, error) => shown._noise.Add($"script: {error}");
        shown.Page.Request += (_, request) =>
        {
            if (!string.Equals(request.Url.Split('#')[0], address, StringComparison.Ordinal))
            {
                shown._noise.Add($"request: {request.Url}");
            }
        };
        await shown.Page.GotoAsync(address + fragment);
        return shown;
    }

    /// <summary>The lamps' accessible names, in order.</summary>
    public Task<string[]> Lamps() => Page.EvaluateAsync<string[]>("[...document.querySelectorAll('[role=status]')].map(l => l.getAttribute('aria-label'))");

    /// <summary>Moves the slider as a person does.</summary>
    public Task MoveTo(double timeS) => Page.EvaluateAsync(
        "t => { const s = document.getElementById('time'); s.value = t; s.dispatchEvent(new Event('input', { bubbles: true })); }",
        timeS);

    public async ValueTask DisposeAsync()
    {
        await (_context?.CloseAsync() ?? Page.CloseAsync());

        Directory.Delete(_folder, recursive: true);
    }
}
