using System.Security.Cryptography;
using System.Text.Json;

namespace WheelDraft.Cli;

/// <summary>The manifest of a folder: which parameter file it belongs to, and which of its files are the program's own, by content.</summary>
/// <remarks>Written last, so that a folder with a complete manifest holds one run's files; before the first file is put in place
/// a manifest that says "complete: false" stands there, so that a run that was killed is noticed by the next.</remarks>
/// <param name="Input">Name of the parameter file, without folders.</param>
/// <param name="InputSha256">Hash of its bytes.</param>
/// <param name="Settings">What else decides the design: the program's version and the switches that change figures.</param>
/// <param name="IsComplete">Whether the run that wrote it came to its end.</param>
/// <param name="Files">Hashes by relative name; during a run a file may have the one before and the one after.</param>
internal sealed record FolderRecord(string Input, string InputSha256, string Settings, bool IsComplete, IReadOnlyDictionary<string, IReadOnlyList<string>> Files)
{
    /// <summary>Its name in the folder.</summary>
    public const string FileName = "manifest.json";

    private const int Format = 1;

    /// <summary>The record of a folder; null when it has none or one that cannot be read, so that nothing in it is taken for the program's own.</summary>
    public static FolderRecord? Read(string folder)
    {
        string path = Path.Combine(folder, FileName);
        if (!File.Exists(path))
        {
            return null;
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(path));
            JsonElement root = document.RootElement;
            return root.GetProperty("format").GetInt32() != Format ? null : new(
                root.GetProperty("input").GetString()!,
                root.GetProperty("input_sha256").GetString()!,
                root.GetProperty("settings").GetString()!,
                root.GetProperty("complete").GetBoolean(),
                root.GetProperty("files").EnumerateObject().ToDictionary(
                    f => f.Name,
                    f => (IReadOnlyList<string>)[.. f.Value.EnumerateArray().Select(h => h.GetString()!)],
                    StringComparer.Ordinal));
        }
        catch (Exception trouble) when (trouble is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }

    /// <summary>As it stands in the folder.</summary>
    public byte[] Bytes()
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("format", Format);
            json.WriteString("input", Input);
            json.WriteString("input_sha256", InputSha256);
            json.WriteString("settings", Settings);
            json.WriteBoolean("complete", IsComplete);
            json.WriteStartObject("files");
            foreach ((string name, IReadOnlyList<string> hashes) in Files.OrderBy(f => f.Key, StringComparer.Ordinal))
            {
                json.WriteStartArray(name);
                foreach (string hash in hashes)
                {
                    json.WriteStringValue(hash);
                }

                json.WriteEndArray();
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        return [.. stream.ToArray(), (byte)'\n'];
    }

    /// <summary>Whether a file that is there is the program's own and as it was written.</summary>
    public bool IsOwn(string folder, string name) =>
        Files.TryGetValue(name, out IReadOnlyList<string>? hashes) && hashes.Contains(HashOf(PathIn(folder, name)), StringComparer.Ordinal);

    /// <summary>Hash of bytes, lower-case hexadecimal.</summary>
    public static string HashOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>Hash of a file; empty when it is not there.</summary>
    public static string HashOf(string path)
    {
        if (!File.Exists(path))
        {
            return "";
        }

        using FileStream file = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(file));
    }

    /// <summary>The path of a relative name.</summary>
    public static string PathIn(string folder, string name) => Path.Combine(folder, Path.Combine(name.Split('/')));
}
