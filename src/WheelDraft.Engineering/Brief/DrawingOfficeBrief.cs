namespace WheelDraft.Engineering;

/// <summary>Who answers for the drawing: words for title blocks and for the page that is signed. Nothing is worked out from them.</summary>
public sealed record DrawingOfficeBrief
{
    /// <summary>Legal owner; empty when not given.</summary>
    public string Owner { get; init; } = "";

    /// <summary>Who made the design; empty leaves a line to sign on.</summary>
    public string CreatedBy { get; init; } = "";

    /// <summary>Who approves it; empty leaves a line to sign on.</summary>
    public string ApprovedBy { get; init; } = "";

    /// <summary>The present revision; empty when not given.</summary>
    public string Revision { get; init; } = "";

    /// <summary>The largest paper that a sheet may have, A4 to A0; empty for any.</summary>
    public string LargestSheet { get; init; } = "";

    /// <summary>The font for scripts that the stroke alphabet lacks, or null.</summary>
    public FontBrief? Font { get; init; }

    /// <summary>What changed from revision to revision, in file order.</summary>
    public IReadOnlyList<RevisionBrief> Revisions { get; init; } = [];
}

/// <summary>A font file.</summary>
/// <param name="Path">Its path, as the file has it.</param>
/// <param name="Bytes">All of it; empty where the file was read without what lies beside it.</param>
public sealed record FontBrief(string Path, ReadOnlyMemory<byte> Bytes);

/// <summary>One line of the table of revisions.</summary>
/// <param name="Revision">Its index, e.g. A.</param>
/// <param name="Date">Its date, or null.</param>
/// <param name="Text">What changed.</param>
public sealed record RevisionBrief(string Revision, DateOnly? Date, string Text);
