using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Words that all sheets of a design share.</summary>
internal static class SheetWordsOf
{
    private const string MainsCaution = "Mains voltage kills: isolate before work.";
    private const string ExtraLowCaution = "Extra-low voltage burns and starts fires: fuse it, and feed it from a safety transformer only.";
    private const string AidCaution = "This is a drafting aid and certifies nothing; local codes and a qualified person decide.";

    /// <summary>The caution of a sheet of a design, by its voltage, with what the person takes on themselves.</summary>
    public static IReadOnlyList<string> CautionsOf(Design design)
    {
        string caution = $"{(design.Brief.Supply.IsExtraLow ? ExtraLowCaution : MainsCaution)} {AidCaution}";
        return [design.Brief.Spacing.OwnResponsibility is string words ? $"{caution} Below the rules on own responsibility: \"{words}\"." : caution];
    }

    // Stands in the title block of every sheet of a design that misses, so that no part is cut from it by mistake.
    private static string Mark(Design design) => design.Meets ? "" : "MISSES: DO NOT CUT - ";

    /// <summary>The title block of a sheet.</summary>
    public static TitleBlock TitleBlock(Design design, string subtitle, string documentType, DrawingScale? scale = null) => TitleBlock(design.Brief, Mark(design) + subtitle, documentType, scale);

    /// <summary>The title block of a sheet that shows more than one design of a brief.</summary>
    public static TitleBlock TitleBlock(Brief brief, string subtitle, string documentType, DrawingScale? scale = null)
    {
        DrawingNumbers numbers = new(brief.DrawingUnit);
        return new TitleBlock
        {
            Title = brief.Title,
            Subtitle = subtitle,
            DocumentType = documentType,
            Number = brief.DrawingNumber ?? "",
            Owner = brief.Office.Owner,
            Creator = brief.Office.CreatedBy,
            Approval = brief.Office.ApprovedBy,
            Revision = brief.Office.Revision,
            Input = brief.InputMark,
            Date = brief.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            Scale = scale?.ToString() ?? "",
            Units = scale is null ? "" : $"{numbers.UnitSign}, decimal point",
        };
    }

    /// <summary>Which way a wheel turns, in words.</summary>
    public static string Turns(Design design) => design.Motion.Direction == Turning.Clockwise ? "clockwise" : "anticlockwise";
}

/// <summary>A sheet's place in its set.</summary>
/// <param name="Number">Which one, from 1.</param>
/// <param name="Of">How many there are.</param>
internal sealed record SheetNumber(int Number, int Of)
{
    /// <summary>The only one.</summary>
    public static SheetNumber Single { get; } = new(1, 1);

    /// <summary>The title block with this number in it.</summary>
    internal TitleBlock On(TitleBlock block) => block with { Sheet = Number, Sheets = Of };
}
