using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Puts a sheet together: groups are opened in drawing order, each with a pen of its own.</summary>
/// <example>
/// <code>
/// SheetBuilder sheet = new(new SheetWords("wheel", "Wheel", "…"), PaperSize.A3);
/// Bounds space = SheetFrame.Draw(sheet, titleBlock);
/// SheetView view = SheetView.Fitted(outline.Bounds, space);
/// sheet.Group("copper", "Copper", "copper").In(view).Area(outline, Fill.Of(FillKind.Copper), LineStyle.Edge);
/// Sheet done = sheet.Build();
/// </code>
/// </example>
internal sealed class SheetBuilder
{
    private readonly SheetWords _words;
    private readonly List<GroupPen> _pens = [];
    private readonly List<string> _warnings = [];

    /// <summary>An empty sheet.</summary>
    public SheetBuilder(SheetWords words, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(size);
        _words = words;
        Size = size;
        Texts = new TextRegistry(Paper.Grown(-PaperMarginMm));
    }

    /// <summary>Height that letters keep to, mm: higher ones are written at this height where they stand. Set before anything is drawn.</summary>
    public double MostLetterMm { get; init; } = double.PositiveInfinity;

    /// <summary>Everything drawn so far.</summary>
    public IEnumerable<SheetItem> Items => _pens.SelectMany(p => p.Items);

    /// <summary>What everything drawn so far takes; null for nothing.</summary>
    public Bounds? Drawn => Items.Select(i => (Bounds?)i.Bounds).DefaultIfEmpty().Aggregate((a, b) => a!.Value.With(b!.Value));

    /// <summary>The paper.</summary>
    public PaperSize Size { get; }

    /// <summary>The whole paper.</summary>
    public Bounds Paper => new(0, 0, Size.WidthMm, Size.HeightMm);

    /// <summary>What is taken by texts.</summary>
    public TextRegistry Texts { get; }

    // Printers leave about 4 mm blank; texts keep inside that with any frame.
    private const double PaperMarginMm = 4;

    /// <summary>Opens a group after all that were opened before.</summary>
    public GroupPen Group(GroupName name)
    {
        GroupPen pen = new(name, Texts, MostLetterMm);
        _pens.Add(pen);
        return pen;
    }

    /// <summary>Opens a group after all that were opened before.</summary>
    /// <param name="id">Id, once on the sheet.</param>
    /// <param name="title">A few words for people.</param>
    /// <param name="role">What it is; groups of one meaning share it.</param>
    public GroupPen Group(string id, string title, string role) => Group(new GroupName(id, title, role));

    /// <summary>Reports what the drawing had to do without.</summary>
    public void Warn(string warning) => _warnings.Add(warning);

    /// <summary>The finished sheet: groups without content are left out.</summary>
    public Sheet Build()
    {
        SheetGroup[] groups = [.. _pens.Where(p => !p.IsEmpty).Select(p => p.Build())];
        return new Sheet(_words, Size, groups, _warnings);
    }
}

/// <summary>Draws into one group, in millimetres on the paper.</summary>
internal sealed class GroupPen
{
    private readonly List<object> _content = [];
    private readonly double _mostLetterMm;
    private int _numbered;

    internal GroupPen(GroupName name, TextRegistry texts, double mostLetterMm)
    {
        Name = name;
        Texts = texts;
        _mostLetterMm = mostLetterMm;
    }

    /// <summary>The group's name.</summary>
    public GroupName Name { get; }

    /// <summary>What is taken by texts on the whole sheet.</summary>
    public TextRegistry Texts { get; }

    /// <summary>Everything drawn into it so far, groups inside it included.</summary>
    public IEnumerable<SheetItem> Items => _content.SelectMany(c => c is GroupPen pen ? pen.Items : [(SheetItem)c]);

    internal bool IsEmpty => _content.TrueForAll(c => c is GroupPen { IsEmpty: true });

    /// <summary>Opens a group inside this one.</summary>
    public GroupPen Group(string id, string title, string role)
    {
        GroupPen pen = new(new GroupName(id, title, role), Texts, _mostLetterMm);
        _content.Add(pen);
        return pen;
    }

    /// <summary>Opens a group inside this one for a thing of which there are many, such as a leader with its words: its id is this group's and a number.</summary>
    public GroupPen Numbered(string title, string role) => Group(Invariant.Text($"{Name.Id}-{++_numbered}"), title, role);

    /// <summary>Draws an item as it is; texts are taken in the registry.</summary>
    public GroupPen Add(SheetItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        if (item is SheetText written)
        {
            SheetText text = written.NoHigherThan(_mostLetterMm);
            _content.Add(text);
            Texts.Take(text.Box);
            return this;
        }

        _content.Add(item);
        return this;
    }

    /// <summary>Draws items as they are.</summary>
    public GroupPen Add(IEnumerable<SheetItem> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        foreach (SheetItem item in items)
        {
            Add(item);
        }

        return this;
    }

    /// <summary>Draws an area; a solid mark in an ink for what stands over fillings has an edge of paper where none is given.</summary>
    public GroupPen Area(Outline shape, Fill fill, LineStyle? edge = null) =>
        Add(new SheetArea(shape, fill, edge ?? (fill.Kind == FillKind.Solid && LineStyle.HasHalo(fill.SolidInk) ? LineStyle.MarkHalo : null)));

    /// <summary>Draws an upright rectangle.</summary>
    public GroupPen Box(Bounds box, Fill fill, LineStyle? edge = null) =>
        Area(new Outline(Contour.Rectangle(new(box.MinX, box.MinY), new(box.MaxX, box.MaxY))), fill, edge);

    /// <summary>Draws a line along pieces; in an ink for what stands over fillings with an edge of paper.</summary>
    public GroupPen Line(IReadOnlyList<Piece> pieces, LineStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        if (LineStyle.HasHalo(style.Ink))
        {
            Add(new SheetLine(pieces, style.Halo));
        }

        return Add(new SheetLine(pieces, style));
    }

    /// <summary>Draws a closed line.</summary>
    public GroupPen Line(Contour contour, LineStyle style)
    {
        ArgumentNullException.ThrowIfNull(contour);
        return Line(contour.Pieces, style);
    }

    /// <summary>Draws a straight line.</summary>
    public GroupPen Line(Point from, Point to, LineStyle style) => Line([new Segment(from, to)], style);

    /// <summary>Draws a straight line through points.</summary>
    public GroupPen Polyline(LineStyle style, params IReadOnlyList<Point> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return Line([.. points.Skip(1).Select((p, i) => new Segment(points[i], p))], style);
    }

    /// <summary>Writes a line of text at the given place, even over what stands there already.</summary>
    public GroupPen Text(string text, TextSpot place, TextStyle style) => Add(new SheetText(text, place, style));

    /// <summary>Writes a line of text at the first place that is free.</summary>
    /// <returns>Whether there was one; if not, nothing is written.</returns>
    public bool TryText(string text, IEnumerable<TextSpot> places, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(places);
        foreach (TextSpot place in places)
        {
            SheetText candidate = new SheetText(text, place, style).NoHigherThan(_mostLetterMm);
            if (Texts.IsFree(candidate.Box))
            {
                Add(candidate);
                return true;
            }
        }

        return false;
    }

    /// <summary>Writes a text on a plate of paper colour, so that it is read on hatching.</summary>
    public GroupPen PlatedText(string text, TextSpot place, TextStyle style)
    {
        SheetText written = new SheetText(text, place, style).NoHigherThan(_mostLetterMm);
        return Area(new Outline(Contour.Polygon(written.Box.Grown(TextRegistry.AirMm).Corners)), Fill.Of(FillKind.Paper)).Add(written);
    }

    /// <summary>The same group, drawn into in millimetres of the model.</summary>
    public ViewPen In(SheetView view) => new(this, view);

    internal SheetGroup Build() =>
        new(Name, [.. _content.Where(c => c is not GroupPen { IsEmpty: true }).Select(c => c is GroupPen pen ? pen.Build() : (SheetNode)c)]);
}
