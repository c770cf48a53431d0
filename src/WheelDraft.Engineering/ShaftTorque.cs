using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What turns against the motor where there are cams: their torque at every angle, and the friction of all wipers.</summary>
/// <param name="CamsMostNm">The greatest torque of all cams together, N·m.</param>
/// <param name="AtRad">Where it is, programme angle in [0, 2π).</param>
/// <param name="WipersMostNm">The greatest friction of all wipers, N·m; null where it is not known.</param>
/// <param name="MotorNm">Torque of the motor at the lowest supply voltage, N·m; null when not given.</param>
internal sealed record ShaftTorque(double CamsMostNm, double AtRad, double? WipersMostNm, double? MotorNm)
{
    // What is wanted over the greatest torque for gears, starting and age (common practice, no source); as for wipers alone.
    private const double WantedFactor = 2;

    // Angles at which the cams' torques are added up: two hundredths of a degree apart no torque of a cam changes by more than a part in a hundred of its greatest.
    private const int Looks = 18_000;

    private const double NmmInNm = 1000;

    /// <summary>The greatest torque with which levers drive the wheel on beyond the least friction of its wipers, N·m; 0 where they never do.</summary>
    public double DrivesNm { get; init; }

    /// <summary>Where they do, programme angle.</summary>
    public double DrivesAtRad { get; init; }

    /// <summary>The greatest of all.</summary>
    public double MostNm => CamsMostNm + (WipersMostNm ?? 0);

    /// <summary>Of a design; null without cams.</summary>
    public static ShaftTorque? Of(Design design)
    {
        if (design.Cams.Count == 0)
        {
            return null;
        }

        (double most, double mostAt, double drives, double drivesAt) = design.Cams.Count == 1
            ? (design.Cams[0].Torque.MostNmm, design.Cams[0].Torque.MostAtRad, design.Cams[0].Torque.DrivesNmm, design.Cams[0].Torque.DrivesAtRad)
            : Together(design.Cams);
        double low = 1 - design.Brief.Supply.VoltageToleranceShare;
        double held = design.Strips.Friction?.LeastNm ?? 0;
        return new(most / NmmInNm, mostAt, design.Strips.Strips.Any(s => s.Ring is not null) ? design.Strips.Friction?.MostNm : null, design.Brief.Drive.TorqueNm * low * low)
        {
            DrivesNm = Math.Max(0, (drives / NmmInNm) - held),
            DrivesAtRad = drivesAt,
        };
    }

    // Over a step a lever drives or does nothing, so that it takes no torque there.
    private static (double Most, double MostAt, double Drives, double DrivesAt) Together(IReadOnlyList<CamLayout> cams)
    {
        (double Least, double Most)[] sums = [.. Enumerable.Range(0, Looks).Select(i => cams.Select(c => c.Torque.At(Angles.TurnRad * i / Looks) ?? (0, 0)).Aggregate((a, b) => (a.LeastNmm + b.LeastNmm, a.MostNmm + b.MostNmm)))];
        int most = Enumerable.Range(0, Looks).MaxBy(i => sums[i].Most), least = Enumerable.Range(0, Looks).MinBy(i => sums[i].Least);
        return (sums[most].Most, Angles.TurnRad * most / Looks, Math.Max(0, -sums[least].Least), Angles.TurnRad * least / Looks);
    }

    /// <summary>What is to be known of it.</summary>
    public static IEnumerable<Finding> Findings(Design design)
    {
        if (Of(design) is not { } torque)
        {
            yield break;
        }

        TextPlace place = design.Brief.PlaceOf("drive.torque");
        string wipers = torque.WipersMostNm is double most ? $" and all wipers {Milli(most)}" : ", the wipers not counted because their forces are not known,";
        string has = $"At {Wording.Degrees(torque.AtRad)} the cams take {Milli(torque.CamsMostNm)}{wipers} at most";
        if (torque.MotorNm is double motor)
        {
            string against = $"{has}; the motor gives {Milli(motor)} at its lowest voltage";
            if (torque.MostNm >= motor)
            {
                yield return Finding.Error("cam.torque", $"{against}: it may stall there. A weaker press, a longer motion, a larger base radius or a stronger motor helps.", place);
            }
            else if (WantedFactor * torque.MostNm > motor)
            {
                yield return Finding.Warning("cam.torque", $"{against}: less than twice as much, which is usually kept for gears, starting and age (common practice, no source).", place);
            }
        }

        if (torque.DrivesNm > 0)
        {
            yield return Finding.Warning("cam.drives", $"At {Wording.Degrees(torque.DrivesAtRad)} a lever drives the wheel on with up to {Milli(torque.DrivesNm)} more than its wipers hold: the wheel runs through its backlash of {Wording.Degrees(design.Brief.Drive.BacklashRad)} there, so edges may come that much sooner than they are counted. A law with a gentler return, a weaker press or less backlash holds it.", place);
        }
        else if (design.Cams.Any(c => c.Falls.Count > 0) && design.Brief.Drive.BacklashRad > 0)
        {
            yield return Finding.Note("cam.drives", $"A lever that falls over a step pushes the wheel on, through its backlash of {Wording.Degrees(design.Brief.Drive.BacklashRad)} at most: edges within a step may come that much sooner.", place);
        }
    }

    private static string Milli(double newtonMetres) => $"{Wording.Number(newtonMetres * 1000, 2)} mN m";
}
