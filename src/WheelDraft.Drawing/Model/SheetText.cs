using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Where a text stands.</summary>
/// <param name="Anchor">The point that it is tied to.</param>
/// <param name="Along">Where along the text that point lies.</param>
/// <param name="Across">Where across the text that point lies.</param>
/// <param name="TurnRad">Reading direction, radians anticlockwise from the right.</param>
internal readonly record struct TextSpot(Point Anchor, TextAlong Along = TextAlong.Start, TextAcross Across = TextAcross.Baseline, double TurnRad = 0);

/// <summary>One line of text.</summary>
/// <remarks>Writers draw either <see cref="Strokes"/> or live text: font size <see cref="TextStyle.FontSizeMm"/>, anchored by
/// <see cref="TextSpot.Along"/> at <see cref="BaselineAnchor"/>. <see cref="Box"/> holds both.</remarks>
internal sealed class SheetText : SheetItem
{
    private readonly Lazy<LetteredText> _lettered;
    private readonly Lazy<TextBox> _box;

    /// <summary>A line of text at a place.</summary>
    /// <exception cref="ArgumentException">The text is empty, blank or has line breaks.</exception>
    public SheetText(string text, TextSpot place, TextStyle style)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(text);
        ArgumentNullException.ThrowIfNull(style);
        if (text.AsSpan().ContainsAny('\n', '\r'))
        {
            throw new ArgumentException("A text is one line; break it first.", nameof(text));
        }

        Text = ReadersWords.Read(text);
        Place = place;
        Style = style;
        _lettered = new(() => Lettering.Layout(Text, Style.HeightMm, Style.Weight));
        _box = new(BoxOf);
    }

    /// <summary>The characters.</summary>
    public string Text { get; }

    /// <summary>Anchor, alignment and direction.</summary>
    public TextSpot Place { get; }

    /// <summary>Size, weight and ink.</summary>
    public TextStyle Style { get; }

    /// <summary>The point on the base line at which start, middle or end of the text stands.</summary>
    public Point BaselineAnchor => Place.Anchor - (Vector.Polar(1, Place.TurnRad).Left * (Style.HeightMm * Place.Across switch
    {
        TextAcross.Middle => 0.5,
        TextAcross.Top => 1,
        _ => 0,
    }));

    /// <summary>Where on the paper the line of strokes begins: the left end of its base line.</summary>
    public Point StrokeStart => FrameFor(Lettering.Measure(Text, Style.HeightMm, Style.Weight).WidthMm).Of(Point.Origin);

    /// <summary>From a line of text that begins at the origin to the paper.</summary>
    /// <param name="widthMm">How wide it is.</param>
    public Placement FrameFor(double widthMm) => Placement.Translation(new Vector(StartOf(widthMm), 0)).Then(Frame);

    /// <summary>The letters as strokes on the paper, width <see cref="TextStyle.StrokeMm"/>, round ends.</summary>
    public IReadOnlyList<Piece> Strokes
    {
        get
        {
            Placement placement = FrameFor(_lettered.Value.WidthMm);
            return [.. _lettered.Value.Pieces.Select(p => p.Placed(placement))];
        }
    }

    /// <summary>Characters that the lettering lacks; each is drawn as a box.</summary>
    public IReadOnlyList<string> Missing => Lettering.Missing(Text);

    /// <summary>The rectangle that holds the text, as strokes and as live text in any common sans-serif font.</summary>
    public TextBox Box => _box.Value;

    /// <inheritdoc/>
    public override Bounds Bounds => Box.Bounds;

    /// <inheritdoc/>
    public override SheetItem Placed(Placement to) => new SheetText(ReadersWords.AsItStands(Text), Place with { Anchor = to.Of(Place.Anchor) }, Style with { HeightMm = Style.HeightMm * to.Scale });

    /// <summary>The same text at the same place, no higher than a height.</summary>
    public SheetText NoHigherThan(double heightMm) => Style.HeightMm > heightMm ? new(ReadersWords.AsItStands(Text), Place, Style with { HeightMm = heightMm }) : this;

    private Placement Frame => Placement.Turn(Place.TurnRad).Then(Placement.Translation(BaselineAnchor - Point.Origin));

    private double StartOf(double widthMm) => Place.Along switch
    {
        TextAlong.Middle => -widthMm / 2,
        TextAlong.End => -widthMm,
        _ => 0,
    };

    private TextBox BoxOf()
    {
        (double width, Bounds strokes) = Lettering.Measure(Text, Style.HeightMm, Style.Weight);
        Bounds live = LiveWidths.Box(Text, Style);
        double liveStart = StartOf(live.MinX + live.MaxX);
        double strokeStart = StartOf(width);
        Bounds both = new Bounds(liveStart + live.MinX, live.MinY, liveStart + live.MaxX, live.MaxY)
            .With(new Bounds(strokeStart + strokes.MinX, strokes.MinY, strokeStart + strokes.MaxX, strokes.MaxY));
        return new TextBox(Frame.Of(both.Centre), both.Width, both.Height, Place.TurnRad);
    }
}
