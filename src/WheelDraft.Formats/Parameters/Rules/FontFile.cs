using System.Buffers.Binary;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>The font that a file names: found beside it, and a font.</summary>
internal static class FontFile
{
    /// <summary>The font, or null where none is named or it is no use: then the fault is told at its key.</summary>
    /// <param name="root">The file.</param>
    /// <param name="beside">Gives the bytes of a file by its path from the parameter file's folder, null where it cannot be read; null for a reader without a folder.</param>
    /// <param name="diagnostics">Told what is wrong.</param>
    public static FontBrief? Of(CheckedTable root, Func<string, byte[]?>? beside, DiagnosticList diagnostics)
    {
        if (root.Table("drawing_office") is not { } office || office.Text("font") is not { } path)
        {
            return null;
        }

        if (beside is null)
        {
            return new(path, ReadOnlyMemory<byte>.Empty);
        }

        TextPlace place = office.PlaceOf("font");
        if (beside(path) is not { } bytes)
        {
            diagnostics.Add(place, $"the font file \"{path}\" cannot be read", "give its path from this file's folder, or leave font out");
            return null;
        }

        if (!IsFont(bytes))
        {
            diagnostics.Add(place, $"\"{path}\" is not a font", "name a TrueType or OpenType file (.ttf, .otf, .ttc)");
            return null;
        }

        return new(path, bytes);
    }

    /// <summary>Whether bytes begin as a font does and have the tables that drawing needs (OpenType specification, font file).</summary>
    private static bool IsFont(ReadOnlySpan<byte> bytes)
    {
        const int directory = 12;
        const int entry = 16;
        if (bytes.Length < directory)
        {
            return false;
        }

        if (bytes.StartsWith("ttcf"u8))
        {
            return true;
        }

        bool known = bytes.StartsWith((ReadOnlySpan<byte>)[0, 1, 0, 0]) || bytes.StartsWith("OTTO"u8) || bytes.StartsWith("true"u8);
        int tables = BinaryPrimitives.ReadUInt16BigEndian(bytes[4..]);
        if (!known || bytes.Length < directory + (tables * entry))
        {
            return false;
        }

        HashSet<string> names = new(StringComparer.Ordinal);
        for (int i = 0; i < tables; i++)
        {
            names.Add(System.Text.Encoding.Latin1.GetString(bytes.Slice(directory + (i * entry), 4)));
        }

        return names.IsSupersetOf(["cmap", "head", "hmtx"]) && (names.Contains("glyf") || names.Contains("CFF ") || names.Contains("CFF2"));
    }
}
