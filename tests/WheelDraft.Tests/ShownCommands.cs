using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Tests.Bench;
using WheelDraft.Tests.Cli;
using WheelDraft.Tests.Dxf.Reading;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Commands as README and guide show them, made ready to be run.</summary>
internal static class ShownCommands
{
    /// <summary>A folder with the files that the words name: demos, a starter file, a drawing with two nets on layers OUTLINE and SCREW.</summary>
    public static CliRun Folder(string[] words)
    {
        CliRun run = new();
        foreach (string demo in words.Where(w => w.StartsWith("parameters/", StringComparison.Ordinal)))
        {
            Directory.CreateDirectory(run.PathOf("parameters"));
            File.Copy(Demos.PathOf(Path.GetFileNameWithoutExtension(demo)), run.PathOf(demo));
        }

        if (words.Contains("my-wheel.toml", StringComparer.Ordinal) && words[0] is not "new")
        {
            Assert.Equal(0, run.Run("new", "my-wheel.toml", "--like", "damp-mains"));
        }

        if (words.Contains("shortest.toml", StringComparer.Ordinal) && words[0] is not "new")
        {
            Assert.Equal(0, run.Run("new", "shortest.toml", "--like", "shortest"));
        }

        if (words.Any(w => w.StartsWith("out/my-wheel/", StringComparison.Ordinal)))
        {
            Assert.Equal(0, run.Run("make", "my-wheel.toml", "--only", "cut"));
        }

        if (words.Contains("bench.csv", StringComparer.Ordinal))
        {
            // The log of a wheel made from that starter file.
            Assert.Equal(0, run.Run("new", "logged.toml", "--like", "damp-mains"));
            Design design = Design.Of(ParameterReader.Read(File.ReadAllBytes(run.PathOf("logged.toml"))).Brief!);
            File.WriteAllBytes(run.PathOf("bench.csv"), new SyntheticLog(LoggedProgramme.Of(design)) { Turns = 3.2, DriftShare = 0.001 }.Csv());
        }

        if (words.Contains("drawing.dxf", StringComparer.Ordinal))
        {
            File.WriteAllBytes(run.PathOf("drawing.dxf"), HandWritten.File(HandWritten.Square(0, 0, 20, "OUTLINE") + "0 CIRCLE|8 WINDOW|10 10|20 10|40 8|0 CIRCLE|8 SCREW|10 10|20 10|40 2"));
        }

        return run;
    }

    /// <summary>Words as a shell takes them: double quotes hold blanks together.</summary>
    public static string[] Words(string command)
    {
        List<string> words = [];
        StringBuilder word = new();
        bool quoted = false;
        foreach (char c in command + " ")
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ' ' && !quoted)
            {
                words.Add(word.ToString());
                word.Clear();
            }
            else
            {
                word.Append(c);
            }
        }

        Assert.False(quoted, command);
        return [.. words.Where(w => w.Length > 0)];
    }
}
