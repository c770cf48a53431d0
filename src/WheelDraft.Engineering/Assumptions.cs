namespace WheelDraft.Engineering;

/// <summary>Something that a design counts on because the parameter file does not say otherwise.</summary>
/// <param name="Key">Path of the key in the file that would say it: <c>wheel.run_out</c>, <c>output[1].worn_length</c>.</param>
/// <param name="Words">What is taken to be so, in words; for a table that may stand several times with its name.</param>
public sealed record Assumption(string Key, string Words);

/// <summary>Every assumption of a brief: each key left out that is counted as nothing, and what no key says.</summary>
/// <remarks>A key that is given, if only as zero, is a statement of the person's own and no assumption. To add one: a line in a list
/// below, in the order of the parameter file.</remarks>
internal static class Assumptions
{
    private static readonly Assumption[] Always =
    [
        new("supply.voltage_tolerance", "the supply keeps its voltage: loads are judged at exactly that"),
        new("environment.altitude", "at sea level, where clearances are smallest"),
        new("drive.backlash", "the gear has no play"),
        new("drive.coast", "the wheel stops at once when its motor loses supply"),
        new("drive.torque", "the motor's torque is not known: whether it turns the wheel against its wipers is not judged"),
        new("drive.friction", "the friction of the wipers is not known: their torque is not worked out"),
        new("spacing.margin", "nothing is kept on top of what the rules ask"),
        new("wheel.run_out", "the wheel's centre lies on its axis: no radial run-out"),
        new("wheel.face_run_out", "the copper face runs true: no axial run-out"),
        new("carrier.step", "the copper is flush with its carrier"),
        new("housing.placing", "every wiper touches exactly at its station"),
        new("housing.tolerance", "parts, ribs, slots and surfaces are exactly as drawn"),
    ];

    private static readonly Assumption[] OfWiper =
    [
        new("worn_length", "its contact does not wear: worn_length is its contact_length"),
        new("side_play", "its wiper has no side play"),
    ];

    private static readonly Assumption[] OfLoad =
    [
        new("pull_in", "it is on from 80 % of the supply voltage"),
        new("drop_out", "it is off up to 20 % of the supply voltage"),
    ];

    /// <summary>The assumptions, in the order of the parameter file.</summary>
    public static IReadOnlyList<Assumption> Of(Brief brief)
    {
        IEnumerable<Assumption> all =
        [
            .. Always,
            .. brief.Feed is null ? [] : Named(OfWiper, "feed", "the feed"),
            .. brief.Outputs.SelectMany((o, i) => Named(OfWiper, Path("output", i), $"output '{o.Name}'")),
            .. brief.Loads.SelectMany((l, i) => Named(OfLoad, Path("load", i), $"load '{l.Name}'")),
            .. brief.DriveMotor is null ? [] : Named(OfLoad, "drive_motor", "the motor"),
        ];
        return [.. all.Where(a => !brief.Places.ContainsKey(a.Key)), .. WithoutKey(brief)];
    }

    private static IEnumerable<Assumption> WithoutKey(Brief brief)
    {
        for (int i = 0; i < brief.Cams.Count; i++)
        {
            CamBrief cam = brief.Cams[i];
            string lever = Path("cam", i) + (cam.Swings ? ".lever" : ".slide");
            if (cam.Body is null)
            {
                yield return new(lever + ".width", $"cam '{cam.Name}': its lever, roller and pin insulate, and no strip is in their way");
            }
            else if (cam.Stop is null)
            {
                yield return new(lever + ".stop", $"cam '{cam.Name}': its lever goes no further than its latch, or its greatest lift");
            }

            if (cam.CutToleranceMm is null)
            {
                yield return new(Path("cam", i) + ".cut_tolerance", FormattableString.Invariant($"cam '{cam.Name}': its edge is cut as exactly as the copper, ±{brief.Process.ToleranceMm} mm"));
            }
        }

        if (brief.Wheel.Shaft != ShaftKind.Insulating)
        {
            yield return new("wheel.shaft", ShaftWords(brief));
        }

        if (brief.Wheel.Fixings is not null)
        {
            yield return new("wheel.fixings", FormattableString.Invariant($"screws or rivets stand {WheelSolids.FixingsAboveFaceMm} mm above the copper face, and a nut under the carrier by as much as the hole is wide"));
            if (brief.Wheel.Fixings.GivenHeadMm is null)
            {
                yield return new("wheel.fixings.head", FormattableString.Invariant($"heads and nuts are {FixingsBrief.HeadByHole} times as wide as the hole (common practice, no source)"));
            }
        }

        for (int i = 0; i < brief.Outputs.Count; i++)
        {
            OutputBrief output = brief.Outputs[i];
            if (output.Adjust is { Place: null })
            {
                yield return new(Path("output", i) + ".adjust.screw_at", $"output '{output.Name}': its adjusting screw is not placed, so what it comes near to is not measured");
            }
            else if (output.Adjust?.Place is { Lugs: [] })
            {
                yield return new(Path("output", i) + ".adjust.screw_lugs", $"output '{output.Name}': what holds its adjusting screw is not given, so what that comes near to is not measured");
            }

            bool hasStrip = brief.Strips.Any(s => s.Task is ServesOutput serves && string.Equals(serves.Output, output.Name, StringComparison.OrdinalIgnoreCase));
            if (output.Measured is { GivenRad: null })
            {
                yield return new(Path("output", i) + ".measured_to", FormattableString.Invariant($"output '{output.Name}': each edge of its copper was measured to ±{Geometry.Angles.DegFromRad(MeasuredCopperBrief.UsualRad):0.##}° (common practice, no source)"));
            }

            if (!hasStrip && output.Contact.NoseRadiusMm is null)
            {
                yield return new(Path("output", i) + ".nose_radius", $"output '{output.Name}': its patch stands for the whole nose, with upright sides");
            }
        }
    }

    private static string ShaftWords(Brief brief) => brief.Cams.Count == 0
        ? FormattableString.Invariant($"the metal shaft stands from {WheelSolids.ShaftUnderCarrierMm} mm under the carrier to {WheelSolids.ShaftAboveFaceMm} mm above the copper face")
        : FormattableString.Invariant($"the metal shaft stands from {WheelSolids.ShaftUnderCarrierMm} mm under the carrier to {WheelSolids.ShaftAboveFaceMm} mm above the copper face, and {WheelSolids.ShaftAboveFaceMm} mm beyond each cam");

    private static IEnumerable<Assumption> Named(IEnumerable<Assumption> all, string table, string name) =>
        all.Select(a => new Assumption($"{table}.{a.Key}", $"{name}: {a.Words}"));

    private static string Path(string table, int index) => FormattableString.Invariant($"{table}[{index}]");
}
