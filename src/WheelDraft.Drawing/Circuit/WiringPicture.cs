using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Draws a wiring layout: bars, leads, symbols and their words.</summary>
internal sealed class WiringPicture
{
    /// <summary>How a warning of a name without room begins.</summary>
    public const string NoRoom = "The wiring diagram has no room for";

    // The ring over a contact and a name of a line over that, mm above the lead; names of more lines reach higher.
    private const double LeastAboveMm = 16;
    private const double NameGapMm = 1.2;

    // A row of its own without names still keeps off the row above.
    private const double LeastRowMm = 6;

    // From the lead to the words below it.
    private const double BelowMm = 6.5;
    private const double LinePitchMm = 2.5 * 1.6;
    private const double RungAirMm = 3;

    // Rails stand beyond the first and last rung, and carry their names.
    private const double RailBeyondMm = 4;
    private const double RailNameMm = 6;
    private const double MarginMm = 6;

    // Words keep so far from the bars on either side of their symbol.
    private const double WordAirMm = 1.5;

    private static readonly LineStyle Wire = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.35);
    private static readonly LineStyle Rail = LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 0.7);
    private static readonly LineStyle Copper = LineStyle.Wide(LineKind.ContinuousWide, Ink.Copper, 1.4);

    private readonly WiringLayout _layout;
    private readonly IReadOnlyList<double> _levels;
    private readonly double _aboveMm;
    private readonly double _rungMm;
    private readonly Dictionary<double, (double AboveMm, double BelowMm)> _rows;
    private readonly MomentView? _moment;

    /// <summary>Measures a layout.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="moment">The moment to show; null for everything at rest.</param>
    public WiringPicture(WiringLayout layout, MomentView? moment)
    {
        _layout = layout;
        _moment = moment;
        _levels = [.. layout.Symbols.Select(s => s.YMm).Concat(layout.Bars.SelectMany(b => new[] { b.TopMm, b.BottomMm })).Distinct().Order()];
        int lines = layout.Symbols.Max(s => (int?)WordLines(s).Count) ?? 0;
        _aboveMm = layout.Symbols.Select(NameTopMm).Prepend(LeastAboveMm).Max();
        ILookup<double, WiringSymbol> on = layout.Symbols.ToLookup(s => s.YMm);
        _rows = _levels.ToDictionary(l => l, l => (
            on[l].Select(NameTopMm).Prepend(LeastRowMm).Max(),
            BelowMm + (on[l].Select(s => WordLines(s).Count).Prepend(1).Max() * LinePitchMm) + RungAirMm));
        _rungMm = _aboveMm + BelowMm + (Math.Max(1, lines) * LinePitchMm) + RungAirMm;
    }

    /// <summary>Whether the motor's case is shown joined to protective earth.</summary>
    public bool HasEarthedCase { get; init; }

    /// <summary>Width of a column, mm.</summary>
    public double WidthMm => _layout.WidthMm - _layout.Bars.Min(b => b.XMm) + (2 * MarginMm);

    /// <summary>Whether it finds room in one column.</summary>
    public bool Fits(Bounds area) => ColumnsIn(area) is { Count: 1 };

    /// <summary>Whether it finds room in as many columns as it takes.</summary>
    public bool FitsFolded(Bounds area) => ColumnsIn(area) is not null;

    /// <summary>How many columns it takes in an area; the least where it finds no room.</summary>
    public int ColumnCount(Bounds area) => (ColumnsIn(area) ?? AllIn(_levels.Count)).Count;

    /// <summary>Draws it, in the middle of an area.</summary>
    public void Draw(SheetBuilder sheet, Bounds area)
    {
        WiringPlace place = PlaceIn(area);
        GroupPen bars = sheet.Group("nets", "Nets", "nets");
        foreach (WiringBar bar in _layout.Bars)
        {
            Bar(bars, bar, place);
        }

        GroupPen leads = sheet.Group("leads", "Leads", "leads");
        GroupPen symbols = sheet.Group("symbols", "Contacts, inputs and loads", "symbols");
        GroupPen names = sheet.Group("names", "Names and conditions", "names");
        foreach (WiringSymbol symbol in _layout.Symbols)
        {
            Symbol(leads, symbols, symbol, place);
        }

        foreach (WiringSymbol symbol in _layout.Symbols)
        {
            Words(names, symbol, place);
        }

        GroupPen labels = sheet.Group("net-names", "Names of the nets", "names");
        foreach (WiringBar bar in _layout.Bars)
        {
            Label(sheet, labels, bar, place);
        }
    }

    private WiringColumns AllIn(int rungs) =>
        WiringColumns.Of(_levels, Math.Max(1, rungs), [.. _layout.Bars.Where(b => !IsRail(b) && !b.IsWheel)]);

    // Null where even columns side by side are too wide, or an area too low for a rung.
    private WiringColumns? ColumnsIn(Bounds area)
    {
        if (AllIn(_levels.Count) is { } one && HeightOf(one) <= area.Height && WidthMm <= area.Width)
        {
            return one;
        }

        int rungs = (int)Math.Floor((area.Height - RailNameMm - RailBeyondMm) / _rungMm);
        return rungs < 1 ? null : AllIn(rungs) is { } columns && columns.Count * WidthMm <= area.Width ? columns : null;
    }

    /// <summary>Height in one column, mm.</summary>
    public double HeightMm => HeightOf(AllIn(_levels.Count));

    private WiringPlace PlaceIn(Bounds area)
    {
        WiringColumns columns = ColumnsIn(area) ?? AllIn(_levels.Count);
        double width = columns.Count * WidthMm;
        double height = HeightOf(columns);
        double left = area.Centre.X - (width / 2) + MarginMm - _layout.Bars.Min(b => b.XMm);
        double top = Math.Min(area.MaxY, area.Centre.Y + (height / 2)) - RailNameMm - RailBeyondMm;
        return new(new(left, top - columns.Levels.Max(c => _rows[c[0]].AboveMm)), [.. columns.Levels.Select(Drops)], WidthMm, columns);
    }

    // Rows are as high as what stands on them asks; the first rungs of all columns lie on one level.
    private double HeightOf(WiringColumns columns) =>
        RailNameMm + RailBeyondMm + columns.Levels.Max(c => _rows[c[0]].AboveMm) + columns.Levels.Max(c => Drops(c)[^1] + _rows[c[^1]].BelowMm);

    private IReadOnlyList<double> Drops(IReadOnlyList<double> levels)
    {
        List<double> drops = [0];
        for (int i = 1; i < levels.Count; i++)
        {
            drops.Add(drops[^1] + _rows[levels[i - 1]].BelowMm + _rows[levels[i]].AboveMm);
        }

        return drops;
    }

    private bool IsRail(WiringBar bar) => ReferenceEquals(bar, _layout.Bars[0]) || ReferenceEquals(bar, _layout.Bars[1]);

    private void Bar(GroupPen pen, WiringBar bar, WiringPlace place)
    {
        foreach ((Point top, Point bottom) in IsRail(bar) ? Rails(bar, place) : place.Parts(bar).Select(p => bar.IsWheel ? (p.Top + new Vector(0, 3), p.Bottom - new Vector(0, 3)) : p))
        {
            if (top.DistanceTo(bottom) > Tolerances.JoinMm)
            {
                pen.Line(top, bottom, LineOf(bar, IsRail(bar) ? Rail : bar.IsWheel ? Copper : Wire));
                pen.Texts.TakeLine(top, bottom);
            }
        }
    }

    // Rails come down from their names to the last rung that joins them, in the columns where one does: a bar that ends in nothing misleads.
    private IEnumerable<(Point Top, Point Bottom)> Rails(WiringBar bar, WiringPlace place)
    {
        int at = _layout.Bars.TakeWhile(b => !ReferenceEquals(b, bar)).Count();
        foreach (IGrouping<int, int> column in _layout.Symbols.Where(s => s.LeftBar == at || s.RightBar == at).Select(s => place.Columns.At(s.YMm)).GroupBy(r => r.Column, r => r.Rung).OrderBy(g => g.Key))
        {
            yield return (place.On(bar.XMm, column.Key, 0) + new Vector(0, place.Columns.Levels.Max(c => _rows[c[0]].AboveMm) + RailBeyondMm), place.On(bar.XMm, column.Key, column.Max()));
        }
    }

    private void Label(SheetBuilder sheet, GroupPen pen, WiringBar bar, WiringPlace place)
    {
        if (IsRail(bar))
        {
            foreach ((Point rail, _) in Rails(bar, place))
            {
                pen.Text(bar.Net, new(rail + new Vector(0, 1.5), TextAlong.Middle), new TextStyle(3.5, TextWeight.Heavy));
            }

            return;
        }

        foreach ((Point top, Point bottom) in place.Parts(bar))
        {
            Label(sheet, pen, bar, top, bottom);
        }
    }

    private void Label(SheetBuilder sheet, GroupPen pen, WiringBar bar, Point top, Point bottom)
    {
        string words = bar.IsWheel ? $"wheel, {bar.Net}" : bar.Net;
        TextStyle style = new(2.5, TextWeight.Regular, Ink.Quiet);
        double beyond = bar.IsWheel ? 4 : 1.5;
        const double besideMm = 1.5;

        // Names stand over their wires wherever there is room over one.
        TextSpot[] places =
        [
            new(new(top.X + besideMm, top.Y + 1.2)),
            new(new(top.X - besideMm, top.Y + 1.2), TextAlong.End),
            .. Enumerable.Range(1, 10).SelectMany(i => new[] { -1.5 * i, 1.5 * i }).Select(x => new TextSpot(new(top.X + x, top.Y + 1.2), TextAlong.Middle)),
            new(new(bottom.X + besideMm, bottom.Y + 1.2)),
            new(new(bottom.X - besideMm, bottom.Y + 1.2), TextAlong.End),
            new(new(top.X, top.Y + beyond), TextAlong.Middle),
            new(new(bottom.X, bottom.Y - beyond), TextAlong.Middle, TextAcross.Top),
            new(new(bottom.X + besideMm, bottom.Y - 1.2), TextAlong.Start, TextAcross.Top),
            new(new(bottom.X - besideMm, bottom.Y - 1.2), TextAlong.End, TextAcross.Top),
            new(new(top.X + besideMm, top.Y - 4), TextAlong.Start, TextAcross.Top),
            new(new(top.X - besideMm, top.Y - 4), TextAlong.End, TextAcross.Top),
            new(new(top.X, top.Y - besideMm), TextAlong.Middle, TextAcross.Top),
            new(new(top.X + 4, top.Y - besideMm), TextAlong.Middle, TextAcross.Top),
        ];

        // A net that finds no room as a rule has its contact's name, which stands beside it; any other is written farther off.
        bool isTold = _layout.Symbols.Any(s => string.Equals(s.Name, bar.Net, StringComparison.OrdinalIgnoreCase));
        if (!pen.TryText(words, places, style) && !isTold && !pen.TryText(words, AlongBar(top, bottom), style) && !TryLines(pen, words, bottom, style))
        {
            sheet.Warn($"{NoRoom} the name of net '{bar.Net}'.");
        }
    }

    /// <summary>A name longer than its rung, in lines, under its lead or over it.</summary>
    private bool TryLines(GroupPen pen, string words, Point at, TextStyle style)
    {
        const double widthMm = 24;
        const double stepMm = 2;
        IReadOnlyList<string> lines = TextFit.Wrap(words, widthMm, style);
        IEnumerable<SheetText[]> blocks =
            from off in Enumerable.Range(0, (int)(_rungMm / stepMm)).SelectMany(i => new[] { -1.5 - (i * stepMm), 1.5 + (i * stepMm) + ((lines.Count - 1) * LinePitchMm) + style.HeightMm })
            from aside in (double[])[0, 4, -4, 8, -8, 12, -12]
            select (SheetText[])[.. lines.Select((line, i) => new SheetText(line, new(new(at.X + aside, at.Y + off - (i * LinePitchMm)), TextAlong.Middle, TextAcross.Top), style))];
        SheetText[]? free = blocks.FirstOrDefault(b => b.All(t => pen.Texts.IsFree(t.Box)));
        pen.Add(free ?? []);
        return free is not null;
    }

    /// <summary>Places for a long name: upright along its bar, then level on either side, farther and farther off.</summary>
    private static IEnumerable<TextSpot> AlongBar(Point top, Point bottom)
    {
        const double besideMm = 1.2;
        const double stepMm = 3;
        const double mostMm = 36;
        for (double y = top.Y + stepMm; y >= bottom.Y - stepMm; y -= stepMm)
        {
            yield return new(new(top.X - besideMm, y), TextAlong.Middle, TextAcross.Baseline, Math.PI / 2);
            yield return new(new(top.X + besideMm, y), TextAlong.Middle, TextAcross.Top, Math.PI / 2);
        }

        for (double off = stepMm; off <= mostMm; off += stepMm)
        {
            foreach (double side in (double[])[1, -1])
            {
                TextAlong along = side > 0 ? TextAlong.Start : TextAlong.End;
                yield return new(new(top.X + (side * besideMm), top.Y + off), along);
                yield return new(new(top.X + (side * besideMm), bottom.Y - off), along, TextAcross.Top);
            }
        }
    }

    private void Symbol(GroupPen leads, GroupPen pen, WiringSymbol symbol, WiringPlace place)
    {
        Point centre = place.Of(symbol.CentreMm, symbol.YMm);
        Point left = place.Of(symbol.LeftMm, symbol.YMm);
        Point right = place.Of(symbol.RightMm, symbol.YMm);
        double half = WiringSigns.HalfMm(symbol.Kind);
        leads.Line(left, centre - new Vector(half, 0), LineOf(_layout.Bars[symbol.LeftBar], Wire));
        leads.Line(centre + new Vector(half, 0), right, LineOf(_layout.Bars[symbol.RightBar], Wire));
        leads.Texts.TakeLine(left, right);
        WiringSigns.Draw(pen, symbol.Kind, centre, Look(symbol));
        if (symbol.Kind is WiringKind.Load or WiringKind.Motor or WiringKind.Feed)
        {
            // Names of nets keep off its body.
            double high = WiringSigns.AboveMm(symbol.Kind);
            pen.Texts.Block(new Bounds(centre.X - half, centre.Y - high, centre.X + half, centre.Y + high));
        }

        if (symbol.Kind == WiringKind.Motor && HasEarthedCase)
        {
            WiringSigns.EarthedCase(pen, centre);
        }

        Dot(leads, symbol.LeftBar, left);
        Dot(leads, symbol.RightBar, right);
    }

    // How a net's lines look: plain at rest, by its state at a moment.
    private LineStyle LineOf(WiringBar bar, LineStyle plain) =>
        _moment is MomentView moment ? MomentView.WireOf(bar.IsWheel ? moment.WheelCopper : moment.Net(bar.Net), plain) : plain;

    private WiringLook Look(WiringSymbol symbol) => _moment is not MomentView moment ? WiringLook.AtRest with { IsClosed = symbol.IsAlways } : symbol.Kind switch
    {
        WiringKind.Ring => new(moment.IsMade(symbol.Name), Fill.Of(FillKind.Paper)),
        WiringKind.Input => new(moment.IsClosed(symbol.Name), Fill.Of(FillKind.Paper)),
        WiringKind.Load or WiringKind.Motor => new(false, MomentView.FillOf(moment.Load(symbol.Name))),
        _ => WiringLook.AtRest,
    };

    // What is written below a symbol: at a moment its state; angles and powers are shown by the diagram at rest.
    private string WordsOf(WiringSymbol symbol) => _moment is not MomentView moment ? symbol.Words : symbol.Kind switch
    {
        WiringKind.Ring => moment.IsMade(symbol.Name) ? "closed" : "open",
        WiringKind.Input => string.Join("; ", ((string[])[moment.IsClosed(symbol.Name) ? "closed" : "open", symbol.Words]).Where(w => w.Length > 0)),
        WiringKind.Load or WiringKind.Motor => moment.LoadWords(symbol.Name),
        _ => symbol.Words,
    };

    // A dot where three ways meet.
    private void Dot(GroupPen pen, int bar, Point at)
    {
        const double dotMm = 0.7;
        int ways = _layout.Symbols.Count(s => s.LeftBar == bar || s.RightBar == bar);
        if (ways > 2 || IsRail(_layout.Bars[bar]))
        {
            pen.Area(new Outline(Contour.Circle(at, dotMm)), Fill.Solid(Ink.Outline));
        }
    }

    private double RoomMm(WiringSymbol symbol)
    {
        IEnumerable<double> bars = _layout.Bars.Where(b => IsRail(b) || (b.TopMm <= symbol.YMm && b.BottomMm >= symbol.YMm)).Select(b => Math.Abs(b.XMm - symbol.CentreMm));
        return 2 * (bars.Where(d => d > 0).DefaultIfEmpty(20).Min() - WordAirMm);
    }

    private FittedText Name(WiringSymbol symbol) => TextFit.Into(symbol.Name, RoomMm(symbol), TextStyle.Small, 2);

    /// <summary>How high a symbol's name reaches over its lead, mm, with air above it.</summary>
    private double NameTopMm(WiringSymbol symbol) =>
        UpMm(symbol) + ((Name(symbol).Lines.Count + (IsAboveName(symbol) ? 1 : 0)) * LinePitchMm);

    // Names of loads leave room under them for the name of a net on the lead.
    private static double UpMm(WiringSymbol symbol) => Math.Max(WiringSigns.AboveMm(symbol.Kind) + NameGapMm, LeastNameMm);

    private const double LeastNameMm = 5.2;

    // Beside the ring of a contact there is room for its designation; others carry it over their names.
    private static bool IsAboveName(WiringSymbol symbol) => symbol.Designation.Length > 0 && symbol.Kind != WiringKind.Ring;

    // Each on-period of a contact has a line of its own, or one for its angles and one for its seconds.
    private IReadOnlyList<string> WordLines(WiringSymbol symbol)
    {
        double room = RoomMm(symbol);
        string[] parts = symbol.Kind == WiringKind.Ring ? WordsOf(symbol).Split("; ") : [WordsOf(symbol)];
        return [.. parts.Where(p => p.Length > 0).SelectMany(p => symbol.Kind == WiringKind.Ring && TextFit.WidthMm(p, TextStyle.Caption) > room ? p.Split(" = ") : [p]).SelectMany(p => TextFit.Wrap(p, room, TextStyle.Caption))];
    }

    private void Words(GroupPen pen, WiringSymbol symbol, WiringPlace place)
    {
        Point centre = place.Of(symbol.CentreMm, symbol.YMm);
        FittedText name = Name(symbol);
        double up = UpMm(symbol);
        for (int i = 0; i < name.Lines.Count; i++)
        {
            double y = centre.Y + up + ((name.Lines.Count - 1 - i) * LinePitchMm);
            pen.Text(name.Lines[i], new(new(centre.X, y), TextAlong.Middle), name.Style);
        }

        if (symbol.Designation.Length > 0)
        {
            TextSpot spot = IsAboveName(symbol)
                ? new(new(centre.X, centre.Y + up + (name.Lines.Count * LinePitchMm)), TextAlong.Middle)
                : new(WiringSigns.BesideRing(centre, Look(symbol).IsClosed), TextAlong.Start, TextAcross.Middle);
            pen.Text("-" + symbol.Designation, spot, TextStyle.Small);
        }

        IReadOnlyList<string> words = WordLines(symbol);
        for (int i = 0; i < words.Count; i++)
        {
            pen.Text(words[i], new(new(centre.X, centre.Y - BelowMm - (i * LinePitchMm)), TextAlong.Middle, TextAcross.Top), TextStyle.Caption);
        }
    }
}

/// <summary>How a symbol stands.</summary>
/// <param name="IsClosed">Whether a contact or input is closed.</param>
/// <param name="Body">The filling of a load.</param>
internal readonly record struct WiringLook(bool IsClosed, Fill Body)
{
    /// <summary>Open, off.</summary>
    public static WiringLook AtRest => new(false, Fill.Of(FillKind.Paper));
}

/// <summary>The graphic symbols, after IEC 60617 (from memory).</summary>
internal static class WiringSigns
{
    private const double ContactHalfMm = 5;
    private const double LoadHalfMm = 6;
    private const double LoadHighMm = 4.6;
    private const double MotorMm = 5;
    private const double RingMm = 1.9;
    private const double SlipRingMm = 3;
    private const double BrushMm = 1.4;
    private const double RingAtMm = 7.6;

    private static readonly LineStyle Line = LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 0.5);

    /// <summary>From the middle of a symbol to where its leads begin, mm.</summary>
    public static double HalfMm(WiringKind kind) => kind switch
    {
        WiringKind.Load => LoadHalfMm,
        WiringKind.Motor => MotorMm,
        WiringKind.Feed => SlipRingMm + BrushMm,
        _ => ContactHalfMm,
    };

    /// <summary>How high a symbol reaches over its leads, mm.</summary>
    public static double AboveMm(WiringKind kind) => kind switch
    {
        WiringKind.Load => LoadHighMm / 2,
        WiringKind.Motor => MotorMm,
        WiringKind.Ring => RingAtMm + RingMm,
        WiringKind.Feed => SlipRingMm,
        _ => 5,
    };

    /// <summary>Right of a contact's ring, where its designation begins.</summary>
    public static Point BesideRing(Point centre, bool isClosed) =>
        new(centre.X - (ContactHalfMm / 2) + ((isClosed ? ContactHalfMm + 0.4 : ContactHalfMm - 0.8) / 2) + RingMm + 1.2, centre.Y + RingAtMm);

    /// <summary>A metal case joined to protective earth: from the lower right of a motor's circle down to the sign (IEC 60417-5019, from memory).</summary>
    public static void EarthedCase(GroupPen pen, Point centre)
    {
        Point from = centre + Vector.Polar(MotorMm, Angles.RadFromDeg(-35));
        Point bend = new(centre.X + EarthAtMm, from.Y);
        Point foot = bend - new Vector(0, 2.6);
        pen.Polyline(LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.35), from, bend, foot);
        foreach ((double down, double half) in ((double, double)[])[(0, 1.8), (0.9, 1.2), (1.8, 0.6)])
        {
            pen.Line(foot + new Vector(-half, -down), foot + new Vector(half, -down), Line);
        }

        Point middle = foot - new Vector(0, 0.9);
        pen.Line(Contour.Circle(middle, EarthMm), LineStyle.Thin);
        pen.Text("PE", new(middle + new Vector(EarthMm + 1, 0), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
        pen.Texts.Block(new Bounds(middle.X - EarthMm, middle.Y - EarthMm, middle.X + EarthMm, from.Y));
    }

    private const double EarthAtMm = 9.5;
    private const double EarthMm = 2.5;

    /// <summary>Draws a symbol about a point.</summary>
    public static void Draw(GroupPen pen, WiringKind kind, Point centre, WiringLook look)
    {
        switch (kind)
        {
            case WiringKind.Load:
                pen.Box(new Bounds(centre.X - LoadHalfMm, centre.Y - (LoadHighMm / 2), centre.X + LoadHalfMm, centre.Y + (LoadHighMm / 2)), look.Body, Line);
                break;
            case WiringKind.Motor:
                pen.Area(new Outline(Contour.Circle(centre, MotorMm)), look.Body, Line);
                pen.Text("M", new(centre, TextAlong.Middle, TextAcross.Middle), TextStyle.Label);
                break;
            case WiringKind.Feed:
                Brush(pen, centre);
                break;
            default:
                Contact(pen, centre, kind == WiringKind.Ring, look.IsClosed);
                break;
        }
    }

    // A brush on a slip ring: the feed wiper on the wheel's whole ring.
    private static void Brush(GroupPen pen, Point centre)
    {
        Point ring = centre + new Vector(BrushMm, 0);
        pen.Line(Contour.Circle(ring, SlipRingMm), LineStyle.Wide(LineKind.ContinuousWide, Ink.Copper, 1));
        double right = ring.X - SlipRingMm;
        pen.Box(new Bounds(right - (2 * BrushMm), centre.Y - BrushMm, right, centre.Y + BrushMm), Fill.Solid(Ink.Outline));
    }

    // A make contact: the blade hangs on the left lead; over one of the wheel's its ring with a piece of copper, linked to the blade.
    private static void Contact(GroupPen pen, Point centre, bool isRing, bool isClosed)
    {
        // Closed, the blade touches the other lead from above.
        double riseMm = isClosed ? 0.5 : 4;
        Point hinge = centre - new Vector(ContactHalfMm, 0);
        Point tip = centre + new Vector(isClosed ? ContactHalfMm + 0.4 : ContactHalfMm - 0.8, riseMm);
        pen.Line(hinge, tip, Line);
        pen.Texts.TakeLine(hinge, tip);
        if (!isRing)
        {
            return;
        }

        Point blade = hinge.Towards(tip, 0.5);
        Point ring = new(blade.X, centre.Y + RingAtMm);
        pen.Line(blade, ring - new Vector(0, RingMm), LineStyle.Wide(LineKind.DashedNarrow, Ink.Outline, 0.18));
        pen.Line(Contour.Circle(ring, RingMm), LineStyle.Thin);
        pen.Line([new Arc(ring, RingMm, Angles.RadFromDeg(20), Angles.RadFromDeg(140))], LineStyle.Wide(LineKind.ContinuousWide, Ink.Copper, 1));
    }
}
