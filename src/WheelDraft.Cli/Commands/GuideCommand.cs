using System.CommandLine;
using System.Security.Cryptography;
using WheelDraft.Engineering;
using WheelDraft.Formats.Handbook;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft guide</c>: the guide as a site of plain files, for those who have only the program.</summary>
internal sealed class GuideCommand : ICommand
{
    private readonly Option<string> _out = new("--out", "-o") { HelpName = "DIR", DefaultValueFactory = _ => "wheeldraft-guide", Description = "Folder to write into" };
    private readonly Option<bool> _takeOver = FolderOptions.TakeOver();

    /// <inheritdoc/>
    public Command Describe() => new("guide", "Writes the guide as web pages that are opened from disk: first wheel, old wheel, bench, every key, every code") { _out, _takeOver };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string folder = parsed.GetRequiredValue(_out);
        IReadOnlyList<(string Name, byte[] Bytes)> pages = HandbookSite.Files($"Written by WheelDraft {ProgramVersion.Short}.");
        using FileSet files = new(context.PathOf(folder), context.Stop);
        using IncrementalHash content = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach ((string name, byte[] bytes) in pages)
        {
            files.Add(name, bytes);
            content.AppendData(bytes);
        }

        FolderClaim claim = new("the guide", Convert.ToHexStringLower(content.GetHashAndReset()), $"WheelDraft {ProgramVersion.Short}") { TakesOver = parsed.GetValue(_takeOver) };
        FolderOptions.Say(files.Commit(claim), context);
        context.Say($"wrote {Wording.Number(pages.Count, 0)} pages; open {Path.Combine(folder, "index.html")}");
        return ExitStatus.Done;
    }
}
