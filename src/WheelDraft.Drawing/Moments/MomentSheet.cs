using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A picture of one moment: the wheel as it has turned, what is live, the programme with a cursor, and which loads are on.</summary>
/// <remarks>For stills and films, so it has the shape of a screen, 16 to 9, and no frame: 240 by 135 mm, or twice, three times that
/// where many rows want room. Nothing but states moves from one moment of a turn to the next: no label changes its place.</remarks>
internal static class MomentSheet
{
    /// <summary>Draws a moment of a design.</summary>
    public static Sheet Of(Design design, CircuitMoment moment)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(moment);
        return new MomentScene(design, moment.State.Inputs).At(moment);
    }
}

/// <summary>A film of a turn: pictures of moments evenly spaced from home on, so that it runs on from its end to its beginning.</summary>
public sealed class MomentFilm
{
    /// <summary>The most pictures of one film: a turn of three minutes at twenty a second.</summary>
    public const int MostFrames = 3600;

    private readonly Design _design;
    private readonly MomentScene _scene;
    private readonly int _inputs;

    /// <summary>A film of a design.</summary>
    /// <param name="design">The design.</param>
    /// <param name="frames">How many pictures, 1 to <see cref="MostFrames"/>.</param>
    /// <param name="inputs">Inputs that are held closed, one bit each.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are too many or too few pictures, or inputs that the circuit does not have.</exception>
    public MomentFilm(Design design, int frames, int inputs = 0)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentOutOfRangeException.ThrowIfLessThan(frames, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(frames, MostFrames);
        (_design, Frames, _inputs) = (design, frames, inputs);
        _scene = new MomentScene(design, inputs);
    }

    /// <summary>How many pictures.</summary>
    public int Frames { get; }

    /// <summary>The size of every picture, on paper.</summary>
    internal PaperSize Size => _scene.Size;

    /// <summary>A picture.</summary>
    /// <param name="index">Which one, from 0; picture i shows the wheel after i parts of the turn.</param>
    internal Sheet this[int index] => _scene.At(_design.Circuit.At(Angles.TurnRad * index / Frames, _inputs));
}

/// <summary>What all moments of a turn share: measures, rows and the places of words.</summary>
internal sealed class MomentScene
{
    private const double WidthMm = 240;
    private const double HeightMm = 135;
    private const double MarginMm = 5;

    // Title and clock above; legend and caution below; the chart to the right of the wheel.
    private const double HeadMm = 12;
    private const double FootMm = 15;
    private const double ChartShare = 0.42;
    private const double GapMm = 5;

    private static readonly TextStyle ClockStyle = new(5, TextWeight.Heavy, Ink.Accent);

    private readonly Design _design;
    private readonly MomentChart _chart;
    private readonly MomentPlan _plan;
    private readonly double _captionMm;

    /// <summary>Measures a design's moments.</summary>
    /// <param name="design">The design.</param>
    /// <param name="inputs">Inputs that are closed, one bit each.</param>
    /// <param name="captionMm">Height of a strip for a caption below everything, mm.</param>
    public MomentScene(Design design, int inputs, double captionMm = 0)
    {
        (_design, _captionMm) = (design, captionMm);
        _chart = new MomentChart(design, inputs);
        (Size, _plan) = Planned();
        if (_plan.Key.Count > 0)
        {
            _keyMm = KeyLines(_plan.LongestKey).Count * KeyPitchMm;
            (Size, _plan) = Planned();
        }
    }

    // Room for the key to numbers, 0 where every wiper has its name.
    private readonly double _keyMm;

    private const double KeyPitchMm = 2.5 * Lettering.LinePitch;

    private (PaperSize Size, MomentPlan Plan) Planned()
    {
        int times = Enumerable.Range(1, 20).First(k => k == 20 || _chart.Fits(ChartRoom(Room(k))));
        PaperSize size = new("screen", WidthMm * times, (HeightMm * times) + _captionMm);
        return (size, new MomentPlan(_design, PlanRoom(Inside(AllOf(size)))));
    }

    private static IReadOnlyList<string> KeyLines(IReadOnlyList<string> key) => TextFit.Wrap(string.Join("; ", key), WidthMm - (2 * MarginMm), TextStyle.Small);

    /// <summary>The size of every moment's picture.</summary>
    public PaperSize Size { get; }

    private Bounds All => AllOf(Size);

    private Bounds AllOf(PaperSize size) => new(MarginMm, MarginMm + _captionMm, size.WidthMm - MarginMm, size.HeightMm - MarginMm);

    /// <summary>The axis of the wheel on the paper.</summary>
    public Point Axis => _plan.Axis;

    /// <summary>How the lever of a cam goes on the paper.</summary>
    public LeverWay WayOf(CamLayout cam) => _plan.WayOf(cam);

    /// <summary>How far the chart's cursor goes in a turn, mm.</summary>
    public double CursorTravelMm => _chart.TravelMm(ChartRoom(Inside(All)));

    /// <summary>The picture of a moment.</summary>
    public Sheet At(CircuitMoment moment) => At(new MomentView(_design, moment), "");

    /// <summary>The picture of a moment, with a caption in its strip.</summary>
    public Sheet At(MomentView view, string caption)
    {
        SheetBuilder sheet = new(new("moment", $"{view.Time} after home: {_design.Brief.Title}", Description(view)), Size);
        Bounds room = Inside(All);
        Head(sheet, view);
        Foot(sheet);
        Caption(sheet, caption);
        _plan.Draw(sheet, view);
        _chart.Draw(sheet, view, ChartRoom(room));
        foreach (string name in _plan.Untagged)
        {
            sheet.Warn($"The picture of a moment has no room for the tag of '{name}'; its state stands in the chart.");
        }

        return sheet.Build();
    }

    private Bounds Room(int times) => Inside(new(MarginMm, MarginMm, (WidthMm * times) - MarginMm, (HeightMm * times) - MarginMm));

    private Bounds Inside(Bounds all) => new(all.MinX, all.MinY + FootMm + _keyMm, all.MaxX, all.MaxY - HeadMm);

    private static Bounds ChartRoom(Bounds room) => room with { MinX = room.MaxX - (room.Width * ChartShare) };

    private static Bounds PlanRoom(Bounds room) => room with { MaxX = room.MaxX - (room.Width * ChartShare) - GapMm };

    private string Description(MomentView view)
    {
        IEnumerable<string> contacts = _design.Brief.Outputs.Select(o => $"{o.Name} {(view.IsMade(o.Name) ? "closed" : "open")}");
        IEnumerable<string> loads = _design.Circuit.Loads.Select(l => $"{l} {view.LoadWords(l)}");
        return $"{view.Sentence} The wheel turns {SheetWordsOf.Turns(_design)}. Contacts: {string.Join("; ", contacts)}. Loads: {string.Join("; ", loads)}.";
    }

    private void Head(SheetBuilder sheet, MomentView view)
    {
        GroupPen pen = sheet.Group("clock", "Time and angle", "moment");
        double middle = All.MaxY - (ClockStyle.HeightMm / 2) - 0.8;

        // As wide as the longest time of the turn, whatever it is now.
        double clock = TextFit.WidthMm("0000.00 s   000.0°", ClockStyle);
        GroupPen title = sheet.Group("heading", "Title", "title");
        FittedText fitted = TextFit.Into(_design.Brief.Title, All.Width - clock, TextStyle.Title);
        if (fitted.Lines.Count > 1)
        {
            fitted = TextFit.Into(_design.Brief.Title, All.Width - clock, TextStyle.Label, 2);
        }

        // Two lines at most, so that nothing below moves; the description has the whole title.
        string[] lines = fitted.Lines.Count <= 2 ? [.. fitted.Lines] : [fitted.Lines[0], TextFit.Shortened(string.Join(' ', fitted.Lines.Skip(1)), All.Width - clock, fitted.Style)];
        for (int i = 0; i < lines.Length; i++)
        {
            title.Text(lines[i], new(new(All.MinX, middle - ((i - ((lines.Length - 1) / 2.0)) * fitted.PitchMm)), TextAlong.Start, TextAcross.Middle), fitted.Style);
        }

        pen.Text(view.Angle, new(new(All.MaxX, middle), TextAlong.End, TextAcross.Middle), ClockStyle);
        pen.Text(view.Time, new(new(All.MaxX - TextFit.WidthMm("000.0°   ", ClockStyle), middle), TextAlong.End, TextAcross.Middle), ClockStyle);
    }

    // To the right of a caption: where a film's pause stands.
    private const double CaptionAirMm = 24;

    private void Caption(SheetBuilder sheet, string caption)
    {
        if (caption.Length == 0)
        {
            return;
        }

        FittedText words = TextFit.IntoField(caption, All.Width - CaptionAirMm, _captionMm, TextStyle.Title);
        GroupPen pen = sheet.Group("caption", "What happens", "notes");
        for (int i = 0; i < words.Lines.Count; i++)
        {
            pen.Text(words.Lines[i], new(new(All.MinX, MarginMm + _captionMm - 2 - (i * words.PitchMm)), TextAlong.Start, TextAcross.Top), words.Style);
        }
    }

    private void Foot(SheetBuilder sheet)
    {
        ChartLegend legend = new([.. MomentView.Legend, .. _chart.Legend]);
        legend.Draw(sheet.Group("legend", "What patterns mean", "legend"), new Point(All.MinX, All.MinY + FootMm + _keyMm - 2), All.Width);
        FittedText caution = TextFit.Into(string.Join(' ', SheetWordsOf.CautionsOf(_design)), All.Width, TextStyle.Caption);
        GroupPen pen = sheet.Group("caution", "Caution", "notes");
        for (int i = 0; i < caution.Lines.Count; i++)
        {
            pen.Text(caution.Lines[i], new(new(All.MinX, All.MinY + ((caution.Lines.Count - 1 - i) * caution.PitchMm))), caution.Style);
        }

        if (_plan.Key.Count > 0)
        {
            Key(sheet.Group("key", "Wipers whose names find no room", "key"), All.MinY + (caution.Lines.Count * caution.PitchMm));
        }
    }

    private void Key(GroupPen pen, double bottom)
    {
        IReadOnlyList<string> lines = KeyLines(_plan.Key);
        for (int i = 0; i < lines.Count; i++)
        {
            pen.Text(lines[i], new(new(All.MinX, bottom + ((lines.Count - 1 - i) * KeyPitchMm))), TextStyle.Small);
        }
    }
}
