using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A batch of wheels: a control chart of individuals for each on-time, capability, and what explains the spread.</summary>
internal static class BatchSheet
{
    private const double GapMm = 5;
    private const double HeadingMm = 5.5;
    private const double LeastRowMm = 20;
    private const double MostRowMm = 42;

    private static IEnumerable<PaperSize> Sizes => [PaperSize.A4.Turned, PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Draws it on the first sheet that has room.</summary>
    public static Sheet Of(Design design, BatchStudy batch)
    {
        PaperSize size = Sizes.FirstOrDefault(s => RowMm(design, batch, s) >= LeastRowMm, PaperSize.A0);
        Bounds room = SheetFrame.RoomOf(size);
        SheetBuilder sheet = new(new("batch", $"A batch of wheels: {design.Brief.Title}", string.Join(" ", BatchWords.Notes(design, batch))), size);
        SheetFrame.Draw(sheet, SheetNumber.Single.On(SheetWordsOf.TitleBlock(design, "Control charts of a batch", "Control chart")));
        double row = Math.Clamp(RowMm(design, batch, size), 8, MostRowMm), y = room.MaxY;
        for (int i = 0; i < batch.Figures.Count; i++)
        {
            Chart(sheet, (Invariant.Text($"chart-{i + 1}"), BatchWords.NameOf(design, batch.Figures[i])), batch.Figures[i], new(room.MinX, y - row, room.MaxX, y));
            y -= row;
        }

        y -= GapMm;
        SheetTable table = Table(design, batch);
        (Bounds drawn, _) = table.Draw(sheet.Group("table", "Capability", "table"), new(room.MinX, room.MinY, room.MaxX, y));
        Notes(design, batch).Draw(sheet.Group("notes", "What explains the spread", "notes"), new Point(room.MinX, drawn.MinY - GapMm), NotesMm(size));
        return sheet.Build();
    }

    private static SheetTable Table(Design design, BatchStudy batch) =>
        new([.. BatchWords.Head.Select((h, i) => new TableColumn(h, i == 0 ? TextAlong.Start : TextAlong.End))], [.. batch.Figures.Select(f => BatchWords.Row(design, f))]);

    private static NoteBlock Notes(Design design, BatchStudy batch) => new("What explains the spread", BatchWords.Notes(design, batch));

    private static double NotesMm(PaperSize size) => Math.Max(80, SheetFrame.RoomOf(size).Width - 185);

    private static double RowMm(Design design, BatchStudy batch, PaperSize size)
    {
        Bounds room = SheetFrame.RoomOf(size);
        return (room.Height - Table(design, batch).HeightMm(room.Width) - Notes(design, batch).HeightMm(NotesMm(size)) - (3 * GapMm)) / Math.Max(1, batch.Figures.Count);
    }

    private static void Chart(SheetBuilder sheet, (string Id, string Name) what, BatchFigure figure, Bounds area)
    {
        const double scaleMm = 22, airMm = 3, dotMm = 0.9;
        GroupPen pen = sheet.Group(what.Id, $"Control chart of {what.Name}", "chart");
        pen.Box(new(area.MinX, area.MaxY - HeadingMm, area.MaxX, area.MaxY), Fill.Of(FillKind.Band));
        pen.Text($"{what.Name}: on-time wheel by wheel", new(new(area.MinX + 1, area.MaxY - (HeadingMm / 2)), TextAlong.Start, TextAcross.Middle), new TextStyle(2.5, TextWeight.Heavy));
        (double low, double high) = figure.ControlLimits;
        double least = Math.Min(Math.Min(low, figure.LeastS), figure.Wheels.Min()), most = Math.Max(Math.Max(high, figure.MostS), figure.Wheels.Max());
        double top = area.MaxY - HeadingMm - airMm, bottom = area.MinY + airMm;
        double left = area.MinX + scaleMm, right = area.MaxX - scaleMm - 20;
        double At(double seconds) => bottom + ((seconds - least) / Math.Max(most - least, 1e-9) * (top - bottom));
        double Along(int wheel) => left + ((wheel + 0.5) / figure.Wheels.Count * (right - left));
        (double Value, string Words, LineStyle Style)[] lines =
        [
            (figure.LeastS, "least allowed", LineStyle.Edge), (figure.MostS, "most allowed", LineStyle.Edge),
            (low, "lower control limit", LineStyle.Hidden), (high, "upper control limit", LineStyle.Hidden), (figure.MeanS, "mean", LineStyle.Centre),
        ];
        foreach ((double value, string words, LineStyle style) in lines)
        {
            pen.Line(new Point(left, At(value)), new Point(right, At(value)), style);
            pen.TryText($"{words} {Wording.Fixed(value, 2)} s", [.. Enumerable.Range(0, 7).Select(i => new TextSpot(new(right + 2, At(value) + ((i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * 1.8)), TextAlong.Start, TextAcross.Middle))], TextStyle.Small);
        }

        for (int i = 0; i < figure.Wheels.Count; i++)
        {
            Point at = new(Along(i), At(figure.Wheels[i]));
            if (i > 0)
            {
                pen.Line(new Point(Along(i - 1), At(figure.Wheels[i - 1])), at, LineStyle.Thin);
            }

            double half = figure.Outside.Contains(i) ? 2 * dotMm : dotMm;
            pen.Box(new(at.X - half, at.Y - half, at.X + half, at.Y + half), figure.Outside.Contains(i) ? Fill.Of(FillKind.Error) : Fill.Solid(Ink.Outline), LineStyle.Thin);
        }
    }
}
