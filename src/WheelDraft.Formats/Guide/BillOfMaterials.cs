using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Report;

namespace WheelDraft.Formats.Guide;

/// <summary>The bill of materials as a table for a spreadsheet: every part that is cut, with what it takes from the stock and of the machine, then hardware.</summary>
internal static class BillOfMaterials
{
    /// <summary>The file, beside the report.</summary>
    public const string FileName = "bom.csv";

    private static readonly string[] Columns =
        ["item", "quantity", "material", "thickness_mm", "blank_x_mm", "blank_y_mm", "area_mm2", "mass_g", "process", "cut_length_mm", "pierces", "least_time_s", "most_time_s", "file", "for"];

    /// <summary>Writes it: LF, lengths in mm whatever the drawings use; what is not known is left empty.</summary>
    public static string Write(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        StringBuilder csv = new();
        CsvText.Row(csv, Columns);
        foreach (Part part in design.Parts.All)
        {
            CutWork work = CutWork.Of(design.Brief, part);
            CsvText.Row(csv,
            [
                ShoppingList.NameOf(part), "1", ShoppingList.Material(design, part), Number(part.Stock.ThicknessMm, 3), Number(part.CutBounds.Width, 2), Number(part.CutBounds.Height, 2),
                Number(work.AreaMm2, 1), Number(work.MassG, 2), part.KerfMm is null ? "" : design.Brief.Process.Name ?? "", Number(work.CutLengthMm, 1), Number(work.Pierces, 0),
                Number(work.TimeS?.LeastS, 0), Number(work.TimeS?.MostS, 0), $"cut/{part.CutName}.dxf", "",
            ]);
        }

        foreach (IReadOnlyList<string> row in ShoppingList.Small(design))
        {
            CsvText.Row(csv, [row[0], row[1], .. Enumerable.Repeat("", 12), row[2]]);
        }

        return csv.ToString();
    }

    private static string Number(double? value, int decimals) => value is double v ? FixedPoint.Short(v, decimals) : "";
}
