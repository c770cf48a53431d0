using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Outputs, their times, contacts and adjusting edges.</summary>
internal static class OutputKeys
{
    /// <summary>A time or angle after home, up to one turn, which the reader checks against the turn time.</summary>
    private static QuantityShape InTurn => Make.AnyOf(new Limits("0 s", "1000 h"), new Limits("0 deg", "360 deg"));

    /// <summary>The keys of a contact, the same for the feed and for outputs.</summary>
    public static KeyDefinition[] Contact =>
    [
        Make.Needed(
            "contact_length",
            Make.Length(),
            "where edges lie, and how sharp times are",
            "Contact patch along the motion, across the fold; with a rivet the diameter of the patch.",
            "\"0.4 mm\""),
        Make.Optional("contact_width", Make.Length(), "Contact patch along the fold; left out with a rivet, optional where a strip's fold gives it.", "\"2.0 mm\""),
        Make.Optional("worn_length", Make.Length(), "contact_length at the end of its life; left out: contact_length.", "\"0.8 mm\""),
        Make.Optional("nose_radius", Make.Length(), "Radius of the contact along the motion, where no strip gives it.", "\"1.5 mm\""),
        Make.Optional("contact_angle", Make.Direction(), "Fold line from the radial direction; taken from the strip if there is one, else 0.", "\"0 deg\""),
        Make.Preset("side_play", Make.LengthFromZero("10 mm"), "\"0 mm\"", "Radial play of the wiper, plus and minus."),
    ];

    /// <summary>[[output]]</summary>
    public static TableDefinition Output => new("[[output]]", "One output: a ring, its wiper and when it is on.",
    [
        Make.Needed("name", new NameShape(), "what drawings and other tables call it", "Name.", "\"mist\""),
        Make.Optional("net", new NameShape(), "Net of its wiper; left out: the name.", "\"mist\""),
        Make.Optional(
            "on",
            new WordOrShape("always", new ListShape(new TableShape(OnPeriod), 1, Budgets.OnPeriods)),
            $"When it is on: always, or a list of on-periods; all outputs together have at most {Budgets.OnPeriods}.",
            "[ { from = \"122 s\", for = \"5.5 s\" } ]"),
        Make.Optional(
            "copper",
            new ListShape(new TableShape(Stretch), 1, Budgets.OnPeriods),
            "Instead of on: the copper of its ring as measured on an old wheel, from which the times follow; needs radius and station.",
            "[ { from = \"41 deg\", to = \"65 deg\" } ]"),
        Make.Optional("measured_to", Make.Range("0.001 deg", "10 deg"), "How exactly each edge of the copper was measured, plus and minus; left out: 0.5 deg, listed as assumed.", "\"0.5 deg\""),
        Make.Optional(
            "tolerance",
            Make.AnyOf(new Limits("0.1 ms", "1000 h"), new Limits("0.001 %", "100 %"), new Limits("0.001 mL", "1000 L")),
            "Wanted limit on the on-time, plus and minus about nominal, worst case, new to worn; needed unless always on. A share is one of the output's shortest on-period; a volume needs its flow.",
            "\"0.6 s\""),
        Make.Needed("station", Make.Direction("auto"), "where its wiper touches", "Where its wiper touches, housing angle; auto for a good spread.", "\"120 deg\""),
        Make.Preset("radius", Make.Length("auto"), "\"auto\"", "Ring radius."),
        .. Contact,
        Make.Optional("open_contact", Make.Word([.. FileKeys.Insulations, "none"]), "Overrides that of [spacing] for this output.", "\"none\""),
        Make.Optional("flow", Make.Range("0.001 mL/min", "1000 L/min"), "Flow while on: lets an on-period be a volume, and reports doses.", "\"1.2 L/min\""),
        Make.Optional("flow_tolerance", Make.Range("0.1 %", "50 %"), "Tolerance of the flow, plus and minus; counts in the limits of doses and, where tolerance is a volume, against it. Flow washers keep 10 to 15 % (common practice, no source); left out: 0.", "\"10 %\""),
        Make.Optional("adjust", new TableShape(Adjust), "A sloped end of the copper, met by a wiper that a screw moves along the radius.", "{ edge = \"off\", range = \"1 s\", travel = \"2 mm\", screw = \"M3\" }"),
        Make.Optional("return_station", Make.Direction("auto"), "Lands wheel: where the second wiper on the same ring touches.", "\"150 deg\""),
        Make.Optional("return_net", new NameShape(), "Lands wheel: net of the second wiper.", "\"L\""),
    ])
    {
        Choices = [new([["on"], ["copper"]], "when it is on")],
        Companions = [new("measured_to", "copper"), new("flow_tolerance", "flow")],
    };

    private static TableDefinition Stretch => new("a stretch of copper", "Measured copper between two edges, anticlockwise seen from the wiper side.",
    [
        Make.Needed("from", Make.Range("0 deg", "360 deg"), "where it begins", "Where it begins on the ring radius, wheel angle from the home mark.", "\"41 deg\""),
        Make.Needed("to", Make.Range("0 deg", "360 deg"), "where it ends", "Where it ends, further anticlockwise; it may pass the home mark.", "\"65 deg\""),
    ]);

    private static TableDefinition OnPeriod => new("an on-period", "One on-period: a start and an extent.",
    [
        Make.Optional("from", InTurn, "Start: a time or angle after home.", "\"122 s\""),
        Make.Optional("after", new NameShape(), "Start: when the last-listed on-period of that output ends.", "\"spray\""),
        Make.Preset("gap", InTurn, "\"0 s\"", "Wait between that end and this start."),
        Make.Optional(
            "for",
            Make.AnyOf(new Limits("0.1 ms", "1000 h"), new Limits("0.0001 deg", "360 deg"), new Limits("0.001 mL", "1000 L")),
            "Extent: a time, an angle, or a volume where the output has a flow.",
            "\"5.5 s\""),
        Make.Optional("to", InTurn, "Extent: up to a time or angle after home.", "\"130 s\""),
    ])
    {
        Choices = [new([["from"], ["after"]], "when it starts"), new([["for"], ["to"]], "how long it lasts")],
        Companions = [new("gap", "after")],
    };

    private static TableDefinition Adjust => new("adjust", "An adjusting edge.",
    [
        Make.Needed("edge", Make.Word("on", "off"), "which end of the copper is sloped", "Which end is sloped.", "\"off\""),
        Make.Needed("range", Make.Range("0.1 ms", "1000 h"), "how far the on-time can be set", "Whole change of on-time between the two ends of travel, both edges counted.", "\"1 s\""),
        Make.Needed("travel", Make.Length(), "how far the screw moves the wiper", "Travel of the wiper along the radius.", "\"2 mm\""),
        Make.Preset("longer", Make.Word("in", "out"), "\"in\"", "Which way along the radius lengthens the on-time."),
        Make.Needed("screw", Make.Word([.. Screws.Names]), "seconds per turn of the screw", "The screw, ISO 261 coarse pitch.", "\"M3\""),
        Make.Preset("lever", Make.Number(0.01, 100), "1.0", "Wiper travel per screw travel."),
        Make.Optional("screw_at", Make.LengthFromZero("1 m"), "Where the screw pushes the strip's edge, developed from the terminal end; then it is measured as the live part that it is.", "\"40 mm\""),
        Make.Optional("screw_length", Make.Length(), "Length of the screw from the strip to the far end of its head.", "\"20 mm\""),
        Make.Optional("screw_lugs", new ListShape(new ListShape(Make.LengthFromZero("1 m"), 2, 2), 1, 2), "The one or two lugs or plates that hold the screw: from where to where along its axis, from the strip at mid travel; counted as live as the screw.", "[ [\"4 mm\", \"10 mm\"] ]"),
    ])
    {
        Companions = [new("screw_at", "screw_length"), new("screw_length", "screw_at"), new("screw_lugs", "screw_at")],
    };
}
