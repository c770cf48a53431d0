using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>For rows that miss: the smallest changes that would meet.</summary>
/// <remarks>Each change is grown until the row meets with reserve, then narrowed to <see cref="StepMm"/>; every trial is measured again by the
/// judge of the table, tolerances and all, on what the row depends on (<see cref="SpacingExcerpts"/>), and the last one with all other rows of what moved. With reserve means "meets", not
/// "tight": a proposal is not to stand at the very edge. A change that no size up to <see cref="MostMm"/> makes good is not offered, nor one for
/// whose size there is no room.</remarks>
internal static class Remedies
{
    /// <summary>Sizes are offered in steps of this, mm: what a drawing is dimensioned to (common practice, no source).</summary>
    internal const double StepMm = 0.05;

    /// <summary>The largest change offered, mm: beyond it a design must be thought through again (common practice, no source).</summary>
    private const double MostMm = 30;

    /// <summary>Thickness of a rib that is offered, mm: what moulded or glued walls commonly have (common practice, no source).</summary>
    private const double RibThicknessMm = 1.2;

    /// <summary>The changes for the rows that miss, in the order of the rows: moves, rib, slot, material.</summary>
    /// <param name="task">What the table was measured from.</param>
    /// <param name="table">The table.</param>
    /// <param name="firstLeft">The first row for which none was looked for, because <see cref="Budgets.WalledTrials"/> were spent; null when all were.</param>
    public static IReadOnlyList<Remedy> For(SpacingTask task, SpacingTable table, out SpacingRow? firstLeft)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(table);
        firstLeft = null;
        List<Remedy> remedies = [];
        RemedyTrials trials = new(task, table);
        foreach (SpacingRow row in table.Rows.Where(r => r.Verdict == SpacingVerdict.Misses))
        {
            if (trials.AreSpent)
            {
                firstLeft = row;
                break;
            }

            trials.Begin(row);
            foreach (TriedChange change in Changes(trials.Excerpt, row, trials))
            {
                if (Smallest(change, trials) is { } amount)
                {
                    remedies.Add(trials.Checked(change, amount));
                }
            }
        }

        return remedies;
    }

    private static IEnumerable<TriedChange> Changes(SpacingTask task, SpacingRow row, RemedyTrials trials) =>
    [
        .. Moves(task, row, row.FirstItem, row.Nets.First, row.OnFirst, row.OnSecond),
        .. Moves(task, row, row.SecondItem, row.Nets.Second, row.OnSecond, row.OnFirst),
        .. Barriers(task, row, trials),
        .. Materials(task, row, trials),
    ];

    /// <summary>Away from the other item, level or (for clearances) up or down.</summary>
    private static IEnumerable<TriedChange> Moves(SpacingTask task, SpacingRow row, string item, string net, SpacePoint own, SpacePoint other)
    {
        Solid[] moved = [.. task.Solids.Where(s => RemedyTrials.IsOf(s, item, net))];
        if (moved.Any(s => s.Turns))
        {
            yield break;
        }

        Vector away = own.Plan - other.Plan;
        if (away.Length > Tolerances.JoinMm)
        {
            Vector unit = away.Unit();
            yield return new(RemedyKind.Move, (all, mm) => Shifted(all, item, net, unit * mm, 0), mm => string.Create(
                CultureInfo.InvariantCulture, $"move {item} by {mm:0.00} mm towards {Angles.DegFromRad(Angles.InTurn(unit.AngleRad)):0}°"))
            { Moved = (net, item) };
        }

        if (row.Kind == SpacingKind.Clearance && moved.All(s => s.OnSurface is null))
        {
            double up = own.Z >= other.Z ? 1 : -1;
            yield return new(RemedyKind.Move, (all, mm) => Shifted(all, item, net, default, up * mm), mm => string.Create(
                CultureInfo.InvariantCulture, $"{(up > 0 ? "raise" : "lower")} {item} by {mm:0.00} mm"))
            { Moved = (net, item) };
        }
    }

    /// <summary>A rib or a slot across the middle of the straight way, where both items are on one fixed surface.</summary>
    private static IEnumerable<TriedChange> Barriers(SpacingTask task, SpacingRow row, RemedyTrials trials)
    {
        Vector across = row.OnSecond.Plan - row.OnFirst.Plan;
        InsulatingSurface? surface = row.Path?.Surface ?? task.Surfaces.FirstOrDefault(s => !s.Turns && AreOn(task, row, s, trials.XMm));
        if (surface is null || surface.Turns || surface.Parts.Count > 0 || across.Length <= RibThicknessMm)
        {
            yield break;
        }

        Vector along = across.Unit().Left;
        (double facingMiddle, double facingMm) = Facing(task, row, along);
        Point middle = row.OnFirst.Plan.Towards(row.OnSecond.Plan, 0.5);
        middle += along * (facingMiddle - (middle - Point.Origin).Dot(along));
        double half = (facingMm + row.Required.RequiredMm) / 2;
        Point[] Path(double halfMm) => [middle - (along * halfMm), middle + (along * halfMm)];
        yield return new(
            RemedyKind.Rib,
            (all, mm) => OnSurface(all, surface, s => s with { Ribs = [.. s.Ribs, new RibBrief(s.Name, Path(half), mm, RibThicknessMm, RibJoint.Moulded)] }),
            mm => string.Create(CultureInfo.InvariantCulture, $"put a rib {mm:0.00} mm high, {RibThicknessMm} mm thick and {2 * half:0.0} mm long on {surface.Name}, from {Ends(Path(half))}"))
        {
            Fits = mm => trials.HasRoom(surface, Band.Along(Path(half), RibThicknessMm), mm),
        };
        double width = SlotWidthMm(trials.XMm, surface.FaceMm);
        if (row.Kind == SpacingKind.Creepage && across.Length > width)
        {
            yield return new(
                RemedyKind.Slot,
                (all, mm) => OnSurface(all, surface, s => s with { Slots = [.. s.Slots, new SlotBrief(s.Name, Path(mm / 2), width, null, SlotProfile.Parallel)] }),
                mm => string.Create(CultureInfo.InvariantCulture, $"cut a slot {width:0.00} mm wide and {mm:0.00} mm long through {surface.Name}, from {Ends(Path(mm / 2))}"))
            {
                Fits = mm => trials.HasRoom(surface, Band.Along(Path(mm / 2), width), 0),
            };
        }
    }

    /// <summary>Width of a slot that counts with reserve: X and a tenth, and both faces' tolerance, in whole steps.</summary>
    private static double SlotWidthMm(double xMm, double faceMm) => Math.Round(
        StepMm * Math.Ceiling(SpacingTolerances.Compared(((SpacingTolerances.TightFactor * xMm) + (2 * faceMm)) / StepMm)), SpacingTolerances.ComparedDecimals);

    /// <summary>Where along a direction the two items face each other: the middle of what both cover, and how much that is.</summary>
    private static (double MiddleMm, double LengthMm) Facing(SpacingTask task, SpacingRow row, Vector along)
    {
        Bounds first = Seen(row.FirstItem, row.Nets.First), second = Seen(row.SecondItem, row.Nets.Second);
        double from = Math.Max(first.MinX, second.MinX), to = Math.Min(first.MaxX, second.MaxX);
        return ((from + to) / 2, Math.Max(0, to - from));

        Bounds Seen(string item, string net) => task.Solids
            .Where(s => RemedyTrials.IsOf(s, item, net))
            .Select(s => s.Outline.Placed(Placement.Turn(-along.AngleRad)).Bounds)
            .Aggregate((a, b) => a.With(b));
    }

    private static IEnumerable<TriedChange> Materials(SpacingTask task, SpacingRow row, RemedyTrials trials)
    {
        if (row.Path is not { } path)
        {
            yield break;
        }

        for (MaterialGroup group = path.Surface.Group - 1; group >= MaterialGroup.I; group--)
        {
            MaterialGroup better = group;
            SpacingTask Changed(SpacingTask all) => OnSurface(all, path.Surface, s => s with { Group = better });
            if (trials.Meets(Changed(task)))
            {
                yield return new(RemedyKind.Material, (all, _) => Changed(all), _ => $"make {path.Surface.Name} of a material of group {better}") { IsSized = false };
                yield break;
            }
        }
    }

    /// <summary>The smallest size in steps with which the row meets with reserve; null when none does.</summary>
    private static double? Smallest(TriedChange change, RemedyTrials trials)
    {
        if (!change.IsSized)
        {
            return 0;
        }

        int most = (int)(MostMm / StepMm), good = 1;

        // A way round the ends of a rib is no longer for a higher one: what the highest does not make good, none does.
        if (change.Kind == RemedyKind.Rib && !trials.Meets(change, most))
        {
            return null;
        }

        while (good < most && !trials.Meets(change, good))
        {
            if (!change.Fits(good * StepMm))
            {
                return null;
            }

            good *= 2;
        }

        good = Math.Min(good, most);
        if (!trials.Meets(change, good))
        {
            return null;
        }

        int bad = good / 2;
        while (good - bad > 1)
        {
            int middle = (good + bad) / 2;
            (bad, good) = trials.Meets(change, middle) ? (bad, middle) : (middle, good);
        }

        // There is less room for the larger: when this one does not fit, none does that meets.
        return change.Fits(good * StepMm) ? good * StepMm : null;
    }

    private static bool AreOn(SpacingTask task, SpacingRow row, InsulatingSurface surface, double xMm)
    {
        IReadOnlyList<CreepageConductor> on = CreepageConductor.On(surface, task.Solids, xMm);
        return on.Any(c => string.Equals(c.Net, row.Nets.First, StringComparison.Ordinal) && string.Equals(c.Item, row.FirstItem, StringComparison.Ordinal))
            && on.Any(c => string.Equals(c.Net, row.Nets.Second, StringComparison.Ordinal) && string.Equals(c.Item, row.SecondItem, StringComparison.Ordinal));
    }

    private static SpacingTask Shifted(SpacingTask task, string item, string net, Vector plan, double upMm) => task with
    {
        Solids =
        [
            .. task.Solids.Select(s => RemedyTrials.IsOf(s, item, net)
                ? s with { Outline = s.Outline.Placed(Placement.Translation(plan)), FromZMm = s.FromZMm + upMm, ToZMm = s.ToZMm + upMm }
                : s),
        ],
    };

    private static SpacingTask OnSurface(SpacingTask task, InsulatingSurface surface, Func<InsulatingSurface, InsulatingSurface> change) => task with
    {
        Surfaces = [.. task.Surfaces.Select(s => string.Equals(s.Name, surface.Name, StringComparison.Ordinal) ? change(s) : s)],
    };

    private static string Ends(Point[] path) =>
        $"({Wording.Fixed(path[0].X, 2)}, {Wording.Fixed(path[0].Y, 2)}) to ({Wording.Fixed(path[1].X, 2)}, {Wording.Fixed(path[1].Y, 2)})";
}
