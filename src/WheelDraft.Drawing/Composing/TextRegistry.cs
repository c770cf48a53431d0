using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What is taken on a sheet: every text's box, blocked areas, and lines that texts must not lie across.</summary>
/// <remarks>Rectangles are compared at their true angles. One registry a sheet; every text put on it enters.</remarks>
internal sealed class TextRegistry
{
    /// <summary>Air that placed texts keep from each other and from lines, mm: about a stroke and a half of small letters.</summary>
    public const double AirMm = 0.4;

    private readonly List<(TextBox Box, Bounds Round)> _taken = [];
    private readonly List<TakenLine> _lines = [];
    private readonly List<TakenLine> _edges = [];

    /// <summary>An empty registry.</summary>
    /// <param name="limits">Where texts may stand.</param>
    public TextRegistry(Bounds limits) => Limits = limits;

    /// <summary>Where texts may stand.</summary>
    public Bounds Limits { get; private set; }

    /// <summary>Narrows where texts placed from now on may stand: a frame's inside.</summary>
    public void Confine(Bounds limits) => Limits = limits;

    /// <summary>Whether a text may stand there: inside the limits, clear of all boxes and lines by <see cref="AirMm"/>.</summary>
    public bool IsFree(TextBox box) => box.IsInside(Limits) && !MeetsBoxes(box) && !MeetsLines(box);

    /// <summary>Whether a straight line keeps clear of all boxes.</summary>
    public bool IsFree(Point from, Point to)
    {
        Bounds round = Bounds.Of(from, to).Grown(AirMm);
        return !_taken.Exists(t => t.Round.Overlaps(round) && t.Box.Grown(AirMm / 2).MeetsLine(from, to));
    }

    /// <summary>Takes a box: a text that stands there, or an area to keep free.</summary>
    public void Take(TextBox box) => _taken.Add((box, box.Bounds));

    /// <summary>Takes an upright area that texts placed later keep free.</summary>
    public void Block(Bounds area) => Take(TextBox.Of(area));

    /// <summary>Takes a straight line that texts placed later keep clear of.</summary>
    public void TakeLine(Point from, Point to) => _lines.Add(TakenLine.Of(from, to));

    /// <summary>Takes the edges of something drawn: texts that have a choice keep off them.</summary>
    public void TakeEdges(IEnumerable<Piece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        _edges.AddRange(pieces.SelectMany(Chords).Select(c => TakenLine.Of(c.From, c.To)));
    }

    /// <summary>Whether a box keeps clear of the edges of what is drawn.</summary>
    public bool IsOffEdges(TextBox box) => !Meets(_edges, box);

    /// <summary>Whether a straight line crosses none of the lines that texts keep clear of.</summary>
    public bool CrossesNoLine(Point from, Point to)
    {
        Bounds round = Bounds.Of(from, to);
        return !_lines.Exists(l => l.Round.Overlaps(round) && Crosses(from, to, l.From, l.To));
    }

    /// <summary>Short chords along a piece, for keeping texts clear only: what is drawn is the piece itself.</summary>
    internal static IEnumerable<(Point From, Point To)> Chords(Piece piece)
    {
        const double longestMm = 2;
        int parts = piece is Arc ? (int)Math.Ceiling(piece.Length / longestMm) : 1;
        for (int i = 0; i < parts; i++)
        {
            yield return (piece.PointAt((double)i / parts), piece.PointAt((double)(i + 1) / parts));
        }
    }

    internal static bool Crosses(Point a, Point b, Point c, Point d) =>
        (b - a).Cross(c - a) * (b - a).Cross(d - a) < 0 && (d - c).Cross(a - c) * (d - c).Cross(b - c) < 0;

    private readonly record struct TakenLine(Point From, Point To, Bounds Round)
    {
        public static TakenLine Of(Point from, Point to) => new(from, to, Bounds.Of(from, to));
    }

    private bool MeetsBoxes(TextBox box)
    {
        TextBox aired = box.Grown(AirMm);
        Bounds round = aired.Bounds;
        return _taken.Exists(t => t.Round.Overlaps(round) && t.Box.Overlaps(aired));
    }

    private bool MeetsLines(TextBox box) => Meets(_lines, box);

    private static bool Meets(List<TakenLine> lines, TextBox box)
    {
        TextBox aired = box.Grown(AirMm / 2);
        Bounds round = aired.Bounds;
        return lines.Exists(l => l.Round.Overlaps(round) && aired.MeetsLine(l.From, l.To));
    }
}
