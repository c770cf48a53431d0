namespace WheelDraft.Engineering;

/// <summary>Finding rows in tables that rise by their first column.</summary>
internal static class TableRows
{
    /// <summary>Voltages are brought to a microvolt before a table is entered, so that the rounding noise of a solved
    /// circuit (parts in 1e12) never lifts a voltage into the next row.</summary>
    public static double Voltage(double v) => Math.Round(v, 6, MidpointRounding.AwayFromZero);

    /// <summary>The index of the first row that reaches a value; the number of rows when none does.</summary>
    public static int FirstReaching<TRow>(TRow[] rows, double value, Func<TRow, double> key)
    {
        for (int i = 0; i < rows.Length; i++)
        {
            if (key(rows[i]) >= value)
            {
                return i;
            }
        }

        return rows.Length;
    }

    /// <summary>The value at a voltage between two rows, on the straight line between them, mm.</summary>
    /// <remarks>Rounded up to 0.01 mm after rounding to 1e-9 mm (the noise of one multiplication), but never above the upper
    /// row, which holds for the whole step.</remarks>
    public static double Between((double V, double Mm) lower, (double V, double Mm) upper, double atV)
    {
        double exact = lower.Mm + ((upper.Mm - lower.Mm) * (atV - lower.V) / (upper.V - lower.V));
        return Math.Min(upper.Mm, Math.Ceiling(Math.Round(exact * 100, 7, MidpointRounding.AwayFromZero)) / 100);
    }

    /// <summary>How a value between two rows was rounded, in words: one that rounding up would lift above the upper row is that row's own.</summary>
    public static string Rounding(double mm, double upperMm) =>
        mm < upperMm || Noiseless(upperMm * 100) == Math.Round(upperMm * 100) ? "rounded up to 0.01 mm" : "no more than the upper row";

    /// <summary>A distance without the noise of arithmetic, rounded to 1e-9 mm.</summary>
    public static double Noiseless(double mm) => Math.Round(mm, 9, MidpointRounding.AwayFromZero);
}
