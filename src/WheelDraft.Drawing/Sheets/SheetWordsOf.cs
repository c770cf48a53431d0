using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>Words that all sheets of a design share.</summary>
internal static class SheetWordsOf
{
    /// <summary>The caution of every sheet.</summary>
    public const string Caution =
        "Mains voltage kills: isolate before work. This is a drafting aid and certifies nothing; local codes and a qualified person decide.";

    /// <summary>The title block of a sheet.</summary>
    public static TitleBlock TitleBlock(Design design, string subtitle, string documentType, DrawingScale? scale = null)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        return new TitleBlock
        {
            Title = design.Brief.Title,
            Subtitle = subtitle,
            DocumentType = documentType,
            Number = design.Brief.DrawingNumber ?? "",
            Date = design.Brief.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            Scale = scale?.ToString() ?? "",
            Units = scale is null ? "" : $"{numbers.UnitSign}, decimal point",
        };
    }
}
