using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>When the contact of a lever closes and opens, edges within their worst case.</summary>
/// <param name="brief">The brief.</param>
/// <param name="cam">The cam.</param>
/// <param name="shape">Its shape.</param>
/// <param name="moves">How its lever falls, and by how much it stays below its profile where a uniform motion ends, mm.</param>
internal sealed class LeverSwitching(Brief brief, CamBrief cam, CamShape shape, (IReadOnlyList<CamFall> Falls, double LostMm) moves)
{
    private readonly LeverContactBrief _contact = cam.Contact!;
    private readonly InputBrief _input = brief.Inputs.First(i => string.Equals(i.Name, cam.Contact!.Input, StringComparison.Ordinal));

    /// <summary>How far the contact's place may be from where it should be, as a lift: its own tolerance, and what the cut edge, the run-out and a corner that is lost do to the lift.</summary>
    public double OffLift => _contact.Tolerance + ((EdgeMm + moves.LostMm) / Math.Cos(shape.MostPressure().PressureRad) / LiftMm);

    // The cut edge moves along its normal, the centre in any direction.
    private double EdgeMm => (cam.CutToleranceMm ?? brief.Process.ToleranceMm) + (brief.Wheel.RunOutMm / 2);

    // How far the contact moves by lift.
    private double LiftMm => cam.Lever switch
    {
        SlidingLever => 1,
        SwingingLever swing when cam.RollerRadiusMm is not null => swing.ArmMm,
        SwingingLever swing => Math.Max(swing.Pivot.DistanceTo(shape.FaceAt(shape.Task.Profile.TopLift)!.Value.Foot) - shape.MostAsideMm(), 1),
        _ => throw new NotSupportedException("A lever of no known kind."),
    };

    /// <summary>The schedule.</summary>
    public LeverSchedule Schedule() => new(cam.Name, _contact.Input, new ContactSchedule(_contact.Input, _input.From, _input.To, Periods()))
    {
        Blocked = Hold(cam.Obstacle),
        Latched = Hold(cam.Latch),
        ClosedAtRest = _contact.IsClosedAt(0),
        ClosedAtTop = _contact.IsClosedAt(shape.Task.Profile.TopLift),
    };

    /// <summary>What cannot be told: places too near to where the contact changes.</summary>
    public IEnumerable<Finding> Findings(Func<double, string> words)
    {
        string path = FormattableString.Invariant($"cam[{Index()}].");
        IEnumerable<(string What, double Lift, string Key)> rides = shape.Task.Profile.Stretches.Where(s => s.Law is null && !s.Falls).Select(s => ($"rides at {words(s.FromLift)}", s.FromLift, "contact"));
        (string What, double Lift, string Key)[] held =
        [
            .. rides.Distinct(),
            .. cam.Obstacle is double obstacle ? [($"stays at its obstacle at {words(obstacle)}", obstacle, "obstacle")] : Array.Empty<(string, double, string)>(),
            .. cam.Latch is double latch ? [($"is hooked up at {words(latch)}", latch, "latch")] : Array.Empty<(string, double, string)>(),
        ];
        return held.Where(h => Math.Abs(h.Lift - _contact.Place) <= OffLift).Select(h => Finding.Error(
            "cam.contact-undecided",
            $"The lever of cam '{cam.Name}' {h.What}, and its contact changes at {words(_contact.Place)} ± {words(OffLift)} (its own tolerance, the cut edge and the run-out counted): whether it is closed there cannot be told. Move one of the two, or make them closer.",
            brief.PlaceOf(path + h.Key)));
    }

    private int Index() => Enumerable.Range(0, brief.Cams.Count).First(i => ReferenceEquals(brief.Cams[i], cam));

    // Above the contact's place the lever is held in one state; at or below it what holds it changes nothing.
    private LeverHold? Hold(double? lift) => lift is not double place ? null
        : place <= _contact.Place ? LeverHold.AsFree
        : _contact.ClosedBelow ? LeverHold.Open : LeverHold.Closed;

    private readonly record struct PlaceCrossing(double AtRad, bool Rises, double EarlierRad, double LaterRad);

    private IReadOnlyList<MadePeriod> Periods()
    {
        PlaceCrossing[] crossings = [.. shape.Task.Profile.Stretches.Select((s, i) => s.Falls ? Fall(s, i) : Rise(s)).OfType<PlaceCrossing>().OrderBy(c => c.AtRad)];
        if (crossings.Length == 0)
        {
            return _contact.IsClosedAt(shape.LiftAt(0)) ? [new(CircleArc.Full, default, default)] : [];
        }

        List<MadePeriod> periods = [];
        for (int i = 0; i < crossings.Length; i++)
        {
            PlaceCrossing make = crossings[i], end = crossings[(i + 1) % crossings.Length];
            if (make.Rises != _contact.ClosedBelow)
            {
                periods.Add(new(CircleArc.Sweep(Angles.InTurn(make.AtRad), Angles.InTurn(end.AtRad - make.AtRad)), Band(make), Band(end)));
            }
        }

        return [.. periods.OrderBy(p => p.Closed.StartRad)];
    }

    // The cam lags in its gear's backlash as the wheel does.
    private EdgeBand Band(PlaceCrossing crossing) => new(crossing.EarlierRad, crossing.LaterRad + brief.Drive.BacklashRad);

    private PlaceCrossing? Rise(CamStretch stretch)
    {
        double place = _contact.Place;
        bool rises = stretch.ToLift > stretch.FromLift;
        if (stretch.Law is null || (stretch.FromLift < place) == (stretch.ToLift < place))
        {
            return null;
        }

        double low = At(stretch, place - OffLift), at = At(stretch, place), high = At(stretch, place + OffLift);
        return rises ? new(at, rises, at - low, high - at) : new(at, rises, at - high, low - at);
    }

    // Where a stretch has a lift; its nearer end where it has none such.
    private static double At(CamStretch stretch, double lift)
    {
        bool rises = stretch.ToLift > stretch.FromLift;
        return RootFinding.Within(psi => stretch.At(psi).Lift - lift, stretch.FromRad, stretch.ToRad)
            ?? (lift < Math.Min(stretch.FromLift, stretch.ToLift) == rises ? stretch.FromRad : stretch.ToRad);
    }

    // Over a step: soonest where the lever, sinking over the corner, may pass the place, latest when it has fallen all the way.
    private PlaceCrossing? Fall(CamStretch stretch, int index)
    {
        double place = _contact.Place;
        if (place >= stretch.FromLift)
        {
            return null;
        }

        int number = shape.Task.Profile.Stretches.Take(index).Count(s => s.Falls);
        DropFace drop = shape.Drops[number];
        double clear = drop.ClearRad, held = drop.HeldToRad;
        double Sinks(double lift) => lift >= stretch.FromLift ? held : lift <= drop.FromLift ? clear : RootFinding.Within(psi => drop.LiftAt(psi) - lift, held, clear) ?? clear;
        double soonest = Sinks(place + OffLift), at = Sinks(place);
        double latest = clear + moves.Falls[number].RestByRad - moves.Falls[number].ClearRad;

        // The corner may lie nearer or further round the cam by what its edge and the centre are off, along both.
        double corner = 2 * EdgeMm / drop.Corner.RadiusMm;
        return new(at, Rises: false, at - soonest + corner, latest - at + corner);
    }
}
