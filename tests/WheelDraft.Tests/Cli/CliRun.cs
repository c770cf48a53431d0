using WheelDraft.Cli;

namespace WheelDraft.Tests.Cli;

/// <summary>The program run inside the test process, with its words captured and a folder of its own.</summary>
internal sealed class CliRun : IDisposable
{
    private readonly StringWriter _out = new() { NewLine = "\n" };
    private readonly StringWriter _error = new() { NewLine = "\n" };

    public string Folder { get; } = Directory.CreateTempSubdirectory("wheeldraft-test-").FullName;

    public string Out => _out.ToString();

    public string Error => _error.ToString();

    public int Run(params string[] args) => Run(CommandList.All(), args);

    public int Run(IReadOnlyList<ICommand> commands, string[] args) => Run(commands, args, stopped: false);

    public int RunStopped(IReadOnlyList<ICommand> commands, string[] args) => Run(commands, args, stopped: true);

    private int Run(IReadOnlyList<ICommand> commands, string[] args, bool stopped)
    {
        _out.GetStringBuilder().Clear();
        _error.GetStringBuilder().Clear();
        return ProgramRun.Run(args, new Surroundings { Out = _out, Error = _error, Folder = Folder, Stop = new CancellationToken(stopped) }, commands);
    }

    public string PathOf(string name) => Path.Combine(Folder, name);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
