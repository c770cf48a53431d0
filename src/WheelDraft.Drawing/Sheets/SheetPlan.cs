using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What stands on a sheet beside its picture.</summary>
/// <param name="Table">The table.</param>
/// <param name="Notes">The notes.</param>
internal sealed record SheetMatter(SheetTable Table, NoteBlock Notes)
{
    /// <summary>The caution.</summary>
    public CautionBlock Caution { get; } = new([SheetWordsOf.Caution]);
}

/// <summary>How a sheet is shared out: on upright paper the picture stands above table, notes and caution, on lying paper to the left of them.</summary>
/// <param name="Picture">Where the picture stands.</param>
/// <param name="Table">Where the table stands.</param>
/// <param name="Notes">Where the notes stand.</param>
/// <param name="Caution">Where the caution stands.</param>
/// <param name="IsRoomy">Whether all rows of the table find room and the picture keeps enough.</param>
internal sealed record SheetPlan(Bounds Picture, Bounds Table, Bounds Notes, Bounds Caution, bool IsRoomy)
{
    private const double GapMm = 5;

    // A sheet is the picture's: it keeps this share of height or width, whatever the table wants.
    private const double LeastPicture = 0.4;

    // Notes are broken into lines of about fifty letters.
    private const double NotesWidthMm = 84;

    /// <summary>Shares out a sheet.</summary>
    public static SheetPlan Of(PaperSize size, SheetMatter matter)
    {
        Bounds room = SheetFrame.RoomOf(size);
        return size.HeightMm > size.WidthMm ? Upright(room, matter) : Lying(room, matter);
    }

    /// <summary>Draws table, notes and caution.</summary>
    /// <returns>How many rows of the table found no room.</returns>
    public int Draw(SheetBuilder sheet, SheetMatter matter)
    {
        int next = matter.Table.DrawSideBySide(sheet.Group("table", "Table", "table"), Table);
        GroupPen words = sheet.Group("notes", "Notes and caution", "notes");
        matter.Notes.Draw(words, new Point(Notes.MinX, Notes.MaxY), Notes.Width);
        matter.Caution.Draw(words, new Point(Caution.MinX, Caution.MaxY), Caution.Width);
        return matter.Table.Rows.Count - next;
    }

    private static SheetPlan Upright(Bounds room, SheetMatter matter)
    {
        double half = (room.Width - GapMm) / 2;
        double foot = Math.Max(matter.Notes.HeightMm(half), matter.Caution.HeightMm(half));
        double wanted = matter.Table.SideBySideHeightMm(room.Width);
        double most = (room.Height * (1 - LeastPicture)) - foot - (2 * GapMm);
        double table = Math.Max(0, Math.Min(wanted, most));
        double footTop = room.MinY + foot;
        double tableTop = footTop + GapMm + table;
        return new(
            new(room.MinX, tableTop + GapMm, room.MaxX, room.MaxY),
            new(room.MinX, footTop + GapMm, room.MaxX, tableTop),
            new(room.MinX, room.MinY, room.MinX + half, footTop),
            new(room.MaxX - half, room.MinY, room.MaxX, footTop),
            wanted <= most);
    }

    private static SheetPlan Lying(Bounds room, SheetMatter matter)
    {
        double most = room.Width * (1 - LeastPicture);
        double one = Math.Min(most, Math.Max(NotesWidthMm, matter.Table.NaturalWidthMm));
        for (double width = one; ; width += matter.Table.NaturalWidthMm + GapMm + 1)
        {
            bool last = width + matter.Table.NaturalWidthMm + GapMm + 1 > most;
            double words = Math.Min(width, NotesWidthMm * 1.5);
            double notes = matter.Notes.HeightMm(words);
            double caution = matter.Caution.HeightMm(words);
            double table = room.Height - notes - caution - (2 * GapMm);
            bool roomy = matter.Table.SideBySideHeightMm(width) <= table;
            if (roomy || last)
            {
                double left = room.MaxX - width;
                double cautionTop = room.MinY + caution;
                double notesTop = cautionTop + GapMm + notes;
                return new(
                    new(room.MinX, room.MinY, left - GapMm, room.MaxY),
                    new(left, Math.Min(notesTop + GapMm, room.MaxY), room.MaxX, room.MaxY),
                    new(left, cautionTop + GapMm, left + words, notesTop),
                    new(left, room.MinY, left + words, cautionTop),
                    roomy);
            }
        }
    }
}
