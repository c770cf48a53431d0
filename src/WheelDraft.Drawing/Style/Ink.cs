namespace WheelDraft.Drawing;

/// <summary>What the colour of a line, a text or a solid mark means. The theme gives the colour.</summary>
internal enum Ink
{
    /// <summary>Edges of parts.</summary>
    Outline,

    /// <summary>Writing.</summary>
    Text,

    /// <summary>Writing of less weight: captions, units, notes.</summary>
    Quiet,

    /// <summary>Dimension and leader lines.</summary>
    Dimension,

    /// <summary>Centre lines and pitch circles.</summary>
    Centre,

    /// <summary>Frame, fields and title block.</summary>
    Frame,

    /// <summary>Grid of a chart or table.</summary>
    Grid,

    /// <summary>Edges of copper.</summary>
    Copper,

    /// <summary>The moving cursor, the state now, what the reader should look at.</summary>
    Accent,

    /// <summary>Uncertainty: whiskers, bands.</summary>
    Whisker,

    /// <summary>What meets its rule.</summary>
    Meets,

    /// <summary>What is near its limit: a warning.</summary>
    Warning,

    /// <summary>What misses its rule: an error.</summary>
    Error,

    /// <summary>What is live at the moment shown.</summary>
    Live,

    /// <summary>The colour of the paper, for writing on dark fills.</summary>
    Paper,

    /// <summary>First net.</summary>
    Net1,

    /// <summary>Second net.</summary>
    Net2,

    /// <summary>Third net.</summary>
    Net3,

    /// <summary>Fourth net.</summary>
    Net4,

    /// <summary>Fifth net.</summary>
    Net5,

    /// <summary>Sixth net.</summary>
    Net6,

    /// <summary>Seventh net.</summary>
    Net7,

    /// <summary>Eighth net.</summary>
    Net8,
}
