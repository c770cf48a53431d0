using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>Varied designs as CSV: a row each design.</summary>
internal static class VaryCsv
{
    /// <summary>The names of the columns beside the keys, units at their ends.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "verdict", "errors", "diameter_mm", "worst_on_time_s", "least_ratio", "least_margin_mm", "tightest", "least_force_n", "most_force_n", "torque_mn_m", "first_finding",
    ];

    /// <summary>Writes it: UTF-8, LF; a figure that was not worked out is empty.</summary>
    public static byte[] Write(VariedDesigns varied)
    {
        StringBuilder csv = new();
        CsvText.Row(csv, [.. varied.Keys.Select(k => k.Name), .. Columns]);
        foreach (VariedPoint point in varied.Points)
        {
            CsvText.Row(csv, [.. point.Values, .. Cells(point)]);
        }

        return Encoding.UTF8.GetBytes(csv.ToString());
    }

    private static IEnumerable<string> Cells(VariedPoint point)
    {
        DesignMerits? m = point.Merits;
        return
        [
            point.Verdict, m is null ? "" : Wording.Number(m.Errors, 0), Cell(m?.DiameterMm), Cell(m?.WorstOnTimeS), Cell(m?.Tightest?.Ratio), Cell(m?.Tightest?.SpareMm), m?.Tightest?.What ?? "",
            Cell(m?.LeastForceN), Cell(m?.MostForceN), Cell(1000 * m?.TorqueNm), point.First?.Message.ReplaceLineEndings(" ") ?? "",
        ];
    }

    private static string Cell(double? value) => value is double number && double.IsFinite(number) ? Wording.Number(number, 6) : "";
}
