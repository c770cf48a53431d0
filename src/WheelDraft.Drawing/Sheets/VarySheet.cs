using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Designs along one key as curves, or over two keys as a map: diameter, times, distances, forces, and where nothing misses.</summary>
internal static class VarySheet
{
    private const double GapMm = 5;
    private const double HeadingMm = 5.5;
    private const double AxisMm = 14;

    /// <summary>Draws it.</summary>
    public static Sheet Of(Brief brief, VariedDesigns varied)
    {
        string keys = string.Join(" and ", varied.Keys.Select(k => k.Name));
        int meeting = varied.Points.Count(p => p.Verdict is "meets");
        string words = Invariant.Text($"{varied.Points.Count} designs with {keys} varied; nothing misses in {meeting} of them.");
        PaperSize size = varied.Keys.Count > 1 ? PaperSize.A4.Turned : PaperSize.A4;
        SheetBuilder sheet = new(new("vary", $"{brief.Title}: {keys} varied", words), size);
        SheetFrame.Draw(sheet, SheetNumber.Single.On(SheetWordsOf.TitleBlock(brief, TextFit.Shortened($"{keys} varied", 90, TextStyle.Small), "Chart")));
        Bounds room = SheetFrame.RoomOf(size);
        ChartLegend legend = LegendOf(varied);
        double foot = legend.HeightMm(room.Width) + GapMm;
        legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(room.MinX, room.MinY + foot), room.Width);
        Bounds area = new(room.MinX, room.MinY + foot + GapMm, room.MaxX, room.MaxY);
        if (varied.Keys.Count > 1)
        {
            VaryMap.Draw(sheet, varied, area);
        }
        else
        {
            Curves(sheet, varied, area);
        }

        return sheet.Build();
    }

    /// <summary>The filling of a verdict.</summary>
    internal static Fill FillOf(VariedPoint point) => Fill.Of(point.Verdict switch { "meets" => FillKind.Meets, "misses" => FillKind.Warning, _ => FillKind.Error });

    private static ChartLegend LegendOf(VariedDesigns varied)
    {
        (string Verdict, string Words)[] all = [("meets", "nothing misses"), ("misses", "something misses"), ("refused", "cannot be built, or the file is wrong")];
        return new([.. all.Where(v => varied.Points.Any(p => string.Equals(p.Verdict, v.Verdict, StringComparison.Ordinal)))
            .Select(v => new LegendEntry(v.Words, FillOf(varied.Points.First(p => string.Equals(p.Verdict, v.Verdict, StringComparison.Ordinal))), LineStyle.Thin))]);
    }

    private static void Curves(SheetBuilder sheet, VariedDesigns varied, Bounds area)
    {
        VaryCurve[] curves = [.. VaryCurve.Of(varied)];
        const double scaleMm = 24;
        VariedKey key = varied.Keys[0];
        IReadOnlyList<double> along = key.Numbers is { } numbers && numbers.Max() > numbers.Min() ? numbers : [.. Enumerable.Range(1, key.Values.Count).Select(i => (double)i)];
        bool isCounted = !ReferenceEquals(along, key.Numbers);
        double air = along.Max() > along.Min() ? (along.Max() - along.Min()) * 0.02 : 0.5;
        ChartAxis axis = new(along.Min() - air, along.Max() + air, area.MinX + scaleMm, area.MaxX - 4);
        double bottom = area.MinY + AxisMm, pitch = (area.MaxY - bottom) / Math.Max(1, curves.Length);
        GroupPen axes = sheet.Group("axis", "Axis of the key", "axes");
        axis.Draw(axes, bottom, AxisSide.Below, isCounted ? $"{key.Name}: {string.Join(", ", key.Values.Select((v, i) => Invariant.Text($"{i + 1} = {v}")))}" : key.Unit.Length > 0 ? $"{key.Name}, {key.Unit} →" : $"{key.Name} →");
        for (int i = 0; i < curves.Length; i++)
        {
            double top = area.MaxY - (i * pitch);
            Bounds panel = new(axis.LeftMm, top - pitch + 2, axis.RightMm, top - HeadingMm - 2);
            axis.DrawGrid(axes, panel.MinY, panel.MaxY);
            Panel(sheet.Group(Invariant.Text($"curve-{i + 1}"), curves[i].Title, "chart"), curves[i], (varied, axis, along), new(area.MinX, panel.MinY, area.MaxX, top));
        }
    }

    private static void Panel(GroupPen pen, VaryCurve curve, (VariedDesigns Varied, ChartAxis Axis, IReadOnlyList<double> Along) what, Bounds area)
    {
        const double dotMm = 1;
        pen.Box(new(area.MinX, area.MaxY - HeadingMm, area.MaxX, area.MaxY), Fill.Of(FillKind.Band));
        pen.Text(curve.Title, new(new(area.MinX + 1, area.MaxY - (HeadingMm / 2)), TextAlong.Start, TextAcross.Middle), new TextStyle(2.5, TextWeight.Heavy));
        (double least, double most) = curve.Span;
        double bottom = area.MinY + 2, top = area.MaxY - HeadingMm - 3;
        double At(double value) => bottom + ((value - least) / (most - least) * (top - bottom));
        foreach (double value in NiceSteps.Between(least, most, NiceSteps.AtLeast(StepKind.Decimal, (most - least) / Math.Max(1, (top - bottom) / 5))))
        {
            pen.Line(new Point(what.Axis.LeftMm, At(value)), new Point(what.Axis.RightMm, At(value)), LineStyle.Grid);
            pen.Text(DrawingNumbers.Trimmed(value, 6), new(new(what.Axis.LeftMm - 1.5, At(value)), TextAlong.End, TextAcross.Middle), TextStyle.Small);
        }

        for (int i = 0; i < what.Along.Count; i++)
        {
            double x = what.Axis.Of(what.Along[i]);
            if (what.Varied.Points[i].Merits is null)
            {
                pen.Box(new(x - dotMm, bottom, x + dotMm, top), FillOf(what.Varied.Points[i]), LineStyle.Thin);
            }
        }

        foreach (IReadOnlyList<double?> line in curve.Lines)
        {
            Line(pen, line, what, At);
        }
    }

    private static void Line(GroupPen pen, IReadOnlyList<double?> line, (VariedDesigns Varied, ChartAxis Axis, IReadOnlyList<double> Along) what, Func<double, double> at)
    {
        const double dotMm = 1;
        for (int i = 1; i < line.Count; i++)
        {
            if (line[i - 1] is double before && line[i] is double here)
            {
                pen.Line(new Point(what.Axis.Of(what.Along[i - 1]), at(before)), new Point(what.Axis.Of(what.Along[i]), at(here)), LineStyle.Edge);
            }
        }

        for (int i = 0; i < line.Count; i++)
        {
            if (line[i] is double value)
            {
                Point p = new(what.Axis.Of(what.Along[i]), at(value));
                pen.Box(new(p.X - dotMm, p.Y - dotMm, p.X + dotMm, p.Y + dotMm), FillOf(what.Varied.Points[i]), LineStyle.Thin);
            }
        }
    }
}

/// <summary>One figure along a key, as one line or as the two ends of a band.</summary>
/// <param name="Title">What it is, with its unit.</param>
/// <param name="Lines">Values point by point; null where there is none.</param>
internal sealed record VaryCurve(string Title, IReadOnlyList<IReadOnlyList<double?>> Lines)
{
    /// <summary>The values that the scale spans, some air round them.</summary>
    public (double Least, double Most) Span
    {
        get
        {
            double[] all = [.. Lines.SelectMany(l => l).OfType<double>()];
            double most = all.Max(), least = all.Min(), air = most > least ? (most - least) * 0.08 : Math.Max(Math.Abs(most) * 0.1, 1e-6);
            return (least - air, most + air);
        }
    }

    /// <summary>The figures that the designs have; those that none has are left out.</summary>
    public static IEnumerable<VaryCurve> Of(VariedDesigns varied)
    {
        IReadOnlyList<double?> Line(Func<DesignMerits, double?> figure) => [.. varied.Points.Select(p => p.Merits is null ? null : figure(p.Merits))];
        VaryCurve[] all =
        [
            new("Outer diameter, mm", [Line(m => m.DiameterMm)]),
            new("Worst departure of an on-time, s", [Line(m => m.WorstOnTimeS)]),
            new("Least measured distance over required", [Line(m => m.Tightest?.Ratio)]),
            new("Contact force, least and greatest, N", [Line(m => m.LeastForceN), Line(m => m.MostForceN)]),
            new("Greatest friction torque, mN m", [Line(m => 1000 * m.TorqueNm)]),
        ];
        return all.Where(c => c.Lines.Any(l => l.Any(v => v is not null)));
    }
}

/// <summary>Designs over two keys: a cell each, filled by its verdict, with the diameter in it where there is room.</summary>
internal static class VaryMap
{
    private const double AxisMm = 14;
    private const double LabelMm = 26;

    public static void Draw(SheetBuilder sheet, VariedDesigns varied, Bounds area)
    {
        (VariedKey across, VariedKey up) = (varied.Keys[0], varied.Keys[1]);
        Bounds map = new(area.MinX + LabelMm, area.MinY + AxisMm, area.MaxX - 2, area.MaxY - 8);
        double wide = map.Width / across.Values.Count, high = map.Height / up.Values.Count;
        GroupPen cells = sheet.Group("map", $"Verdict and diameter over {across.Name} and {up.Name}", "chart");
        GroupPen labels = sheet.Group("labels", "Values of the keys", "axes");
        for (int i = 0; i < across.Values.Count; i++)
        {
            for (int k = 0; k < up.Values.Count; k++)
            {
                VariedPoint point = varied.At(i, k);
                Bounds cell = new(map.MinX + (i * wide), map.MinY + (k * high), map.MinX + ((i + 1) * wide), map.MinY + ((k + 1) * high));
                cells.Box(cell, VarySheet.FillOf(point), LineStyle.Thin);
                string words = point.Merits is { } merits ? DrawingNumbers.Trimmed(Math.Round(merits.DiameterMm, 2), 2) : "–";
                if (TextFit.WidthMm(words, TextStyle.Small) + 2 <= wide && high >= 4.5)
                {
                    cells.PlatedText(words, new(new((cell.MinX + cell.MaxX) / 2, (cell.MinY + cell.MaxY) / 2), TextAlong.Middle, TextAcross.Middle), TextStyle.Small);
                }
            }
        }

        for (int i = 0; i < across.Values.Count; i++)
        {
            labels.TryText(across.Values[i], [new(new(map.MinX + ((i + 0.5) * wide), map.MinY - 1.5), TextAlong.Middle, TextAcross.Top)], TextStyle.Small);
        }

        for (int k = 0; k < up.Values.Count; k++)
        {
            labels.TryText(up.Values[k], [new(new(map.MinX - 1.5, map.MinY + ((k + 0.5) * high)), TextAlong.End, TextAcross.Middle)], TextStyle.Small);
        }

        labels.Text($"{across.Name} →", new(new((map.MinX + map.MaxX) / 2, map.MinY - 6.5), TextAlong.Middle, TextAcross.Top), TextStyle.Small);
        labels.Text(TextFit.Shortened($"Upwards: {up.Name}. In the cells: outer diameter, mm.", area.Width, TextStyle.Small), new(new(area.MinX, area.MaxY - 1), TextAlong.Start, TextAcross.Top), TextStyle.Small);
    }
}
