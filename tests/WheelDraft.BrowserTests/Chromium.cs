using Microsoft.Playwright;
using WheelDraft.Tests;
using Xunit;

[assembly: AssemblyFixture(typeof(Chromium))]

namespace WheelDraft.Tests;

/// <summary>The machine's own Chromium, started once; where there is none, tests that need it are skipped and say so.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private IPlaywright? _driver;
    private IBrowser? _browser;
    private Task<IBrowserContext>? _usual;
    private readonly Lock _opening = new();

    /// <summary>The browser; skips the test that asks where there is none.</summary>
    public IBrowser Browser
    {
        get
        {
            Assert.SkipWhen(_browser is null, $"No Chromium on this machine (looked for {string.Join(", ", Places)}, or give its path in CHROMIUM): the page is not tested.");
            return _browser!;
        }
    }

    /// <summary>A page of a browser as it is when nothing is asked of it. All are of one context and of one site, so that a few processes draw them: each
    /// process takes longer to start than most tests.</summary>
    public async Task<IPage> NewPageAsync()
    {
        IBrowser browser = Browser;
        Task<IBrowserContext> usual;
        lock (_opening)
        {
            usual = _usual ??= browser.NewContextAsync();
        }

        return await (await usual).NewPageAsync();
    }

    public async ValueTask InitializeAsync()
    {
        string? given = Environment.GetEnvironmentVariable("CHROMIUM");
        string? path = given is { Length: > 0 } ? given : Places.FirstOrDefault(File.Exists);
        if (path is null)
        {
            return;
        }

        _driver = await Playwright.CreateAsync();
        _browser = await _driver.Chromium.LaunchAsync(new()
        {
            ExecutablePath = path,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--process-per-site", "--renderer-process-limit=2", "--disable-site-isolation-trials"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _driver?.Dispose();
    }
}
