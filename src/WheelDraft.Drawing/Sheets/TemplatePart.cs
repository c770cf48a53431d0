using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>One part at true size on a sheet of its own: waste hatched, cut lines, marks, names round it, words under it.</summary>
internal sealed class TemplatePart
{
    // Round a part, mm: the hatched waste and air.
    private const double AirMm = 10;
    private const double WordsPadMm = 4;

    // The words under a part have this width at least, mm.
    private const double LeastWidthMm = 120;

    private readonly SheetBuilder _sheet;
    private readonly IReadOnlyList<string> _lines;
    private readonly double _footMm;
    private readonly bool _showsSense;

    private TemplatePart(SheetWords words, Bounds part, TemplateRoom room, IReadOnlyList<string> text)
    {
        _showsSense = room.ShowsSense;
        double width = Math.Max(part.Width + (2 * (AirMm + room.BesideMm)), LeastWidthMm + (2 * AirMm));
        double forWords = width - (2 * AirMm) - (_showsSense ? AngleSense.WidthMm : 0);
        _lines = [.. text.SelectMany(l => TextFit.Wrap(l, forWords, TextStyle.Small))];
        double wordsHigh = (_lines.Count * TextStyle.Small.HeightMm * Lettering.LinePitch) + WordsPadMm;
        _footMm = Math.Max(wordsHigh, _showsSense ? AngleSense.HeightMm : 0);
        _sheet = new(words, new PaperSize("part", width, part.Height + (2 * (AirMm + room.AboveAndBelowMm)) + room.OverMm + _footMm));
        View = SheetView.At(DrawingScale.FullSize, new(part.Centre.X, part.MinY), new(width / 2, AirMm + room.AboveAndBelowMm + _footMm));
        Area = new(AirMm / 2, _footMm + (AirMm / 2), width - (AirMm / 2), _sheet.Size.HeightMm - (AirMm / 2));
        Part = View.Of(part);
    }

    /// <summary>From the part to the sheet.</summary>
    public SheetView View { get; }

    /// <summary>Width of the sheet, mm.</summary>
    public double WidthMm => _sheet.Size.WidthMm;

    /// <summary>Where the part and what is written round it may stand.</summary>
    public Bounds Area { get; }

    /// <summary>Where the part itself stands.</summary>
    public Bounds Part { get; }

    /// <summary>An empty sheet for a part.</summary>
    /// <param name="words">Its name, title and description.</param>
    /// <param name="part">The part's own bounds, mm.</param>
    /// <param name="room">What is needed round it.</param>
    /// <param name="text">What stands under it.</param>
    public static TemplatePart Of(SheetWords words, Bounds part, TemplateRoom room, IReadOnlyList<string> text) => new(words, part, room, text);

    /// <summary>Opens a group to draw the part in, in its own millimetres.</summary>
    public ViewPen In(string id, string title) => _sheet.Group(id, title, id).In(View);

    /// <summary>Opens a group to write in, in millimetres on the sheet.</summary>
    public GroupPen On(string id, string title) => _sheet.Group(id, title, id);

    /// <summary>The words under it, and the sheet.</summary>
    public Sheet Build()
    {
        GroupPen pen = _sheet.Group("words", "What it is", "words");
        double y = _footMm - (WordsPadMm / 2);
        foreach (string line in _lines)
        {
            pen.Text(line, new(new(AirMm, y), TextAlong.Start, TextAcross.Top), TextStyle.Small);
            y -= TextStyle.Small.HeightMm * Lettering.LinePitch;
        }

        if (_showsSense)
        {
            AngleSense.Draw(_sheet.Group("sense", "How wheel angles count", "direction"), new(_sheet.Size.WidthMm - AirMm - AngleSense.WidthMm, 0.5));
        }

        return _sheet.Build();
    }
}

/// <summary>What is needed round a part on its sheet, besides air.</summary>
/// <param name="BesideMm">On either side: a column of names.</param>
/// <param name="AboveAndBelowMm">Above and below: what a column of names is higher than the part.</param>
/// <param name="OverMm">Above: rows of names.</param>
/// <param name="ShowsSense">Whether it shows how wheel angles count.</param>
internal sealed record TemplateRoom(double BesideMm = 0, double AboveAndBelowMm = 0, double OverMm = 0, bool ShowsSense = false);
