using System.Text;
using WheelDraft.Cli;

namespace WheelDraft.Tests;

/// <summary>The command <c>watch</c>, run beside the test on a copy of a demo.</summary>
internal sealed class WatchRun : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly AddressWriter _out = new();
    private readonly string _folder = Directory.CreateTempSubdirectory("wheeldraft-watch-").FullName;
    private readonly Task<int> _run;

    public WatchRun(string demo, Action<string>? arrange = null)
    {
        File = Path.Combine(_folder, demo + ".toml");
        System.IO.File.Copy(Path.Combine(AppContext.BaseDirectory, "parameters", demo + ".toml"), File);
        arrange?.Invoke(File);
        Surroundings surroundings = new() { Out = _out, Error = TextWriter.Null, Folder = _folder, Stop = _stop.Token };
        _run = Task.Run(() => ProgramRun.Run(["watch", Path.GetFileName(File)], surroundings));
    }

    /// <summary>The watched file.</summary>
    public string File { get; }

    /// <summary>The address that the command has printed.</summary>
    public Task<string> Address => _out.FirstLine.WaitAsync(TimeSpan.FromSeconds(60));

    /// <summary>Saves the file with something replaced.</summary>
    public async Task Replace(string old, string with)
    {
        string text = await System.IO.File.ReadAllTextAsync(File);
        await System.IO.File.WriteAllTextAsync(File, text.Replace(old, with, StringComparison.Ordinal));
    }

    /// <summary>What Ctrl-C does.</summary>
    public async Task<int> Stop()
    {
        await _stop.CancelAsync();
        return await _run;
    }

    public async ValueTask DisposeAsync()
    {
        await Stop();
        _stop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private sealed class AddressWriter : StringWriter
    {
        private readonly TaskCompletionSource<string> _line = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task<string> FirstLine => _line.Task;

        public override Encoding Encoding => Encoding.UTF8;

        public override void Flush()
        {
            if (ToString().Contains('\n', StringComparison.Ordinal))
            {
                _line.TrySetResult(ToString().Split('\n')[0].Trim());
            }
        }
    }
}
