using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using WheelDraft.Tests.Raster;
using Xunit;

[assembly: AssemblyFixture(typeof(OutsideBrowser))]

namespace WheelDraft.Tests.Raster;

/// <summary>Chromium without a window, started when the first page is asked for and used for all of them: it takes longer to start than to draw.</summary>
/// <remarks>It is told what to do by Chromium's own protocol over a pair of pipes: a message is JSON with a zero behind it. One page is drawn at a time.
/// Its pictures are packed in haste, for they are unpacked at once.</remarks>
public sealed class OutsideBrowser : IAsyncDisposable
{
    private readonly OutsideFolder _folder = new();
    private readonly SemaphoreSlim _turn = new(1);
    private readonly List<byte> _pending = [];
    private readonly byte[] _received = new byte[1 << 16];

    private Process? _process;
    private string _session = "";
    private int _asked;

    /// <summary>What a page shows from its upper left corner, in pixels of 1/96 in.</summary>
    /// <param name="size">How much of it.</param>
    /// <param name="pages">Files of the page by name; the first is shown.</param>
    internal async Task<Picture> PictureAsync((int Width, int Height) size, params (string Name, string Text)[] pages)
    {
        OutsideProgram chromium = OutsideProgram.OrSkip("/usr/bin/chromium", "--version");
        await _turn.WaitAsync(TestContext.Current.CancellationToken);
        try
        {
            if (_process is null)
            {
                await StartAsync(chromium);
            }

            foreach ((string name, string text) in pages)
            {
                await _folder.WriteAsync(name, text);
            }

            await AskAsync("Emulation.setDeviceMetricsOverride", new() { ["width"] = size.Width, ["height"] = size.Height, ["deviceScaleFactor"] = 1, ["mobile"] = false });
            await AskAsync("Page.navigate", new() { ["url"] = "file://" + _folder.At(pages[0].Name) }, until: "Page.loadEventFired");
            JsonElement shot = await AskAsync("Page.captureScreenshot", new() { ["format"] = "png", ["optimizeForSpeed"] = true });
            return Picture.Of(shot.GetProperty("data").GetBytesFromBase64());
        }
        finally
        {
            _turn.Release();
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
        {
            // It ends when nobody is left to tell it anything.
            _process.StandardInput.Close();
            await _process.WaitForExitAsync();
            _process.Dispose();
        }

        _turn.Dispose();
        _folder.Dispose();
    }

    private async Task StartAsync(OutsideProgram chromium)
    {
        // It reads from file 3 and writes to file 4.
        _process = OutsideProgram.OrSkip("/bin/sh", "-c", "true").Start(
            "-c", "exec \"$0\" \"$@\" 3<&0 4>&1 >/dev/null 2>&1", chromium.Path,
            "--headless", "--no-sandbox", "--disable-gpu", "--disable-software-rasterizer", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--disable-extensions", "--disable-features=SpareRendererForSitePerProcess", "--hide-scrollbars", "--force-device-scale-factor=1",
            $"--user-data-dir={_folder.At("profile")}", "--remote-debugging-pipe", "about:blank");
        JsonElement pages = await AskAsync("Target.getTargets", []);
        JsonElement page = pages.GetProperty("targetInfos").EnumerateArray().First(t => t.GetProperty("type").GetString() is "page");
        JsonElement attached = await AskAsync("Target.attachToTarget", new() { ["targetId"] = page.GetProperty("targetId").GetString(), ["flatten"] = true });
        _session = attached.GetProperty("sessionId").GetString()!;
        await AskAsync("Page.enable", []);
    }

    /// <summary>Its answer; with an event to wait for, when both have come.</summary>
    private async Task<JsonElement> AskAsync(string method, JsonObject parameters, string? until = null)
    {
        JsonObject message = new() { ["id"] = ++_asked, ["method"] = method, ["params"] = parameters };
        if (_session.Length > 0)
        {
            message["sessionId"] = _session;
        }

        Stream pipe = _process!.StandardInput.BaseStream;
        await pipe.WriteAsync(Encoding.UTF8.GetBytes(message.ToJsonString() + '\0'));
        await pipe.FlushAsync();
        JsonElement? answer = null;
        bool hasCome = until is null;
        while (answer is null || !hasCome)
        {
            JsonElement told = await ReadAsync();
            if (told.TryGetProperty("id", out JsonElement id) && id.GetInt32() == _asked)
            {
                Assert.True(told.TryGetProperty("result", out JsonElement result), string.Create(CultureInfo.InvariantCulture, $"Chromium, {method}: {told}"));
                answer = result;
            }

            hasCome = hasCome || (told.TryGetProperty("method", out JsonElement what) && string.Equals(what.GetString(), until, StringComparison.Ordinal));
        }

        return answer.Value;
    }

    private async Task<JsonElement> ReadAsync()
    {
        int searched = 0;
        int end;
        while ((end = _pending.IndexOf(0, searched)) < 0)
        {
            searched = _pending.Count;
            int count = await _process!.StandardOutput.BaseStream.ReadAsync(_received, TestContext.Current.CancellationToken);
            Assert.True(count > 0, "Chromium has ended.");
            _pending.AddRange(_received.AsSpan(0, count));
        }

        using JsonDocument told = JsonDocument.Parse(_pending[..end].ToArray());
        _pending.RemoveRange(0, end + 1);
        return told.RootElement.Clone();
    }
}
