using SharpFuzz;

namespace WheelDraft.Fuzz;

/// <summary>A copy of this program in which the assemblies under test mark the branches that they take.</summary>
internal static class Instruments
{
    // What reads and judges. The plane's geometry is left as it is: its loops are the hottest, and every way into it is seen from above.
    private static readonly string[] Marked = ["WheelDraft.Formats.dll", "WheelDraft.Engineering.dll", "wheeldraft.dll"];

    /// <summary>Makes the copy below a folder.</summary>
    /// <returns>The copy of this program's own assembly.</returns>
    public static string CopyTo(string folder)
    {
        string from = AppContext.BaseDirectory;
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string to = Path.Combine(folder, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to, overwrite: true);
        }

        foreach (string assembly in Marked)
        {
            _ = Fuzzer.Instrument(Path.Combine(folder, assembly), static _ => true, Options.Value);
        }

        return Path.Combine(folder, "WheelDraft.Fuzz.dll");
    }
}
