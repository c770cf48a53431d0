using System.CommandLine;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>What the commands that write into a folder have in common: whose folder it is, and what was found in it.</summary>
internal static class FolderOptions
{
    /// <summary>The switch that lets a run replace files that belong to another.</summary>
    public static Option<bool> TakeOver() => new("--take-over")
    {
        Description = "Write into a folder that holds what was made from another parameter file, and over files that this program did not make",
    };

    /// <summary>The claim of a design on its folder.</summary>
    public static FolderClaim Claim(string named, Design design) => Claim(named, design.Brief);

    /// <summary>The claim of what is made of a brief on its folder.</summary>
    public static FolderClaim Claim(string named, Brief brief) => new(Path.GetFileName(named), brief.InputSha256, Settings(brief));

    /// <summary>Says what was deleted, what is foreign and that an earlier run was cut off.</summary>
    public static void Say(FolderOutcome outcome, CommandContext context)
    {
        if (outcome.WasCutOff)
        {
            context.Say("An earlier run into this folder was cut off while it put its files in place; its set is replaced by this one.");
        }

        if (outcome.Deleted.Count > 0)
        {
            context.Say($"Deleted, from an earlier run: {Listed(outcome.Deleted)}.");
        }

        if (outcome.Foreign.Count > 0)
        {
            context.Say($"Left as they are, because this program did not write them or they were changed since: {Listed(outcome.Foreign)}. They are not part of this design.");
        }
    }

    /// <summary>Names in a sentence; the pictures of a film by their number.</summary>
    public static string Listed(IReadOnlyList<string> names)
    {
        const int most = 12;
        return names.Count <= most
            ? string.Join(", ", names)
            : $"{string.Join(", ", names.Take(most))} and {Wording.Number(names.Count - most, 0)} more";
    }

    private static string Settings(Brief brief) => $"WheelDraft {ProgramVersion.Short}{(brief.Spacing.VoltagesUnderFaults ? ", under faults" : "")}";
}
