using System.Runtime.InteropServices;
using SharpFuzz.Common;

namespace WheelDraft.Fuzz;

/// <summary>Which branches of the program a case took, as the instrumented assemblies mark them.</summary>
internal static unsafe class Branches
{
    // The size that the instrumented code counts on.
    private const int Size = 1 << 16;

    private static readonly byte* Map = (byte*)NativeMemory.AllocZeroed(Size);
    private static readonly byte[] Seen = new byte[Size];

    /// <summary>How many different ones were taken so far.</summary>
    public static int Count { get; private set; }

    /// <summary>Gives the instrumented code its map. To be called before anything of the program runs.</summary>
    public static void Open() => Trace.SharedMem = Map;

    /// <summary>Takes up what an earlier worker of the same run saw.</summary>
    public static void Load(string path)
    {
        if (File.Exists(path))
        {
            File.ReadAllBytes(path).CopyTo(Seen, 0);
            Count = Seen.Count(s => s != 0);
        }
    }

    /// <summary>Leaves what was seen to a later worker.</summary>
    public static void Save(string path) => File.WriteAllBytes(path, Seen);

    /// <summary>Forgets the last case.</summary>
    public static void Clear()
    {
        new Span<byte>(Map, Size).Clear();
        Trace.PrevLocation = 0;
    }

    /// <summary>Takes note of what the last case took; how many of it are new.</summary>
    public static int TakeNew()
    {
        int fresh = 0;
        ReadOnlySpan<byte> map = new(Map, Size);
        for (int at = map.IndexOfAnyExcept((byte)0); at >= 0;)
        {
            if (Seen[at] == 0)
            {
                Seen[at] = 1;
                fresh++;
            }

            int next = map[(at + 1)..].IndexOfAnyExcept((byte)0);
            at = next < 0 ? -1 : at + 1 + next;
        }

        Count += fresh;
        return fresh;
    }
}
