using System.Text;

namespace WheelDraft.Formats;

/// <summary>Text as bytes, without ever being one long string.</summary>
internal static class Utf8Text
{
    /// <summary>A text in UTF-8, without a mark in front.</summary>
    public static byte[] Of(StringBuilder text)
    {
        int most = 0;
        foreach (ReadOnlyMemory<char> piece in text.GetChunks())
        {
            most += Encoding.UTF8.GetByteCount(piece.Span);
        }

        // A pair of surrogates may lie across two pieces: the encoder keeps the first for the second, which takes no more than both alone.
        byte[] bytes = new byte[most];
        int at = 0;
        Encoder encoder = Encoding.UTF8.GetEncoder();
        foreach (ReadOnlyMemory<char> piece in text.GetChunks())
        {
            at += encoder.GetBytes(piece.Span, bytes.AsSpan(at), flush: false);
        }

        at += encoder.GetBytes([], bytes.AsSpan(at), flush: true);
        return at == most ? bytes : bytes[..at];
    }
}
