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
    private readonly Chromium _chromium;
    private string _address = "";

    private ShownDesign(Chromium chromium, Design design) => (_chromium, Design) = (chromium, design);

    public static IReadOnlyList<string> Demos => ["propagation-bench", "kiln-room", "tank-doser", "seed-drier", "fry-feeder"];

    public Design Design { get; }

    public IPage Page { get; private set; } = null!;

    /// <summary>Console messages, faults of the script, requests for anything but the page itself.</summary>
    public IReadOnlyList<string> Noise => _noise;

    public static Design Work(string demo) => WorkText(TextOf(demo));

    /// <summary>The same text is worked out once for all tests.</summary>
    public static Design WorkText(string toml) => Worked.GetOrAdd(toml, t => new(() => Design.Of(ParameterReader.Read(System.Text.Encoding.UTF8.GetBytes(t)).Brief!))).Value;

    public static string TextOf(string demo) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "parameters", demo + ".toml"));

    public static Task<ShownDesign> Open(Chromium chromium, string demo, PageWishes? wishes = null, string fragment = "") =>
        Open(chromium, Work(demo), wishes, fragment);

    public static async Task<ShownDesign> Open(Chromium chromium, Design design, PageWishes? wishes = null, string fragment = "")
    {
        ShownDesign shown = new(chromium, design);
        string file = Path.Combine(shown._folder, "index.html");
        await File.WriteAllBytesAsync(file, Pages.GetOrAdd(design, d => new(() => ShowPage.Write(d))).Value);
        shown._address = "file://" + file;
        shown.Page = await chromium.BorrowPageAsync(wishes);
        shown.Page.Console += shown.Hear;
        shown.Page.PageError += shown.Hear;
        shown.Page.Request += shown.Hear;
        await shown.Page.GotoAsync(shown._address + fragment);
        return shown;
    }

    private void Hear(object? page, IConsoleMessage message) => _noise.Add($"console: {message.Text}");

    private void Hear(object? page, string error) => _noise.Add($"script: {error}");

    private void Hear(object? page, IRequest request)
    {
        if (!string.Equals(request.Url.Split('#')[0], _address, StringComparison.Ordinal))
        {
            _noise.Add($"request: {request.Url}");
        }
    }

    /// <summary>The lamps' accessible names, in order.</summary>
    public Task<string[]> Lamps() => Page.EvaluateAsync<string[]>("[...document.querySelectorAll('[role=status]')].map(l => l.getAttribute('aria-label'))");

    /// <summary>Moves the slider as a person does.</summary>
    public Task MoveTo(double timeS) => Page.EvaluateAsync(
        "t => { const s = document.getElementById('time'); s.value = t; s.dispatchEvent(new Event('input', { bubbles: true })); }",
        timeS);

    public async ValueTask DisposeAsync()
    {
        Page.Console -= Hear;
        Page.PageError -= Hear;
        Page.Request -= Hear;
        await _chromium.GiveBackAsync(Page);
        Directory.Delete(_folder, recursive: true);
    }
}
