using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Chosen;

/// <summary>Bands of strips shared between designs, against each design by itself.</summary>
public sealed class SharedBandsTests
{
    // Whatever a strip's press may depend on, in pairs of values that differ.
    private static readonly (string Key, string[] Values)[] Varied =
    [
        ("drive.friction[2]", ["0.5", "0.4"]),
        ("drive.direction", ["clockwise", "anticlockwise"]),
        ("wheel.face_run_out", ["0.1 mm", "0.2 mm"]),
        ("carrier.step", ["0 mm", "0.1 mm"]),
        ("process.tolerance", ["0.05 mm", "0.1 mm"]),
        ("forming.fold_tolerance", ["0.5 deg", "1 deg"]),
        ("forming.thickness_tolerance", ["4 %", "6 %"]),
        ("forming.height_tolerance", ["0.1 mm", "0.15 mm"]),
        ("forming.radius_tolerance", ["0.1 mm", "0.2 mm"]),
        ("output.mist.worn_length", ["0.8 mm", "0.9 mm"]),
        ("output.mist.tolerance", ["1 s", "1.2 s"]),
        ("output.mist.adjust.travel", ["2 mm", "1.8 mm"]),
        ("output.mist.adjust.screw_at", ["48 mm", "46 mm"]),
        ("strip.mist strip.deflection", ["3 mm", "2.8 mm"]),
        ("strip.mist strip.approach", ["90 deg", "80 deg"]),
        ("strip.mist strip.material", ["C51000-H04", "C17200-TH04"]),
        ("strip.mist strip.thickness", ["0.5 mm", "0.52 mm"]),
        ("strip.run strip.clamp[2]", ["21 mm", "20 mm"]),
        ("strip.run strip.grain", ["along", "across"]),
        ("surface.floor.level", ["-7 mm", "-7.5 mm"]),
    ];

    [Fact]
    public void Judged_OneKeyVariedAfterTheOther_BandsAreThoseOfEachByItself()
    {
        byte[] bytes = File.ReadAllBytes(Demos.PathOf("propagation-bench"));
        BandMemory bands = new();
        int designs = 0;
        foreach ((string key, string[] values) in Varied)
        {
            foreach (string value in values)
            {
                ParameterResult read = ParameterReader.Read(bytes, null, [new ValueChange(key, value)]);
                Assert.True(read.Brief is not null, $"{key} = {value}: {string.Join("; ", read.Diagnostics.Select(d => d.Message))}");
                (StripBand?[] alone, StripBand?[] shared) = (BandsOf(read.Brief, null), BandsOf(read.Brief, bands));
                Assert.True(alone.SequenceEqual(shared), $"{key} = {value}");
                designs += alone.Length > 0 ? 1 : 0;
            }
        }

        Assert.InRange(designs, 31, int.MaxValue);
    }

    private static StripBand?[] BandsOf(Brief brief, BandMemory? bands)
    {
        try
        {
            return [.. Design.Judged(brief, bands).Strips.Strips.Select(s => s.Spring?.Band)];
        }
        catch (DesignRefusedException)
        {
            return [];
        }
    }
}
