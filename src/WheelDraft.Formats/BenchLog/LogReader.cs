using WheelDraft.Engineering;

namespace WheelDraft.Formats.BenchLog;

/// <summary>Reads a bench log from a stream, in one pass at constant memory.</summary>
internal static class LogReader
{
    // Large enough that reading costs little beside looking at the bytes, small enough to stay in a processor's cache.
    private const int BlockBytes = 1 << 18;

    // A longer line is no row of a table.
    private const int LongestLine = 1 << 16;

    /// <summary>Reads a log.</summary>
    /// <param name="stream">The file, from its beginning.</param>
    /// <param name="options">What the person says about it.</param>
    /// <param name="progress">Told how many bytes were read, now and then; null for nobody.</param>
    /// <param name="stop">Ends the reading.</param>
    /// <exception cref="DesignRefusedException">It cannot be read: every reason, with its line.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static LogReading Read(Stream stream, LogOptions options, Action<long>? progress = null, CancellationToken stop = default)
    {
        byte[] buffer = new byte[BlockBytes + LongestLine];
        int held = 0;
        long all = 0;
        LogScan? scan = null;
        while (true)
        {
            stop.ThrowIfCancellationRequested();
            int read = stream.ReadAtLeast(buffer.AsSpan(held, BlockBytes), BlockBytes, throwOnEndOfStream: false);
            held += read;
            all += read;
            bool last = read < BlockBytes;
            Span<byte> bytes = buffer.AsSpan(0, held);
            int end = last ? held : bytes.LastIndexOf((byte)'\n') + 1;
            if (scan is null)
            {
                scan = new(LogLayout.Of(bytes[..Math.Min(end, LongestLine)], options), options);
                if (bytes is [0xef, 0xbb, 0xbf, ..])
                {
                    bytes[..3].Fill((byte)' ');
                }
            }

            if (held - end > LongestLine)
            {
                throw new DesignRefusedException("log.line", "A line is longer than 64 KiB; this is no bench log.");
            }

            scan.Lines(bytes[..end]);
            bytes[end..].CopyTo(buffer);
            held -= end;
            progress?.Invoke(all);
            if (last)
            {
                return scan.Finish();
            }
        }
    }
}
