using System.Collections.Concurrent;
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
    private readonly ConcurrentBag<IPage> _idle = [];
    private readonly string _blank = Path.Combine(Directory.CreateTempSubdirectory("wheeldraft-page-").FullName, "blank.html");

    /// <summary>The browser; skips the test that asks where there is none.</summary>
    public IBrowser Browser
    {
        get
        {
            Assert.SkipWhen(_browser is null, $"No Chromium on this machine (looked for {string.Join(", ", Places)}, or give its path in CHROMIUM): the page is not tested.");
            return _browser!;
        }
    }

    /// <summary>A page of a browser as it is when nothing is asked of it, lent to one test after the other. All are of one context and of one site, so that a few
    /// processes draw them: each process takes longer to start than most tests.</summary>
    public async Task<IPage> BorrowPageAsync(PageWishes? wishes = null)
    {
        IBrowser browser = Browser;
        if (!_idle.TryTake(out IPage? page))
        {
            Task<IBrowserContext> usual;
            lock (_opening)
            {
                usual = _usual ??= browser.NewContextAsync();
            }

            page = await (await usual).NewPageAsync();
        }

        await WishAsync(page, wishes ?? new());
        return page;
    }

    /// <summary>Takes a page back; what it showed ends, and so does all that the test wished of it.</summary>
    public async Task GiveBackAsync(IPage page)
    {
        await page.GotoAsync("file://" + _blank);
        _idle.Add(page);
    }

    private static async Task WishAsync(IPage page, PageWishes wishes)
    {
        await page.SetViewportSizeAsync(wishes.Size.Width, wishes.Size.Height);
        await page.EmulateMediaAsync(new() { Media = Media.Null, ColorScheme = wishes.ColorScheme, ReducedMotion = wishes.ReducedMotion });
    }

    public async ValueTask InitializeAsync()
    {
        string? given = Environment.GetEnvironmentVariable("CHROMIUM");
        string? path = given is { Length: > 0 } ? given : Places.FirstOrDefault(File.Exists);
        if (path is null)
        {
            return;
        }

        await File.WriteAllTextAsync(_blank, "<!DOCTYPE html><title>nothing</title>");
        _driver = await Playwright.CreateAsync();
        _browser = await _driver.Chromium.LaunchAsync(new()
        {
            ExecutablePath = path,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                "--process-per-site", "--renderer-process-limit=2", "--disable-site-isolation-trials",

                // The driver's own list, which this one replaces, and at its end the process that is kept ready for the next site: each takes half a second of a processor.
                "--disable-features=AvoidUnnecessaryBeforeUnloadCheckSync,DestroyProfileOnBrowserClose,DialMediaRouteProvider,GlobalMediaControls,HttpsUpgrades,LensOverlay,"
                    + "MediaRouter,PaintHolding,ThirdPartyStoragePartitioning,Translate,OptimizationHints,SpareRendererForSitePerProcess",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _driver?.Dispose();
        Directory.Delete(Path.GetDirectoryName(_blank)!, recursive: true);
    }
}

/// <summary>How a browser is set up that shows a page.</summary>
public sealed record PageWishes
{
    /// <summary>Width and height of what is seen of the page, pixels.</summary>
    public (int Width, int Height) Size { get; init; } = (1280, 720);

    /// <summary>The colours that its user prefers.</summary>
    public ColorScheme ColorScheme { get; init; } = ColorScheme.Light;

    /// <summary>Whether its user wants little to move.</summary>
    public ReducedMotion ReducedMotion { get; init; } = ReducedMotion.NoPreference;
}
