using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Collects what is wrong with a file.</summary>
internal sealed class DiagnosticList
{
    private readonly List<Diagnostic> _all = [];
    private bool _hasMore;

    /// <summary>How many there are so far.</summary>
    public int Count => _all.Count;

    /// <summary>Adds one.</summary>
    public void Add(TextPlace place, string wrong, string right)
    {
        if (_all.Count < Budgets.ToldFaults)
        {
            _all.Add(new Diagnostic(place, wrong, right));
        }
        else
        {
            _hasMore = true;
        }
    }

    /// <summary>Adds one whose message is already parted by a semicolon, as the quantity parser gives it.</summary>
    public void Add(TextPlace place, string complaint)
    {
        int cut = complaint.IndexOf("; ", StringComparison.Ordinal);
        Add(place, complaint[..cut], complaint[(cut + 2)..]);
    }

    /// <summary>All of them in the order of the file, none twice; where there were more than are told, a last one says so.</summary>
    public IReadOnlyList<Diagnostic> InFileOrder()
    {
        Diagnostic[] told = [.. _all.Distinct().OrderBy(d => d.Place.Line).ThenBy(d => d.Place.Column)];
        return _hasMore ? [.. told, new(told[^1].Place, $"more than {Budgets.ToldFaults} faults were found, and the others are not told", "mend these first; is it the right file?")] : told;
    }
}
