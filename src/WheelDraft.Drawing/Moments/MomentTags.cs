using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A wiper's name over its state; or, where neither finds room, a number that a key explains.</summary>
/// <param name="Wiper">The wiper.</param>
/// <param name="At">The middle of the side that it is tied to.</param>
/// <param name="Along">Which side that is.</param>
/// <param name="Lines">Its name in lines, or its number.</param>
internal sealed record MomentTag(MomentWiper Wiper, Point At, TextAlong Along, IReadOnlyList<string> Lines)
{
    private const double PitchMm = 4;

    // Between a tag and what stands below its last line: descenders.
    private const double DescentMm = 1;

    private static readonly TextStyle NameStyle = new(2.5, TextWeight.Heavy);
    private static readonly TextStyle StateStyle = TextStyle.Small;

    /// <summary>Whether it is a number, without a state: the chart has that.</summary>
    public bool IsNumber { get; init; }

    /// <summary>A name in lines of at most a width, mm.</summary>
    public static IReadOnlyList<string> LinesOf(string name, double widthMm) => TextFit.Wrap(name, widthMm, NameStyle);

    private int Rows => Lines.Count + (IsNumber ? 0 : 1);

    private double HeightMm => ((Rows - 1) * PitchMm) + NameStyle.HeightMm;

    /// <summary>What it takes with the longest words that it ever shows.</summary>
    public TextBox Box
    {
        get
        {
            double width = Lines.Max(l => TextFit.WidthMm(l, NameStyle));
            width = IsNumber ? width : Math.Max(width, TextFit.WidthMm(Wiper.Output is null ? "not joined" : "closed, not joined", StateStyle));
            double left = Along == TextAlong.Start ? At.X : Along == TextAlong.End ? At.X - width : At.X - (width / 2);
            double half = (HeightMm + DescentMm) / 2;
            return TextBox.Of(new Bounds(left, At.Y - half, left + width, At.Y + half));
        }
    }

    /// <summary>Writes it.</summary>
    public void Draw(GroupPen pen, MomentView moment)
    {
        double low = -(HeightMm - DescentMm) / 2;
        for (int i = 0; i < Lines.Count; i++)
        {
            pen.Text(Lines[i], new(At + new Vector(0, low + ((Rows - 1 - i) * PitchMm)), Along), NameStyle);
        }

        if (!IsNumber)
        {
            string net = moment.Word(moment.Net(Wiper.Net));
            string state = Wiper.Output is string output ? $"{(moment.IsMade(output) ? "closed" : "open")}, {net}" : net;
            pen.Text(state, new(At + new Vector(0, low), Along), StateStyle);
        }
    }
}

/// <summary>Finds places for tags: beside the outer part of each wiper, clear of wipers, wheel and other tags.</summary>
internal sealed class MomentTags(SheetView view, IReadOnlyList<MomentWiper> wipers, double carrierMm, Bounds area)
{
    private const double NearestMm = 2;
    private const double FarthestMm = 16;
    private const double StepMm = 1;
    private const double InwardShare = 0.6;

    private readonly TextRegistry _texts = new(area);

    /// <summary>The tags that find a place, in the order of the wipers.</summary>
    /// <param name="numbers">Whether a wiper whose name finds none gets its number among all wipers, from 1.</param>
    public IReadOnlyList<MomentTag> Place(bool numbers)
    {
        foreach ((Point from, Point to) in wipers.SelectMany(w => w.Outline).SelectMany(c => c.Placed(view.ToPaper).Pieces).SelectMany(TextRegistry.Chords))
        {
            _texts.TakeLine(from, to);
        }

        foreach ((Point from, Point to) in Contour.Circle(Centre, WheelMm).Pieces.SelectMany(TextRegistry.Chords))
        {
            _texts.TakeLine(from, to);
        }

        // The index at home.
        const double indexMm = 5;
        Point index = Centre + new Vector(WheelMm, 0);
        _texts.Block(new Bounds(index.X, index.Y - (indexMm / 2), index.X + indexMm, index.Y + (indexMm / 2)));
        List<MomentTag> tags = [];
        for (int i = 0; i < wipers.Count; i++)
        {
            string number = Invariant.Text($"{i + 1}");
            IEnumerable<MomentTag> ways = Forms(wipers[i].Name).SelectMany(lines => Candidates(wipers[i], lines));
            ways = numbers ? ways.Concat(Candidates(wipers[i], [number]).Select(t => t with { IsNumber = true })) : ways;
            if (ways.FirstOrDefault(t => _texts.IsFree(t.Box) && t.Box.Centre.DistanceTo(Centre) > WheelMm) is MomentTag tag)
            {
                _texts.Take(tag.Box);
                tags.Add(tag);
            }
        }

        return tags;
    }

    // In one line, and in lines of less and less width where that makes more of them.
    private static IEnumerable<IReadOnlyList<string>> Forms(string name)
    {
        int lines = 0;
        foreach (double width in (double[])[double.MaxValue, 40, 28, 20])
        {
            IReadOnlyList<string> form = MomentTag.LinesOf(name, width);
            if (form.Count > lines)
            {
                lines = form.Count;
                yield return form;
            }
        }
    }

    private Point Centre => view.Of(Point.Origin);

    private double WheelMm => view.OnPaperMm(carrierMm);

    // Nearer before farther, from the foot inward, on either side and beyond the foot.
    private IEnumerable<MomentTag> Candidates(MomentWiper wiper, IReadOnlyList<string> lines)
    {
        Point foot = view.Of(wiper.Foot);
        Vector inward = view.Of(wiper.Tip) - foot;
        Vector along = inward.Unit();
        return
            from off in Enumerable.Range(0, (int)((FarthestMm - NearestMm) / StepMm)).Select(i => NearestMm + (i * StepMm))
            from share in Enumerable.Range(0, 7).Select(i => i * InwardShare / 6)
            from side in (Vector[])[along.Left, -along.Left, -along]
            from how in Ways(side)
            select new MomentTag(wiper, foot + (inward * share) + (side * off), how, lines);
    }

    // A tag is tied by the side that is turned to its wiper; above and below, by its middle or either end.
    private static TextAlong[] Ways(Vector side) =>
        side.X > 0.5 ? [TextAlong.Start] : side.X < -0.5 ? [TextAlong.End] : [TextAlong.Middle, TextAlong.Start, TextAlong.End];
}
