using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A sheet of stock with the parts that are nested on it, each named, with a table of quantities and what of the sheet is used.</summary>
internal static class NestSheet
{
    // Round the sheet of stock, mm on the paper: room for its two dimensions.
    private const double BesideMm = 16;

    /// <summary>Draws it.</summary>
    /// <param name="design">The design.</param>
    /// <param name="nested">The stock.</param>
    /// <param name="index">Which of its sheets, from 0.</param>
    /// <param name="number">Its place in the set.</param>
    public static Sheet Of(Design design, NestedStock nested, int index, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(nested);
        SheetMatter matter = new SheetMatter(Quantities(nested, index), new("Notes", Notes(design, nested))) { Caution = new(SheetWordsOf.CautionsOf(design)) };
        PaperSize[] papers = [.. SheetPapers.Of(design, PaperSize.Iso)];
        Bounds stock = new(0, 0, nested.Stock.WidthMm, nested.Stock.HeightMm);
        (SheetPlan plan, SheetView view, PaperSize size) = Shared(papers, matter, stock);
        string name = Name(nested, index);
        SheetBuilder sheet = new(new(name, $"Sheet {Invariant.Text($"{nested.FirstNumber + index}")}: {design.Brief.Title}", Description(design, nested, index)), size);
        SheetFrame.Draw(sheet, (number ?? SheetNumber.Single).On(SheetWordsOf.TitleBlock(design, $"Parts nested on sheet {Invariant.Text($"{nested.FirstNumber + index}")}", "Nesting", DrawingScale.Fitting(stock, view.Of(stock)))));
        plan.Draw(sheet, matter);
        Draw(sheet, view, nested, index, new(design.Brief.DrawingUnit));
        return sheet.Build();
    }

    // Below half size parts are hardly told apart.
    private const double LeastScale = 0.5;

    /// <summary>The smallest paper on which the picture is large enough, else the one on which it is largest.</summary>
    private static (SheetPlan Plan, SheetView View, PaperSize Size) Shared(PaperSize[] papers, SheetMatter matter, Bounds stock)
    {
        List<(SheetPlan Plan, SheetView View, PaperSize Size)> all = [];
        foreach (PaperSize paper in papers)
        {
            SheetPlan plan = SheetPlan.Of(paper, matter);
            Bounds room = plan.Picture.Grown(-BesideMm);
            if (room.Width > 0 && room.Height > 0)
            {
                all.Add((plan, SheetView.Fitted(stock, room), paper));
            }
        }

        return all.Cast<(SheetPlan, SheetView View, PaperSize)?>().FirstOrDefault(a => a!.Value.View.ToPaper.Scale >= LeastScale) ?? all.MaxBy(a => a.View.ToPaper.Scale);
    }

    /// <summary>What the sheet's files are called.</summary>
    public static string Name(NestedStock nested, int index) => Invariant.Text($"sheet-{nested.FirstNumber + index}");

    private static void Draw(SheetBuilder sheet, SheetView view, NestedStock nested, int index, DrawingNumbers numbers)
    {
        sheet.Group("stock", "Sheet of stock", "stock").In(view).Line(Contour.Rectangle(Point.Origin, new(nested.Stock.WidthMm, nested.Stock.HeightMm)), LineStyle.Edge);
        ViewPen parts = sheet.Group("parts", "Parts as they are cut", "copper").In(view);
        GroupPen words = sheet.Group("names", "Names of the parts", "names");
        foreach (NestedItem item in nested.Result.Sheets[index].Items)
        {
            Outline outline = nested.Pieces[item.Item].Outline.Placed(item.Place);
            parts.Area(outline, Fill.Of(FillKind.Copper), LineStyle.Thin);
            sheet.Texts.TakeEdges(outline.Pieces.Select(p => p.Placed(view.ToPaper)));
        }

        foreach (NestedItem item in nested.Result.Sheets[index].Items)
        {
            Bounds box = view.Of(nested.Pieces[item.Item].Outline.Placed(item.Place).Bounds);
            words.PlatedText(Invariant.Text($"{item.Item + 1}"), new(box.Centre, TextAlong.Middle, TextAcross.Middle), TextStyle.Small);
        }

        DimensionPen pen = new(sheet.Group("dimensions", "Dimensions", "dimensions"));
        Bounds edge = view.Of(new Bounds(0, 0, nested.Stock.WidthMm, nested.Stock.HeightMm));
        pen.Add(new LinearDimension(new(edge.MinX, edge.MinY), new(edge.MaxX, edge.MinY), -8, numbers.Length(nested.Stock.WidthMm)) { Direction = LinearDirection.Level, Subject = "width" });
        pen.Add(new LinearDimension(new(edge.MaxX, edge.MinY), new(edge.MaxX, edge.MaxY), -8, numbers.Length(nested.Stock.HeightMm)) { Direction = LinearDirection.Upright, Subject = "height" });
    }

    private static SheetTable Quantities(NestedStock nested, int index) => new(
        [new("No.", TextAlong.End), new("Part"), new("On this sheet", TextAlong.End), new("In all", TextAlong.End)],
        [
            .. nested.On(nested.Result.Sheets[index]).Select(p => (IReadOnlyList<string>)
            [
                Invariant.Text($"{nested.Pieces.ToList().IndexOf(p.Piece) + 1}"),
                p.Piece.Mark,
                Invariant.Text($"{p.Count}"),
                Invariant.Text($"{nested.Stock.Sets}"),
            ]),
        ])
    {
        Title = "Quantities",
    };

    private static IReadOnlyList<string> Notes(Design design, NestedStock nested)
    {
        ReadersUnit unit = ReadersUnit.Of(design.Brief);
        return
        [
            unit.Words($"{nested.Stock.Material}, {Wording.Mm(nested.Stock.ThicknessMm)} thick, {Wording.Number(nested.Stock.Sets, 0)} sets; at least {Wording.Mm(nested.Stock.GapMm)} between the cutter's paths and to the edge."),
            $"Sheets: {Wording.Number(nested.Result.Sheets.Count, 0)}; by area no fewer than {Wording.Number(nested.Result.LeastSheets, 0)}. Parts cover {Wording.Percent(nested.UsedShare)} of them.",
            "Grain along the width. Strips that fold keep to it; nothing is turned over.",
        ];
    }

    private static string Description(Design design, NestedStock nested, int index) => ReadersUnit.Of(design.Brief).Words(
        $"A sheet of {nested.Stock.Material}, {Wording.Mm(nested.Stock.WidthMm)} by {Wording.Mm(nested.Stock.HeightMm)}, with {Wording.Number(nested.Result.Sheets[index].Items.Count, 0)} parts: "
        + string.Join(", ", nested.On(nested.Result.Sheets[index]).Select(p => $"{Wording.Number(p.Count, 0)} × {p.Piece.Mark}")) + ".");
}
