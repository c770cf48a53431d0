using Microsoft.Playwright;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Films in one file, played by a browser. The oracle is the picture of a moment, and the circuit of the design.</summary>
public sealed class FilmTests(Chromium chromium)
{
    [Fact]
    public async Task SvgFilm_AtMomentsOfATurn_ShowsWheelClockAndStatesOfThem()
    {
        Design design = ShownDesign.Work("propagation-bench");
        await using Playing film = await Playing.Open(chromium, Of(design, MomentReel.OfTurn(design, 0b10), "film/turn.svg"));
        Assert.DoesNotContain("<script", film.Text, StringComparison.Ordinal);
        double turnS = design.Motion.TurnTimeS;
        for (int k = 0; k < 20; k++)
        {
            // Between two steps of the film and between two edges of the turn.
            double share = (k + 0.43) / 20;
            (double degrees, string[] texts) = await film.At(share * MomentReel.TurnForS);
            Assert.Equal(360 * share, (degrees + 360) % 360, 0.1);
            CircuitMoment moment = design.Circuit.At(share * Math.Tau, 0b10);
            string[] states = [.. texts.Where(t => t is "on" or "off" or "undecided")];
            Assert.Equal(moment.State.Loads.Select(l => l.ToString().ToLowerInvariant()).Order(StringComparer.Ordinal), states.Order(StringComparer.Ordinal));
            double clock = double.Parse(texts.Single(t => t.EndsWith(" s", StringComparison.Ordinal) && !t.Contains("0 s ", StringComparison.Ordinal))[..^2], System.Globalization.CultureInfo.InvariantCulture);
            Assert.InRange(clock, (share * turnS) - (turnS / 120) - 0.1, (share * turnS) + 0.1);
        }

        Assert.Empty(film.Noise);
    }

    [Fact]
    public async Task SvgFilm_Links_PauseAndGoOn()
    {
        Design design = ShownDesign.Work("tank-doser");
        await using Playing film = await Playing.Open(chromium, Of(design, MomentReel.OfTurn(design), "film/turn.svg"));
        Assert.Equal("running", await film.State());
        await film.Page.GetByRole(AriaRole.Link, new() { Name = "Pause" }).ClickAsync();
        Assert.Equal("paused", await film.State());
        await film.Page.GetByRole(AriaRole.Link, new() { Name = "Go on" }).ClickAsync();
        Assert.Equal("running", await film.State());
        Assert.Empty(film.Noise);
    }

    [Fact]
    public async Task SvgFilm_ReducedMotion_StandsAtItsBeginning()
    {
        Design design = ShownDesign.Work("propagation-bench");
        await using Playing film = await Playing.Open(chromium, Of(design, MomentReel.OfTurn(design), "film/turn.svg"), ReducedMotion.Reduce);
        Assert.Equal(0, await film.Page.EvaluateAsync<int>("document.getAnimations().length"));
        Assert.Contains("0.0 s", await film.Texts(), StringComparer.Ordinal);
    }

    [Fact]
    public async Task SvgFilm_OfAStory_TellsEachEventWithItsCaption()
    {
        Design design = ShownDesign.Work("propagation-bench");
        MomentReel reel = MomentReel.OfStory(design, 0);
        await using Playing film = await Playing.Open(chromium, Of(design, reel, "film/story-one-dry-hour-begins.svg"));
        ScenarioRun run = design.Circuit.Play(design.Brief.Scenarios[0]);
        HashSet<string> seen = new(StringComparer.Ordinal);
        for (double atS = 0.05; atS < reel.ForS; atS += 0.4)
        {
            (_, string[] texts) = await film.At(atS);
            seen.Add(string.Join(' ', texts));
        }

        Assert.All(run.Moments, m => Assert.Contains(seen, s => s.Contains(m.What is "home" ? "home" : m.What, StringComparison.Ordinal)));
        Assert.Contains(seen, s => s.Contains("mist valve goes on", StringComparison.Ordinal));
    }

    [Fact]
    public async Task AnimatedPng_DecodedByTheBrowser_HasEveryPictureAndTheTimeOfTheFilm()
    {
        // The browser's decoder is the oracle: it lays one picture over the other as the specification asks.
        Design design = ShownDesign.Work("tank-doser");
        MomentReel reel = MomentReel.OfTurn(design);
        byte[] png = [.. OutputFiles.Of(design, new OutputRequest { Kinds = [], Moving = new(reel) { AsSvg = false, WidthPx = 320 } }).Single().Bytes];
        await using ShownDesign shown = await ShownDesign.Open(chromium, "tank-doser");
        double[] told = await shown.Page.EvaluateAsync<double[]>(
            """
            async text => {
              const data = Uint8Array.from(atob(text), c => c.charCodeAt(0));
              const decoder = new ImageDecoder({ data, type: "image/png" });
              await decoder.tracks.ready;
              await decoder.completed;
              let time = 0;
              const differing = new Set();
              const canvas = new OffscreenCanvas(320, 320).getContext("2d", { willReadFrequently: true });
              let opaque = 1;
              for (let i = 0; i < decoder.tracks.selectedTrack.frameCount; i++) {
                const { image } = await decoder.decode({ frameIndex: i });
                time += image.duration / 1e6;
                canvas.clearRect(0, 0, 320, 320);
                canvas.drawImage(image, 0, 0);
                const pixels = canvas.getImageData(0, 0, image.displayWidth, image.displayHeight).data;
                for (let p = 3; p < pixels.length; p += 4) { opaque &= pixels[p] === 255 ? 1 : 0; }
                differing.add(pixels.reduce((sum, v, at) => (sum * 31 + v + at) | 0, 7));
                image.close();
              }
              return [decoder.tracks.selectedTrack.frameCount, time, differing.size, opaque, decoder.tracks.selectedTrack.repetitionCount === Infinity ? 1 : 0];
            }
            """,
            Convert.ToBase64String(png));
        Assert.InRange(told[0], 120, 200);
        Assert.Equal(MomentReel.TurnForS, told[1], 1e-3);
        Assert.Equal(told[0], told[2]);
        Assert.Equal([1, 1], told[3..]);
    }

    private static string Of(Design design, MomentReel reel, string name)
    {
        OutputFile file = OutputFiles.Of(design, new OutputRequest { Kinds = [], Moving = new(reel) { AsPng = false } }).Single();
        Assert.Equal(name, file.Name);
        return System.Text.Encoding.UTF8.GetString(file.Bytes);
    }

    private sealed class Playing : IAsyncDisposable
    {
        private readonly string _folder = Directory.CreateTempSubdirectory("wheeldraft-film-").FullName;
        private IBrowserContext? _context;

        public IPage Page { get; private set; } = null!;

        public string Text { get; private init; } = "";

        public List<string> Noise { get; } = [];

        public static async Task<Playing> Open(Chromium chromium, string text, ReducedMotion motion = ReducedMotion.NoPreference)
        {
            Playing playing = new() { Text = text };
            string file = Path.Combine(playing._folder, "film.svg");
            await File.WriteAllTextAsync(file, text, TestContext.Current.CancellationToken);
            playing._context = await chromium.Browser.NewContextAsync(new() { ReducedMotion = motion });
            playing.Page = await playing._context.NewPageAsync();
            playing.Page.Console += (_, message) => playing.Noise.Add(message.Text);
            await playing.Page.GotoAsync("file://" + file);
            return playing;
        }

        /// <summary>What is seen at a time of the film: how far the wheel has turned, clockwise, and all texts.</summary>
        public async Task<(double Degrees, string[] Texts)> At(double timeS)
        {
            await Page.EvaluateAsync("ms => document.getAnimations().forEach(a => { a.pause(); a.currentTime = ms; })", timeS * 1000);
            double degrees = await Page.EvaluateAsync<double>("(() => { const m = new DOMMatrix(getComputedStyle(document.querySelector('[class*=\"-turn \"]')).transform); return Math.atan2(m.b, m.a) * 180 / Math.PI; })()");
            return (degrees, await Texts());
        }

        public Task<string[]> Texts() => Page.EvaluateAsync<string[]>("[...document.querySelectorAll('text')].filter(t => getComputedStyle(t).visibility === 'visible').map(t => t.textContent)");

        public Task<string> State() => Page.EvaluateAsync<string>("[...new Set(document.getAnimations().map(a => a.playState))].join(' ')");

        public async ValueTask DisposeAsync()
        {
            if (_context is not null)
            {
                await _context.DisposeAsync();
            }

            Directory.Delete(_folder, recursive: true);
        }
    }
}
