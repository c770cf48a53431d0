using System.Globalization;
using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Tests.Strips;

/// <summary>Designs whose strips touch with folds, in proportions that a person would choose, and the same ones with rivets.</summary>
internal sealed record FoldedDesigns
{
    internal required bool Mains { get; init; }

    internal required double ThicknessMm { get; init; }

    internal required double ArmMm { get; init; }

    /// <summary>How far the arm is folded down before its contact fold, degrees.</summary>
    internal required double DownDeg { get; init; }

    /// <summary>How much steeper or flatter the tip rises than the leg before comes down, degrees.</summary>
    internal required double MoreDeg { get; init; }

    internal required double LegMm { get; init; }

    internal required double TipMm { get; init; }

    internal required double RadiusMm { get; init; }

    internal required double DeflectionMm { get; init; }

    internal required double[] ApproachesDeg { get; init; }

    internal required double StepMm { get; init; }

    /// <summary>Whether nothing differs from the drawing, so that an oracle can be sharp.</summary>
    internal bool Exact { get; init; }

    /// <summary>Legs at 35° to 60°, of 1.5 mm and more, on arms of 26 to 34 mm.</summary>
    internal static Gen<FoldedDesigns> Any { get; } = Gen.Select(
        Gen.Select(Gen.Bool, Gen.Bool.Select(b => b ? 0.4 : 0.5), Gen.Double[26, 34], Gen.Double[35, 60]),
        Gen.Select(Gen.Double[-8, 8], Gen.Double[1.5, 4], Gen.Double[2, 4], Gen.Double[0.8, 1.5]),
        Gen.Select(Gen.Double[1.5, 2.2], Gen.Double[70, 110], Gen.Double[70, 110], Gen.Int[0, 2].Select(n => n == 2 ? 0.2 : 0.0)),
        (a, b, c) => new FoldedDesigns
        {
            Mains = a.Item1,
            ThicknessMm = a.Item2,
            ArmMm = a.Item3,
            DownDeg = a.Item4,
            MoreDeg = b.Item1,
            LegMm = b.Item2 + (a.Item1 ? 1 : 0),
            TipMm = b.Item3 + (a.Item1 ? 1 : 0),
            RadiusMm = b.Item4,
            DeflectionMm = c.Item1,
            ApproachesDeg = [c.Item2, c.Item3, 90],
            StepMm = c.Item4,
        });

    /// <summary>The design; null when it is refused.</summary>
    internal Design? Of(bool rivets)
    {
        ParameterResult read = ParameterReader.Read(Text(rivets));
        try
        {
            return Design.Of(read.Brief ?? throw new InvalidOperationException(string.Join('\n', read.Diagnostics)));
        }
        catch (DesignRefusedException)
        {
            return null;
        }
    }

    internal string Text(bool rivets) => string.Create(CultureInfo.InvariantCulture, $$"""
        format = 1
        title = "Folded"
        [supply]
        voltage = "{{(Mains ? 230 : 24)}} V"
        frequency = "50 Hz"
        frequency_tolerance = "1 %"
        overvoltage_category = "{{(Mains ? "II" : "I")}}"
        [environment]
        pollution_degree = 2
        condensation = false
        [drive]
        turn_time = "90 s"
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
        material = "C26000-H02"
        bore = { diameter = "6 mm" }
        shaft = "insulating"
        run_out = "{{(Exact ? 0 : 0.1)}} mm"
        face_run_out = "{{(Exact ? 0 : 0.1)}} mm"
        web = "1.5 mm"
        [carrier]
        material_group = "IIIa"
        thickness = "3 mm"
        step = "{{StepMm}} mm"
        [process]
        name = "fibre-laser"
        kerf = "0 mm"
        tolerance = "{{(Exact ? 0 : 0.05)}} mm"
        [forming]
        fold_tolerance = "{{(Exact ? 0 : 0.5)}} deg"
        thickness_tolerance = "{{(Exact ? 0 : 5)}} %"
        height_tolerance = "{{(Exact ? 0 : 0.1)}} mm"
        radius_tolerance = "{{(Exact ? 0 : 0.1)}} mm"
        [feed]
        net = "L"
        station = "0 deg"
        contact_length = "0.4 mm"
        side_play = "{{(Exact ? 0 : 0.1)}} mm"
        {{Output("fan", 5, 30, 120)}}
        {{Output("pump", 50, 30, 240)}}
        [[surface]]
        name = "floor"
        material_group = "IIIa"
        level = "-8 mm"
        {{Strip("feed strip", "feed = true", ApproachesDeg[2], rivets)}}
        {{Strip("fan strip", "output = \"fan\"", ApproachesDeg[0], rivets)}}
        {{Strip("pump strip", "output = \"pump\"", ApproachesDeg[1], rivets)}}
        """);

    private string Output(string name, double fromS, double forS, double stationDeg) => string.Create(CultureInfo.InvariantCulture, $$"""
        [[output]]
        name = "{{name}}"
        on = [ { from = "{{fromS}} s", for = "{{forS}} s" } ]
        tolerance = "3 s"
        station = "{{stationDeg}} deg"
        contact_length = "0.4 mm"
        worn_length = "{{(Exact ? 0.4 : 0.8)}} mm"
        side_play = "{{(Exact ? 0 : 0.1)}} mm"
        """);

    // The arm is as high over the copper with the rivet as with the folds.
    private string Strip(string name, string task, double approachDeg, bool rivets)
    {
        double down = DownDeg * Math.PI / 180;
        double height = (((2 * RadiusMm) + ThicknessMm) * (1 - Math.Cos(down))) + (LegMm * Math.Sin(down));
        string end = rivets
            ? string.Create(CultureInfo.InvariantCulture, $$"""{ rivet = "{{height:0.###}} mm", radius = "{{RadiusMm + ThicknessMm:0.###}} mm", diameter = "2.5 mm" }""")
            : string.Create(CultureInfo.InvariantCulture, $$"""
                { bend = "{{-DownDeg}} deg", radius = "{{RadiusMm}} mm" },
                { straight = "{{LegMm}} mm", width = "3 mm" },
                { bend = "{{(2 * DownDeg) + MoreDeg}} deg", radius = "{{RadiusMm}} mm", contact = true },
                { straight = "{{TipMm}} mm", width = "3 mm" }
                """);
        return string.Create(CultureInfo.InvariantCulture, $$"""
            [[strip]]
            name = "{{name}}"
            {{task}}
            material = "C51000-H04"
            thickness = "{{ThicknessMm}} mm"
            shape = [
              { straight = "22 mm", width = "8 mm" },
              { bend = "90 deg", radius = "1.5 mm" },
              { straight = "auto", width = "8 mm" },
              { bend = "-94 deg", radius = "1.5 mm" },
              { straight = "{{ArmMm}} mm", width = "8 mm", width_end = "3 mm" },
              {{end}},
            ]
            grain = "along"
            clamp = ["8 mm", "21 mm"]
            deflection = "{{DeflectionMm}} mm"
            approach = "{{approachDeg}} deg"
            seated_on = "floor"
            """);
    }
}
