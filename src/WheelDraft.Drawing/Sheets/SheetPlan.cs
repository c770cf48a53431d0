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

    /// <summary>Some of the tables with the same notes and caution.</summary>
    public SheetMatter Only(Range tables) => this with { Tables = [.. Tables.Take(tables)] };

    /// <summary>Whether every table keeps its words and figures whole at a width.</summary>
    public bool IsWholeAt(double widthMm) => Tables.All(t => t.LeastWidthMm <= widthMm);

    /// <summary>The width at which no table breaks a cell into lines, mm.</summary>
    public double TablesNaturalWidthMm => Tables.Select(t => t.NaturalWidthMm).DefaultIfEmpty(0).Max();

    /// <summary>Height of all tables at a width, mm.</summary>
    public double TablesHeightMm(double widthMm) => Tables.Sum(t => t.SideBySideHeightMm(widthMm)) + (TableGapMm * Math.Max(0, Tables.Count - 1));

    /// <summary>Draws the tables one below the other.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="area">The area.</param>
    /// <param name="firstNumber">The number of the first one on its sheet, from 1.</param>
    /// <returns>How many rows found no room.</returns>
    public int DrawTables(SheetBuilder sheet, Bounds area, int firstNumber = 1)
    {
        int missing = 0;
        double top = area.MaxY;
        for (int i = 0; i < Tables.Count; i++)
        {
            GroupPen pen = sheet.Group(i + firstNumber == 1 ? "table" : Invariant.Text($"table-{i + firstNumber}"), Tables[i].Title, "table");

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
    /// <summary>How many of the last tables stand at the foot, left of the title block; 0 for none.</summary>
    public int CountAtFoot { get; init; }

    /// <summary>Where those stand.</summary>
    public Bounds Foot { get; init; }

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

    /// <summary>All ways of sharing out a sheet on which every table finds room; the usual one first.</summary>
    public static IEnumerable<SheetPlan> Ways(PaperSize size, SheetMatter matter)
    {
        SheetPlan usual = Of(size, matter);
        Dictionary<double, (double CautionMm, double NotesMm)> words = [];
        IEnumerable<SheetPlan> lying = size.HeightMm > size.WidthMm ? [] :
            from atFoot in Enumerable.Range(0, matter.Tables.Count + 1)
            let beside = matter.Only(..^atFoot)
            from width in (double[])[NotesWidthMm, beside.TablesNaturalWidthMm, 0.75 * beside.TablesNaturalWidthMm, TitleBlock.WidthMm - GapMm]
            where width >= NotesWidthMm && beside.IsWholeAt(width)
            select Split(size, matter, atFoot, ColumnOf(matter, width, words));
        return ((SheetPlan?[])[usual, size.HeightMm > size.WidthMm ? UprightBesideNotes(size, matter) : WithTablesAtTheFoot(size, matter)]).OfType<SheetPlan>().Concat(lying).Where(p => p.IsRoomy);
    }

    /// <summary>The best way of sharing out the smallest paper on which a picture is large enough: the one with the largest scale.</summary>
    /// <param name="sizes">The papers, the smallest first.</param>
    /// <param name="matter">What stands beside the picture.</param>
    /// <param name="picture">Draws up a picture; null where it does not fit.</param>
    /// <param name="scale">Its scale, or any measure of how good it is.</param>
    /// <returns>Null where it fits on no paper.</returns>
    public static (PaperSize Size, SheetPlan Plan, T Picture)? Best<T>(IEnumerable<PaperSize> sizes, SheetMatter matter, Func<PaperSize, SheetPlan, T?> picture, Func<T, double> scale)
        where T : class
    {
        foreach (PaperSize size in sizes)
        {
            (SheetPlan Plan, T? Picture)[] fit = [.. Ways(size, matter).Select(p => (p, picture(size, p))).Where(p => p.Item2 is not null)];
            if (fit.Length > 0)
            {
                (SheetPlan plan, T? best) = fit.MaxBy(p => scale(p.Picture!));
                return (size, plan, best!);
            }
        }

        return null;
    }

    // On upright paper small tables stand over the caution, beside the notes.
    private static SheetPlan? UprightBesideNotes(PaperSize size, SheetMatter matter)
    {
        Bounds room = SheetFrame.RoomOf(size);
        double half = (room.Width - GapMm) / 2;
        if (!matter.IsWholeAt(half))
        {
            return null;
        }

        double caution = room.MinY + matter.Caution.HeightMm(half);
        double tables = matter.TablesHeightMm(half);
        double top = Math.Max(room.MinY + matter.Notes.HeightMm(half), caution + GapMm + tables);
        return new(
            new(room.MinX, top + GapMm, room.MaxX, room.MaxY),
            new(room.MaxX - half, caution + GapMm, room.MaxX, caution + GapMm + tables),
            new(room.MinX, room.MinY, room.MinX + half, top),
            new(room.MaxX - half, room.MinY, room.MaxX, caution),
            room.MaxY - top - GapMm >= LeastPicture * room.Height);
    }

    // A column with notes and caution, and what these take in it.
    private readonly record struct WordColumn(double WidthMm, double WordsMm, double CautionMm, double NotesMm);

    // Words are broken into lines once a width, however many ways there are.
    private static WordColumn ColumnOf(SheetMatter matter, double columnMm, Dictionary<double, (double CautionMm, double NotesMm)> known)
    {
        double words = Math.Min(columnMm, NotesWidthMm * 1.5);
        if (!known.TryGetValue(words, out (double CautionMm, double NotesMm) heights))
        {
            heights = (matter.Caution.HeightMm(words), matter.Notes.HeightMm(words));
            known.Add(words, heights);
        }

        return new(columnMm, words, heights.CautionMm, heights.NotesMm);
    }

    // Notes, caution and the first tables in a column above the title block, the other tables left of the block; the picture has the rest, down to the
    // frame where the column is as wide as the block.
    private static SheetPlan Split(PaperSize size, SheetMatter matter, int atFoot, WordColumn column)
    {
        (double columnMm, double words) = (column.WidthMm, column.WordsMm);
        Bounds room = SheetFrame.RoomOf(size);
        Bounds low = SheetFrame.BesideTitleBlock(size);
        (SheetMatter beside, SheetMatter foot) = (matter.Only(..^atFoot), matter.Only(^atFoot..));
        double left = room.MaxX - columnMm;
        double cautionTop = room.MinY + column.CautionMm;
        double notesTop = cautionTop + GapMm + column.NotesMm;
        double tables = beside.Tables.Count == 0 ? 0 : GapMm + beside.TablesHeightMm(columnMm);
        double footTop = low.MinY + (atFoot == 0 ? 0 : foot.TablesHeightMm(low.Width) + GapMm);
        double pictureFoot = Math.Max(footTop, left - GapMm <= low.MaxX + GapMm ? low.MinY : room.MinY);
        Bounds picture = new(room.MinX, pictureFoot, left - GapMm, room.MaxY);
        bool isRoomy = notesTop + tables <= room.MaxY && foot.IsWholeAt(low.Width) && picture.Height >= LeastPicture * room.Height && picture.Width >= LeastPicture * room.Width;
        return new(picture, new(left, Math.Min(notesTop + GapMm, room.MaxY), room.MaxX, room.MaxY), new(left, cautionTop + GapMm, left + words, notesTop), new(left, room.MinY, left + words, cautionTop), isRoomy)
        {
            CountAtFoot = atFoot,
            Foot = new(low.MinX, low.MinY, low.MaxX, Math.Max(low.MinY, footTop - (atFoot == 0 ? 0 : GapMm))),
        };
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
        int beside = matter.Tables.Count - CountAtFoot;
        int missing = matter.Only(..beside).DrawTables(sheet, Table);
        missing += CountAtFoot == 0 ? 0 : matter.Only(beside..).DrawTables(sheet, Foot, beside + 1);
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
