using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>Programmes and layouts that cannot be: refused with the numbers, a way out, and the place in the file.</summary>
/// <remarks>Each case is a whole parameter file with one thing changed. Where a number is expected, how it comes about is said beside it.</remarks>
public sealed class RefusalTests
{
    private const string Good = """
        format = 1
        title = "Refused"
        [supply]
        voltage = "230 V"
        frequency = "50 Hz"
        frequency_tolerance = "1 %"
        overvoltage_category = "II"
        [environment]
        pollution_degree = 3
        condensation = true
        [drive]
        turn_time = "180 s"
        direction = "clockwise"
        [spacing]
        standard = "IEC 60664-1"
        between_live = "functional"
        to_earthed = "basic"
        to_touchable = "reinforced"
        open_contact = "functional"
        margin = "0.2 mm"
        [wheel]
        construction = "windowed"
        outer_diameter = "auto"
        thickness = "0.5 mm"
        material = "C11000-H02"
        bore = { diameter = "6 mm" }
        shaft = "insulating"
        web = "1.2 mm"
        [carrier]
        material_group = "IIIa"
        thickness = "3 mm"
        [process]
        kerf = "0 mm"
        tolerance = "0.05 mm"
        least_slot = "0.5 mm"
        least_web = "0.5 mm"
        least_hole = "0.5 mm"
        inside_radius = "0.15 mm"
        [feed]
        net = "L"
        station = "0 deg"
        contact_length = "0.8 mm"
        contact_width = "3 mm"
        [[output]]
        name = "mist"
        on = [ { from = "10 s", for = "60 s" } ]
        tolerance = "3 s"
        station = "90 deg"
        radius = "auto"
        contact_length = "0.4 mm"
        contact_width = "2 mm"
        [[output]]
        name = "fan"
        on = [ { from = "100 s", for = "40 s" } ]
        tolerance = "3 s"
        station = "180 deg"
        radius = "auto"
        contact_length = "0.4 mm"
        contact_width = "2 mm"
        """;

    private const string Mist = "on = [ { from = \"10 s\", for = \"60 s\" } ]\ntolerance = \"3 s\"\nstation = \"90 deg\"\nradius = \"auto\"";
    private const string Fan = "on = [ { from = \"100 s\", for = \"40 s\" } ]\ntolerance = \"3 s\"\nstation = \"180 deg\"\nradius = \"auto\"";

    private static readonly Dictionary<string, RefusalCase> Named = new(StringComparer.Ordinal)
    {
        // On a radius of 20 mm the patch of 0.4 mm takes 2 atan(0.2/19) rad, 1.206° or 0.603 s at 2° a second.
        ["on-time shorter than the patch"] = new(Mist, Text(Mist, "for = \"60 s\"", "for = \"0.5 s\"", "\"auto\"", "\"20 mm\""), ["0.5 s", "0.603 s", "20 mm", "0.5 mm", "longer on-time"]),

        // Off for 0.2 s is 0.4°, and the patch takes 0.603° at each edge: 1.606° at the window's inner radius of 15.07 mm are 0.422 mm.
        ["off-time narrower than the least slot"] = new(
            Mist, Text(Mist, "{ from = \"10 s\", for = \"60 s\" }", "{ from = \"10 s\", for = \"60 s\" }, { from = \"70.2 s\", for = \"20 s\" }", "\"auto\"", "\"20 mm\""), ["0.2 s", "0.422 mm", "20 mm", "0.5 mm", "longer off-time"]),

        // 1 % of 60 s is 0.6 s whatever the radius.
        ["tolerance finer than the frequency allows"] = new(Mist, Text(Mist, "tolerance = \"3 s\"", "tolerance = \"0.5 s\""), ["0.5 s", "0.6 s", "frequency alone", "ask for more"]),

        ["outer diameter too small"] = new("outer_diameter = \"auto\"", "outer_diameter = \"30 mm\"", ["30 mm", "31.067 mm too small", "61.067 mm", "What holds the rings", "web"]),
        ["fixed radii that overlap"] = new(Mist + "|" + Fan, Text(Mist, "\"auto\"", "\"20 mm\"") + "|" + Text(Fan, "\"auto\"", "\"22 mm\""), ["overlap by 7.861 mm", "1.2 mm", "outward by 9.061 mm", "'auto'"]),
        ["on-periods that overlap"] = new(Mist, Text(Mist, "{ from = \"10 s\", for = \"60 s\" }", "{ from = \"10 s\", for = \"60 s\" }, { from = \"50 s\", for = \"30 s\" }"), ["overlap", "mist|output", "50 s"]),
        ["after in a circle"] = new(Mist + "|" + Fan, Text(Mist, "from = \"10 s\"", "after = \"fan\"") + "|" + Text(Fan, "from = \"100 s\"", "after = \"mist\""), ["starts after", "from = a time"]),
        ["slope out of reach"] = new(
            Mist, Text(Mist, "\"auto\"", "\"12 mm\"") + "\nadjust = { edge = \"off\", range = \"55 s\", travel = \"1 mm\", longer = \"in\", screw = \"M3\" }", ["55 s", "1 mm", "inclined", "less range"]),

        // A kerf of 0.4 mm leaves inside corners of 0.2 mm at best.
        ["kerf larger than twice the inside radius"] = new("kerf = \"0 mm\"", "kerf = \"0.4 mm\"", ["0.4 mm", "0.15 mm", "0.2 mm"]),
    };

    public static TheoryData<string> Cases => [.. Named.Keys.Order(StringComparer.Ordinal)];

    [Fact]
    public void Of_NothingChanged_IsBuilt() => Assert.True(Design.Of(ParameterReader.Read(Good).Brief!).Wheel.OuterDiameterMm > 30);

    [Theory]
    [MemberData(nameof(Cases))]
    public void Of_WhatCannotBe_IsRefusedWithNumbersAWayOutAndThePlace(string title)
    {
        RefusalCase asked = Named[title];
        string text = Good.ReplaceLineEndings("\n");
        foreach ((string good, string bad) in asked.Good.Split('|').Zip(asked.Bad.Split('|')))
        {
            Assert.Contains(good, text, StringComparison.Ordinal);
            text = text.Replace(good, bad, StringComparison.Ordinal);
        }

        IReadOnlyList<(string Message, TextPlace? Where)> told = Told(text);
        string all = string.Join('\n', told.Select(t => t.Message));
        Assert.All(asked.Words, w => Assert.Contains(w.Split('|'), word => all.Contains(word, StringComparison.Ordinal)));
        Assert.All(told, t => Assert.True(t.Where is { Line: > 1 }, $"no place: {t.Message}"));
    }

    private static IReadOnlyList<(string, TextPlace?)> Told(string text)
    {
        ParameterResult read = ParameterReader.Read(text);
        if (read.Brief is null)
        {
            return [.. read.Diagnostics.Select(d => (d.Message, (TextPlace?)d.Place))];
        }

        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Design.Of(read.Brief));
        return [.. refused.Reasons.Select(r => (r.Message, r.Where))];
    }

    private static string Text(string text, params string[] changes) => changes.Chunk(2).Aggregate(text, (t, c) => t.Replace(c[0], c[1], StringComparison.Ordinal));

    private sealed record RefusalCase(string Good, string Bad, string[] Words);
}
