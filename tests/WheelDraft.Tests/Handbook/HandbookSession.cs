using System.Globalization;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Handbook;

/// <summary>A page of the guide read as a person would follow it: commands in their order in one folder, changes to files as shown, outputs held against what stands there.</summary>
/// <param name="file">The page.</param>
/// <param name="renew">Whether outputs and pictures are written into the page instead.</param>
internal sealed class HandbookSession(string file, bool renew)
{
    private const string Program = "wheeldraft ";

    private readonly List<string> _page = [.. File.ReadAllLines(file)];
    private int _added;

    /// <summary>Follows the page.</summary>
    /// <param name="written">Told every file that a command wrote.</param>
    public void Follow(Action<string>? written = null)
    {
        IReadOnlyList<ShownBlock> blocks = ShownBlock.Of([.. _page]);
        string[] words = [.. blocks.Where(b => IsCommands(b)).SelectMany(b => b.Lines).SelectMany(l => ShownCommands.Words(l.Split(" > ")[0][Program.Length..]))];
        using CliRun run = ShownCommands.Folder(["learn", .. words.Where(w => !MadeOnThePage(blocks, w))]);
        foreach ((ShownBlock block, int i) in blocks.Select((b, i) => (b, i)))
        {
            Step(run, block, i + 1 < blocks.Count ? blocks[i + 1] : null);
        }

        foreach (string path in Directory.EnumerateFiles(run.Folder, "*", SearchOption.AllDirectories))
        {
            written?.Invoke(Path.GetRelativePath(run.Folder, path).Replace('\\', '/'));
        }

        Pictures(run);
        if (renew)
        {
            File.WriteAllText(file, string.Concat(_page.Select(l => l + "\n")));
        }
    }

    private static bool IsCommands(ShownBlock block) => block.Info is "sh" || block.Info.StartsWith("sh ", StringComparison.Ordinal);

    // A file that a command of the page writes, or that the page shows, is not there before.
    private static bool MadeOnThePage(IReadOnlyList<ShownBlock> blocks, string word) => word.StartsWith("out/", StringComparison.Ordinal)
        || blocks.Any(b => b.Info.EndsWith(" " + word, StringComparison.Ordinal) || (IsCommands(b) && b.Lines.Any(l => l.StartsWith($"wheeldraft new {word} ", StringComparison.Ordinal))));

    private void Step(CliRun run, ShownBlock block, ShownBlock? next)
    {
        if (IsCommands(block))
        {
            string said = string.Concat(block.Lines.Select(l => Said(run, l, block.Info)));
            if (next?.Info is "text")
            {
                Compare(next, said);
            }
        }
        else if (block.Info.StartsWith("csv ", StringComparison.Ordinal))
        {
            File.WriteAllText(run.PathOf(block.Info[4..]), block.Text);
        }
        else if (block.Info.EndsWith(": before", StringComparison.Ordinal))
        {
            Change(run, block, next);
        }
    }

    // The next block, ": after", takes the place of these lines.
    private static void Change(CliRun run, ShownBlock block, ShownBlock? next)
    {
        string name = block.Info.Split(' ')[1].TrimEnd(':');
        Assert.Equal($"toml {name}: after", next?.Info);
        string text = string.Join('\n', File.ReadAllLines(run.PathOf(name)).Select(Bare)) + "\n";
        Assert.Equal(2, text.Split(block.Text).Length);
        File.WriteAllText(run.PathOf(name), text.Replace(block.Text, next!.Text, StringComparison.Ordinal));
    }

    // A line of a starter without the words behind it.
    private static string Bare(string line) => line.Split("  #")[0].TrimEnd();

    private static string Said(CliRun run, string command, string info)
    {
        Assert.StartsWith(Program, command, StringComparison.Ordinal);
        string[] parts = command.Split(" > ");
        int wanted = info.StartsWith("sh exits-", StringComparison.Ordinal) ? int.Parse(info["sh exits-".Length..], CultureInfo.InvariantCulture) : 0;
        int status = run.Run(ShownCommands.Words(parts[0][Program.Length..]));
        Assert.True(status == wanted, FormattableString.Invariant($"{command}: exit status {status}: {run.Error}{run.Out}"));
        if (parts.Length == 2)
        {
            File.WriteAllText(run.PathOf(parts[1]), run.Out);
            return run.Error;
        }

        return run.Error + run.Out;
    }

    private void Compare(ShownBlock shown, string said)
    {
        string[] lines = said.TrimEnd('\n').Split('\n');
        if (ShownBlock.IsShown(shown.Lines, lines))
        {
            return;
        }

        Assert.True(renew && !shown.Lines.Any(l => l.Contains('…', StringComparison.Ordinal)), FormattableString.Invariant($"{Path.GetFileName(file)}, line {shown.From + 1}: the output is\n{said}"));
        _page.RemoveRange(shown.From + _added, shown.Lines.Length);
        _page.InsertRange(shown.From + _added, lines);
        _added += lines.Length - shown.Lines.Length;
    }

    // "<!-- pictures/first-wheel.svg is out/first/draw/wheel.svg -->"
    private void Pictures(CliRun run)
    {
        foreach (string[] words in _page.Where(l => l.StartsWith("<!-- pictures/", StringComparison.Ordinal)).Select(l => l.Split(' ')))
        {
            (string kept, string made) = (Path.Combine(Path.GetDirectoryName(file)!, words[1]), run.PathOf(words[3]));
            if (renew)
            {
                File.Copy(made, kept, overwrite: true);
            }

            Assert.True(string.Equals(File.ReadAllText(made), File.ReadAllText(kept), StringComparison.Ordinal), $"{words[1]} is not as the program draws it; WHEELDRAFT_RENEW_GUIDE=1 writes it again");
        }
    }
}
