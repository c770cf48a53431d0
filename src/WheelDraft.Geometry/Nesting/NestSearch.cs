namespace WheelDraft.Geometry;

/// <summary>Tries sequences of shapes, each filled bottom-left, and keeps the best.</summary>
internal sealed class NestSearch(IReadOnlyList<NestItem> items, NestShape[][] shapes, NestStock stock, double cellMm)
{
    private readonly int _columns = NestGrid.Cells(stock.WidthMm - stock.GapMm, cellMm);
    private readonly int _rows = NestGrid.Cells(stock.HeightMm - stock.GapMm, cellMm);
    private long _work;

    /// <summary>The best of what the work allows.</summary>
    public NestTrial Best(long work, Action<double>? progress)
    {
        int[] each = [.. items.SelectMany((item, i) => Enumerable.Repeat(i, item.Count))];
        NestTrial? best = null;
        int[] bestOrder = each;
        foreach (Func<NestItem, double> size in Sizes)
        {
            int[] order = [.. each.OrderByDescending(i => Math.Round(size(items[i]), 6)).ThenBy(i => i)];
            foreach (bool lowTop in (bool[])[true, false])
            {
                if (best is null || _work < work)
                {
                    Keep(order, lowTop);
                }
            }
        }

        // A plain linear congruential generator (Numerical Recipes' constants): the same changes on every machine.
        uint state = 1;
        while (_work < work && items.Count > 1)
        {
            int[] order = [.. bestOrder];
            int one = Next(order.Length), other = Next(order.Length);
            if (order[one] == order[other])
            {
                _work++;
                continue;
            }

            (order[one], order[other]) = (order[other], order[one]);
            Keep(order, (state & 0x10000) != 0);
        }

        progress?.Invoke(1);
        return best!;

        void Keep(int[] order, bool lowTop)
        {
            NestTrial trial = Filled(order, lowTop);
            if (best is null || trial.IsBetterThan(best))
            {
                (best, bestOrder) = (trial, order);
            }

            progress?.Invoke(Math.Min(1, (double)_work / work));
        }

        int Next(int below)
        {
            state = unchecked((state * 1664525) + 1013904223);
            return (int)((state >> 8) % (uint)below);
        }
    }

    // What to lay first: large ones, long ones, wide ones, those with much edge.
    private static IEnumerable<Func<NestItem, double>> Sizes =>
    [
        i => i.Shape.Outer.SignedAreaMm2,
        i => Math.Max(i.Shape.Bounds.Width, i.Shape.Bounds.Height),
        i => Math.Min(i.Shape.Bounds.Width, i.Shape.Bounds.Height),
        i => i.Shape.Outer.Length,
    ];

    private NestTrial Filled(int[] order, bool lowTop)
    {
        List<SheetInWork> sheets = [];
        foreach (int item in order)
        {
            bool laid = false;
            for (int s = 0; !laid; s++)
            {
                if (s == sheets.Count)
                {
                    sheets.Add(new(new NestGrid(_columns, _rows), shapes));
                }

                laid = Lay(sheets[s], item, lowTop);
            }
        }

        return new([.. sheets.Select(s => s.Items)], (double)sheets[^1].Top / _rows);
    }

    private bool Lay(SheetInWork sheet, int item, bool lowTop)
    {
        (int Measure, int Column, int Turn, int Row) best = (int.MaxValue, 0, -1, 0);
        for (int turn = 0; turn < shapes[item].Length; turn++)
        {
            NestShape shape = shapes[item][turn];
            int extra = lowTop ? shape.Rows : 0;

            // Cells are only ever taken: what was not free for this shape before never is again.
            if (sheet.Last[item][turn] is (int, int) from && sheet.Grid.Free(shape, from, best.Turn < 0 ? int.MaxValue : best.Measure - extra + 1, ref _work) is (int, int) at)
            {
                sheet.Last[item][turn] = at;
                if ((at.Row + extra, at.Column).CompareTo((best.Measure, best.Column)) < 0)
                {
                    best = (at.Row + extra, at.Column, turn, at.Row);
                }
            }
            else if (best.Turn < 0)
            {
                sheet.Last[item][turn] = null;
            }
        }

        if (best.Turn < 0)
        {
            return false;
        }

        NestShape laid = shapes[item][best.Turn];
        sheet.Grid.Take(laid, (best.Column, best.Row));
        sheet.Top = Math.Max(sheet.Top, best.Row + laid.Rows);
        Point corner = new((stock.GapMm / 2) + (best.Column * cellMm), (stock.GapMm / 2) + (best.Row * cellMm));
        sheet.Items.Add(new(item, laid.Turn.Then(Placement.Translation(corner - laid.Corner))));
        return true;
    }

    private sealed class SheetInWork(NestGrid grid, NestShape[][] shapes)
    {
        public NestGrid Grid => grid;

        /// <summary>Where each turn of each item was free last; null where it no longer fits.</summary>
        public (int Column, int Row)?[][] Last { get; } = [.. shapes.Select(s => s.Select(_ => ((int, int)?)(0, 0)).ToArray())];

        public List<NestedItem> Items { get; } = [];

        public int Top { get; set; }
    }
}

/// <summary>A sequence, filled.</summary>
/// <param name="Sheets">What lies on each sheet.</param>
/// <param name="UsedShare">How far up the last sheet is used, 0 to 1.</param>
internal sealed record NestTrial(IReadOnlyList<List<NestedItem>> Sheets, double UsedShare)
{
    /// <summary>Fewer sheets, or as many and more left of the last.</summary>
    public bool IsBetterThan(NestTrial other) => (Sheets.Count, UsedShare).CompareTo((other.Sheets.Count, other.UsedShare)) < 0;
}
