using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Rules between keys of a file whose keys have been checked one by one. A key that is wrong, or missing and reported, is passed over:
/// each fault is reported once.</summary>
/// <param name="root">The checked root table.</param>
/// <param name="diagnostics">Where faults go.</param>
internal abstract class RuleBase(CheckedTable root, DiagnosticList diagnostics)
{
    /// <summary>The checked root table.</summary>
    protected CheckedTable Root => root;

    /// <summary>The line nets: those of [supply] lines, else L.</summary>
    protected IReadOnlyList<string> Lines =>
        Root.Table("supply") is { } supply && supply.Has("lines") && supply.Texts("lines") is { Count: > 0 } given ? given : ["L"];

    /// <summary>Looks at everything that the rule is about.</summary>
    public abstract void Check();

    /// <summary>Reports a fault.</summary>
    protected void Wrong(TextPlace place, string wrong, string right) => diagnostics.Add(place, wrong, right);

    /// <summary>Reports a reference to a name that is not there.</summary>
    /// <param name="reference">Where the name is referred to.</param>
    /// <param name="kind">What it should name: "output".</param>
    /// <param name="known">The names that are there.</param>
    /// <returns>Whether the name is there; true also for a reference that is wrong in itself.</returns>
    protected bool Refers(CheckedValue? reference, string kind, IReadOnlyCollection<string> known)
    {
        if (reference?.Text is not { } name || known.Contains(name, StringComparer.Ordinal))
        {
            return true;
        }

        string? near = NearMiss.Of(name, known);
        string there = known.Count == 0 ? $"there is no {kind} in the file" : $"it is one of {Words.Or(known.Select(Words.Quoted))}";
        Wrong(reference.Place, $"\"{name}\" is no {kind}", near is null ? there : $"did you mean \"{near}\"? {Words.Capital(there)}");
        return false;
    }

    /// <summary>The good names of the tables of a kind.</summary>
    protected IReadOnlyList<string> NamesOf(string kind) => [.. Root.Tables(kind).Select(t => t.Text("name")).OfType<string>()];

    /// <summary>A length in a message.</summary>
    protected static string Mm(decimal mm) => $"{QuantityText.Plain(mm)} mm";

    /// <summary>A number in a message, at most six decimals.</summary>
    protected static string Short(double value) => Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture);
}
