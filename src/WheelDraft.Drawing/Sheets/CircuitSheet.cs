using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The wiring diagram: line on the left, neutral on the right, contacts of the wheel with their angles, inputs, loads and motor between.</summary>
/// <remarks>Graphic symbols after IEC 60617 (from memory): make contact, brush on slip ring, load as a rectangle, motor as a circle with M.
/// Everything is drawn at rest, inputs open, contacts open, or as it stands at a moment.</remarks>
internal static class CircuitSheet
{
    // In one column on the smaller sheets; from A3 on folded into columns where it is long.
    private static IEnumerable<(PaperSize Size, bool MayFold)> Sizes =>
    [
        (PaperSize.A4.Turned, false), (PaperSize.A4, false), (PaperSize.A3, false),
        (PaperSize.A3, true), (PaperSize.A2, true), (PaperSize.A1, true), (PaperSize.A0, true),
    ];

    /// <summary>Draws it on the smallest sheet on which it finds room.</summary>
    /// <param name="design">The design.</param>
    /// <param name="number">Its place in the set.</param>
    /// <param name="options">How it is drawn.</param>
    public static Sheet Of(Design design, SheetNumber? number = null, SheetOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        Sheet sheet = Drawn(design, number, options, []);
        string[] lost = [.. sheet.Warnings.Where(w => w.StartsWith(WiringPicture.NoRoom, StringComparison.Ordinal))];

        // What found no room is told where it is missed.
        return lost.Length == 0 ? sheet : Drawn(design, number, options, lost);
    }

    private static Sheet Drawn(Design design, SheetNumber? number, SheetOptions? options, IReadOnlyList<string> lost)
    {
        WiringLayout layout = WiringLayout.Of(design.Circuit.Request);
        MomentView? moment = (options ?? SheetOptions.Usual).MomentOf(design);
        WiringPicture picture = new(layout, moment) { HasEarthedCase = Earthed(design).Length > 0 };
        CautionBlock caution = CautionOf(design);
        NoteBlock folded = Notes(design, layout, moment, (IsFolded: true, lost));
        NoteBlock notes = Notes(design, layout, moment, (IsFolded: false, lost));
        (PaperSize size, bool folds) = On(design).FirstOrDefault(((PaperSize Size, bool MayFold) s) => Fits(picture, s, PictureRoom(s.Size, s.MayFold ? folded : notes, caution)), (SheetPapers.Of(design, PaperSize.Iso).Last(), true));
        notes = folds && picture.ColumnCount(PictureRoom(size, folded, caution)) > 1 ? folded : notes;
        SheetBuilder sheet = new(new("circuit", $"Wiring diagram: {design.Brief.Title}", Description(design, layout) + (moment is null ? "" : $" {moment.Sentence} {Loads(design, moment)}")), size);
        SheetFrame.Draw(sheet, (number ?? SheetNumber.Single).On(SheetWordsOf.TitleBlock(design, "Wiring", "Circuit diagram")));
        Bounds room = PictureRoom(size, notes, caution);
        if (!picture.FitsFolded(room))
        {
            sheet.Warn("The wiring diagram is larger than its paper.");
        }

        picture.Draw(sheet, room);
        Words(sheet, (notes, caution), room);
        return sheet.Build();
    }

    // Bounded paper may be folded on too.
    private static IEnumerable<(PaperSize Size, bool MayFold)> On(Design design)
    {
        PaperSize[] allowed = [.. SheetPapers.Of(design, Sizes.Select(s => s.Size))];
        return Sizes.Where(s => allowed.Contains(s.Size)).Append((allowed[^1], true));
    }

    private const double GapMm = 5;

    private static bool Fits(WiringPicture picture, (PaperSize Size, bool MayFold) on, Bounds room) =>
        on.MayFold ? picture.FitsFolded(room) : picture.Fits(room);

    // Notes stand below the picture, over the whole width.
    private static Bounds PictureRoom(PaperSize size, NoteBlock notes, CautionBlock caution)
    {
        Bounds room = SheetFrame.RoomOf(size);
        return room with { MinY = room.MinY + FootMm(room.Width, notes, caution) + GapMm };
    }

    private static double FootMm(double widthMm, NoteBlock notes, CautionBlock caution)
    {
        double half = (widthMm - GapMm) / 2;
        return Math.Max(notes.HeightMm(half), caution.HeightMm(half));
    }

    private static void Words(SheetBuilder sheet, (NoteBlock Notes, CautionBlock Caution) foot, Bounds picture)
    {
        GroupPen pen = sheet.Group("notes", "Notes and caution", "notes");
        double half = (picture.Width - GapMm) / 2;
        double top = picture.MinY - GapMm;
        foot.Notes.Draw(pen, new Point(picture.MinX, top), half);
        foot.Caution.Draw(pen, new Point(picture.MinX + half + GapMm, top), half);
    }

    private static CautionBlock CautionOf(Design design) =>
        new([.. SheetWordsOf.CautionsOf(design), "Fuse, thermal cut-out and the rest of protective earth belong in the finished wiring and are not drawn."]);

    /// <summary>The loads at a moment in a sentence.</summary>
    public static string Loads(Design design, MomentView moment) =>
        $"Loads: {string.Join("; ", design.Circuit.Loads.Select(l => $"{l} {moment.LoadWords(l)}"))}.";

    private static NoteBlock Notes(Design design, WiringLayout layout, MomentView? moment, (bool IsFolded, IReadOnlyList<string> Lost) told)
    {
        List<string> notes =
        [
            moment is null ? RestWords(layout)
                : $"{moment.Sentence} Heavy lines are live; dashed ones are joined to neither line nor neutral and may hold a charge.",
            "A contact linked to a ring is one of the wheel's" + (moment is null ? "; below it stand the programme angles at which it is closed, and the seconds." : "."),
        ];
        if (layout.Bars.Any(b => b.IsWheel))
        {
            notes.Add("The heavy bar is the wheel's copper; the feed wiper slides on its whole ring.");
        }

        notes.Add("Letters before numbers: -Q contact of the wheel, -X feed, -B input, -M motor, -E load, unless the file gives its own.");
        notes.Add(Earthed(design) is { Length: > 0 } earthed
            ? $"PE, protective earth, net E: {string.Join(", ", earthed)}. The motor's case is drawn joined to it."
            : "The file has no earthed part. A motor with a metal case needs protective earth unless it is double insulated or fed by extra-low voltage.");
        if (layout.Crossings > 0)
        {
            notes.Add("Lines that cross without a dot are not joined.");
        }

        if (told.IsFolded)
        {
            notes.Add("Columns go on from left to right; bars of the same name are one net.");
        }

        notes.AddRange(told.Lost);
        return new("Notes", notes);
    }

    private static string RestWords(WiringLayout layout) => layout.Symbols.Any(s => s.IsAlways)
        ? "Drawn at rest, whatever the wheel's place: inputs open, contacts open, but for those that are always closed."
        : "Drawn at rest: every contact and input open, whatever the wheel's place.";

    /// <summary>What of a design is joined to protective earth, by name.</summary>
    public static string[] Earthed(Design design) =>
        [.. design.Brief.Parts.Where(p => p.Kind == PartKind.Earthed).Select(p => p.Name), .. design.Brief.Wheel.Shaft == ShaftKind.Earthed ? ["shaft"] : (string[])[]];

    /// <summary>The diagram in sentences.</summary>
    public static string Description(Design design, WiringLayout layout)
    {
        string loads = string.Join("; ", design.Brief.Loads.Select(l => $"{l.Name} between {l.From} and {l.To}"));
        string motor = design.Brief.DriveMotor is LoadBrief m ? $" Drive motor between {m.From} and {m.To}." : "";
        string inputs = string.Join("; ", design.Brief.Inputs.Select(i => $"{i.Name} between {i.From} and {i.To}"));
        string contacts = string.Join("; ", layout.Symbols.Where(s => s.Kind == WiringKind.Ring).Select(s => $"{s.Name} {s.Words}"));
        return $"Wiring between line and neutral. Contacts of the wheel: {(contacts.Length == 0 ? "none" : contacts)}. Inputs: {(inputs.Length == 0 ? "none" : inputs)}. Loads: {(loads.Length == 0 ? "none" : loads)}.{motor}";
    }
}
