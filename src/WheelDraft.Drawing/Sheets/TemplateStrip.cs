using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A strip's flat blank at true size: waste hatched, fold lines with angle and side, holes and marks.</summary>
internal sealed class TemplateStrip
{
    private const double WasteMm = 2;

    // Rows of fold names above the blank, mm.
    private const double RowMm = 4.4;
    private const double AboveMm = 4;
    private const double NameGapMm = 2;

    private readonly Design _design;
    private readonly StripForm _form;
    private readonly int _number;
    private readonly DrawingNumbers _numbers;

    public TemplateStrip(Design design, StripForm form, int number) =>
        (_design, _form, _number, _numbers) = (design, form, number, new(design.Brief.DrawingUnit));

    /// <summary>The sheet.</summary>
    public Sheet Draw()
    {
        Outline blank = _form.Blank.Outline;
        FoldName[] names = Named();
        TemplatePart part = TemplatePart.Of(
            new(Invariant.Text($"template-strip-{_number}"), $"Strip '{_form.Strip.Name}'", "A strip's blank at true size: cut lines, waste hatched, fold lines with angle and side, holes to drill and places to punch."),
            blank.Bounds,
            new(BesideMm: BesideMm(names, blank.Bounds), OverMm: names.Length == 0 ? 0 : AboveMm + (RowMm * (1 + names.Max(n => n.Row)))),
            [
                $"Strip '{_form.Strip.Name}', flat blank, wiper side up. {_numbers.Thickness(_form.Strip.ThicknessMm)} {_form.Strip.Material}, {DrawingNumbers.Trimmed(_form.Folds.Count, 0)} folds; up is towards you.",
                .. Words(),
            ]);
        part.In("waste", "Waste").Area(Offsets.Of(new Outline(blank.Outer), WasteMm).Outlines[0], Fill.Of(FillKind.Waste));
        part.In("cut", "Cut lines").Area(new Outline(blank.Outer), Fill.Of(FillKind.Paper), TemplateMarks.Cut);
        GroupPen marks = part.On("marks", "Holes to drill, places to punch");
        ViewPen holes = part.In("holes", "Holes");
        foreach ((DrillPlan? plan, Contour hole) in Drills())
        {
            holes.Line(hole, TemplateMarks.Cut);
            marks.Add(plan is null ? [] : TemplateMarks.Drill(part.View.Of(plan.At), plan.DrillMm, hole.Bounds.Width));
        }

        foreach (BlankMark mark in _form.Blank.Marks)
        {
            marks.Add(TemplateMarks.Punch(part.View.Of(mark.At)));
        }

        ViewPen folds = part.In("folds", "Fold lines");
        foreach (Segment fold in _form.Blank.FoldLines)
        {
            folds.Line([fold], TemplateMarks.Scribed);
        }

        Write(part, names);
        return part.Build();
    }

    private IEnumerable<(DrillPlan? Plan, Contour Hole)> Drills() => _form.Blank.Outline.Holes.Select(h =>
        (DrillPlan.Round(h.Centroid, h.Bounds.Width, DrillSeries.Of(_design.Brief.DrawingUnit)), h));

    private IEnumerable<string> Words()
    {
        foreach (var alike in Drills().Select(d => (Way: DrillWords.Way(_numbers, d.Plan, d.Hole.Centroid), Hole: _numbers.Diameter(d.Hole.Bounds.Width))).GroupBy(w => w))
        {
            yield return $"Hole {alike.Key.Hole}: {alike.Key.Way} ({DrawingNumbers.Trimmed(alike.Count(), 0)} ×).";
        }

        foreach (BlankMark mark in _form.Blank.Marks)
        {
            yield return mark.Means == BlankMarkKind.Rivet
                ? "Punch mark near the tip: axis of the contact rivet; drill for the shank of the rivet that you have."
                : "Punch mark on the tab: its dimple, pressed from the back; not drilled.";
        }
    }

    /// <summary>A fold's words and where they stand.</summary>
    private sealed record FoldName(string Text, Point From, int Row);

    // A name begins over its fold and runs to the right; from the tip backwards each takes the lowest row in which it is free, so
    // that no leader crosses a name.
    private FoldName[] Named()
    {
        List<double> starts = [];
        List<FoldName> names = [];
        for (int i = _form.Folds.Count - 1; i >= 0; i--)
        {
            StripFold fold = _form.Folds[i];
            Segment line = _form.Blank.FoldLines[i];
            Point from = line.Start.Y > line.End.Y ? line.Start : line.End;
            string text = $"{DrawingNumbers.Trimmed(i + 1, 0)}: {DrawingNumbers.Angle(Math.Abs(fold.AngleRad))} {(fold.AngleRad > 0 ? "up" : "down")}, {_numbers.Radius(fold.RadiusMm)}";
            double end = from.X + TextFit.WidthMm(text, TextStyle.Small) + NameGapMm;
            int row = starts.FindIndex(s => end <= s);
            if (row < 0)
            {
                row = starts.Count;
                starts.Add(double.PositiveInfinity);
            }

            starts[row] = from.X;
            names.Add(new(text, from, row));
        }

        return [.. names];
    }

    private static double BesideMm(FoldName[] names, Bounds blank) =>
        names.Select(n => n.From.X + TextFit.WidthMm(n.Text, TextStyle.Small) - blank.MaxX).Append(0).Max();

    private static void Write(TemplatePart part, FoldName[] names)
    {
        GroupPen pen = part.On("names", "Folds: angle, side, inside radius");
        foreach (FoldName name in names)
        {
            Point from = part.View.Of(name.From);
            Point foot = new(from.X, part.Part.MaxY + AboveMm + (name.Row * RowMm));
            pen.Line(from, foot, TemplateMarks.Scribed);
            pen.Text(name.Text, new(foot + new Vector(0.6, 0)), TextStyle.Small);
        }
    }
}
