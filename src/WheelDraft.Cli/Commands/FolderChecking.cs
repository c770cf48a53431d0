using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Whether a folder holds one run's files, whole and as they were written.</summary>
internal static class FolderChecking
{
    /// <summary>Says what is missing, changed, foreign or between two runs.</summary>
    /// <returns>Whether every file of the manifest is there as it was written, no run was cut off, and no other file lies among them.</returns>
    /// <exception cref="DesignRefusedException">The folder has no manifest that can be read.</exception>
    public static bool Check(string named, CommandContext context)
    {
        string folder = context.PathOf(named);
        FolderRecord record = FolderRecord.Read(folder) ?? throw new DesignRefusedException(
            "folder.manifest",
            $"'{named}' has no {FolderRecord.FileName} that can be read, so nothing says which files belong together; give a folder that make has written, or a parameter file.");
        IReadOnlyList<string> missing = FolderLook.Missing(folder, record), changed = FolderLook.Changed(folder, record);
        IReadOnlyList<string> foreign = [.. FolderLook.Foreign(folder, record).Except(changed, StringComparer.Ordinal)];
        bool isWhole = record.IsComplete && missing.Count + changed.Count + foreign.Count == 0;
        if (context.Json)
        {
            context.WriteJson(json =>
            {
                json.WriteStartObject();
                json.WriteString("folder", named);
                json.WriteString("input", record.Input);
                json.WriteString("input_sha256", record.InputSha256);
                json.WriteBoolean("complete", record.IsComplete);
                json.WriteStrings("missing", missing);
                json.WriteStrings("changed", changed);
                json.WriteStrings("foreign", foreign);
                json.WriteStrings("leftover", FolderLook.Leftover(folder));
                json.WriteEndObject();
            });
            return isWhole;
        }

        IEnumerable<string> leftover = FolderLook.Leftover(folder).Select(n => $"  {n}: temporary, of a run that was cut off or is at work now; the next run takes it away");
        foreach (string line in Lines(named, record, (missing, changed, foreign)).Concat(leftover))
        {
            context.Out.WriteLine(line);
        }

        return isWhole;
    }

    private static IEnumerable<string> Lines(string named, FolderRecord record, (IReadOnlyList<string> Missing, IReadOnlyList<string> Changed, IReadOnlyList<string> Foreign) found)
    {
        yield return $"{named}: {Wording.Number(record.Files.Count, 0)} files made from {record.Input} (input {record.InputSha256[..Math.Min(8, record.InputSha256.Length)]})";
        if (!record.IsComplete)
        {
            yield return "  a run was cut off while it put its files in place: two designs may be mixed here; run make again";
        }

        foreach ((string word, IReadOnlyList<string> names) in new[] { ("missing", found.Missing), ("changed since it was written", found.Changed), ("not made by this program", found.Foreign) })
        {
            foreach (string name in names)
            {
                yield return $"  {name}: {word}";
            }
        }

        if (record.IsComplete && found.Missing.Count + found.Changed.Count + found.Foreign.Count == 0)
        {
            yield return "  every file is there as it was written; whether the design misses stands in its report";
        }
    }
}
