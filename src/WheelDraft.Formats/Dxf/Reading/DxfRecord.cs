namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>One record of a file: its kind and the pairs up to the next group 0.</summary>
internal sealed class DxfRecord
{
    private readonly DxfPairs _file;
    private readonly List<DxfPair> _pairs = [];

    internal DxfRecord(DxfPairs file, DxfPair kind)
    {
        _file = file;
        Kind = file.Text(kind);
        Line = kind.Line;
    }

    internal string Kind { get; }

    internal int Line { get; }

    internal IReadOnlyList<DxfPair> Pairs => _pairs;

    internal DxfSource Source => new(Line, Find(5) is DxfPair handle ? _file.Text(handle) : null);

    /// <summary>Layer "0" when none is given, as the format has it.</summary>
    internal string Layer => Text(8) is { Length: > 0 } name ? name : "0";

    internal void Add(DxfPair pair) => _pairs.Add(pair);

    internal string? Text(int code) => Find(code) is DxfPair pair ? _file.Text(pair) : null;

    internal int Whole(int code, int otherwise) => Find(code) is DxfPair pair ? _file.Whole(pair) : otherwise;

    internal double Number(int code, double otherwise) => Find(code) is DxfPair pair ? _file.Number(pair) : otherwise;

    internal double Number(int code) =>
        Find(code) is DxfPair pair ? _file.Number(pair) : throw Fault($"group {FixedPoint.Short(code, 0)} is missing");

    internal double NumberOf(DxfPair pair) => _file.Number(pair);

    internal IEnumerable<double> Numbers(int code) => _pairs.Where(p => p.Code == code).Select(_file.Number);

    internal Geometry.Point Point(int code) => new(Number(code), Number(code + 10));

    /// <summary>An error about this record.</summary>
    internal DxfReadException Fault(string what)
    {
        DxfSource source = Source;
        return new(Line, $"{Kind}{(source.Handle is null ? "" : $" (handle {source.Handle})")}: {what}.");
    }

    private DxfPair? Find(int code)
    {
        foreach (DxfPair pair in _pairs)
        {
            if (pair.Code == code)
            {
                return pair;
            }
        }

        return null;
    }
}
