using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The parts of one material and thickness, for as many timers as asked, laid on sheets.</summary>
/// <param name="Stock">The sheets.</param>
/// <param name="Pieces">What there is to lay: one for each shape of each part.</param>
/// <param name="Result">Where everything lies.</param>
/// <param name="FirstNumber">The number of its first sheet among all sheets of the design, from 1.</param>
internal sealed record NestedStock(SheetBrief Stock, IReadOnlyList<NestPiece> Pieces, NestResult Result, int FirstNumber)
{
    /// <summary>What share of all sheets used lies inside the outer contours of parts.</summary>
    public double UsedShare => Result.AreaMm2 / (Result.Sheets.Count * Stock.WidthMm * Stock.HeightMm);

    /// <summary>How many of a piece lie on one of the sheets, in the order of pieces, those that are there.</summary>
    public IEnumerable<(NestPiece Piece, int Count)> On(NestedSheet sheet) =>
        sheet.Items.GroupBy(i => i.Item).OrderBy(g => g.Key).Select(g => (Pieces[g.Key], g.Count()));
}

/// <summary>One shape of a part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Shape">Which of its shapes.</param>
/// <param name="Mark">What it is called on drawings of sheets.</param>
internal sealed record NestPiece(Part Part, int Shape, string Mark)
{
    /// <summary>The shape as it is cut.</summary>
    public Outline Outline => Part.Shapes[Shape].ToCut;
}

/// <summary>Nests the parts of a design.</summary>
/// <remarks>A sheet's rolling direction is taken along its longer measure as the file gives it first, x. A strip keeps its grain: what asks for grain
/// along itself lies along x either way round, across itself along y; a strip that folds and says nothing lies along x. Wheels and flat
/// strips turn by quarters. Nothing is turned over.</remarks>
internal static class SheetNesting
{
    private static readonly double[] HalfTurns = [0, Math.PI];
    private static readonly double[] Across = [Math.PI / 2, 3 * Math.PI / 2];
    private static readonly double[] Quarters = [0, Math.PI / 2, Math.PI, 3 * Math.PI / 2];

    /// <summary>The sheets of a design, in file order; those that no part is made of are left out.</summary>
    public static IReadOnlyList<NestedStock> Of(Brief brief, PartList parts, LongWork attend)
    {
        List<NestedStock> all = [];
        foreach (SheetBrief stock in brief.Sheets)
        {
            List<NestPiece> pieces = Pieces(stock, parts);
            if (pieces.Count > 0 && pieces.All(p => Fits(p, stock)))
            {
                NestItem[] items = [.. pieces.Select(p => new NestItem(p.Mark, p.Outline, stock.Sets, Turns(p.Part)))];
                all.Add(new(stock, pieces, Nesting.Of(items, new(stock.WidthMm, stock.HeightMm, stock.GapMm), progress: share => attend.Tell("nesting", share)), 1 + all.Sum(s => s.Result.Sheets.Count)));
            }
        }

        return all;
    }

    /// <summary>Sheets that are too small, or that no part is made of.</summary>
    public static IEnumerable<Finding> Findings(Brief brief, PartList parts)
    {
        for (int i = 0; i < brief.Sheets.Count; i++)
        {
            SheetBrief stock = brief.Sheets[i];
            TextPlace where = brief.PlaceOf(FormattableString.Invariant($"sheet[{i}]"));
            List<NestPiece> pieces = Pieces(stock, parts);
            if (pieces.Count == 0)
            {
                yield return Finding.Warning("sheet.empty", $"Nothing is made of {stock.Material}, {Wording.Mm(stock.ThicknessMm)} thick: this sheet stays empty. Material and thickness are written as the wheel or the strips have them.", where);
            }

            foreach (NestPiece piece in pieces.Where(p => !Fits(p, stock)))
            {
                Bounds box = piece.Outline.Bounds;
                yield return Finding.Error("sheet.small", $"{piece.Mark}, {Wording.Mm(box.Width)} by {Wording.Mm(box.Height)} as it is cut, does not fit on a sheet of {Wording.Mm(stock.WidthMm)} by {Wording.Mm(stock.HeightMm)} with {Wording.Mm(stock.GapMm)} to its edge{(Turns(piece.Part).Count == 2 ? " in the direction of its grain" : "")}; nothing is nested on it. A larger sheet would do.", where);
            }
        }
    }

    /// <summary>How a part may be turned on a sheet.</summary>
    public static IReadOnlyList<double> Turns(Part part) =>
        part.Role != PartRole.Strip ? Quarters : part.Stock.Grain == StripGrain.Across ? Across : part.HasFolds || part.Stock.Grain == StripGrain.Along ? HalfTurns : Quarters;

    private static List<NestPiece> Pieces(SheetBrief stock, PartList parts) =>
    [
        .. from part in parts.Strips.Prepend(parts.Wheel)
           where string.Equals(part.Stock.Material, stock.Material, StringComparison.OrdinalIgnoreCase) && part.Stock.ThicknessMm is double thick && Math.Abs(thick - stock.ThicknessMm) < 1e-6
           from shape in Enumerable.Range(0, part.Shapes.Count)
           select new NestPiece(part, shape, part.Shapes.Count > 1 ? FormattableString.Invariant($"{part.Name} {shape + 1}") : part.Name),
    ];

    // A thousandth for the cells of the nesting; what is nearer than that to filling the sheet is no layout that a shop would cut.
    private static bool Fits(NestPiece piece, SheetBrief stock) => Turns(piece.Part).Any(t =>
    {
        Bounds box = piece.Outline.Outer.Placed(Placement.Turn(t)).Bounds;
        double slack = 2 * Math.Max(stock.WidthMm, stock.HeightMm) / 1000;
        return box.Width + (2 * stock.GapMm) + slack <= stock.WidthMm && box.Height + (2 * stock.GapMm) + slack <= stock.HeightMm;
    });
}
