using System.Reflection;

namespace WheelDraft.Cli;

/// <summary>A starter parameter file.</summary>
/// <param name="Name">Name on the command line, and of the file it is kept in.</param>
/// <param name="About">What it is, in a line.</param>
internal sealed record Template(string Name, string About)
{
    /// <summary>The file's bytes: UTF-8, LF.</summary>
    public byte[] Bytes()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"{Name}.toml")
            ?? throw new InvalidOperationException($"The template {Name} is not in the program.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}

/// <summary>The starter files that the program carries.</summary>
internal static class TemplateShelf
{
    /// <summary>All of them; the first is taken when none is named.</summary>
    public static IReadOnlyList<Template> All =>
    [
        new("damp-mains", "for who builds a timer on the mains in a damp place: 230 V, 50 Hz, a mist valve with an adjusting screw, a motor that holds itself, a lid interlock, riveted strips"),
        new("inches-120v", "for who works in inches: 120 V, 60 Hz, fan and heater, turn time from poles and gear, etched"),
        new("folded-strips", "for who cannot rivet: 24 V, 50 Hz, a turntable whose strips touch with folds of their own"),
        new("shortest", "for who wants to write little: 230 V, 50 Hz, a complete timer with strips in some twenty lines, the rest chosen by the program"),
        new("old-wheel", "for who copies a worn wheel: 24 V, 50 Hz, every radius and the edges of the copper as measured"),
        new("low-voltage", "for a first try or a school: 24 V, 50 Hz, a model cut by hand, one on-period through home"),
    ];
}
