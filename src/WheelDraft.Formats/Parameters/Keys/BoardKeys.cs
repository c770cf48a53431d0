using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>What stands round the wheel: surfaces, parts, ribs and slots.</summary>
internal static class BoardKeys
{
    /// <summary>[housing]</summary>
    public static TableDefinition Housing => new("[housing]", "How exactly the fixed parts are made and put in place.",
    [
        Make.Preset("placing", Make.LengthFromZero("10 mm"), "\"0 mm\"", "Each wiper's contact along the motion, plus and minus."),
        Make.Preset("tolerance", Make.LengthFromZero("10 mm"), "\"0 mm\"", "Each face of every part, rib, slot and surface, plus and minus."),
    ]);

    /// <summary>[[surface]]</summary>
    public static TableDefinition Surface => new("[[surface]]", "A fixed insulating surface that strips lie on.",
    [
        Make.Needed("name", new NameShape(), "what strips, ribs and slots call it", "Name.", "\"floor\""),
        Make.Optional("material_group", Make.Word(FileKeys.Groups), "Material group of IEC 60664-1, or cti instead.", "\"IIIa\""),
        Make.Optional("cti", Make.Whole(100, 1000), "Comparative tracking index, from which the group follows.", "175"),
        Make.Needed("level", Make.Position(), "how high strips lie", "Height above (+) or below (-) the copper face.", "\"-7 mm\""),
        Make.Optional("outline", Make.Points(3), "Corners in plan; left out: unbounded.", "[ [\"-40 mm\", \"-40 mm\"], [\"40 mm\", \"-40 mm\"], [\"0 mm\", \"40 mm\"] ]"),
        Make.Optional("thickness", Make.Length(), "Thickness of the plate whose upper face it is, for drawings and shopping list; no distance depends on it.", "\"5 mm\""),
    ])
    {
        Choices = [new([["material_group"], ["cti"]], "which creepage distances the surface needs")],
    };

    /// <summary>[[part]]</summary>
    public static TableDefinition Part => new("[[part]]", "Any other conductive or touchable thing near: motor frame, adjusting screw, housing wall.",
    [
        Make.Needed("name", new NameShape(), "what reports call it", "Name.", "\"motor frame\""),
        Make.Needed("kind", Make.Word("live", "earthed", "touchable", "floating"), "which distances it needs", "What it is, electrically.", "\"earthed\""),
        Make.Optional("net", new NameShape(), "Net of a live part.", "\"N\""),
        Make.Optional("circle", new TableShape(Circle), "A round outline.", "{ at = [\"0 mm\", \"0 mm\"], diameter = \"50 mm\" }"),
        Make.Optional("rectangle", new TableShape(Rectangle), "An upright rectangle between two corners.", "{ from = [\"30 mm\", \"-5 mm\"], to = [\"34 mm\", \"5 mm\"] }"),
        Make.Optional("path", Make.Points(2), "Centre line of a wall or wire, with width.", "[ [\"30 mm\", \"0 mm\"], [\"40 mm\", \"0 mm\"] ]"),
        Make.Optional("width", Make.Length(), "Width along the path.", "\"2 mm\""),
        Make.Needed("z", new ListShape(Make.Position(), 2, 2), "at what height it is", "Lower and upper end, height over the copper face.", "[\"-40 mm\", \"-12 mm\"]"),
    ])
    {
        Choices = [new([["circle"], ["rectangle"], ["path", "width"]], "its outline in plan")],
        Companions = [new("width", "path"), new("path", "width")],
    };

    /// <summary>[[rib]]</summary>
    public static TableDefinition Rib => new("[[rib]]", "A raised insulating wall on a surface.",
    [
        OnSurface,
        Make.Needed("path", Make.Points(2), "where it runs", $"Centre line, plan points; ribs and slots of one surface have at most {Budgets.BarrierLegs} straight legs.", "[ [\"22 mm\", \"10 mm\"], [\"40 mm\", \"18 mm\"] ]"),
        Make.Needed("height", Make.Length(), "how much creepage it adds", "Height over the surface.", "\"4 mm\""),
        Make.Needed("thickness", Make.Length(), "how near parts come to it", "Thickness.", "\"1.2 mm\""),
        Make.Preset("joint", Make.Word("moulded", "cemented", "loose"), "\"moulded\"", "How it meets the surface; a loose wall is also passed through its joint."),
    ]);

    /// <summary>[[slot]]</summary>
    public static TableDefinition Slot => new("[[slot]]", "Cut through, or a groove in, a surface.",
    [
        OnSurface,
        Make.Needed("path", Make.Points(2), "where it runs", $"Centre line, plan points; ribs and slots of one surface have at most {Budgets.BarrierLegs} straight legs.", "[ [\"22 mm\", \"-10 mm\"], [\"40 mm\", \"-18 mm\"] ]"),
        Make.Needed("width", Make.Length(), "whether it counts", "Width at the top.", "\"2 mm\""),
        Make.Needed("depth", Make.Length("through"), "how much creepage it adds", "Depth, or through.", "\"through\""),
        Make.Preset("profile", Make.Word("parallel", "v"), "\"parallel\"", "Shape of its sides."),
    ]);

    private static KeyDefinition OnSurface => Make.Needed("surface", new NameShape(), "what it stands on", "Name of the surface.", "\"floor\"");

    /// <summary>A round outline.</summary>
    public static TableDefinition Circle => new("circle", "A round outline.",
    [
        Make.Needed("at", Make.Point, "where it is", "Centre, x and y.", "[\"0 mm\", \"0 mm\"]"),
        Make.Needed("diameter", Make.Length(), "how big it is", "Diameter.", "\"50 mm\""),
    ]);

    /// <summary>An upright rectangle.</summary>
    public static TableDefinition Rectangle => new("rectangle", "An upright rectangle.",
    [
        Make.Needed("from", Make.Point, "one corner", "One corner, x and y.", "[\"30 mm\", \"-5 mm\"]"),
        Make.Needed("to", Make.Point, "the opposite corner", "The opposite corner, x and y.", "[\"34 mm\", \"5 mm\"]"),
    ]);
}
