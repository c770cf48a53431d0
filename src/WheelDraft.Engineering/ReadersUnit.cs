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
        brief.DrawingUnit == DrawingUnit.Inch ? new(inches: true, [.. OwnTexts.Of(brief).Where(LengthsInText.AreIn)]) : Millimetres;

    /// <summary>mm or in.</summary>
    public string Sign => _inches ? "in" : "mm";

    /// <summary>A sentence as it is read; the person's own names and texts in it stay as they are.</summary>
    public string Words(string sentence) => _inches ? LengthsInText.InInches(sentence, _own) : sentence;

    /// <summary>A length as a bare number, for columns whose head names the unit.</summary>
    public string Number(double lengthMm) => _inches ? LengthsInText.Inches(lengthMm) : Wording.Number(lengthMm, 3);
}
