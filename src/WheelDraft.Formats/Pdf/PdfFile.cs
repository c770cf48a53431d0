using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace WheelDraft.Formats.Pdf;

/// <summary>The objects of a PDF (ISO 32000-1) and how they become a file: numbered in the order in which they are reserved, no dates, no ids.</summary>
internal sealed class PdfFile
{
    private readonly List<byte[]?> _objects = [];

    /// <summary>A number for an object that is written later.</summary>
    public int Reserve()
    {
        _objects.Add(null);
        return _objects.Count;
    }

    /// <summary>Writes an object.</summary>
    public void Set(int number, string content) => _objects[number - 1] = Encoding.Latin1.GetBytes(content);

    /// <summary>Writes an object under a number of its own.</summary>
    public int Add(string content)
    {
        int number = Reserve();
        Set(number, content);
        return number;
    }

    /// <summary>Writes a stream under a number of its own, deflated where that makes it shorter.</summary>
    public int AddStream(string content, string entries = "")
    {
        byte[] plain = Encoding.Latin1.GetBytes(content);
        byte[] deflated = Deflated(plain);
        bool shorter = deflated.Length + DeflateWords.Length < plain.Length;
        return AddStream(shorter ? deflated : plain, entries + (shorter ? DeflateWords : ""));
    }

    /// <summary>Writes bytes as they are as a stream under a number of its own.</summary>
    public int AddStream(byte[] bytes, string entries)
    {
        int number = Reserve();
        _objects[number - 1] =
        [
            .. Encoding.Latin1.GetBytes(string.Create(CultureInfo.InvariantCulture, $"<</Length {bytes.Length}{entries}>>\nstream\n")), .. bytes, .. "\nendstream"u8,
        ];
        return number;
    }

    /// <summary>The whole file.</summary>
    /// <param name="catalog">Number of the catalogue.</param>
    /// <param name="info">Number of the information dictionary.</param>
    public byte[] Bytes(int catalog, int info)
    {
        using MemoryStream file = new();
        void Say(string words) => file.Write(Encoding.Latin1.GetBytes(words));

        // Four bytes above 127 tell programs that carry the file that it is not text (ISO 32000-1, 7.5.2).
        Say("%PDF-1.7\n%\u00E2\u00E3\u00CF\u00D3\n");
        List<long> places = [];
        for (int i = 0; i < _objects.Count; i++)
        {
            places.Add(file.Position);
            Say(string.Create(CultureInfo.InvariantCulture, $"{i + 1} 0 obj\n"));
            file.Write(_objects[i] ?? throw new InvalidOperationException("An object of the PDF was reserved and never written."));
            Say("\nendobj\n");
        }

        long table = file.Position;
        Say(string.Create(CultureInfo.InvariantCulture, $"xref\n0 {places.Count + 1}\n0000000000 65535 f \n"));
        foreach (long place in places)
        {
            Say(string.Create(CultureInfo.InvariantCulture, $"{place:D10} 00000 n \n"));
        }

        Say(string.Create(CultureInfo.InvariantCulture, $"trailer\n<</Size {places.Count + 1}/Root {catalog} 0 R/Info {info} 0 R>>\nstartxref\n{table}\n%%EOF\n"));
        return file.ToArray();
    }

    /// <summary>A text as a string object: as it is where it is plain, else as UTF-16 with its mark.</summary>
    public static string Text(string text) => text.All(c => c is >= ' ' and <= '~')
        ? $"({text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("(", "\\(", StringComparison.Ordinal).Replace(")", "\\)", StringComparison.Ordinal)})"
        : $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text))}>";

    /// <summary>A reference to an object.</summary>
    public static string To(int number) => string.Create(CultureInfo.InvariantCulture, $"{number} 0 R");

    private const string DeflateWords = "/Filter/FlateDecode";

    private static byte[] Deflated(byte[] plain)
    {
        using MemoryStream stream = new();
        using (ZLibStream zlib = new(stream, CompressionLevel.Optimal))
        {
            zlib.Write(plain);
        }

        return stream.ToArray();
    }
}
