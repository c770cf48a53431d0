using System.Text;
using Microsoft.Win32.SafeHandles;

namespace WheelDraft.Cli;

/// <summary>The standard output and error of this process, as writers that never throw: UTF-8 without a byte order mark, LF, whatever the machine's locale.</summary>
/// <remarks>Made before anything else opens a file. Where a caller has closed one of the first three descriptors, its number is held by the
/// null device until the end: otherwise the next file that is opened gets the number, and words for a person land in it.</remarks>
internal sealed class ConsoleStreams : IDisposable
{
    private readonly Dictionary<nint, SafeFileHandle> _held = HoldClosedNumbers();

    /// <summary>Opens both.</summary>
    public ConsoleStreams()
    {
        Output = Opened(1, Console.OpenStandardOutput);
        Error = Opened(2, Console.OpenStandardError);
        Out = Writer(Output, flushesEachLine: false);
        Messages = Writer(Error, flushesEachLine: true);
    }

    /// <summary>Standard output, and what went wrong with it.</summary>
    public StandardStream Output { get; }

    /// <summary>Standard error, and what went wrong with it.</summary>
    public StandardStream Error { get; }

    /// <summary>Writes on standard output, for results.</summary>
    public TextWriter Out { get; }

    /// <summary>Writes on standard error; each line is seen at once.</summary>
    public TextWriter Messages { get; }

    /// <inheritdoc/>
    public void Dispose()
    {
        Out.Dispose();
        Messages.Dispose();
        foreach (SafeFileHandle handle in _held.Values)
        {
            handle.Dispose();
        }
    }

    private StandardStream Opened(nint number, Func<Stream> open)
    {
        if (_held.ContainsKey(number))
        {
            return new StandardStream(null);
        }

        try
        {
            return new StandardStream(open());
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return new StandardStream(null);
        }
    }

    private static StreamWriter Writer(Stream stream, bool flushesEachLine) =>
        new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 4096) { NewLine = "\n", AutoFlush = flushesEachLine };

    // Systems like Unix give a newly opened file the least number that is free.
    private static Dictionary<nint, SafeFileHandle> HoldClosedNumbers()
    {
        const int lastStandard = 2;
        Dictionary<nint, SafeFileHandle> held = [];
        while (!OperatingSystem.IsWindows() && File.Exists("/dev/null"))
        {
            SafeFileHandle handle = File.OpenHandle("/dev/null", FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            nint number = handle.DangerousGetHandle();
            if (number > lastStandard)
            {
                handle.Dispose();
                break;
            }

            held.Add(number, handle);
        }

        return held;
    }
}

/// <summary>A standard stream that takes everything and remembers what it could not pass on, so that no command dies of its own words.</summary>
/// <param name="under">The stream of the system; null when the caller has closed it.</param>
internal sealed class StandardStream(Stream? under) : Stream
{
    /// <summary>Whether the caller closed it before the program began, or gave something that cannot be written at all.</summary>
    public bool IsClosed { get; private set; } = under is null;

    /// <summary>Why something was lost, in words; null as long as nothing was. A reader who has gone away has all that it wanted and loses nothing.</summary>
    public string? Lost { get; private set; }

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException("A standard stream has no length.");

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException("A standard stream has no position.");
        set => throw new NotSupportedException("A standard stream has no position.");
    }

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (buffer.IsEmpty || Lost is not null)
        {
            return;
        }

        if (under is null)
        {
            Lost = "it is closed";
            return;
        }

        try
        {
            under.Write(buffer);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or ObjectDisposedException)
        {
            // "Bad file descriptor" is told as a denial of access.
            IsClosed |= trouble is UnauthorizedAccessException;
            Lost = IsClosed ? "it is closed" : trouble.Message;
        }
    }

    /// <inheritdoc/>
    public override void Flush()
    {
        // Nothing is kept back here.
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException("A standard stream of results is not read.");

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException("A standard stream has no position.");

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException("A standard stream has no length.");

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            under?.Dispose();
        }

        base.Dispose(disposing);
    }
}
