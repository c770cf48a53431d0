using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Collects what is wrong with a file.</summary>
internal sealed class DiagnosticList
{
    private readonly List<Diagnostic> _all = [];

    /// <summary>How many there are so far.</summary>
    public int Count => _all.Count;

    /// <summary>Adds one.</summary>
    public void Add(TextPlace place, string wrong, string right) => _all.Add(new Diagnostic(place, wrong, right));

    /// <summary>Adds one whose message is already parted by a semicolon, as the quantity parser gives it.</summary>
    public void Add(TextPlace place, string complaint)
    {
        int cut = complaint.IndexOf("; ", StringComparison.Ordinal);
        Add(place, complaint[..cut], complaint[(cut + 2)..]);
    }

    /// <summary>All of them in the order of the file, none twice.</summary>
    public IReadOnlyList<Diagnostic> InFileOrder() => [.. _all.Distinct().OrderBy(d => d.Place.Line).ThenBy(d => d.Place.Column)];
}
