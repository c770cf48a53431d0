using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What stands on a sheet beside its picture.</summary>
/// <param name="Tables">The tables, the first on top.</param>
/// <param name="Notes">The notes.</param>
internal sealed record SheetMatter(IReadOnlyList<SheetTable> Tables, NoteBlock Notes)
{
    // Between tables above each other, mm.
    private const double TableGapMm = 6;

    /// <summary>One table and notes.</summary>
    public SheetMatter(SheetTable table, NoteBlock notes)
        : this([table], notes)
    {
    }

    /// <summary>The same with the key to numbered callouts as a last table; unchanged without any.</summary>
    /// <remarks>A key in another order takes the same room, so that the order may be found after the sheet is shared out.</remarks>
    public SheetMatter WithKey(IReadOnlyList<RingCallout> numbered) =>
        numbered.Count == 0 ? this : this with { Tables = [.. Tables.Where(t => !string.Equals(t.Title, CalloutKey.Title, StringComparison.Ordinal)), CalloutKey.Table(numbered)] };

    /// <summary>The caution.</summary>
    public required CautionBlock Caution { get; init; }

    /// <summary>The width at which no table breaks a cell into lines, mm.</summary>
    public double TablesNaturalWidthMm => Tables.Max(t => t.NaturalWidthMm);

    /// <summary>Height of all tables at a width, mm.</summary>
    public double TablesHeightMm(double widthMm) => Tables.Sum(t => t.SideBySideHeightMm(widthMm)) + (TableGapMm * (Tables.Count - 1));

    /// <summary>Draws the tables one below the other.</summary>
    /// <returns>How many rows found no room.</returns>
    public int DrawTables(SheetBuilder sheet, Bounds area)
    {
        int missing = 0;
        double top = area.MaxY;
        for (int i = 0; i < Tables.Count; i++)
        {
            GroupPen pen = sheet.Group(i == 0 ? "table" : Invariant.Text($"table-{i + 1}"), Tables[i].Title, "table");

            // A table takes no more than its own height, so that side by side it leaves the room below to the next.
            double foot = top - Tables[i].SideBySideHeightMm(area.Width);
            Bounds room = area with { MaxY = Math.Max(top, area.MinY), MinY = i + 1 < Tables.Count ? Math.Clamp(foot, area.MinY, Math.Max(top, area.MinY)) : area.MinY };
            missing += Tables[i].Rows.Count - Tables[i].DrawSideBySide(pen, room);
            top = foot - TableGapMm;
        }

        return missing;
    }
}

/// <summary>How a sheet is shared out: on upright paper the picture stands above table, notes and caution, on lying paper to the left of them.</summary>
/// <param name="Picture">Where the picture stands.</param>
/// <param name="Table">Where the tables stand.</param>
/// <param name="Notes">Where the notes stand.</param>
/// <param name="Caution">Where the caution stands.</param>
/// <param name="IsRoomy">Whether all rows of the tables find room and the picture keeps enough.</param>
internal sealed record SheetPlan(Bounds Picture, Bounds Table, Bounds Notes, Bounds Caution, bool IsRoomy)
{
    private const double GapMm = 5;

    // A sheet is the picture's: it keeps this share of height or width, however much the table needs.
    private const double LeastPicture = 0.4;

    // Notes are broken into lines of about fifty letters.
    private const double NotesWidthMm = 84;

    /// <summary>Shares out a sheet.</summary>
    public static SheetPlan Of(PaperSize size, SheetMatter matter)
    {
        Bounds room = SheetFrame.RoomOf(size);
        return size.HeightMm > size.WidthMm ? Upright(room, matter) : Lying(room, matter);
    }

    /// <summary>Shares out lying paper with the tables beside the title block, so that only notes stand beside the picture.</summary>
    /// <returns>Null where the tables do not fit there.</returns>
    public static SheetPlan? WithTablesAtTheFoot(PaperSize size, SheetMatter matter)
    {
        Bounds room = SheetFrame.RoomOf(size);
        Bounds foot = SheetFrame.BesideTitleBlock(size);
        if (matter.TablesNaturalWidthMm > foot.Width || matter.TablesHeightMm(foot.Width) > foot.Height)
        {
            return null;
        }

        double left = room.MaxX - NotesWidthMm;
        double cautionTop = room.MinY + matter.Caution.HeightMm(NotesWidthMm);
        double notesTop = cautionTop + GapMm + matter.Notes.HeightMm(NotesWidthMm);
        return new(
            new(room.MinX, room.MinY, left - GapMm, room.MaxY),
            foot,
            new(left, cautionTop + GapMm, room.MaxX, notesTop),
            new(left, room.MinY, room.MaxX, cautionTop),
            notesTop <= room.MaxY);
    }

    /// <summary>Draws table, notes and caution.</summary>
    /// <returns>How many rows of the tables found no room.</returns>
    public int Draw(SheetBuilder sheet, SheetMatter matter)
    {
        int missing = matter.DrawTables(sheet, Table);
        GroupPen words = sheet.Group("notes", "Notes and caution", "notes");
        matter.Notes.Draw(words, new Point(Notes.MinX, Notes.MaxY), Notes.Width);
        matter.Caution.Draw(words, new Point(Caution.MinX, Caution.MaxY), Caution.Width);
        return missing;
    }

    private static SheetPlan Upright(Bounds room, SheetMatter matter)
    {
        double half = (room.Width - GapMm) / 2;
        double foot = Math.Max(matter.Notes.HeightMm(half), matter.Caution.HeightMm(half));
        double wanted = matter.TablesHeightMm(room.Width);
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
        double one = Math.Min(most, Math.Max(NotesWidthMm, matter.TablesNaturalWidthMm));
        for (double width = one; ; width += matter.TablesNaturalWidthMm + GapMm + 1)
        {
            bool last = width + matter.TablesNaturalWidthMm + GapMm + 1 > most;
            double words = Math.Min(width, NotesWidthMm * 1.5);
            double notes = matter.Notes.HeightMm(words);
            double caution = matter.Caution.HeightMm(words);
            double table = room.Height - notes - caution - (2 * GapMm);
            bool roomy = matter.TablesHeightMm(width) <= table;
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
