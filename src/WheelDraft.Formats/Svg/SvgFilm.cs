using System.Globalization;
using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Svg;

/// <summary>Writes a film as one SVG file that moves by itself: style rules only, no script, so that it also moves as a picture in a page.</summary>
/// <remarks>What never changes is written once. What changes is written once for each look that it has, and shown and hidden in time; wheel and cursor
/// turn and slide. All runs from the same beginning over the same time, so it stays together, however long it plays. A reader who wants no motion is shown the
/// first moment; where the file is opened by itself, links pause it and let it go on.</remarks>
internal sealed class SvgFilm
{
    // Groups that turn with the wheel, and the one that slides along the chart: drawn where they stand at home. Levers are drawn at rest.
    private static readonly HashSet<string> Turning = new(["carrier", "wheel", "home", "cams"], StringComparer.Ordinal);
    private const string Sliding = "cursor";

    // A turn and home are the same place but for this.
    private const double RoundingRad = 1e-9;

    // Of the film: far less than a picture of any screen.
    private const double JumpShare = 1e-6;

    private readonly MomentReel _reel;
    private readonly IReadOnlyList<LeverReel> _levers;
    private readonly SvgOptions _options;
    private readonly SvgClasses _classes;
    private readonly string _prefix;
    private readonly double[] _startS;
    private readonly double _endS;

    // Names of rules by when they show something.
    private readonly Dictionary<string, string> _shown = new(StringComparer.Ordinal);
    private readonly StringBuilder _rules = new();

    private SvgFilm(MomentReel reel, string prefix, SvgOptions options)
    {
        (_reel, _prefix, _options) = (reel, prefix, options);
        _classes = new SvgClasses(options.Theme, prefix);
        _levers = reel.Levers;
        _startS = new double[reel.Frames.Count];
        for (int i = 0; i < _startS.Length; i++)
        {
            _startS[i] = _endS;
            _endS += reel.Frames[i].ForS;
        }
    }

    /// <summary>The whole file as text, lines ending in a line feed.</summary>
    /// <param name="reel">The film.</param>
    /// <param name="prefix">Put before every id and rule of motion, so that several films can stand in one page.</param>
    /// <param name="widthPx">Width at which it is shown, pixels of a page.</param>
    /// <param name="options">Theme and kind of letters.</param>
    public static string Write(MomentReel reel, string prefix, int widthPx, SvgOptions options) => new SvgFilm(reel, prefix, options).Whole(widthPx);

    private static string N(double value) => SvgMarkup.Number(value);

    private string Whole(int widthPx)
    {
        Sheet[] sheets = [.. Enumerable.Range(0, _reel.Frames.Count).Select(i => _reel.Picture(i, isUnmoved: true))];
        string paper = _classes.Paper();
        string root = _classes.Picture();
        string body = Groups(sheets);
        string motion = Motion();
        PaperSize size = _reel.Size;
        string title = SvgMarkup.Escaped(_reel.Title);
        string description = SvgMarkup.Escaped(ReadersWords.Read($"A film of {Wording.Seconds(Math.Round(_reel.ForS, 1))} that runs again and again. {string.Join(' ', _reel.Frames.Select(f => f.Caption).Distinct(StringComparer.Ordinal))} It begins so: {sheets[0].Words.Description}"));
        StringBuilder file = new();
        file.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{widthPx}\" height=\"{Math.Round(widthPx * size.HeightMm / size.WidthMm)}\" viewBox=\"0 0 {N(size.WidthMm)} {N(size.HeightMm)}\" class=\"{root}\" lang=\"{ReadersWords.Language}\" xml:lang=\"{ReadersWords.Language}\" role=\"group\" aria-labelledby=\"{_prefix}-title {_prefix}-desc\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title id=\"{_prefix}-title\">{title}</title>\n<desc id=\"{_prefix}-desc\">{description}</desc>\n")
            .Append("<style>\n").Append(_classes.Rules()).Append(_rules).Append(motion).Append("</style>\n")
            .Append(CultureInfo.InvariantCulture, $"<g id=\"{_prefix}-paused\"/>\n<g class=\"{_prefix}-film\">\n<rect class=\"{paper}\" width=\"{N(size.WidthMm)}\" height=\"{N(size.HeightMm)}\"/>\n")
            .Append(body).Append("</g>\n").Append(Links(size)).Append("</svg>\n");
        return file.ToString();
    }

    /// <summary>Pause and go on: links to places of this file, one of which is shown.</summary>
    private string Links(PaperSize size)
    {
        const double widthMm = 22;
        const double heightMm = 7;
        double x = size.WidthMm - widthMm - 3;
        double y = size.HeightMm - heightMm - 3;
        string ink = _options.Theme.Of(Ink.Outline).Hex;
        string Link(string kind, string to, string words) => string.Create(CultureInfo.InvariantCulture,
            $"<a class=\"{_prefix}-{kind}\" href=\"#{to}\"><rect x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(widthMm)}\" height=\"{N(heightMm)}\" rx=\"1.5\" fill=\"{_options.Theme.Paper.Hex}\" stroke=\"{ink}\" stroke-width=\"0.35\"/><text x=\"{N(x + (widthMm / 2))}\" y=\"{N(y + 4.7)}\" text-anchor=\"middle\" font-family=\"sans-serif\" font-size=\"3.6\" fill=\"{ink}\">{words}</text></a>\n");
        return Link("halt", $"{_prefix}-paused", "Pause") + Link("go", $"{_prefix}-going", "Go on");
    }

    private string Groups(Sheet[] sheets)
    {
        List<string> order = [];
        foreach (Sheet sheet in sheets)
        {
            // A group that is empty at the beginning has its place after the one that it follows.
            int at = 0;
            foreach (string id in sheet.Groups.Select(g => g.Id))
            {
                int known = order.IndexOf(id);
                if (known < 0)
                {
                    order.Insert(at, id);
                    known = at;
                }

                at = known + 1;
            }
        }

        StringBuilder body = new();
        SvgBody writer = new(sheets[0], _options, _classes);
        foreach (string id in order)
        {
            string[][] items = [.. sheets.Select(s => s.Groups.FirstOrDefault(g => string.Equals(g.Id, id, StringComparison.Ordinal))?.Items.Select(writer.Item).ToArray() ?? [])];
            string moves = RuleOf(id) is string rule ? $" class=\"{rule} {_prefix}-moves\"" : "";
            body.Append("<g").Append(moves).Append(">\n").Append(Items(items)).Append("</g>\n");
        }

        return body.ToString();
    }

    // The rule by which a group moves; null where it stands still.
    private string? RuleOf(string id) => Turning.Contains(id) ? $"{_prefix}-turn"
        : string.Equals(id, Sliding, StringComparison.Ordinal) ? $"{_prefix}-slide"
        : _levers.Any(l => string.Equals(l.Group, id, StringComparison.Ordinal)) ? $"{_prefix}-{id}" : null;

    /// <summary>Items that keep their places in the group are told apart one by one; else the group changes as a whole.</summary>
    private string Items(string[][] items)
    {
        StringBuilder body = new();
        if (items.All(i => i.Length == items[0].Length))
        {
            for (int k = 0; k < items[0].Length; k++)
            {
                Looks(body, [.. items.Select(i => i[k])]);
            }
        }
        else
        {
            Looks(body, [.. items.Select(i => string.Concat(i))]);
        }

        return body.ToString();
    }

    private void Looks(StringBuilder body, string[] looks)
    {
        string[] distinct = [.. looks.Distinct(StringComparer.Ordinal)];
        if (distinct.Length == 1)
        {
            body.Append(distinct[0]);
            return;
        }

        foreach (string look in distinct.Where(l => l.Length > 0))
        {
            body.Append("<g class=\"").Append(ShownWhile(i => string.Equals(looks[i], look, StringComparison.Ordinal))).Append("\">").Append(look.TrimEnd('\n')).Append("</g>\n");
        }
    }

    /// <summary>The classes of what is shown in some moments only.</summary>
    private string ShownWhile(Func<int, bool> isShown)
    {
        StringBuilder steps = new();
        bool? was = null;
        for (int i = 0; i < _startS.Length; i++)
        {
            if (isShown(i) != was)
            {
                was = isShown(i);
                steps.Append(CultureInfo.InvariantCulture, $"{Share(_startS[i])}{{visibility:{(was.Value ? "visible" : "hidden")}}}");
            }
        }

        string key = steps.ToString();
        if (!_shown.TryGetValue(key, out string? name))
        {
            name = string.Create(CultureInfo.InvariantCulture, $"{_prefix}-{_shown.Count + 1}");
            _shown.Add(key, name);
            _rules.Append(CultureInfo.InvariantCulture, $"@keyframes {name}{{{key}}}\n.{name}{{visibility:{(isShown(0) ? "visible" : "hidden")};animation:{name} {N(_endS)}s step-end infinite}}\n");
        }

        return $"{name} {_prefix}-moves";
    }

    private string Share(double timeS) => FixedPoint.Short(100 * timeS / _endS, 4) + "%";

    /// <summary>How wheel, cursor and levers move, and when nothing does.</summary>
    private string Motion()
    {
        StringBuilder turn = new();
        StringBuilder slide = new();
        IReadOnlyList<ReelFrame> frames = _reel.Frames;
        for (int i = 0; i < frames.Count; i++)
        {
            double before = Math.Floor((frames[i].TurnedRad + RoundingRad) / Angles.TurnRad);
            double endS = i + 1 < frames.Count ? _startS[i + 1] : _endS;
            Key(_startS[i], frames[i].TurnedRad, before);

            // Through home the cursor leaves at the right and is back at the left: the end of the one is not the beginning of the other.
            Key(endS - (i + 1 < frames.Count ? _endS * JumpShare : 0), frames[i].ToRad, before);
        }

        void Key(double atS, double turned, double turns)
        {
            turn.Append(CultureInfo.InvariantCulture, $"{Share(atS)}{{transform:rotate({FixedPoint.Short(-_reel.Sense * Angles.DegFromRad(turned), 3)}deg)}}");
            slide.Append(CultureInfo.InvariantCulture, $"{Share(atS)}{{transform:translate({FixedPoint.Short(((turned / Angles.TurnRad) - turns) * _reel.CursorTravelMm, 3)}px,0)}}");
        }

        string time = N(_endS);
        string levers = string.Concat(_levers.Select(l => LeverMotion.Rules(_reel, l, RuleOf(l.Group)!, (Share, _endS * JumpShare))));
        string axis = $"{N(_reel.Axis.X)}px {N(_reel.Size.HeightMm - _reel.Axis.Y)}px";
        return string.Create(CultureInfo.InvariantCulture, $$"""
            @keyframes {{_prefix}}-turn{{{turn}}}
            @keyframes {{_prefix}}-slide{{{slide}}}
            .{{_prefix}}-turn{transform-origin:{{axis}};animation:{{_prefix}}-turn {{time}}s linear infinite}
            .{{_prefix}}-slide{animation:{{_prefix}}-slide {{time}}s linear infinite}
            {{levers}}.{{_prefix}}-go{visibility:hidden}
            #{{_prefix}}-paused:target~.{{_prefix}}-film .{{_prefix}}-moves{animation-play-state:paused}
            #{{_prefix}}-paused:target~.{{_prefix}}-halt{visibility:hidden}
            #{{_prefix}}-paused:target~.{{_prefix}}-go{visibility:visible}
            @media (prefers-reduced-motion:reduce){.{{_prefix}}-moves{animation:none}.{{_prefix}}-halt,.{{_prefix}}-go{visibility:hidden}
            }

            """).Replace("\r\n", "\n", StringComparison.Ordinal);
    }
}
