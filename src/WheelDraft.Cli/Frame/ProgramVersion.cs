using System.Reflection;

namespace WheelDraft.Cli;

/// <summary>The program's version, which stands in Directory.Build.props and nowhere else.</summary>
internal static class ProgramVersion
{
    /// <summary>Three numbers: 0.1.0.</summary>
    public static string Short { get; } = Assembly.GetExecutingAssembly().GetName().Version!.ToString(3);
}
