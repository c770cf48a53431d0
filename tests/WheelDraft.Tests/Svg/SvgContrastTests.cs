using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SkiaSharp;
using WheelDraft.Drawing;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Svg;

/// <summary>Contrast of every text and mark with what lies under it, measured from the SVG as it is written (WCAG 2.2: 1.4.3 asks 4.5 to 1 of
/// text, 1.4.11 asks 3 to 1 of what must be seen to understand a picture).</summary>
/// <remarks>The elements are painted one by one, without smoothing; before each its ground is read along its own line. The ground of a text
/// is all that was painted; that of a line or mark is fillings, for lines may cross, run into each other and lie on hatching, whose lines are
/// narrower; hatching is measured on its own filling.
/// Texts stand as strokes, at 4 pixels a millimetre.</remarks>
public sealed class SvgContrastTests
{
    private const double TextContrast = 4.5;
    private const double MarkContrast = 3;

    // A line that only crosses another one's edge or hatching is read as a whole: of what lies under it so much may be like it.
    private const double MostLost = 0.12;

    /// <summary>Looks that carry no meaning of their own.</summary>
    private static readonly (string Class, string Reason)[] Quiet =
    [
        ("-grid-", "grid and rules of charts and tables: numbers and rows stand by themselves"),
        ("-paper-", "edges of paper, which part a line from what lies under it"),
    ];

    /// <summary>Figures that stand on a line because no free place is looked for; each falls out of the list when it is mended, or the test fails.</summary>
    private static readonly (string Demo, string Start)[] Known =
    [
    ];

    // A third of the turn on; colours are the theme's, the sheets are the same in all of them.
    private static readonly Dictionary<string, Lazy<Sheet[]>> AtAMoment = Demos.Names.ToDictionary(
        n => n,
        n => new Lazy<Sheet[]>(() => [.. DesignSheets.Of(Demos.Of(n), new() { Moment = Demos.Of(n).Circuit.At(Angles.TurnRad / 3, 0) }).Where(s => s.Words.Name is "moment" or "assembly" or "circuit")]),
        StringComparer.Ordinal);

    public static TheoryData<string, string> Demo => [.. Demos.Names.SelectMany(_ => Theme.All, (n, t) => (n, t.Name))];

    [Theory]
    [MemberData(nameof(Demo))]
    public void Write_SheetsOfADemo_AreReadOnWhatLiesUnderThem(string demo, string theme)
    {
        string[] faults = [.. Demos.SheetsOf(demo).Concat(AtAMoment[demo].Value)
            .SelectMany(s => Faults(s, Theme.Named(theme)!)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        Assert.All(Known.Where(k => string.Equals(k.Demo, demo, StringComparison.Ordinal)), k => Assert.Contains(faults, f => f.StartsWith(k.Start, StringComparison.Ordinal)));
        faults = [.. faults.Where(f => !Known.Any(k => string.Equals(k.Demo, demo, StringComparison.Ordinal) && f.StartsWith(k.Start, StringComparison.Ordinal)))];
        Assert.True(faults.Length == 0, $"{demo}, {theme}:\n{string.Join('\n', faults.Take(40))}");
    }

    [Fact]
    public void Faults_OfALineOnItsOwnColour_AreFound()
    {
        SheetBuilder sheet = new(new("test", "Test", "Test"), PaperSize.A4);
        sheet.Group("under", "Under", "under").Box(new(20, 20, 80, 80), Fill.Of(FillKind.Net2)).Box(new(100, 20, 180, 80), Fill.Solid(Ink.Outline))
            .Add(new SheetLine(new(30, 50), new(70, 50), LineStyle.Wide(LineKind.ContinuousWide, Ink.Accent, 0.5)))
            .Text("dark", new(new(110, 60)), TextStyle.Label);
        Assert.Equal(2, Faults(sheet.Build(), Theme.Light).Count(f => f.StartsWith("test test-under", StringComparison.Ordinal)));
    }

    [Fact]
    public void Pattern_OfEveryNet_IsSeenOnItsOwnColour() =>
        Assert.All(Theme.All.SelectMany(_ => Enumerable.Range(0, Fill.NetLooks).Select(Fill.Net).Append(Fill.Of(FillKind.Live)), (t, f) => (t, f)), l =>
            Assert.True(l.t.OfPattern(l.f).ContrastWith(l.t.Of(l.f)) >= MarkContrast, $"{l.t.Name} {l.f.Kind}: {l.t.OfPattern(l.f).ContrastWith(l.t.Of(l.f)).ToString(CultureInfo.InvariantCulture)}"));

    private static IEnumerable<string> Faults(Sheet sheet, Theme theme)
    {
        XElement svg = XElement.Parse(SvgWriter.Write(sheet, new() { Theme = theme, Text = SvgText.Strokes }));
        using PaintedSvg painted = new(svg);
        foreach (XElement element in svg.Descendants().Where(e => e.Name.LocalName is "path" or "circle" or "rect"))
        {
            string[] classes = ((string?)element.Attribute("class") ?? "").Split(' ');
            bool isText = Array.Exists(classes, c => c.Contains("-letters-", StringComparison.Ordinal));
            double? worst = painted.Paint(element);
            if (!Quiet.Any(q => Array.Exists(classes, c => c.Contains(q.Class, StringComparison.Ordinal))) && worst < (isText ? TextContrast : MarkContrast))
            {
                string group = (string?)element.Parent!.Attribute("id") ?? "";
                yield return string.Create(CultureInfo.InvariantCulture, $"{sheet.Words.Name} {group}: {string.Join(' ', classes)} {(string?)element.Attribute("aria-label")} {worst:0.00}");
            }
        }
    }

    /// <summary>A picture that grows by one element at a time.</summary>
    private sealed class PaintedSvg : IDisposable
    {
        private const int PixelsPerMm = 4;

        private readonly SKBitmap _all;
        private readonly SKBitmap _fillings;
        private readonly SKCanvas _canvas;
        private readonly SKCanvas _ground;
        private readonly Dictionary<string, Dictionary<string, string>> _rules;

        // A sheet has a few colours, and a line is read at a thousand points.
        private readonly Dictionary<(SKColor, SKColor), double> _contrasts = [];

        internal PaintedSvg(XElement svg)
        {
            double[] box = [.. ((string)svg.Attribute("viewBox")!).Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
            _all = new((int)Math.Ceiling(box[2] * PixelsPerMm), (int)Math.Ceiling(box[3] * PixelsPerMm));
            _fillings = new(_all.Width, _all.Height);
            (_canvas, _ground) = (new(_all), new(_fillings));
            _canvas.Scale(PixelsPerMm);
            _ground.Scale(PixelsPerMm);
            string style = svg.Descendants().Single(e => e.Name.LocalName is "style").Value;
            _rules = Regex.Matches(style, @"\.(?<name>[\w-]+)\{(?<rules>[^}]*)\}", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)).ToDictionary(
                m => m.Groups["name"].Value,
                m => m.Groups["rules"].Value.Split(';').Select(r => r.Split(':')).ToDictionary(r => r[0], r => r[1], StringComparer.Ordinal),
                StringComparer.Ordinal);
        }

        public void Dispose()
        {
            _canvas.Dispose();
            _ground.Dispose();
            _all.Dispose();
            _fillings.Dispose();
        }

        /// <summary>Paints an element.</summary>
        /// <returns>Contrast of its stroke, or of a solid mark, with all but the worst share of what lies under it or with its edge of paper; null for fillings.</returns>
        internal double? Paint(XElement element)
        {
            double? worst = null;
            string classes = (string?)element.Attribute("class") ?? "";
            bool Is(string look) => classes.Contains(look, StringComparison.Ordinal);
            SKBitmap under = Is("-letters-") ? _all : _fillings;
            using SKPath path = PathOf(element);
            SKColor? stroke = Colour(element, "stroke", "none");
            if (Colour(element, "fill", "#000000") is SKColor fill)
            {
                worst = !Is("-solid-") || (stroke is not null && !Is("-paper-")) ? null
                    : stroke is SKColor paper ? Contrast(fill, paper) : WorstAlong(path, fill, under);
                using SKPaint paint = new() { Color = fill, IsAntialias = false };
                path.FillType = SKPathFillType.EvenOdd;
                _canvas.DrawPath(path, paint);
                (Is("-solid-") || Is("-dots-") ? null : _ground)?.DrawPath(path, paint);
            }

            if (stroke is SKColor colour)
            {
                worst ??= WorstAlong(path, colour, under);
                using SKPaint paint = Stroke(element, colour);
                _canvas.DrawPath(path, paint);
                (Is("-paper-") ? _ground : null)?.DrawPath(path, paint);
            }

            return worst;
        }

        private double? WorstAlong(SKPath path, SKColor colour, SKBitmap under)
        {
            const float stepMm = 0.3f;
            List<double> found = [];
            using SKPathMeasure measure = new(path);
            do
            {
                for (float at = stepMm / 3; at < measure.Length; at += stepMm)
                {
                    if (measure.GetPosition(at, out SKPoint point))
                    {
                        found.Add(Contrast(colour, At(under, point)));
                    }
                }
            }
            while (measure.NextContour());
            return Worst(found);
        }

        private static double? Worst(List<double> found)
        {
            found.Sort();
            return found.Count == 0 ? null : found[(int)(found.Count * MostLost)];
        }

        private static SKColor At(SKBitmap under, SKPoint point) =>
            under.GetPixel(Math.Clamp((int)(point.X * PixelsPerMm), 0, under.Width - 1), Math.Clamp((int)(point.Y * PixelsPerMm), 0, under.Height - 1));

        private double Contrast(SKColor a, SKColor b) => _contrasts.TryGetValue((a, b), out double known) ? known
            : _contrasts[(a, b)] = new Rgb(a.Red, a.Green, a.Blue).ContrastWith(new Rgb(b.Red, b.Green, b.Blue));

        private SKPaint Stroke(XElement element, SKColor colour) => new()
        {
            Color = colour,
            IsAntialias = false,
            Style = SKPaintStyle.Stroke,
            StrokeWidth = float.Parse(Property(element, "stroke-width") ?? "1", CultureInfo.InvariantCulture),
            StrokeJoin = SKStrokeJoin.Round,
            StrokeCap = Property(element, "stroke-linecap") is "round" ? SKStrokeCap.Round : SKStrokeCap.Butt,
        };

        private SKColor? Colour(XElement element, string property, string otherwise)
        {
            string value = Property(element, property) ?? otherwise;
            return value is "none" ? null : SKColor.Parse(value);
        }

        private string? Property(XElement element, string property) => ((string?)element.Attribute("class") ?? "").Split(' ')
            .Select(c => _rules.TryGetValue(c, out Dictionary<string, string>? rule) && rule.TryGetValue(property, out string? value) ? value : null)
            .LastOrDefault(v => v is not null);

        private static SKPath PathOf(XElement element)
        {
            double Number(string name) => double.Parse((string?)element.Attribute(name) ?? "0", CultureInfo.InvariantCulture);
            (double x, double y, double r, double w, double h) = (Number("cx"), Number("cy"), Number("r"), Number("width"), Number("height"));
            return SKPath.ParseSvgPathData(element.Name.LocalName switch
            {
                "circle" => string.Create(CultureInfo.InvariantCulture, $"M{x + r} {y}A{r} {r} 0 1 1 {x - r} {y}A{r} {r} 0 1 1 {x + r} {y}Z"),
                "rect" => string.Create(CultureInfo.InvariantCulture, $"M0 0H{w}V{h}H0Z"),
                _ => (string)element.Attribute("d")!,
            });
        }
    }
}
