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
        new("damp-mains", "230 V, 50 Hz, damp: a mist valve with an adjusting screw, a self-holding motor, a lid interlock"),
        new("inches-120v", "120 V, 60 Hz, drawn in inches: fan and heater, turn time from poles and gear, etched"),
        new("folded-strips", "24 V, 50 Hz, a turntable: strips whose contacts are folds, for those who cannot rivet"),
        new("low-voltage", "24 V, 50 Hz, extra-low voltage: a model cut by hand, one on-period through home"),
    ];
}
