using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The marks of a true-size template, no two alike: a drill mark is an upright cross in a circle, a punch mark a slanting cross in a
/// square, a join mark a diamond with its letter.</summary>
internal static class TemplateMarks
{
    // A drill mark's cross reaches this far beyond the hole, mm.
    private const double CrossBeyondMm = 3;
    private const double PunchHalfMm = 1.6;
    private const double JoinHalfMm = 2.6;

    /// <summary>A line to cut along.</summary>
    public static readonly LineStyle Cut = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.25);

    /// <summary>A line to scribe or fold along.</summary>
    public static readonly LineStyle Scribed = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Quiet, 0.18);

    private static readonly LineStyle Fine = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.18);

    /// <summary>A hole to drill: a circle of the drill's size, an upright cross that reaches beyond the finished hole.</summary>
    public static IEnumerable<SheetItem> Drill(Point at, double drillMm, double holeMm)
    {
        double reach = (Math.Max(drillMm, holeMm) / 2) + CrossBeyondMm;
        yield return new SheetLine(Contour.Circle(at, drillMm / 2), Fine);
        yield return new SheetLine(at - new Vector(reach, 0), at + new Vector(reach, 0), Fine);
        yield return new SheetLine(at - new Vector(0, reach), at + new Vector(0, reach), Fine);
    }

    /// <summary>A place to punch and not to drill by the template: a slanting cross in a square.</summary>
    public static IEnumerable<SheetItem> Punch(Point at)
    {
        Vector up = new(PunchHalfMm, PunchHalfMm);
        yield return new SheetLine(Contour.Rectangle(at - up, at + up), Fine);
        yield return new SheetLine(at - up, at + up, Fine);
        yield return new SheetLine(at - up.Left, at + up.Left, Fine);
    }

    /// <summary>A join of two pages: a diamond, its lower half black; its letter stands beside it.</summary>
    public static IEnumerable<SheetItem> Join(Point at)
    {
        Vector right = new(JoinHalfMm, 0), up = new(0, JoinHalfMm);
        yield return new SheetArea(new Outline(Contour.Polygon(at - right, at - up, at + right)), Fill.Solid(Ink.Outline));
        yield return new SheetLine(Contour.Polygon(at - right, at - up, at + right, at + up), Fine);
    }
}
