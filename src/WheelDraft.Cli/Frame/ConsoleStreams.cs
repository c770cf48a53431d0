using System.Text;

namespace WheelDraft.Cli;

/// <summary>Writers on the standard streams: UTF-8 without a byte order mark, LF, whatever the machine's locale.</summary>
internal static class ConsoleStreams
{
    /// <summary>A writer on a standard stream.</summary>
    /// <param name="stream">The stream.</param>
    /// <param name="flushesEachLine">Whether each line is seen at once, as messages must be.</param>
    public static TextWriter Open(Stream stream, bool flushesEachLine = false) =>
        new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 4096) { NewLine = "\n", AutoFlush = flushesEachLine };
}
