namespace WheelDraft.Engineering;

/// <summary>The unit in which the people of a design read lengths: that of its drawings, in every sentence, table and note. What programs read stays in mm.</summary>
internal sealed class ReadersUnit
{
    private readonly bool _inches;
    private readonly IReadOnlyCollection<string> _own;

    private ReadersUnit(bool inches, IReadOnlyCollection<string> own) => (_inches, _own) = (inches, own);

    /// <summary>Millimetres.</summary>
    public static ReadersUnit Millimetres { get; } = new(inches: false, []);

    /// <summary>The unit of a brief.</summary>
    public static ReadersUnit Of(Brief brief) =>
        brief.DrawingUnit == DrawingUnit.Inch ? new(inches: true, [.. OwnTexts(brief).OfType<string>().Where(LengthsInText.AreIn).Distinct(StringComparer.Ordinal)]) : Millimetres;

    /// <summary>mm or in.</summary>
    public string Sign => _inches ? "in" : "mm";

    /// <summary>A sentence as it is read; the person's own names and texts in it stay as they are.</summary>
    public string Words(string sentence) => _inches ? LengthsInText.InInches(sentence, _own) : sentence;

    /// <summary>A length as a bare number, for columns whose head names the unit.</summary>
    public string Number(double lengthMm) => _inches ? LengthsInText.Inches(lengthMm) : Wording.Number(lengthMm, 3);

    private static IEnumerable<string?> OwnTexts(Brief brief) =>
    [
        brief.Title, brief.DrawingNumber, brief.Wheel.Material, brief.Wheel.ShaftNet, brief.Feed?.Net, brief.Spacing.OwnResponsibility,
        brief.Office.Owner, brief.Office.CreatedBy, brief.Office.ApprovedBy, brief.Office.Revision,
        .. brief.Office.Revisions.SelectMany(r => new[] { r.Revision, r.Text }),
        .. brief.Supply.Lines,
        .. brief.Outputs.SelectMany(o => new[] { o.Name, o.Net, o.ReturnNet }),
        .. brief.Loads.SelectMany(l => new[] { l.Name, l.From, l.To }),
        .. brief.Inputs.SelectMany(i => new[] { i.Name, i.From, i.To, i.ClosedWhen }),
        .. brief.Interlocks.Select(i => i.Name),
        .. brief.Scenarios.Select(s => s.Name),
        .. brief.Surfaces.Select(s => s.Name),
        .. brief.Strips.SelectMany(s => new[] { s.Name, s.Material, s.Task is ServesNet plain ? plain.Net : null }),
        .. brief.Parts.SelectMany(p => new[] { p.Name, p.Net }),
    ];
}
