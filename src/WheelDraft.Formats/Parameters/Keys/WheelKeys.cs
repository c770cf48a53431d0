using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Wheel, carrier, process and feed.</summary>
internal static class WheelKeys
{
    /// <summary>[wheel]</summary>
    public static TableDefinition Wheel => new("[wheel]", "The contact wheel.",
    [
        Make.Needed(
            "construction",
            Make.Word("windowed", "lands"),
            "how the programme gets into the copper",
            "windowed: one copper piece, windows where a ring is off; lands: separate copper lands on an insulating carrier.",
            "\"windowed\""),
        Make.Needed("outer_diameter", Make.Length("auto"), "how much room the rings have", "Outer diameter; auto for the smallest that meets every rule.", "\"auto\""),
        Make.Needed("thickness", Make.Length(), "what the copper carries and what can be cut", "Thickness of the copper.", "\"0.5 mm\""),
        Make.Needed("material", new TextShape(60), "conductivity and hardness", "Alloy and temper.", "\"C11000-H02\""),
        Make.Needed("bore", new TableShape(Bore), "what the wheel sits on", "The bore, round or with one flat.", "{ diameter = \"6 mm\" }"),
        Make.Optional("fixings", new TableShape(Fixings), "Equal holes for screws or rivets.", "{ count = 3, diameter = \"2.2 mm\", pitch_circle = \"auto\", first_at = \"60 deg\" }"),
        Make.Needed(
            "shaft",
            Make.Word("insulating", "live", "earthed", "touchable", "floating"),
            "which distances the wheel keeps to its shaft",
            "What the shaft is, electrically.",
            "\"insulating\""),
        Make.Optional("shaft_diameter", Make.Length(), "Metal part inside the bore; needed unless the shaft is insulating.", "\"3 mm\""),
        Make.Optional("shaft_net", new NameShape(), "Net of a live shaft.", "\"N\""),
        Make.Preset("run_out", Make.LengthFromZero("10 mm"), "\"0 mm\"", "Radial run-out, total indicator reading: the centre is off by half of it, in any direction."),
        Make.Preset("face_run_out", Make.LengthFromZero("10 mm"), "\"0 mm\"", "Axial run-out, total."),
        Make.Optional("web", Make.Length(), "Least copper between windows; needed for a windowed wheel.", "\"1.2 mm\""),
        Make.Preset("rim", new FlagShape(), "true", "Keep a whole ring of copper outside the last window."),
        Make.Optional(
            "order",
            new WordOrShape("auto", new ListShape(new NameShape(), 1, 1000)),
            "Rings from the inside outwards: the name of every output once, and feed among them. Left out: the feed first, then outputs by how fine their tolerance is. auto: the order that gives the smallest wheel, proved up to twelve rings.",
            "[\"mist\", \"feed\", \"fan\"]"),
    ]);

    /// <summary>[carrier]</summary>
    public static TableDefinition Carrier => new("[carrier]", "The insulating body that the copper is let into or fixed on.",
    [
        Make.Optional("material_group", Make.Word(FileKeys.Groups), "Material group of IEC 60664-1, or cti instead.", "\"IIIa\""),
        Make.Optional("cti", Make.Whole(100, 1000), "Comparative tracking index, from which the group follows.", "175"),
        Make.Needed("thickness", Make.Length(), "how far the far side is", "Thickness.", "\"3 mm\""),
        Make.Optional("diameter", Make.Length(), "Diameter; left out: the wheel's own.", "\"60 mm\""),
        Make.Preset("step", Make.LengthFromZero("10 mm"), "\"0 mm\"", "Copper face proud of the carrier face where wipers ride; 0 for flush. Below 0 a nose would drop in."),
    ])
    {
        Choices = [new([["material_group"], ["cti"]], "which creepage distances the carrier needs")],
    };

    /// <summary>[process]</summary>
    public static TableDefinition Process => new("[process]", "How the copper is cut: a name from the process list, own numbers, or both.",
    [
        Make.Optional("name", Make.Word([.. CuttingProcesses.All.Select(p => p.Name)]), "Name of a process; own numbers below take the place of its own.", "\"fibre-laser\""),
        Make.Optional("kerf", Make.LengthFromZero("10 mm"), "Width that the cut takes; 0 when the shop compensates.", "\"0.12 mm\""),
        Make.Optional("tolerance", Make.LengthFromZero("10 mm"), "A cut edge, normal to itself, plus and minus, each edge by itself.", "\"0.05 mm\""),
        Make.Optional("least_slot", Make.LengthFromZero("100 mm"), "Narrowest opening.", "\"0.5 mm\""),
        Make.Optional("least_web", Make.LengthFromZero("100 mm"), "Narrowest copper.", "\"0.5 mm\""),
        Make.Optional("least_hole", Make.LengthFromZero("100 mm"), "Smallest hole; without name and number the narrowest opening.", "\"0.5 mm\""),
        Make.Optional("inside_radius", Make.LengthFromZero("50 mm"), "Radius of re-entrant corners; at least half the kerf.", "\"0.15 mm\""),
        Make.Optional("holding_tabs", Make.Whole(1, 8), "Holding tabs on every outer contour of what the process cuts, on layer TAB: left uncut, broken and filed by whoever takes the parts out. They stand on the rim and on held ends of strips, never on a patch path, a spring or beside a fold; 2 to 4 are usual. Left out: none.", "3"),
        Make.Optional("tab_width", Make.Range("0.1 mm", "5 mm"), "Width of each holding tab. Left out: least_web, but between 0.3 and 1 mm (common practice, no source).", "\"0.5 mm\""),
    ]);

    /// <summary>[feed]</summary>
    public static TableDefinition Feed => new("[feed]", "The wiper that brings a windowed wheel its net.",
    [
        Make.Needed("net", new NameShape(), "what the wheel is live with", "Net that the wheel is on.", "\"L\""),
        Make.Preset("radius", Make.Length("auto"), "\"auto\"", "Ring radius, at any place among the rings; auto puts the feed innermost, unless [wheel] order says otherwise."),
        Make.Needed("station", Make.Direction("auto"), "where its wiper touches", "Where its wiper touches, housing angle.", "\"0 deg\""),
        .. OutputKeys.Contact,
    ]);

    /// <summary>bore</summary>
    public static TableDefinition Bore => new("bore", "The bore, round or with one flat.",
    [
        Make.Needed("diameter", Make.Length(), "the shaft that fits", "Diameter.", "\"6 mm\""),
        Make.Optional("flat", Make.Length(), "From the flat to the opposite side.", "\"5 mm\""),
        Make.Preset("flat_at", Make.Direction(), "\"0 deg\"", "Direction of the flat's normal, wheel angle."),
        Make.Optional("fit", new TextShape(24), "Fit or tolerance, written beside the diameter on drawings; left out, the tolerance of the cut. Nothing is worked out from it.", "\"H7\""),
    ])
    {
        Companions = [new("flat_at", "flat")],
    };

    private static TableDefinition Fixings => new("fixings", "Equal holes on a pitch circle.",
    [
        Make.Needed("count", Make.Whole(1, 60), "how many holes there are", "How many.", "3"),
        Make.Needed("diameter", Make.Length(), "the screw or rivet that fits", "Diameter of each.", "\"2.2 mm\""),
        Make.Needed("pitch_circle", Make.Length("auto"), "where they are", "Diameter of the pitch circle; auto puts them in the hub.", "\"auto\""),
        Make.Optional("head", Make.Length(), "Greatest diameter of head and nut; left out: twice the hole.", "\"4.4 mm\""),
        Make.Needed("first_at", Make.Direction(), "where the first is", "Direction of the first one, wheel angle.", "\"60 deg\""),
        Make.Optional(
            "more",
            new ListShape(new TableShape(FixingCircle), 1, 20),
            "More circles of the same holes, e.g. for copper that windows part from the hub; rings keep clear of them.",
            "[ { count = 4, pitch_circle = \"60 mm\", first_at = \"45 deg\" } ]"),
    ]);

    private static TableDefinition FixingCircle => new("a circle of fixings", "One more circle of the same holes.",
    [
        Make.Needed("count", Make.Whole(1, 60), "how many holes there are", "How many.", "4"),
        Make.Needed("pitch_circle", Make.Length(), "where they are", "Diameter of the pitch circle.", "\"60 mm\""),
        Make.Needed("first_at", Make.Direction(), "where the first is", "Direction of the first one, wheel angle.", "\"45 deg\""),
    ]);

    /// <summary>[[sheet]]</summary>
    public static TableDefinition Sheet => new("[[sheet]]", "Sheets on which the wheels and strips of one material and thickness are nested, for so many timers.",
    [
        Make.Needed("material", new TextShape(60), "which parts lie on it", "Alloy and temper, as the wheel or the strips have it.", "\"C51000-H04\""),
        Make.Needed("thickness", Make.Length(), "which parts lie on it", "Thickness.", "\"0.5 mm\""),
        Make.Needed("size", new ListShape(Make.Length(), 2, 2), "how much goes on a sheet", "Width, along the rolling direction, and height.", "[\"300 mm\", \"200 mm\"]"),
        Make.Needed("gap", Make.Range("0.1 mm", "100 mm"), "how close parts lie", "Between parts as they are cut, and to the edge.", "\"2 mm\""),
        Make.Needed("sets", Make.Whole(1, 100), "how many of each part are laid", "For how many timers.", "10"),
    ]);
}
