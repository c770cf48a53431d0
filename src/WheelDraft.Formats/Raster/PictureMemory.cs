using System.Runtime.InteropServices;

namespace WheelDraft.Formats.Raster;

/// <summary>Memory that pictures are painted in, and their files written to, one after the other: handing it out anew for each costs as much as painting the ground.</summary>
/// <param name="leastBytes">As much as the largest of them is known to take.</param>
internal sealed class PictureMemory(long leastBytes) : IDisposable
{
    private readonly MemoryStream _file = new();
    private nint _bytes;
    private long _count;

    /// <summary>At least so many bytes, whatever they hold; good until the next call.</summary>
    /// <exception cref="OutOfMemoryException">There are not so many.</exception>
    public nint Of(long count)
    {
        if (count > _count)
        {
            Dispose();
            _count = Math.Max(count, leastBytes);
            _bytes = Marshal.AllocHGlobal((nint)_count);
        }

        return _bytes;
    }

    /// <summary>An empty stream to write a file to; good until the next call.</summary>
    public MemoryStream File()
    {
        _file.SetLength(0);
        return _file;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Marshal.FreeHGlobal(_bytes);
        (_bytes, _count) = (0, 0);
    }
}
