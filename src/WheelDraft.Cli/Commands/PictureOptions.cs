using System.CommandLine;
using System.Globalization;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;
using Dimension = WheelDraft.Formats.Parameters.Dimension;

namespace WheelDraft.Cli;

/// <summary>The options of <c>make</c> that shape drawings: colours, letters, size, callouts, a moment, a film.</summary>
internal sealed class PictureOptions
{
    private readonly Option<string> _theme = new Option<string>("--theme") { HelpName = "THEME", Description = "Colours of drawings: light, dark or print", DefaultValueFactory = _ => "light" }.Suggesting("light", "dark", "print");
    private readonly Option<string> _text = new Option<string>("--text") { HelpName = "KIND", Description = "Texts of SVG drawings: live (can be searched and translated) or strokes (the same everywhere)", DefaultValueFactory = _ => "live" }.Suggesting("live", "strokes");
    private readonly Option<string> _width = new("--width") { HelpName = "LENGTH", Description = "Width at which SVG drawings are shown, e.g. \"160 mm\"; true size when left out" };
    private readonly Option<string> _dpi = new("--dpi") { HelpName = "N", Description = "Pixels per inch of PNG drawings, 10 to 1200", DefaultValueFactory = _ => "150" };
    private readonly Option<string?> _figure = new("--figure") { HelpName = "WIDTH", Arity = ArgumentArity.ZeroOrOne, Description = FormattableString.Invariant($"Draw every view besides as a figure for a text, laid out for this width ({OutputRequest.LeastFigureMm:0} to {OutputRequest.MostFigureMm:0} mm; \"{UsualFigureMm:0} mm\" when none is given), as SVG, PNG and PDF with captions, in figures/") };
    private readonly Option<string> _callouts = new Option<string>("--callouts") { HelpName = "KIND", Description = "Leaders of wheel and assembly end in words, or in numbers with a key", DefaultValueFactory = _ => "words" }.Suggesting("words", "numbers");
    private readonly Option<string> _frame = new("--frame") { HelpName = "T", Description = "Draw the state at a moment: time in the turn (\"83 s\"; a bare number is seconds) or programme angle (\"90 deg\")" };
    private readonly Option<string> _frames = new("--frames") { HelpName = "N", Description = FormattableString.Invariant($"Draw a film of one turn besides: so many PNGs, 1 to {MomentFilm.MostFrames}, in frames/") };
    private readonly Option<string[]> _closed = new("--closed") { HelpName = "INPUT,...", Description = "Inputs that are closed in --frame, --frames and --film; all others are open" };
    private readonly Option<string[]> _film = new Option<string[]>("--film") { HelpName = "KIND,...", Description = "Draw a film of one turn besides, in one file that needs no other program, in film/: svg, apng or both; it runs again and again, the svg can be paused and stands for those who want no motion" }.Suggesting("svg", "apng");
    private readonly Option<string> _filmWidth = new("--film-width") { HelpName = "N", Description = FormattableString.Invariant($"Width of --film and --story in pixels, {LeastFilmPx} to {MostFilmPx}; 960 when left out") };
    private readonly Option<string> _story = new("--story") { HelpName = "SCENARIO", Description = "Draw a film of a scenario instead of a turn, with a caption at each event; as svg and apng unless --film says which" };

    private const double UsualFigureMm = 160;
    private const int LeastFilmPx = 240;
    private const int MostFilmPx = 1920;

    /// <summary>Every option.</summary>
    public IReadOnlyList<Option> All => [_theme, _text, _width, _dpi, _figure, _callouts, _frame, _frames, _film, _filmWidth, _story, _closed];

    /// <summary>Those that shape a single SVG.</summary>
    public IReadOnlyList<Option> OfSvg => [_theme, _text, _width];

    /// <summary>How a single SVG is written.</summary>
    /// <exception cref="DesignRefusedException">A value is not understood.</exception>
    public SvgOptions Svg(ParseResult parsed) => new()
    {
        Theme = Theme.Named(parsed.GetValue(_theme)!) ?? throw Unknown(_theme, parsed, [.. Theme.All.Select(t => t.Name)]),
        Text = Choice(_text, parsed, [("live", SvgText.Live), ("strokes", SvgText.Strokes)]),
        WidthMm = parsed.GetValue(_width) is string width ? Width(width) : null,
    };

    /// <summary>What was asked, read, except what only the design can decide.</summary>
    /// <exception cref="DesignRefusedException">A value is not understood.</exception>
    public PictureChoice Of(ParseResult parsed)
    {
        string[] closed = [.. (parsed.GetValue(_closed) ?? []).SelectMany(c => c.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))];
        SvgOptions svg = Svg(parsed);
        PictureChoice choice = new()
        {
            Svg = svg,
            Callouts = Choice(_callouts, parsed, [("words", CalloutMarks.Words), ("numbers", CalloutMarks.Numbers)]),
            FigureWidthMm = parsed.GetResult(_figure) is { Implicit: false } ? FigureWidth(parsed.GetValue(_figure)) : null,
            PngDpi = Number(_dpi, parsed.GetValue(_dpi)!, 10, 1200),
            Frame = parsed.GetValue(_frame) is string frame ? Moment(frame) : null,
            Frames = parsed.GetValue(_frames) is string frames ? Number(_frames, frames, 1, MomentFilm.MostFrames) : null,
            Closed = closed,
            Film = FilmKinds(parsed),
            FilmWidthPx = parsed.GetValue(_filmWidth) is string width ? Number(_filmWidth, width, LeastFilmPx, MostFilmPx) : null,
            Story = parsed.GetValue(_story),
        };
        return closed.Length > 0 && choice.Story is not null ? throw Refused(_closed, "the scenario of --story says itself how inputs stand")
            : closed.Length > 0 && choice is { Frame: null, Frames: null, Film.Count: 0 } ? throw Refused(_closed, "says how inputs stand in --frame, --frames or --film; give one of them with it")
            : choice is { FilmWidthPx: not null, Film.Count: 0, Story: null } ? throw Refused(_filmWidth, "says how wide --film or --story is; give one of them with it")
            : choice;
    }

    private string[] FilmKinds(ParseResult parsed)
    {
        string[] kinds = [.. (parsed.GetValue(_film) ?? []).SelectMany(k => k.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))];
        return kinds.FirstOrDefault(k => k is not ("svg" or "apng")) is string unknown
            ? throw Refused(_film, $"knows no '{unknown}'; it is svg or apng, or both as svg,apng")
            : kinds;
    }

    private static T Choice<T>(Option<string> option, ParseResult parsed, IReadOnlyList<(string Word, T Value)> choices)
    {
        string word = parsed.GetValue(option)!;
        foreach ((string known, T value) in choices)
        {
            if (string.Equals(known, word, StringComparison.Ordinal))
            {
                return value;
            }
        }

        throw Unknown(option, parsed, [.. choices.Select(c => c.Word)]);
    }

    // A bare number is millimetres.
    private double FigureWidth(string? text)
    {
        if (text is null)
        {
            return UsualFigureMm;
        }

        string length = double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _) ? text + " mm" : text;
        return !Quantity.TryParse(length, Dimension.Length, out Quantity width, out _) ? throw Refused(_figure, $"\"{text}\" is no width such as \"160 mm\"; the parameter file stands before --figure, or the width behind it as --figure=160")
            : width.Value is >= OutputRequest.LeastFigureMm and <= OutputRequest.MostFigureMm ? width.Value
            : throw Refused(_figure, $"\"{text}\" is outside {Wording.Mm(OutputRequest.LeastFigureMm)} to {Wording.Mm(OutputRequest.MostFigureMm)}");
    }

    private double Width(string text)
    {
        const double mostMm = 10_000;
        return !Quantity.TryParse(text, Dimension.Length, out Quantity width, out string complaint) ? throw Refused(_width, complaint)
            : width.Value is >= 1 and <= mostMm ? width.Value
            : throw Refused(_width, $"\"{text}\" is outside 1 mm to {Wording.Mm(mostMm)}");
    }

    private static int Number(Option<string> option, string text, int least, int most) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= least && number <= most
            ? number
            : throw Refused(option, FormattableString.Invariant($"\"{text}\" is no whole number from {least} to {most}"));

    private TurnAmount Moment(string text)
    {
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double seconds))
        {
            return TurnAmount.Seconds(seconds);
        }

        return !Quantity.TryParse(text, [Dimension.Time, Dimension.Angle], out Quantity moment, out string complaint) ? throw Refused(_frame, complaint)
            : moment.Dimension == Dimension.Angle ? TurnAmount.Radians(moment.AngleRad)
            : TurnAmount.Seconds(moment.Value);
    }

    private static DesignRefusedException Unknown(Option<string> option, ParseResult parsed, string[] words) =>
        Refused(option, $"knows no '{parsed.GetValue(option)}'; it is {string.Join(", ", words[..^1])} or {words[^1]}");

    private static DesignRefusedException Refused(Option option, string what) => new($"arguments.{option.Name.TrimStart('-')}", $"{option.Name}: {what}.");
}

/// <summary>How drawings were asked for.</summary>
internal sealed record PictureChoice
{
    /// <summary>Colours of all drawings; letters and width of SVG ones.</summary>
    public required SvgOptions Svg { get; init; }

    /// <summary>What leaders end in.</summary>
    public required CalloutMarks Callouts { get; init; }

    /// <summary>Pixels per inch of PNG drawings.</summary>
    public required int PngDpi { get; init; }

    /// <summary>Width of figures, mm, or null for none.</summary>
    public double? FigureWidthMm { get; init; }

    /// <summary>The moment to draw, or null.</summary>
    public required TurnAmount? Frame { get; init; }

    /// <summary>How many pictures of a film, or null.</summary>
    public required int? Frames { get; init; }

    /// <summary>Names of inputs that are closed.</summary>
    public required IReadOnlyList<string> Closed { get; init; }

    /// <summary>Kinds of film in one file: svg, apng; none when no film was asked for, or only a story.</summary>
    public IReadOnlyList<string> Film { get; init; } = [];

    /// <summary>Width of that film in pixels, or null.</summary>
    public int? FilmWidthPx { get; init; }

    /// <summary>Name of the scenario that the film shows, or null for a turn.</summary>
    public string? Story { get; init; }

    /// <summary>The request for a design, with all that these choices say.</summary>
    /// <exception cref="DesignRefusedException">The moment is outside the turn, or the design has no such input.</exception>
    public OutputRequest On(OutputRequest request, Design design)
    {
        if (Frame is not null && FigureWidthMm is null && !request.Kinds.Any(k => k is OutputKind.Draw or OutputKind.Png or OutputKind.Pdf))
        {
            throw new DesignRefusedException("arguments.frame", "--frame: --only asks for no drawing that could show the moment; add draw, png or pdf.");
        }

        int inputs = Closed.Aggregate(0, (mask, name) => mask | (1 << InputOf(design, name)));
        return request with
        {
            Theme = Svg.Theme,
            Text = Svg.Text,
            SvgWidthMm = Svg.WidthMm,
            PngDpi = PngDpi,
            FigureWidthMm = FigureWidthMm,
            Sheets = new SheetOptions
            {
                Callouts = Callouts,
                Moment = Frame is TurnAmount frame ? design.Circuit.At(AngleOf(design, frame), inputs) : null,
            },
            Film = Frames is int frames ? new MomentFilm(design, frames, inputs) : null,
            Moving = Film.Count > 0 || Story is not null ? Moving(design, inputs) : null,
        };
    }

    private MovingPicture Moving(Design design, int inputs)
    {
        MovingPicture moving = new(Story is string name ? MomentReel.OfStory(design, ScenarioOf(design, name)) : MomentReel.OfTurn(design, inputs));
        return moving with
        {
            AsSvg = Film.Count == 0 || Film.Contains("svg", StringComparer.Ordinal),
            AsPng = Film.Count == 0 || Film.Contains("apng", StringComparer.Ordinal),
            WidthPx = FilmWidthPx ?? moving.WidthPx,
        };
    }

    private static int ScenarioOf(Design design, string name)
    {
        IReadOnlyList<ScenarioBrief> scenarios = design.Brief.Scenarios;
        int index = Enumerable.Range(0, scenarios.Count).FirstOrDefault(i => string.Equals(scenarios[i].Name, name, StringComparison.OrdinalIgnoreCase), -1);
        string known = scenarios.Count == 0 ? "the file has none" : $"the file has {string.Join(", ", scenarios.Select(s => $"'{s.Name}'"))}";
        return index >= 0 ? index : throw new DesignRefusedException("arguments.story", $"--story: there is no scenario '{name}'; {known}.");
    }

    private static double AngleOf(Design design, TurnAmount frame)
    {
        double angle = design.Motion.RadOf(frame);
        return angle >= 0 && angle <= Angles.TurnRad
            ? angle
            : throw new DesignRefusedException(
                "arguments.frame",
                $"--frame: a moment lies in one turn, 0 to {Wording.Seconds(design.Motion.TurnTimeS)} or 0 to 360 deg; this one is {(frame.IsAngle ? Wording.Degrees(frame.Value) : Wording.Seconds(frame.Value))}.");
    }

    private static int InputOf(Design design, string name)
    {
        for (int i = 0; i < design.Circuit.Inputs.Count; i++)
        {
            if (string.Equals(design.Circuit.Inputs[i], name, StringComparison.OrdinalIgnoreCase))
            {
                return i;
            }
        }

        string known = design.Circuit.Inputs.Count == 0 ? "the file has no inputs" : $"the inputs are {string.Join(", ", design.Circuit.Inputs)}";
        throw new DesignRefusedException("arguments.closed", $"--closed: there is no input '{name}'; {known}.");
    }
}
