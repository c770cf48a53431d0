using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>What a trial of a remedy answers is what the whole table of the changed design says.</summary>
public sealed class SpacingExcerptsTests
{
    private static readonly Gen<int> Seeds = Gen.Int[0, 1_000_000];

    [Fact]
    public void Of_TwoNetsOfAChangedTask_HasTheRowsOfTheWholeTable() => Seeds.Sample(
        seed =>
        {
            Random random = new(seed);
            SpacingTask before = Task(random);
            SpacingExcerpts excerpts = new(before);
            SpacingMeter known = new(before);
            string item = before.Solids[random.Next(before.Solids.Count)].Name;
            Vector shift = new((random.NextDouble() * 10) - 5, (random.NextDouble() * 10) - 5);
            foreach (SpacingTask whole in (SpacingTask[])[before, Shifted(before, item, shift)])
            {
                SpacingTable table = SpacingTable.Of(whole);
                foreach (NetPair pair in known.Pairs())
                {
                    SpacingTask excerpt = excerpts.Of(pair.First, pair.Second);
                    Assert.True(excerpt.Solids.Count < before.Solids.Count);
                    SpacingTask changed = ReferenceEquals(whole, before) ? excerpt : Shifted(excerpt, item, shift);
                    Assert.Equal([.. table.Rows.Where(r => r.Nets == pair).Select(Told)], SpacingRows.Of(changed, new SpacingMeter(changed, known), pair).Select(Told));
                }
            }
        },
        iter: 60);

    [Fact]
    public void For_CrowdedStrips_TellsOfEachMoveWhatTheWholeTableWouldSay()
    {
        int moves = 0, costs = 0;
        Seeds.Sample(
            seed =>
            {
                SpacingTask before = Task(new Random(seed));
                SpacingTable table = SpacingTable.Of(before);
                HashSet<string> missed = [.. Missed(table)];
                foreach (Remedy move in Remedies.For(before, table, out _).Where(r => r.Kind == RemedyKind.Move))
                {
                    string[] words = move.Text.Split(' ');
                    string item = string.Join(' ', words[1..words.IndexOf("by")]);

                    // The words round the direction to a degree: the shift is along the line between the two places of the row, as the remedy's own is.
                    bool ofFirst = string.Equals(item, move.Row.FirstItem, StringComparison.Ordinal);
                    (SpacePoint own, SpacePoint other) = ofFirst ? (move.Row.OnFirst, move.Row.OnSecond) : (move.Row.OnSecond, move.Row.OnFirst);
                    Vector plan = words[0] is "move" ? (own.Plan - other.Plan).Unit() * move.AmountMm : default;
                    double up = words[0] switch { "raise" => move.AmountMm, "lower" => -move.AmountMm, _ => 0 };
                    SpacingTable after = SpacingTable.Of(Shifted(before, item, plan, up));
                    SpacingRow? row = after.Rows.SingleOrDefault(r => r.Nets == move.Row.Nets && r.Kind == move.Row.Kind);
                    Assert.Equal(row?.WorstMm ?? double.PositiveInfinity, move.WorstAfterMm, 1e-9);
                    Assert.True(row is null or { Verdict: SpacingVerdict.Meets });
                    Assert.Equal(Missed(after).Where(m => !missed.Contains(m)), move.NewMisses, StringComparer.Ordinal);
                    Interlocked.Increment(ref moves);
                    Interlocked.Add(ref costs, move.NewMisses.Count);
                }
            },
            iter: 40);
        Assert.True(moves > 40 && costs > 10, FormattableString.Invariant($"{moves} moves with {costs} new misses say little."));
    }

    [Fact]
    public void Of_LinkLongerByAnotherNetsTolerance_IsThatLongInTheExcerpt()
    {
        // A recess narrower than X and the greatest tolerance of all on the surface is bridged, also where the loosest part is of neither net.
        InsulatingSurface floor = Floor with { Ribs = [new("floor", [new(5.8, -20), new(5.8, 20)], 3, 1, RibJoint.Moulded)] };
        Solid loose = Strip("c", 40, 0, 4) with { Tolerance = new(0, 0.7, 0, 0) };
        SpacingTask task = Of([floor], Strip("a", 0, 0, 4), Strip("b", 9, 0, 4), loose);
        SpacingTask excerpt = new SpacingExcerpts(task).Of("a", "b");
        double whole = Creepage(task), alone = Creepage(Of([floor], Strip("a", 0, 0, 4), Strip("b", 9, 0, 4)));
        Assert.NotEqual(whole, alone, 0.01);
        Assert.Equal(whole, Creepage(excerpt));
    }

    [Fact]
    public void Of_WiperOverCopperOfAnotherNet_IsNoLongerOverCopperInTheExcerpt()
    {
        // The strip's arm hangs over the inner ring of copper, of a net that is not asked for: it counts as over copper all the same.
        Solid inner = Copper("inner", 10), outer = Ring("outer", 20, 30);
        Solid nose = new("mist strip", "mist", SolidKind.Live, false, 0, 1, SurfacePathsTests.Box(24, -1, 26, 1)) { IsNose = true };
        Solid arm = new("mist strip", "mist", SolidKind.Live, false, 1, 1.2, SurfacePathsTests.Box(5, -1, 8, 1));
        SpacingTask task = Of([Carrier], inner, outer, nose, arm);
        SpacingRow[] rows = [.. SpacingTable.Of(task).Rows.Where(r => r.Nets is { First: "mist", Second: "outer" })];
        SpacingTask excerpt = new SpacingExcerpts(task).Of("mist", "outer");
        Assert.Equal(rows.Select(Told), SpacingTable.Of(excerpt).Rows.Select(Told));
        Assert.NotEqual(rows.Select(Told), SpacingTable.Of(Of([Carrier], outer, nose, arm)).Rows.Select(Told));
    }

    private static readonly InsulatingSurface Floor = new("floor", MaterialGroup.IIIa, -7, null, false) { FaceMm = 0.05 };

    private static readonly InsulatingSurface Carrier = new("carrier", MaterialGroup.IIIa, 0, new Outline(Contour.Circle(Point.Origin, 34)), Turns: true) { BodyMm = 3, FaceMm = 0.05, RunOutMm = 0.05 };

    private static double Creepage(SpacingTask task) =>
        SpacingTable.Of(task).Rows.Single(r => r is { Kind: SpacingKind.Creepage, Nets: { First: "a", Second: "b" } }).WorstMm;

    private static (NetPair, SpacingKind, string, string, SpacingVerdict, double, double) Told(SpacingRow row) =>
        (row.Nets, row.Kind, row.FirstItem, row.SecondItem, row.Verdict, Math.Round(row.WorstMm, 9), Math.Round(row.NominalMm, 9));

    private static IEnumerable<string> Missed(SpacingTable table) => table.Rows
        .Where(r => r.Verdict == SpacingVerdict.Misses)
        .Select(r => $"{r.Nets.First} – {r.Nets.Second}, {(r.Kind == SpacingKind.Clearance ? "clearance" : "creepage")}");

    /// <summary>Strips that stand too near to each other round copper that turns; now and then floating metal, a land that floats at times, a rib, a slot.</summary>
    private static SpacingTask Task(Random random)
    {
        List<Solid> solids = [Copper("L", 10 + random.Next(6)), Strip("E", 60, -30, 20) with { Kind = SolidKind.Earthed }];
        for (int i = 0; i < 5; i++)
        {
            Placement turn = Placement.Turn(random.NextDouble() * 3);
            string net = FormattableString.Invariant($"n{i}"), name = net + " strip";
            double from = 18 + (random.NextDouble() * 12), z = random.NextDouble() * 3;
            SolidTolerance tolerance = new(0.02, random.Next(3) * 0.1, 0, 0);
            Solid Part(double fromX, double toX, double low, double high) => new(name, net, SolidKind.Live, false, low, high, SurfacePathsTests.Box(fromX, -2, toX, 2).Placed(turn)) { Tolerance = tolerance };
            solids.Add(Part(from - 8, from, 0, 1 + z) with { IsNose = i % 2 == 0 });
            solids.Add(Part(from - 1, from + 12, z, z + 0.5));
            solids.Add(Part(from + 11, from + 15, -7, z + 0.5) with { OnSurface = "floor" });
        }

        if (random.Next(2) == 0)
        {
            solids.Add(Strip("loose", 20, 12, 6) with { Kind = SolidKind.Floating });
            solids.Insert(0, Strip("loose too", 34, 4, 3) with { Kind = SolidKind.Floating });
        }

        if (random.Next(2) == 0)
        {
            solids.Add(Ring("n1", 26, 28) with { Name = "land", FloatsAtTimes = true });
        }

        InsulatingSurface floor = random.Next(4) switch
        {
            0 => Floor with { Ribs = [new("floor", [new(30, 14), new(44, 18)], 3, 1.2, RibJoint.Moulded)] },
            1 => Floor with { Slots = [new("floor", [new(30, 14), new(44, 18)], 2, null, SlotProfile.Parallel)] },
            _ => Floor,
        };
        return Of([Carrier, floor], [.. solids]);
    }

    private static SpacingTask Of(InsulatingSurface[] surfaces, params Solid[] solids) => new(solids, surfaces, SpacingTableTests.Demands(), Turning.Clockwise);

    private static Solid Copper(string net, double radius) => new("wheel " + net, net, SolidKind.Live, true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, radius)))
    {
        IsWheelCopper = true,
        OnSurface = "carrier",
        Tolerance = new(0.05, 0, 0.05, 0.05),
    };

    private static Solid Ring(string net, double inner, double outer) => Copper(net, outer) with { Outline = new Outline(Contour.Circle(Point.Origin, outer), [Contour.Circle(Point.Origin, inner)]) };

    private static Solid Strip(string net, double fromX, double fromY, double lengthMm) =>
        new(net + " strip", net, SolidKind.Live, false, -7, -6.5, SurfacePathsTests.Box(fromX, fromY, fromX + 4, fromY + lengthMm)) { OnSurface = "floor" };

    private static SpacingTask Shifted(SpacingTask task, string item, Vector plan, double upMm = 0) => task with
    {
        Solids =
        [
            .. task.Solids.Select(s => string.Equals(s.Name, item, StringComparison.Ordinal)
                ? s with { Outline = s.Outline.Placed(Placement.Translation(plan)), FromZMm = s.FromZMm + upMm, ToZMm = s.ToZMm + upMm }
                : s),
        ],
    };
}
