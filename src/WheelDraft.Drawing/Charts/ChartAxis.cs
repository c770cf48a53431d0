using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>On which side of its line an axis is labelled.</summary>
internal enum AxisSide
{
    /// <summary>Labels above the line.</summary>
    Above,

    /// <summary>Labels below the line.</summary>
    Below,
}

/// <summary>A level axis: values from left to right.</summary>
/// <param name="From">Value at the left end.</param>
/// <param name="To">Value at the right end, above <paramref name="From"/>.</param>
/// <param name="LeftMm">Left end on the paper, mm.</param>
/// <param name="RightMm">Right end on the paper, mm.</param>
internal sealed record ChartAxis(double From, double To, double LeftMm, double RightMm)
{
    private const double TickMm = 1.8;
    private const double LabelGapMm = 1;

    // Between neighbouring labels: two small letters.
    private const double LabelAirMm = 3;

    /// <summary>How people count its values.</summary>
    public StepKind Steps { get; init; }

    /// <summary>How a value is written.</summary>
    public Func<double, string> Label { get; init; } = v => DrawingNumbers.Trimmed(v, 6);

    /// <summary>Style of the labels.</summary>
    public TextStyle Style { get; init; } = TextStyle.Small;

    /// <summary>Where a value lies, mm on the paper.</summary>
    public double Of(double value) => LeftMm + ((value - From) / (To - From) * (RightMm - LeftMm));

    /// <summary>Values that are labelled: as many as stand side by side.</summary>
    public IReadOnlyList<double> Labelled()
    {
        double perMm = (To - From) / (RightMm - LeftMm);
        double step = NiceSteps.AtLeast(Steps, perMm * 4);
        while (true)
        {
            IReadOnlyList<double> ticks = NiceSteps.Between(From, To, step);
            double widest = ticks.Count == 0 ? 0 : ticks.Max(t => TextFit.WidthMm(Label(t), Style));
            if (ticks.Count < 2 || widest + LabelAirMm <= step / perMm)
            {
                return ticks;
            }

            step = NiceSteps.AtLeast(Steps, step * 1.01);
        }
    }

    /// <summary>The first of some titles that is no longer than the axis, less what its ends are kept free for; else the last.</summary>
    public string Fitting(double endsMm, params IReadOnlyList<string> titles) => titles.FirstOrDefault(t => TextFit.WidthMm(t, Style) <= RightMm - LeftMm - endsMm) ?? titles[^1];

    /// <summary>Draws line, ticks, labels and a title at the right end's side.</summary>
    /// <param name="pen">The pen.</param>
    /// <param name="y">Height of the line on the paper, mm.</param>
    /// <param name="side">Where the labels stand.</param>
    /// <param name="title">What is counted, and in what unit; written in the middle beyond the labels.</param>
    /// <returns>The height on the paper that labels and title reach to, mm.</returns>
    public double Draw(GroupPen pen, double y, AxisSide side, string title)
    {
        ArgumentNullException.ThrowIfNull(pen);
        double out1 = side == AxisSide.Above ? 1 : -1;
        pen.Line(new Point(LeftMm, y), new Point(RightMm, y), LineStyle.Thin);
        TextAcross across = side == AxisSide.Above ? TextAcross.Baseline : TextAcross.Top;
        foreach (double tick in Labelled())
        {
            double x = Of(tick);
            pen.Line(new Point(x, y), new Point(x, y + (out1 * TickMm)), LineStyle.Thin);
            pen.Text(Label(tick), new(new(x, y + (out1 * (TickMm + LabelGapMm))), TextAlong.Middle, across), Style);
        }

        double beyond = TickMm + LabelGapMm + Style.HeightMm + 2.4;
        pen.Text(title, new(new((LeftMm + RightMm) / 2, y + (out1 * beyond)), TextAlong.Middle, across), Style);
        return y + (out1 * (beyond + Style.HeightMm));
    }

    /// <summary>Draws grid lines at the labelled values.</summary>
    public void DrawGrid(GroupPen pen, double bottomMm, double topMm)
    {
        ArgumentNullException.ThrowIfNull(pen);
        foreach (double tick in Labelled())
        {
            pen.Line(new Point(Of(tick), bottomMm), new Point(Of(tick), topMm), LineStyle.Grid);
        }
    }
}
