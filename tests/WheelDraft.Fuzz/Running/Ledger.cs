using System.IO.MemoryMappedFiles;

namespace WheelDraft.Fuzz;

/// <summary>What a worker counts and the case at work, in a file that outlives the worker's sudden end.</summary>
internal sealed class Ledger : IDisposable
{
    /// <summary>The largest case, bytes.</summary>
    public const int MostBytes = 1 << 20;

    private const int Head = 1024;

    private readonly MemoryMappedFile _file;
    private readonly MemoryMappedViewAccessor _view;

    public Ledger(string path)
    {
        _file = MemoryMappedFile.CreateFromFile(path, FileMode.OpenOrCreate, null, Head + MostBytes);
        _view = _file.CreateViewAccessor();
    }

    /// <summary>One of the counts.</summary>
    public long this[Count count]
    {
        get => _view.ReadInt64((int)count * sizeof(long));
        set => _view.Write((int)count * sizeof(long), value);
    }

    /// <summary>The case that is, or was last, at work.</summary>
    public byte[] Case
    {
        get
        {
            byte[] bytes = new byte[this[Count.CaseLength]];
            _view.ReadArray(Head, bytes, 0, bytes.Length);
            return bytes;
        }

        set
        {
            this[Count.CaseLength] = value.Length;
            _view.WriteArray(Head, value, 0, value.Length);
        }
    }

    /// <summary>Counts one more.</summary>
    public void Add(Count count) => this[count]++;

    public void Dispose()
    {
        _view.Dispose();
        _file.Dispose();
    }
}

/// <summary>What is counted.</summary>
internal enum Count
{
    /// <summary>Length of the case at work, bytes.</summary>
    CaseLength,

    /// <summary>Number of the case at work.</summary>
    Number,

    /// <summary>Cases that ran to their end.</summary>
    Done,

    /// <summary>Of these, refused with words.</summary>
    Refused,

    /// <summary>Of these, refused only when the design was worked out.</summary>
    RefusedLate,

    /// <summary>Of these, worked out to a verdict.</summary>
    Judged,

    /// <summary>Of these, written by every writer.</summary>
    Written,

    /// <summary>Of these, worked out twice and compared.</summary>
    Twice,

    /// <summary>Cases that showed something new and were kept as parents.</summary>
    Kept,

    /// <summary>Branches seen.</summary>
    Branches,

    /// <summary>Failures, alike ones counted each.</summary>
    Failed,

    /// <summary>Failures of a kind that is known.</summary>
    Known,

    /// <summary>The longest processor time of a case, µs.</summary>
    LongestUs,

    /// <summary>The most that a case allocated in all, bytes.</summary>
    MostAllocated,
}
