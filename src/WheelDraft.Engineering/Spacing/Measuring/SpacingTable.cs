using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The spacing table: one row per pair of nets and kind of distance, and what was found on the way.</summary>
/// <param name="Rows">Rows in ordinal order of the nets, clearance before creepage.</param>
/// <param name="Findings">What misses, what is tight, what touches, what was read into the rules.</param>
public sealed record SpacingTable(IReadOnlyList<SpacingRow> Rows, IReadOnlyList<Finding> Findings)
{
    private Lazy<IReadOnlyList<SpacingRow>> _allPairs = new(() => []);

    /// <summary>A row for every pair of items of two nets, clearance and creepage: not only the pair that decides. Measured when first asked for.</summary>
    public IReadOnlyList<SpacingRow> AllPairs => _allPairs.Value;

    /// <summary>Measures and judges a task.</summary>
    /// <exception cref="ArgumentException">Solids of one net are of different kinds.</exception>
    /// <exception cref="RuleRefusedException">The rules give no distance for one of the pairs.</exception>
    public static SpacingTable Of(SpacingTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        SpacingMeter meter = new(task);
        List<SpacingRow> rows = [];
        foreach (NetPair pair in meter.Pairs())
        {
            rows.AddRange(SpacingRows.Of(task, meter, pair));
        }

        return new SpacingTable(rows, SpacingFindings.Of(task, meter, rows)) { _allPairs = new(() => ItemPairs.Of(task, meter)) };
    }
}

/// <summary>Builds the rows of one pair of nets.</summary>
internal static class SpacingRows
{
    internal static IEnumerable<SpacingRow> Of(SpacingTask task, SpacingMeter meter, NetPair pair)
    {
        if (Clearance(task, meter, pair) is { } clearance)
        {
            yield return clearance;
        }

        if (Creepage(task, meter, pair) is { } creepage)
        {
            yield return creepage;
        }
    }

    internal static SpacingRow? Clearance(SpacingTask task, SpacingMeter meter, NetPair pair)
    {
        Requirement required = meter.Required(pair, null).Clearance;
        double x = task.Demands.GrooveXMm(required.RequiredMm);
        return Clearance(task, pair, required, meter.Clearance(pair.First, pair.Second, x), x);
    }

    /// <summary>The row of a clearance that has been measured; null when nothing was.</summary>
    internal static SpacingRow? Clearance(SpacingTask task, NetPair pair, Requirement required, IReadOnlyList<ClearancePart> parts, double xMm)
    {
        if (parts.Count == 0)
        {
            return null;
        }

        SolidGap first = parts[0].Gap, last = parts[^1].Gap;
        double? turned = parts.FirstOrDefault(p => p.Gap.TurnedRad is not null)?.Gap.TurnedRad;
        return new SpacingRow(
            pair,
            first.First.Name,
            last.Second.Name,
            SpacingKind.Clearance,
            required,
            parts.Where(p => p.Counts || !SpacingTolerances.IsBelow(p.Gap.NominalMm, xMm)).Sum(p => p.Gap.NominalMm),
            parts.Sum(p => p.WorstMm),
            first.OnFirst,
            last.OnSecond)
        {
            AtRad = turned is { } angle ? Angles.InTurn(task.Direction == Turning.Anticlockwise ? angle : -angle) : null,
            Bounds = parts.Count == 1 ? first.Bounds : null,
            Gaps = [.. parts.Select(p => p.Gap)],
            Measured = [.. parts.Select(p => MeasuringWords.Gap(p, xMm))],
        };
    }

    /// <summary>The creepage row: the surface on which it misses, else the one with the least worst figure.</summary>
    internal static SpacingRow? Creepage(SpacingTask task, SpacingMeter meter, NetPair pair) => Worst(OnEachSurface(task, meter, pair));

    /// <summary>The creepage rows of all surfaces, and of those that are one, each measured when it is come to.</summary>
    /// <param name="task">The task.</param>
    /// <param name="meter">Its meter.</param>
    /// <param name="pair">Two of its nets.</param>
    /// <param name="firstOn">The surface to begin with; the first of the task when left out.</param>
    internal static IEnumerable<SpacingRow> OnEachSurface(SpacingTask task, SpacingMeter meter, NetPair pair, string? firstOn = null) => task.Surfaces
        .OrderBy(s => !string.Equals(s.Name, firstOn, StringComparison.Ordinal))
        .Select(s => Creepage(task, meter, pair, s))
        .Concat(meter.Joined(meter.XMm(pair)).Select(s => Creepage(task, meter, pair, s) is { } row && LeavesItsSurface(meter, row, meter.XMm(pair)) ? row : null))
        .OfType<SpacingRow>();

    /// <summary>The row with the worst verdict, of those the least; null without any.</summary>
    internal static SpacingRow? Worst(IEnumerable<SpacingRow?> rows) =>
        rows.OfType<SpacingRow>().MinBy(r => (r.Verdict, r.WorstMm));

    /// <summary>The row of a path that has been measured.</summary>
    internal static SpacingRow Creepage(SpacingTask task, NetPair pair, CreepagePath path, Requirement required, double xMm)
    {
        (Point from, Point to) = Ends(path);
        return new SpacingRow(
            pair,
            path.Parts[0].From,
            path.Parts[^1].To,
            SpacingKind.Creepage,
            required,
            path.NominalMm,
            path.WorstMm,
            SpacePoint.At(from, path.FirstLevelMm),
            SpacePoint.At(to, path.SecondLevelMm))
        {
            AtRad = path.Surface.Turns && path.First.Turns && path.Second.Turns ? 0 : null,
            Path = path,
            Measured = [.. MeasuringWords.Path(path, xMm)],
        };
    }

    /// <summary>Whether a path on surfaces that are one is not just one on a single surface, judged there by itself.</summary>
    internal static bool LeavesItsSurface(SpacingMeter meter, SpacingRow row, double xMm) => !row.Path!.Surface.Parts.Any(p =>
        meter.Creepage(p, xMm, row.Nets.First, row.Nets.Second) is { } own && !SpacingTolerances.IsBelow(row.WorstMm, own.WorstMm));

    private static SpacingRow? Creepage(SpacingTask task, SpacingMeter meter, NetPair pair, InsulatingSurface surface)
    {
        double x = meter.XMm(pair);
        return meter.Creepage(surface, x, pair.First, pair.Second) is { } path
            ? Creepage(task, pair, path, meter.Required(pair, surface.Group).Creepage!, x)
            : null;
    }

    private static (Point From, Point To) Ends(CreepagePath path)
    {
        Piece[] pieces = [.. path.Parts.SelectMany(p => p.Path.Legs).Select(l => l.Piece)];
        if (pieces.Length > 0)
        {
            return (pieces[0].Start, pieces[^1].End);
        }

        // The two touch: one of the places where they do.
        Nearest touch = Distances.Between(path.First.Outline, path.Second.Outline);
        return (touch.OnFirst, touch.OnSecond);
    }
}
