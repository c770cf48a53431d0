using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The spacing table: one row per pair of nets and kind of distance, and what was found on the way.</summary>
/// <param name="Rows">Rows in ordinal order of the nets, clearance before creepage.</param>
/// <param name="Findings">What misses, what is tight, what touches, what was read into the rules.</param>
public sealed record SpacingTable(IReadOnlyList<SpacingRow> Rows, IReadOnlyList<Finding> Findings)
{
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

        return new SpacingTable(rows, SpacingFindings.Of(task, meter, rows));
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
        IReadOnlyList<SolidGap> gaps = meter.Clearance(pair.First, pair.Second);
        if (gaps.Count == 0)
        {
            return null;
        }

        SolidGap first = gaps[0], last = gaps[^1];
        double? turned = gaps.FirstOrDefault(g => g.TurnedRad is not null)?.TurnedRad;
        return new SpacingRow(
            pair,
            first.First.Name,
            last.Second.Name,
            SpacingKind.Clearance,
            task.Demands.Required(pair, null).Clearance,
            gaps.Sum(g => g.NominalMm),
            gaps.Sum(g => g.WorstMm),
            first.OnFirst,
            last.OnSecond)
        {
            AtRad = turned is { } angle ? Angles.InTurn(task.Direction == Turning.Anticlockwise ? angle : -angle) : null,
            Bounds = gaps.Count == 1 ? first.Bounds : null,
            Gaps = gaps,
            Measured = [.. gaps.Select(MeasuringWords.Gap)],
        };
    }

    /// <summary>The creepage row: the surface on which it misses, else the one with the least worst figure.</summary>
    internal static SpacingRow? Creepage(SpacingTask task, SpacingMeter meter, NetPair pair)
    {
        SpacingRow? best = null;
        foreach (InsulatingSurface surface in task.Surfaces)
        {
            if (Creepage(task, meter, pair, surface) is { } row
                && (best is null || row.Verdict < best.Verdict || (row.Verdict == best.Verdict && row.WorstMm < best.WorstMm)))
            {
                best = row;
            }
        }

        return best;
    }

    private static SpacingRow? Creepage(SpacingTask task, SpacingMeter meter, NetPair pair, InsulatingSurface surface)
    {
        PairRequirement required = task.Demands.Required(pair, surface.Group);
        double x = task.Demands.GrooveXMm(required.Clearance.RequiredMm);
        if (meter.Creepage(surface, x, pair.First, pair.Second) is not { } path)
        {
            return null;
        }

        (Point from, Point to) = Ends(path);
        return new SpacingRow(
            pair,
            path.Parts[0].From,
            path.Parts[^1].To,
            SpacingKind.Creepage,
            required.Creepage!,
            path.NominalMm,
            path.WorstMm,
            SpacePoint.At(from, surface.LevelMm),
            SpacePoint.At(to, surface.LevelMm))
        {
            AtRad = surface.Turns ? 0 : null,
            Path = path,
            Measured = [.. MeasuringWords.Path(path, x)],
        };
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

/// <summary>How something was measured, in words.</summary>
internal static class MeasuringWords
{
    internal static string Mm(double mm) => string.Create(CultureInfo.InvariantCulture, $"{mm:0.00} mm");

    internal static string At(SpacePoint p) => string.Create(CultureInfo.InvariantCulture, $"({p.X:0.00}, {p.Y:0.00}, {p.Z:0.00})");

    internal static string Degrees(double rad) => string.Create(CultureInfo.InvariantCulture, $"{Angles.DegFromRad(rad):0.0}°");

    internal static string Gap(SolidGap gap)
    {
        string how = gap.String.Count > 2
            ? "taut string over or round a rib by way of " + string.Join(", ", gap.String.Skip(1).SkipLast(1).Select(At))
            : gap.Bounds is not null ? "least over the given parts of the turn, certified"
            : gap.TurnedRad is null ? "both fixed"
            : gap.First.Turns && gap.Second.Turns ? "both turn together"
            : "least over the whole turn, by radius";
        return $"From {gap.First.Name} {At(gap.OnFirst)} to {gap.Second.Name} {At(gap.OnSecond)}: {Mm(gap.NominalMm)}, at worst {Mm(gap.WorstMm)} ({how}).";
    }

    internal static IEnumerable<string> Path(CreepagePath path, double grooveXMm)
    {
        yield return $"On {path.Surface.Name}; grooves, slots and recesses narrower than X = {Mm(grooveXMm)} are bridged.";
        foreach (CreepagePart part in path.Parts)
        {
            string counted = part.Counts ? "" : $", below X and counted as nothing";
            yield return $"From {part.From} to {part.To}: {Mm(part.NominalMm)}, at worst {Mm(part.WorstMm)}{counted}.";
            foreach (SurfaceLeg leg in part.Path.Legs)
            {
                yield return Leg(leg);
            }
        }
    }

    private static string Leg(SurfaceLeg leg)
    {
        Point a = leg.Piece.Start, b = leg.Piece.End;
        string way = leg.Piece is Arc ? "along a round edge" : "straight";
        string crossed = leg.Crossed.Count == 0
            ? ""
            : "; " + string.Join(", ", leg.Crossed.Select(c => $"{c.Region} {(c.Bridged ? "(bridged) " : "")}adds {Mm(c.AddedMm)}"));
        return string.Create(CultureInfo.InvariantCulture, $"Leg {way} from ({a.X:0.00}, {a.Y:0.00}) to ({b.X:0.00}, {b.Y:0.00}): {leg.LengthMm:0.00} mm{crossed}.");
    }
}
