namespace WheelDraft.Formats.Parameters;

/// <summary>What a strip's own shape says of its contact.</summary>
/// <param name="Piece">The piece that touches.</param>
/// <param name="IsRivet">Whether it is a rivet; else a fold.</param>
/// <param name="WidthMm">Width of the strip there; null when it is wrong or not known.</param>
internal sealed record StripContact(CheckedTable Piece, bool IsRivet, decimal? WidthMm)
{
    /// <summary>The contact of a strip: its first contact piece, or null when it has none.</summary>
    public static StripContact? Of(CheckedTable strip)
    {
        decimal? width = null;
        foreach (CheckedTable piece in strip.Tables("shape"))
        {
            if (piece.Has("rivet"))
            {
                return new StripContact(piece, IsRivet: true, width);
            }

            if (piece.Flag("contact") == true && piece.Has("bend"))
            {
                return new StripContact(piece, IsRivet: false, width);
            }

            width = WidthAfter(piece, width);
        }

        return null;
    }

    /// <summary>Width of a strip at the end of a piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="before">Width where it begins if the piece does not say; null when not known.</param>
    public static decimal? WidthAfter(CheckedTable piece, decimal? before)
    {
        if (piece.Text("tab") is { } tab)
        {
            return decimal.Parse(tab.Split('x')[0], System.Globalization.CultureInfo.InvariantCulture);
        }

        string last = piece.Has("width_end") ? "width_end" : "width";
        return piece.Has(last) ? piece.Quantity(last)?.InBaseUnit : before;
    }
}
