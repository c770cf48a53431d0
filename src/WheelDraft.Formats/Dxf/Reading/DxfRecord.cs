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

    internal DxfSource Source => new(Line, Find(5) is DxfPair handle ? _file.Text(handle) : null, Kind.Length > 40 ? Kind[..40] : Kind);

    /// <summary>Layer "0" when none is given, as the format has it.</summary>
    internal string Layer => Text(8) is { Length: > 0 } name ? name : "0";

    internal void Add(DxfPair pair) => _pairs.Add(pair);

    internal string? Text(int code) => Find(code) is DxfPair pair ? _file.Text(pair) : null;

    internal int Whole(int code, int otherwise) => Find(code) is DxfPair pair ? _file.Whole(pair) : otherwise;

    internal double Number(int code, double otherwise) => Find(code) is DxfPair pair ? _file.Number(pair) : otherwise;

    internal double Number(int code) =>
        Find(code) is DxfPair pair ? _file.Number(pair) : throw Fault($"group {FixedPoint.Short(code, 0)} is missing");

    internal double NumberOf(DxfPair pair) => _file.Number(pair);

    internal int WholeOf(DxfPair pair) => _file.Whole(pair);

    internal IEnumerable<double> Numbers(int code) => _pairs.Where(p => p.Code == code).Select(_file.Number);

    internal Geometry.Point Point(int code) => new(Number(code), Number(code + 10));

    /// <summary>Why this record is not taken in; whether that matters is known once its layer is.</summary>
    /// <param name="what">What was found, what would help; no full stop.</param>
    internal UnreadException Fault(string what) => new(what) { Line = Line };

    internal DxfPair? Find(int code)
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

/// <summary>An entity is not understood; not yet a fault of the drawing.</summary>
internal sealed class UnreadException(string message) : Exception(message)
{
    /// <summary>Line of the file at which the entity begins; 0 where only its place in the drawing is at fault.</summary>
    internal int Line { get; init; }
}
