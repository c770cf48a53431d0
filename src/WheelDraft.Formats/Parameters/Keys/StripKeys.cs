using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Formed strips.</summary>
internal static class StripKeys
{
    /// <summary>The quick-connect tabs of IEC 61210 that can be cut in one with a strip.</summary>
    public static string[] Tabs => [.. TabDimensions.All.Select(t => t.Size)];

    /// <summary>[forming]</summary>
    public static TableDefinition Forming => new("[forming]", "How exactly strips are made; every contact force is a band by these.",
    [
        Make.Preset("fold_tolerance", Make.Range("0 deg", "20 deg"), "\"1 deg\"", "Angle of each fold, plus and minus (left out: common practice, no source)."),
        Make.Preset("thickness_tolerance", Make.Range("0 %", "30 %"), "\"5 %\"", "Thickness of the stock, plus and minus (left out: common practice, no source)."),
        Make.Preset("height_tolerance", Make.LengthFromZero("10 mm"), "\"0.1 mm\"", "Height of the free contact against the copper face, plus and minus: seat, rivet and carrier together, folds not counted (left out: common practice, no source)."),
        Make.Preset("radius_tolerance", Make.LengthFromZero("10 mm"), "\"0.1 mm\"", "Inside radius of each fold, plus and minus (left out: common practice, no source)."),
    ]);

    /// <summary>[[strip]]</summary>
    public static TableDefinition Strip => new("[[strip]]", "A formed copper strip, from its terminal end to its tip.",
    [
        Make.Needed("name", new NameShape(), "what drawings and files call it", "Name.", "\"mist strip\""),
        CircuitKeys.Designation("\"Q1\""),
        Make.Optional("output", new NameShape(), "The output whose wiper it is; or feed, or net with tip.", "\"mist\""),
        Make.Optional("wiper", Make.Word("return"), "Lands wheel: that it is the second wiper of its output.", "\"return\""),
        Make.Optional("feed", new TrueShape(), "That it is the feed wiper.", "true"),
        Make.Optional("net", new NameShape(), "Net of a plain strip.", "\"N\""),
        Make.Optional("tip", Make.Point, "Where the end of a plain strip is, x and y.", "[\"45 mm\", \"0 mm\"]"),
        FreeWithAuto(Make.Needed("material", new TextShape(60), "springiness, hardness and conductivity", "Alloy and temper.", "\"C51000-H04\"")),
        FreeWithAuto(Make.Needed("thickness", Make.Length(), "force, stress and folds", "Thickness of the stock.", "\"0.5 mm\"")),
        Make.Needed("shape", new WordOrShape("auto", new ListShape(new PiecesShape([Tab, Straight, Bend, Sweep, Rivet]), 1, 200)), "what it looks like", "Pieces from the terminal end to the tip; auto: set out from [strips], and what else the strip does not give with it.", "[ { straight = \"14 mm\", width = \"6 mm\" } ]"),
        Make.Optional("grain", Make.Word("along", "across"), "Rolling direction of the stock to the strip; left out: unknown, the worse is taken.", "\"along\""),
        Make.Optional("k_factor", Make.Number(0.1, 1), "Neutral-axis factor; left out: by radius, thickness and temper.", "0.42"),
        Make.Optional("holes", new ListShape(new TableShape(Hole), 0, 100), "Holes at developed positions.", "[ { at = \"12 mm\", across = \"0 mm\", diameter = \"2.2 mm\" } ]"),
        Make.Optional("clamp", new ListShape(Make.LengthFromZero("1 m"), 2, 2), "Held between these developed positions; the spring begins at the second. Needed for a wiper.", "[\"8 mm\", \"21 mm\"]"),
        Make.Optional("deflection", Make.Length("auto"), "How far the wheel pushes the contact back from its free position; only with a straight of auto length, whose length is solved for it. Beside given lengths it is what they are held against. auto: what gives the middle of the force that [strips] asks for.", "\"1.5 mm\""),
        FreeWithAuto(Make.Needed("approach", Make.Direction("auto"), "how it lies over the wheel", "Direction from the tip back along the arm, from the outward radial, anticlockwise; auto: chosen with all others, so that arms trail.", "\"90 deg\"")),
        FreeWithAuto(Make.Needed("seated_on", new NameShape(), "how high it lies", "Name of the surface on which its underside lies between the clamps.", "\"floor\"")),
    ])
    {
        Choices = [new([["output"], ["feed"], ["net", "tip"]], "what the strip serves")],
        Companions = [new("wiper", "output"), new("tip", "net"), new("net", "tip")],
    };

    /// <summary>[strips]</summary>
    public static TableDefinition Strips => new("[strips]", "What strips set out by the program are made of, one for every wiper that has no [[strip]] of its own; force, factors and room hold for every strip that presses.",
    [
        Make.Needed("stock", new ListShape(new TableShape(Stock), 1, 20), "what strips are cut from", "Stock at hand.", "[ { material = \"C51000-H04\", thickness = [\"0.4 mm\", \"0.5 mm\"] } ]"),
        Make.Needed("contact", new TableShape(Contact), "what touches the copper", "The contact: a rivet, or a fold.", "{ rivet = \"2.2 mm\", radius = \"1.5 mm\", diameter = \"2.5 mm\" }"),
        Make.Optional("tab", Make.Word(Tabs), "The tab at the terminal end, IEC 61210; only stock of its thickness is taken. Left out: none.", "\"4.8x0.5\""),
        Make.Needed("foot", new TableShape(Foot), "how strips are held", "The part in the clamp; the strip is as wide up to its arm.", "{ length = \"14 mm\", width = \"6 mm\" }"),
        Make.Needed("force", new ListShape(Make.Range("0.01 N", "50 N"), 2, 2), "how hard contacts press", "Force of each contact as drawn, least and most; within the limits of [forming] it may be more or less, as the report says.", "[\"0.4 N\", \"0.8 N\"]"),
        Make.Optional("yield_factor", Make.Number(1, 100), "Least factor of yield strength over the largest stress within all limits.", "1.4"),
        Make.Optional("fatigue_factor", Make.Number(0.1, 100), "Least factor of fatigue strength over that stress.", "1.2"),
        Make.Needed("seated_on", new NameShape(), "how high strips lie", "Name of the surface that feet lie on.", "\"floor\""),
        Make.Optional("room", new TableShape(Room), "Where feet and tabs stay inside, in plan; left out: anywhere.", "{ circle = { at = [\"0 mm\", \"0 mm\"], diameter = \"160 mm\" } }"),
    ]);

    private static KeyDefinition FreeWithAuto(KeyDefinition key) => key with { FreeWith = ("shape", "auto") };

    private static TableDefinition Stock => new("stock", "One alloy in some thicknesses.",
    [
        Make.Needed("material", new TextShape(60), "springiness, hardness and conductivity", "Alloy and temper.", "\"C51000-H04\""),
        Make.Needed("thickness", new ListShape(Make.Length(), 1, 20), "force and stress", "Thicknesses at hand.", "[\"0.4 mm\", \"0.5 mm\"]"),
    ]);

    private static TableDefinition Contact => new("contact", "What touches: a domed rivet, or a fold of the strip.",
    [
        Make.Optional("rivet", Make.Length(), "Height of a rivet from the strip's wheel-side face to the top of its dome.", "\"2.2 mm\""),
        Make.Optional("radius", Make.Length(), "Radius of its dome.", "\"1.5 mm\""),
        Make.Optional("diameter", Make.Length(), "Diameter of its head.", "\"2.5 mm\""),
        Make.Optional("fold_radius", Make.Length(), "Inside radius of a fold that touches.", "\"1 mm\""),
    ])
    {
        Choices = [new([["rivet", "radius", "diameter"], ["fold_radius"]], "what touches")],
        Companions = [new("rivet", "radius"), new("radius", "diameter"), new("diameter", "rivet")],
    };

    private static TableDefinition Foot => new("foot", "The part of a strip in its clamp.",
    [
        Make.Needed("length", Make.Length(), "how long it is held", "Length.", "\"14 mm\""),
        Make.Needed("width", Make.Length(), "how stiff riser and arm are", "Width.", "\"6 mm\""),
    ]);

    private static TableDefinition Room => new("room", "A circle or an upright rectangle.",
    [
        Make.Optional("circle", new TableShape(BoardKeys.Circle), "A circle.", "{ at = [\"0 mm\", \"0 mm\"], diameter = \"160 mm\" }"),
        Make.Optional("rectangle", new TableShape(BoardKeys.Rectangle), "An upright rectangle between two corners.", "{ from = [\"-60 mm\", \"-60 mm\"], to = [\"60 mm\", \"60 mm\"] }"),
    ])
    {
        Choices = [new([["circle"], ["rectangle"]], "its outline")],
    };

    private static TableDefinition Tab => new("tab", "A quick-connect tab by IEC 61210; the stock must have its thickness.",
    [
        Make.Needed("tab", Make.Word(Tabs), "which receptacle fits", "Size.", "\"4.8x0.5\""),
    ]);

    private static TableDefinition Straight => new("straight", "A straight.",
    [
        Make.Needed("straight", Make.Length("auto"), "how long it is", "Length; auto, at most once, is solved so that the deflection comes out.", "\"14 mm\""),
        Make.Optional("width", Make.Length(), "Width at its start; left out: goes on with the width before.", "\"6 mm\""),
        Make.Optional("width_end", Make.Length(), $"Width at its end; left out: the same. One end is at most {Budgets.TaperRatio} times as wide as the other.", "\"3 mm\""),
    ]);

    private static TableDefinition Bend => new("bend", "A fold out of the plane.",
    [
        Make.Needed("bend", Make.Range("-180 deg", "180 deg"), "how far it is folded", "Positive turns a level strip toward the wiper side, same sense all along.", "\"90 deg\""),
        Make.Needed("radius", Make.LengthFromZero("100 mm"), "how sharp the fold is", "Inside radius.", "\"1.0 mm\""),
        Make.Preset("contact", new FlagShape(), "false", "That the outside of this fold touches the wheel."),
    ]);

    private static TableDefinition Sweep => new("sweep", "A curve in the plane.",
    [
        Make.Needed("sweep", Make.Range("-360 deg", "360 deg"), "how far it turns", "Positive is anticlockwise seen from the wiper side.", "\"30 deg\""),
        Make.Needed("radius", Make.Length(), "how tight it turns", "Radius of the centre line.", "\"4 mm\""),
        Make.Optional("width", Make.Length(), "Width; left out: goes on with the width before.", "\"5 mm\""),
    ]);

    private static TableDefinition Rivet => new("rivet", "A domed rivet as contact, at the end.",
    [
        Make.Needed("rivet", Make.Length(), "how high the contact stands", "Height from the strip's wheel-side face to the top of its dome.", "\"2.2 mm\""),
        Make.Needed("radius", Make.Length(), "how it meets edges", "Radius of the dome.", "\"1.5 mm\""),
        Make.Needed("diameter", Make.Length(), "how much room its head takes", "Diameter of the head.", "\"2.5 mm\""),
    ]);

    private static TableDefinition Hole => new("a hole", "A hole in a strip.",
    [
        Make.Needed("at", Make.LengthFromZero("1 m"), "where it is", "Developed, from the terminal end to its centre.", "\"12 mm\""),
        Make.Needed("across", Make.Position(), "where it is", "From the centre line, positive to the left looking to the tip.", "\"0 mm\""),
        Make.Needed("diameter", Make.Length(), "how big it is", "Diameter.", "\"2.2 mm\""),
    ]);
}
