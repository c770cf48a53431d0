using System.CommandLine;
using System.Globalization;
using WheelDraft.Cli;

namespace WheelDraft.Fuzz;

/// <summary>Argument lists, one argument a line: the whole program in a folder of its own, with its real commands but for the server of watch.</summary>
internal sealed class ArgumentTarget : ITarget, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("wheeldraft-arguments-").FullName;
    private readonly Dictionary<string, byte[]> _files;
    private readonly ArgumentMutator _mutator = new();

    /// <summary>With files that arguments may name.</summary>
    public ArgumentTarget(string corpus)
    {
        _files = new(StringComparer.Ordinal)
        {
            ["wheel.toml"] = File.ReadAllBytes(Path.Combine(corpus, "parameters", "small-windowed.toml")),
            ["lands.toml"] = File.ReadAllBytes(Path.Combine(corpus, "parameters", "small-lands.toml")),
            ["bad.toml"] = "title = 3\nspeed = \"4 bananas\"\n"u8.ToArray(),
            ["drawing.dxf"] = File.ReadAllBytes(Path.Combine(corpus, "drawings", "two-squares.dxf")),
        };
        Tidy();
    }

    public string Name => "arguments";

    public string Ending => ".txt";

    public byte[] Mutate(byte[] parent, byte[] donor, Chance chance) => ArgumentMutator.Bytes(ArgumentBounds.Keep(_mutator.Mutate(ArgumentMutator.List(parent), ArgumentMutator.List(donor), chance)));

    public Outcome Try(byte[] bytes, Depth depth)
    {
        IReadOnlyList<string> args = ArgumentBounds.Keep(ArgumentMutator.List(bytes));
        Stage.Now = "running " + (args.Count > 0 ? args[0] : "nothing");
        (int status, string output, string error) = Run(args);
        Promises.KeepNumbers("standard output", output, [.. bytes, .. "NaN Infinity"u8]);
        KeepStatus(status, error);
        if (depth.HasFlag(Depth.Twice) && Run(args) != (status, output, error))
        {
            throw new BrokenPromiseException("two runs of the same arguments differ", string.Join(' ', args));
        }

        return status is ExitStatus.WrongInput or ExitStatus.FileTrouble ? Outcome.Refused : Outcome.Judged;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private (int Status, string Output, string Error) Run(IReadOnlyList<string> args)
    {
        using StringWriter output = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
        using StringWriter error = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
        try
        {
            int status = ProgramRun.Run(args, new Surroundings { Out = output, Error = error, Folder = _folder }, [.. CommandList.All().Select(c => c is WatchCommand ? new Unwatched(c) : c)]);
            return (status, output.ToString(), error.ToString());
        }
        finally
        {
            Tidy();
        }
    }

    private static void KeepStatus(int status, string error)
    {
        if (error.Contains("fault of the program itself", StringComparison.Ordinal))
        {
            throw new BrokenPromiseException("internal: " + Promises.Shape(error[error.IndexOf("not of your file", StringComparison.Ordinal)..]), error);
        }

        if (status is not (ExitStatus.Done or ExitStatus.Findings or ExitStatus.WrongInput or ExitStatus.FileTrouble or ExitStatus.Interrupted))
        {
            throw new BrokenPromiseException($"exit status {status.ToString(CultureInfo.InvariantCulture)}", error);
        }

        if (status is ExitStatus.WrongInput or ExitStatus.FileTrouble && string.IsNullOrWhiteSpace(error))
        {
            throw new BrokenPromiseException("a refusal without a word", $"Status {status.ToString(CultureInfo.InvariantCulture)}, and standard error is empty.");
        }
    }

    /// <summary>The folder as it was: only the files that arguments may name.</summary>
    private void Tidy()
    {
        foreach (string folder in Directory.EnumerateDirectories(_folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        foreach (string file in Directory.EnumerateFiles(_folder).Where(f => !_files.ContainsKey(Path.GetFileName(f))))
        {
            File.Delete(file);
        }

        foreach ((string name, byte[] bytes) in _files)
        {
            FileInfo file = new(Path.Combine(_folder, name));
            if (!file.Exists || file.Length != bytes.Length)
            {
                File.WriteAllBytes(file.FullName, bytes);
            }
        }
    }

    /// <summary>The command that serves a page, without serving it.</summary>
    private sealed class Unwatched(ICommand watch) : ICommand
    {
        public Command Describe() => watch.Describe();

        public int Run(ParseResult parsed, CommandContext context) => ExitStatus.Interrupted;
    }
}
