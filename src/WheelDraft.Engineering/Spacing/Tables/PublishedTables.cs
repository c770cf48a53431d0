using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace WheelDraft.Engineering;

/// <summary>The register of all tables kept here, so that a report can say by which values it was worked out.</summary>
internal static class PublishedTables
{
    /// <summary>Every table, in fixed order.</summary>
    public static IReadOnlyList<PublishedTable> All =>
    [
        Of(Iec60664TableF1.Source, Iec60664TableF1.Rows, r => [r.UpToV, r.CategoryI, r.CategoryII, r.CategoryIII, r.CategoryIV ?? double.NaN]),
        Of(Iec60664TableF2.Source, Iec60664TableF2.Rows, r => [r.ImpulseV, r.Degree1, r.Degree2, r.Degree3, r.Preferred ? 1 : 0]),
        Of(Iec60664TableF3.Source, Iec60664TableF3.Rows, r => [r.RationalisedV, .. r.NominalV]),
        Of(Iec60664TableF4.Source, Iec60664TableF4.Rows, r => [r.RationalisedV, .. r.NominalV]),
        Of(Iec60664TableF5.Source, Iec60664TableF5.Rows, Creepage),
        Of(Iec60664TableF6.Source, Iec60664TableF6.Rows, r => [r.RatedV, r.AtSeaLevelV, r.At200MetresV, r.At500MetresV]),
        Of(Iec60664TableF8.Source, Iec60664TableF8.Rows, r => [r.PeakV, r.ClearanceMm]),
        Of(Iec60664TableA2.Source, Iec60664TableA2.Rows, r => [r.AltitudeM, r.PressureKpa, r.Factor]),
        Of(Iec60664GrooveWidths.Source, Iec60664GrooveWidths.WidthMm, x => [x]),
        Of(Iec60335Table15.Source, Iec60335Table15.Rows, r => [r.UpToV, r.CategoryI, r.CategoryII, r.CategoryIII]),
        Of(Iec60335Table16.Source, Iec60335Table16.Rows, r => [r.ImpulseV, r.Degree1, r.Degree2, r.Degree3]),
        Of(Iec60335Table17.Source, Iec60335Table17.Rows, Creepage),
        Of(Iec60335Table18.Source, Iec60335Table18.Rows, Creepage),
    ];

    /// <summary>SHA-256 of all values of all tables, lower-case hexadecimal: the same in two reports exactly when both were worked out
    /// by the same values.</summary>
    public static string Sha256() => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', All.Select(t => t.Citation + "\n" + t.Values)))));

    private static double[] Creepage(CreepageRow r) => [r.VoltageV, r.Degree1, r.Degree2I, r.Degree2II, r.Degree2III, r.Degree3I, r.Degree3II, r.Degree3III];

    private static PublishedTable Of<TRow>(TableSource source, TRow[] rows, Func<TRow, double[]> cells) => new(
        source.Citation,
        source.ReadIn,
        RuleWords.Confidence(source.Confidence),
        string.Join('\n', rows.Select(r => string.Join(' ', cells(r).Select(c => c.ToString("R", CultureInfo.InvariantCulture))))));
}

/// <summary>A table of a standard as it is kept here.</summary>
/// <param name="Citation">Standard, edition and table.</param>
/// <param name="ReadIn">The public texts that its values were read in.</param>
/// <param name="Confidence">How well it is known, in words; single rows may be known less well, which the steps of a requirement say.</param>
/// <param name="Values">The values, a row a line.</param>
internal sealed record PublishedTable(string Citation, string ReadIn, string Confidence, string Values);
