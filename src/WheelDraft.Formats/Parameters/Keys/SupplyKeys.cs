namespace WheelDraft.Formats.Parameters;

/// <summary>Supply, environment, drive and spacing rules.</summary>
internal static class SupplyKeys
{
    /// <summary>[supply]</summary>
    public static TableDefinition Supply => new("[supply]", "The mains, or what else feeds the timer.",
    [
        Make.Needed("voltage", Make.Range("1 V", "1000 V"), "the impulse and working voltages, and so every required distance", "R.m.s. voltage, line to neutral.", "\"230 V\""),
        Make.Optional("voltage_tolerance", Make.Range("0 %", "50 %"), "Plus and minus, as a share of the voltage: loads are judged over all of it, currents are given at its upper end. Left out: 0, listed as assumed.", "\"10 %\""),
        Make.Needed("frequency", Make.Range("1 Hz", "1000 Hz"), "how fast the motor runs", "Nominal frequency.", "\"50 Hz\""),
        Make.Needed(
            "frequency_tolerance",
            Make.AnyOf(new Limits("0 %", "20 %"), new Limits("0 Hz", "100 Hz")),
            "how far times drift with the supply",
            "Plus and minus, as a share or a frequency.",
            "\"1 %\""),
        Make.Needed("overvoltage_category", Make.Word("I", "II", "III", "IV"), "the rated impulse voltage, and so every clearance", "Overvoltage category of IEC 60664-1.", "\"II\""),
        Make.Optional("lines", new ListShape(new NameShape(), 1, 3), "Line nets: one, or three in phase order, 120 degrees apart. Left out: one, L.", "[\"L1\", \"L2\", \"L3\"]"),
        Make.Preset("over_voltages", Make.Word("none", "temporary"), "\"none\"", "What clearances count in addition to impulse and working peak: temporary over-voltages of the supply, its voltage + 1200 V r.m.s., or none."),
    ]);

    /// <summary>[environment]</summary>
    public static TableDefinition Environment => new("[environment]", "Where the timer lives.",
    [
        Make.Needed(
            "pollution_degree",
            Make.Whole(1, 3),
            "creepage distances and the width at which a groove counts",
            "Pollution degree of IEC 60664-1. Degree 4 is refused: there are no creepage distances for it.",
            "3"),
        Make.Preset("altitude", Make.Range("0 m", "20000 m"), "\"0 m\"", "Height above sea level; clearances grow above 2000 m."),
        Make.Needed("condensation", new FlagShape(), "whether frost or dew on live parts is counted with", "Frost or dew on live parts; needs pollution degree 3.", "true"),
    ]);

    /// <summary>[drive]</summary>
    public static TableDefinition Drive => new("[drive]", "The motor and its gear.",
    [
        Make.Optional("turn_time", Make.Range("1 s", "1000 h"), "One turn at the supply frequency; or speed, or poles and gear_ratio instead.", "\"180 s\""),
        Make.Optional("speed", Make.Range("0.00001 rpm", "60 rpm"), "Turns of the wheel a minute at the supply frequency, as geared motors are sold: 1 rpm is a turn of 60 s.", "\"0.333 rpm\""),
        Make.Optional("poles", Make.Whole(2, 200), "Poles of the motor: synchronous speed n = 120 f / poles. An even number.", "12"),
        Make.Optional("gear_ratio", Make.Number(0.001, 1e9), "Motor turns per wheel turn.", "1500"),
        Make.Optional("motor", new QuantityShape([new Limits("0.0001 rpm", "10000 rpm")], ["auto"]), "Speed of the geared motor's own shaft at the supply frequency; what lies between it and the wheel is a gear. auto: a speed in which such motors are usually sold that needs no gear, else the next faster one.", "\"auto\""),
        Make.Needed("direction", Make.Word("clockwise", "anticlockwise"), "on which side of each ring its copper begins", "Sense of rotation, seen from the wiper side.", "\"clockwise\""),
        Make.Preset("backlash", Make.Range("0 deg", "90 deg"), "\"0 deg\"", "Play of the gear at the wheel."),
        Make.Preset(
            "coast",
            new ListShape(Make.Range("0 deg", "359 deg"), 2, 2),
            "[\"0 deg\", \"0 deg\"]",
            "How far the wheel runs on after its motor loses supply, least and most."),
        Make.Optional("torque", Make.Range("0.001 mN m", "1000 N m"), "Rated torque, at the wheel.", "\"0.25 N m\""),
        Make.Optional("friction", new ListShape(Make.Number(0, 2), 2, 2), "Coefficients of friction of wipers on copper and carrier, least and most.", "[0.2, 0.5]"),
    ])
    {
        Choices = [new([["turn_time"], ["speed"], ["poles", "gear_ratio"]], "how long a turn takes")],
        Companions = [new("poles", "gear_ratio"), new("gear_ratio", "poles")],
    };

    /// <summary>[spacing]</summary>
    public static TableDefinition Spacing => new("[spacing]", "The rules that keep live parts apart.",
    [
        Make.Needed("standard", Make.Word("IEC 60664-1", "IEC 60335-1"), "whose tables are used", "The standard.", "\"IEC 60664-1\""),
        Make.Needed("between_live", Make.Word(FileKeys.Insulations), "the distances between live parts", "Grade of insulation between live nets.", "\"functional\""),
        Make.Needed("to_earthed", Make.Word(FileKeys.Insulations), "the distances to earthed parts", "Grade of insulation to earthed parts; above 50 V functional is an error unless own_responsibility says why.", "\"basic\""),
        Make.Needed("to_touchable", Make.Word(FileKeys.Insulations), "the distances to parts that a person can touch", "Grade of insulation to touchable parts; above 50 V functional is an error, less than reinforced a warning.", "\"reinforced\""),
        Make.Needed(
            "open_contact",
            Make.Word([.. FileKeys.Insulations, "none"]),
            "how far windows reach beyond their wipers",
            "Rule for an open wiper to wheel copper; none for a gap without specified separation.",
            "\"functional\""),
        Make.Preset("margin", Make.LengthFromZero("100 mm"), "\"0 mm\"", "On top of the rule."),
        Make.Preset("groove_x", Make.Word("full", "third"), "\"full\"", "Least groove width X, or its reduction to a third of a clearance below 3 mm."),
        Make.Optional("clearance", Make.Length(), "The person's own clearance in place of the rule's, reported as such.", "\"3.0 mm\""),
        Make.Optional("creepage", Make.Length(), "The person's own creepage distance in place of the rule's, reported as such.", "\"4.0 mm\""),
        Make.Optional(
            "own_responsibility",
            new TextShape(80),
            "Why a clearance or creepage of one's own may be below the rule's value, or insulation to earthed parts be functional. Without these words that is an error; every report and drawing repeats them.",
            "\"type test 17 of 2026\""),
    ]);
}
