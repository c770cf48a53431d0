using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Cams on the wheel's shaft, and the levers that they lift.</summary>
internal static class CamKeys
{
    /// <summary>The words for a law, in the order of the list of laws.</summary>
    public static string[] Laws => [.. Enum.GetValues<CamLaw>().Select(MotionLaw.NameOf)];

    /// <summary>[[cam]]</summary>
    public static TableDefinition Cam => new("[[cam]]", "A disc cam on the wheel's shaft that lifts a lever.",
    [
        Make.Needed("name", new NameShape(), "what scenarios, drawings and files call it", "Name.", "\"feeler cam\""),
        Make.Needed("follower", new TableShape(Follower), "what touches the cam", "What the lever touches the cam with.", "{ kind = \"roller\", radius = \"2 mm\" }"),
        Make.Optional("lever", new TableShape(Lever), "A swinging lever; or slide.", "{ pivot = [\"32 mm\", \"10 mm\"], arm = \"24 mm\", lifts = \"anticlockwise\" }"),
        Make.Optional("slide", new TableShape(Slide), "A sliding lever; or lever.", "{ offset = \"0 mm\", direction = \"90 deg\" }"),
        Make.Needed("base_radius", Make.Length("auto"), "how big the cam is", "From the axis to the cam's face at rest; auto for the least that keeps the pressure angle, does not undercut and leaves its hub.", "\"auto\""),
        Make.Needed("profile", new ListShape(new PiecesShape([Lift, Drop]), 1, 50), "when the lever is lifted, and how far", "What the lever does, in order round the turn; it rides between.", "[ { from = \"20 deg\", to = \"80 deg\", lift = \"14 deg\", law = \"modified sine\" }, { at = \"200 deg\", drop = true } ]"),
        Make.Optional("pressure_angle", Make.Range("1 deg", "80 deg"), "The greatest pressure angle that is allowed; left out: 30 deg sliding, 45 deg swinging (common practice).", "\"45 deg\""),
        Make.Needed("thickness", Make.Length(), "what it is cut from", "Thickness.", "\"3 mm\""),
        Make.Needed("material", new TextShape(60), "whether it conducts", "Words for the drawing, or an alloy and temper of the list. Whatever conducts needs its net.", "\"acetal\""),
        Make.Optional("net", new NameShape(), "Net of a cam that conducts: it is then a solid that keeps its distances.", "\"N\""),
        Make.Needed("z", new ListShape(Make.Position(), 2, 2), "at what height it is", "Lower and upper face, height over the copper face.", "[\"4 mm\", \"7 mm\"]"),
        Make.Needed("bore", new WordOrShape("wheel", new TableShape(WheelKeys.Bore)), "what it sits on", "The word wheel for the wheel's bore and flat, or a bore of its own.", "\"wheel\""),
        Make.Optional("cut_tolerance", Make.LengthFromZero("1 mm"), "Its cut edge, normal to itself, plus and minus; left out: the tolerance of [process].", "\"0.05 mm\""),
        Make.Needed("press", new TableShape(Press), "what brings the lever back, and what torque it takes", "Spring or weight that presses the lever on the cam.", "{ torque = \"4 N mm\", rate = \"0 N mm/deg\" }"),
        Make.Optional("inertia", Make.AnyOf(new Limits("0.001 g mm2", "1000000 g mm2"), new Limits("0.001 g", "10 kg")), "Of a swinging lever about its pivot, or the mass of a sliding one; needed for the time to fall.", "\"200 g mm2\""),
        Make.Optional("contact", new TableShape(Contact), "The lever's contact is one of the inputs.", "{ input = \"level low\", closed_below = \"3 deg\", tolerance = \"0.5 deg\" }"),
        Make.Optional("obstacle", Place, "Lift at which the lever stays when something is in its way.", "\"8 deg\""),
        Make.Optional("latch", Place, "Lift at which it can be hooked up by hand, beyond the greatest lift.", "\"20 deg\""),
    ])
    {
        Choices = [new([["lever"], ["slide"]], "how the lever moves")],
    };

    // A lift: an angle of a swinging lever, a length of a sliding one.
    private static QuantityShape Place => Make.AnyOf(new Limits("0.01 deg", "120 deg"), new Limits("1 um", "200 mm"));

    private static QuantityShape InTurn => Make.AnyOf(new Limits("0 deg", "360 deg"), new Limits("0 s", "10000 h"));

    private static TableDefinition Follower => new("follower", "What touches the cam.",
    [
        Make.Needed("kind", Make.Word("roller", "flat"), "how it meets the cam", "roller: a roller at the end of the arm, or on the slide; flat: a straight face, along the arm through its pivot, or square to the slide.", "\"roller\""),
        Make.Optional("radius", Make.Length(), "Radius of the roller.", "\"2 mm\""),
    ]);

    private static TableDefinition Lever => new("lever", "A swinging lever.",
    [
        Make.Needed("pivot", Make.Point, "where it swings", "Its pivot in plan, x and y.", "[\"32 mm\", \"10 mm\"]"),
        Make.Needed("arm", Make.Length(), "how far it reaches", "From the pivot to the roller's axis; of a flat follower how far its face reaches.", "\"24 mm\""),
        Make.Needed("lifts", Make.Word("clockwise", "anticlockwise"), "which way it is lifted", "Sense in which it turns when it is lifted, seen from the wiper side.", "\"anticlockwise\""),
        .. Body("How far it goes on beyond its pivot, straight on from the arm.", "\"8 mm\""),
    ])
    {
        Companions = [new("net", "width"), new("z", "width"), new("tail", "width")],
    };

    private static TableDefinition Slide => new("slide", "A sliding lever.",
    [
        Make.Preset("offset", Make.Position(), "\"0 mm\"", "How far its path passes the axis on its right, looking along the lift; no matter for a flat follower."),
        Make.Needed("direction", Make.Direction(), "which way it is lifted", "Direction of the lift.", "\"90 deg\""),
        .. Body("How far its bar goes on behind its roller's axis, or behind its face.", "\"25 mm\""),
    ])
    {
        Companions = [new("net", "width"), new("z", "width"), new("tail", "width"), new("width", "tail")],
    };

    // What keeps its distances, and what strips must not run into: the lever with its roller wherever it may come.
    private static IEnumerable<KeyDefinition> Body(string tail, string tailExample) =>
    [
        Make.Optional("material", new TextShape(60), "Words, or an alloy and temper of the list. Whatever conducts needs its net; left out, lever, roller and pin are taken to insulate.", "\"brass\""),
        Make.Optional("net", new NameShape(), "Net of a lever that conducts, with its roller: it is then a solid that keeps its distances wherever it may come. E where it is earthed; a net that is not in the circuit counts as touchable.", "\"E\""),
        Make.Optional("width", Make.Length(), "Width of its arm or bar in plan; needed where it conducts.", "\"5 mm\""),
        Make.Optional("z", new ListShape(Make.Position(), 2, 2), "Its lower and upper face, height over the copper face; left out: as the cam's.", "[\"9 mm\", \"12 mm\"]"),
        Make.Optional("tail", Make.LengthFromZero("1 m"), tail, tailExample),
        Make.Optional("stop", Place, "Lift at which a stop ends its way; left out: it goes no further than its latch, or its greatest lift.", "\"22 deg\""),
    ];

    private static TableDefinition Lift => new("lift", "A rise or a return.",
    [
        Make.Needed("from", InTurn, "when it begins", "Time or programme angle at which it begins.", "\"20 deg\""),
        Make.Needed("to", InTurn, "when it ends", "Time or programme angle at which it ends; may lie beyond home.", "\"80 deg\""),
        Make.Needed("lift", Make.AnyOf(new Limits("0 deg", "120 deg"), new Limits("0 mm", "200 mm")), "how far it goes", "Lift reached at its end, from rest: an angle of the lever, a length of the slide.", "\"14 deg\""),
        Make.Needed("law", Make.Word(Laws), "how smoothly it goes", "Law of the motion; uniform strikes at both ends.", "\"modified sine\""),
    ]);

    private static TableDefinition Drop => new("drop", "A sharp fall to rest.",
    [
        Make.Needed("at", InTurn, "when it falls", "Time or programme angle up to which it is held.", "\"200 deg\""),
        Make.Needed("drop", new TrueShape(), "that it falls", "That the lever falls to rest here, by its own weight or spring.", "true"),
    ]);

    private static TableDefinition Press => new("press", "What presses the lever on the cam.",
    [
        Make.Optional("torque", Make.Range("0.001 mN mm", "100 N m"), "Torque on a swinging lever at rest, back to rest.", "\"4 N mm\""),
        Make.Optional("force", Make.Range("0.001 mN", "10000 N"), "Force on a sliding lever at rest, back to rest.", "\"0.8 N\""),
        Make.Optional("rate", Make.AnyOf(new Limits("0 N mm/deg", "10000 N mm/deg"), new Limits("0 N/mm", "1000 N/mm")), "How much it grows with the lift; left out: not at all, as with a weight.", "\"0.1 N mm/deg\""),
    ])
    {
        Choices = [new([["torque"], ["force"]], "what brings the lever back")],
    };

    private static TableDefinition Contact => new("contact", "The lever's contact.",
    [
        Make.Needed("input", new NameShape(), "which input it is", "The [[input]] that it is.", "\"level low\""),
        Make.Optional("closed_below", Place, "Closed while the lever is lower than this.", "\"3 deg\""),
        Make.Optional("closed_above", Place, "Closed while the lever is higher than this.", "\"3 deg\""),
        Make.Preset("tolerance", Make.AnyOf(new Limits("0 deg", "60 deg"), new Limits("0 mm", "100 mm")), "\"0 deg\"", "How far from there it may close or open, plus and minus."),
    ])
    {
        Choices = [new([["closed_below"], ["closed_above"]], "when it is closed")],
    };
}
