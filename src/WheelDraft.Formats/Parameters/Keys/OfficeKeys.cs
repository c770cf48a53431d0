namespace WheelDraft.Formats.Parameters;

/// <summary>Who answers for the drawing.</summary>
internal static class OfficeKeys
{
    private const int MostWords = 80;
    private const int MostPath = 250;

    /// <summary>[drawing_office]</summary>
    public static TableDefinition Office => new("[drawing_office]", "Who answers for the drawing; all of it goes into title blocks and the report.",
    [
        Make.Optional("owner", Words(MostWords), "Legal owner of the drawing.", "\"Cutting Garden Works\""),
        Make.Optional("created_by", Words(MostWords), "Who made the design; left blank, a line to sign on.", "\"M. R.\""),
        Make.Optional("approved_by", Words(MostWords), "Who approves it; left blank, a line to sign on.", "\"\""),
        Make.Optional("revision", Words(8), "Index of the present revision.", "\"B\""),
        Make.Optional("sheet", Make.Word("A4", "A3", "A2", "A1", "A0"), "Largest paper of any sheet; left out, each has what it needs.", "\"A4\""),
        Make.Optional("font", new TextShape(MostPath), "Font file (TrueType or OpenType), its path from this file's folder: letters that the stroke alphabet lacks are drawn from it, one by one and left to right, in PNG, PDF and SVG with strokes; left out, they are crossed boxes. Latin, Greek and Cyrillic need none.", "\"fonts/own.otf\""),
        Make.Optional("revisions", new ListShape(new TableShape(Revision), 0, 100), "The table of revisions.", "[ { revision = \"A\", date = \"2026-10-02\", text = \"first issue\" } ]"),
    ]);

    private static TableDefinition Revision => new("a revision", "One line of the table of revisions.",
    [
        Make.Needed("revision", new TextShape(8), "which revision the line is about", "Its index.", "\"A\""),
        Make.Optional("date", new DateShape(), "Its date.", "\"2026-10-02\""),
        Make.Needed("text", new TextShape(200), "what the reader learns of the revision", "What changed.", "\"first issue\""),
    ]);

    private static TextShape Words(int most) => new(most) { MayBeEmpty = true };
}
