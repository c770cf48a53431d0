namespace WheelDraft.Formats.Parameters;

/// <summary>Short ways to write definitions of keys, so that a chapter reads as a list.</summary>
internal static class Make
{
    /// <summary>A length of a part: from 1 µm to 1 m.</summary>
    public static QuantityShape Length(params string[] words) => new([new Limits("1 um", "1 m")], words);

    /// <summary>A length that may be zero.</summary>
    public static QuantityShape LengthFromZero(string most, params string[] words) => new([new Limits("0 mm", most)], words);

    /// <summary>A position, either side of zero.</summary>
    public static QuantityShape Position(params string[] words) => new([new Limits("-1 m", "1 m")], words);

    /// <summary>A direction.</summary>
    public static QuantityShape Direction(params string[] words) => new([new Limits("-360 deg", "360 deg")], words);

    /// <summary>A quantity in a range of its own.</summary>
    public static QuantityShape Range(string least, string most) => new([new Limits(least, most)], []);

    /// <summary>A quantity of any of several dimensions.</summary>
    public static QuantityShape AnyOf(params Limits[] spans) => new(spans, []);

    /// <summary>A bare number.</summary>
    public static NumberShape Number(double least, double most) => new(least, most, IsWhole: false);

    /// <summary>A bare whole number.</summary>
    public static NumberShape Whole(long least, long most) => new(least, most, IsWhole: true);

    /// <summary>One of some words.</summary>
    public static WordShape Word(params string[] words) => new(words);

    /// <summary>A point in plan: x and y.</summary>
    public static ListShape Point => new(Position(), 2, 2);

    /// <summary>Points in plan.</summary>
    public static ListShape Points(int least) => new(Point, least, 10_000);

    /// <summary>A key that must not be left out.</summary>
    public static KeyDefinition Needed(string name, ValueShape shape, string decides, string doc, string example) =>
        new(name, shape, doc) { Decides = decides, Example = example };

    /// <summary>A key that has a default.</summary>
    public static KeyDefinition Preset(string name, ValueShape shape, string preset, string doc) =>
        new(name, shape, doc) { Default = preset, Example = preset };

    /// <summary>A key that may be left out.</summary>
    public static KeyDefinition Optional(string name, ValueShape shape, string doc, string example) =>
        new(name, shape, doc) { Example = example };
}
