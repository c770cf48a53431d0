using System.Security.Cryptography;
using System.Text;

namespace WheelDraft.Cli;

/// <summary>The watching page: the design's own page in a frame, or a sheet, with what is wrong, what was found, and links to the files.</summary>
internal static class WatchPage
{
    /// <summary>The page, UTF-8, and the Content-Security-Policy to send with it.</summary>
    public static (byte[] Bytes, string Policy) Write()
    {
        string style = Read("watch.css");
        string script = Read("watch.js");
        string policy = $"default-src 'none'; style-src '{Hash(style)}'; script-src '{Hash(script)}'; connect-src 'self'; frame-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
        string page = Read("watch.html")
            .Replace("{{style}}", style, StringComparison.Ordinal)
            .Replace("{{script}}", script, StringComparison.Ordinal);
        return (Encoding.UTF8.GetBytes(page), policy);
    }

    private static string Read(string name)
    {
        using Stream stream = typeof(WatchPage).Assembly.GetManifestResourceStream("Watch." + name)
            ?? throw new ArgumentException($"The watching page has no source file '{name}'.", nameof(name));
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    private static string Hash(string text) => $"sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}";
}
