namespace WheelDraft.Tests.Raster;

/// <summary>A picture kept in little memory: most of a drawing is paper, and stretches of one colour are kept as their length.</summary>
internal sealed class PackedPicture
{
    // A shorter stretch takes as much room as its pixels.
    private const int ShortestStretch = 8;

    private readonly int _width;
    private readonly int _height;

    // By turns: stretches of single pixels, and one colour that follows each so many times.
    private readonly List<(int Singles, int Times)> _stretches = [];
    private readonly List<uint> _pixels = [];

    internal PackedPicture(Picture picture)
    {
        _width = picture.Width;
        _height = picture.Height;
        ReadOnlySpan<uint> left = picture.Pixels;
        int singles = 0;
        while (singles < left.Length)
        {
            int differs = left[singles..].IndexOfAnyExcept(left[singles]);
            int times = differs < 0 ? left.Length - singles : differs;
            if (times < ShortestStretch)
            {
                singles += times;
                continue;
            }

            Add(left[..(singles + 1)], times);
            left = left[(singles + times)..];
            singles = 0;
        }

        Add(left, left.IsEmpty ? 0 : 1);
    }

    /// <summary>The picture again, every pixel.</summary>
    internal Picture Unpacked() => Picture.Filled(_width, _height, Fill);

    /// <summary>Pixels, the last of which follows so many times.</summary>
    private void Add(ReadOnlySpan<uint> pixels, int times)
    {
        _stretches.Add((Math.Max(pixels.Length - 1, 0), times));
        _pixels.AddRange(pixels);
    }

    private void Fill(Span<uint> pixels)
    {
        ReadOnlySpan<uint> kept = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_pixels);
        foreach ((int singles, int times) in _stretches)
        {
            kept[..singles].CopyTo(pixels);
            if (times > 0)
            {
                pixels.Slice(singles, times).Fill(kept[singles]);
                kept = kept[(singles + 1)..];
            }

            pixels = pixels[(singles + times)..];
        }
    }
}
