using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class StripFormTests
{
    private static readonly StripBrief Wiper = StripBriefs.Wiper("feed strip", new ServesFeed());

    private static string Refusal(StripBrief strip) =>
        string.Join('\n', Assert.Throws<DesignRefusedException>(() => StripForm.Of(StripBriefs.With(strip), 0)).Reasons.Select(r => r.Message));

    private static StripBrief With(int piece, StripPiece other) =>
        Wiper with { Shape = [.. Wiper.Shape.Select((p, i) => i == piece ? other : p)] };

    private static void Says(string part, string message) => Assert.Contains(part, message, StringComparison.Ordinal);

    // By hand: seat −7, middle −6.75; arm's fold and rivet by plane trigonometry.
    [Fact]
    public void Of_WorkedDesign_SolvesTheRiser()
    {
        StripForm form = StripForm.Of(StripBriefs.With(Wiper), 0);
        double slope = StripBriefs.Deg(3.6);
        double alongArm = 24 - 1.25;
        // Free nose centre 0 mm high (1.5 below the copper, 1.5 above its lowest point); from there up the rivet to the arm's middle,
        // up the arm to its fold, and back round the fold's quarter and 3.6° to the top of the riser.
        double armEnd = (Math.Cos(slope) * (0.25 + 2.2 - 1.5)) + (Math.Sin(slope) * alongArm);
        double riserTop = armEnd - (1.25 * Math.Cos(slope));
        Assert.Equal(riserTop - (-6.75 + 1.25), form.AutoLengthMm!.Value, 1e-9);
        Assert.Equal(1.5, form.DeflectionMm!.Value, 1e-12);
        Assert.Equal(7.3 + 14 + form.Folds.Sum(f => f.AllowanceMm) + form.AutoLengthMm.Value + 24, form.LengthMm, 1e-12);
        Assert.Equal([2, 1], form.Folds.Select(f => f.Order));
        Assert.All(form.Folds, f => Assert.True(f.OverbendRad > 0));
    }

    [Fact]
    public void Of_Blank_IsOneClosedContourWithTabFoldLinesAndMarks()
    {
        StripForm form = StripForm.Of(StripBriefs.With(Wiper), 0);
        StripBlank blank = form.Blank;
        Assert.Equal(0, blank.Outline.Bounds.MinX, 1e-12);
        Assert.Equal(form.LengthMm, blank.Outline.Bounds.MaxX, 1e-12);
        Assert.Equal(6, blank.Outline.Bounds.Height, 1e-12);
        Assert.Equal([6.0, 5.0], blank.FoldLines.Select(l => l.Length));
        Assert.Equal(form.Folds.Select(f => f.AtMm), blank.FoldLines.Select(l => l.Start.X));
        BlankMark rivet = blank.Marks.Single(m => m.Means == BlankMarkKind.Rivet);
        Assert.Equal(form.LengthMm - 1.25, rivet.At.X, 1e-12);

        // The 4.8x0.5 row has a dimple only: nothing to cut, a mark to press.
        Assert.Contains(blank.Marks, m => m.Means == BlankMarkKind.Dimple);

        // Area by trapezia: tab less its two corners, 14 × 6, fold 6, riser and fold 5, arm 5 to 3; the two fillets of 0.15 mm at the
        // shoulders behind the tab add r² (1 − π/4) each.
        double area = (4.7 * 7.3) - (1.15 * 1.15) + (14 * 6) + (6 * form.Folds[0].AllowanceMm) + (5 * (form.AutoLengthMm!.Value + form.Folds[1].AllowanceMm)) + (4 * 24);
        double fillets = 0.15 * 0.15 * (1 - (Math.PI / 4));
        Assert.Equal(area + (4 * fillets), blank.Outline.AreaMm2, 1e-9);
    }

    // Both edges may be cut 0.05 mm too far in: of 0.08 mm nothing may be left, of 0.11 mm something is.
    [Fact]
    public void Of_StripNarrowerThanItsCutMayStray_IsRefused()
    {
        Says("piece 6 of strip \"feed strip\" is 0.08 mm wide where it is narrowest, and each of its edges may be cut 0.05 mm too far in", Refusal(With(5, new StripStraight(24, 0.08, 3))));
        Says("it must be wider than 0.1 mm", Refusal(With(5, new StripStraight(24, 3, 0.1))));
        Assert.NotNull(StripForm.Of(StripBriefs.With(With(5, new StripStraight(24, 3, 0.11))), 0));
    }

    // IEC 61210: 6.3x0.8 blade at least 7.8, to a shoulder 8.9, hole 1.8 at 4.5 mm from the tip.
    [Fact]
    public void Of_WideTab_HasItsHoleAndLength()
    {
        StripBrief strip = new("bus", new ServesNet("N", new(45, 0)), "C26000-H02", 0.8, [new StripTab("6.3x0.8"), new StripStraight(10, 6.3, null)]) { ApproachRad = 0, SeatedOn = "floor" };
        StripForm form = StripForm.Of(StripBriefs.With(strip), 0);
        Assert.Equal(17.8, form.LengthMm, 1e-12);
        Contour hole = Assert.Single(form.Blank.Outline.Holes);
        Assert.Equal(4.5, hole.Centroid.X, 1e-12);
        Assert.Equal(1.8, hole.Bounds.Width, 1e-12);
        StripForm shouldered = StripForm.Of(StripBriefs.With(strip with { Shape = [new StripTab("6.3x0.8"), new StripStraight(10, 8, null)] }), 0);
        Assert.Equal(18.9, shouldered.LengthMm, 1e-12);
    }

    [Fact]
    public void Of_TabFromOtherStock_IsRefusedWithWhatFits()
    {
        string message = Refusal(With(0, new StripTab("6.3x0.8")));
        Says("0.77 to 0.84 mm", message);
        Says("\"2.8x0.5\" or \"4.8x0.5\"", message);
        Says("not listed", Refusal(With(0, new StripTab("9.5x1.2"))));
    }

    // C51000-H04: least R/t 1.0 the good way, 1.5 the bad way (ASTM B103 strip data).
    [Theory]
    [InlineData(StripGrain.Along, 0.5, true)]
    [InlineData(StripGrain.Along, 0.45, false)]
    [InlineData(StripGrain.Across, 0.75, true)]
    [InlineData(StripGrain.Across, 0.7, false)]
    [InlineData(null, 0.7, false)]
    [InlineData(null, 0.75, true)]
    public void Of_Radius_IsHeldToTheAlloysLeast(StripGrain? grain, double radius, bool allowed)
    {
        StripBrief strip = Wiper with
        {
            Grain = grain,
            Shape = [.. Wiper.Shape.Select(p => p is StripBend b ? b with { RadiusMm = radius } : p)],
        };
        if (allowed)
        {
            Assert.NotNull(StripForm.Of(StripBriefs.With(strip), 0));
        }
        else
        {
            Says(grain == StripGrain.Along ? "= 0.5 mm" : "= 0.75 mm", Refusal(strip));
        }
    }

    [Fact]
    public void Of_HoleNearAFold_IsRefusedByTwoThicknessesAndTheRadius()
    {
        // The first fold starts at 21.3 mm: a hole of 2.2 mm may come up to 21.3 − 2.0 − 1.1.
        StripBrief near = Wiper with { Holes = [new(18.3, 0, 2.2)] };
        Says("2 t + R = 2 mm", Refusal(near));
        Says("0.1 mm further", Refusal(near));
        StripForm form = StripForm.Of(StripBriefs.With(Wiper with { Holes = [new(18.2, 0, 2.2)] }), 0);
        Assert.Equal(18.2, form.Blank.Outline.Holes[^1].Centroid.X, 1e-12);
        Says("breaks through the edge", Refusal(Wiper with { Holes = [new(15, 2.2, 2.2)] }));
        Says("long", Refusal(Wiper with { Holes = [new(80, 0, 2.2)] }));
        Says("another hole", Refusal(Wiper with { Holes = [new(14, 0, 2.2), new(15, 0, 2.2)] }));
    }

    [Fact]
    public void Of_BlankThatRunsIntoItself_IsRefused()
    {
        StripBrief loop = new("loop", new ServesNet("N", new(60, 0)), "C51000-H04", 0.5,
        [
            new StripStraight(20, 4, null),
            new StripSweep(StripBriefs.Deg(180), 5, null),
            new StripStraight(10, 4, null),
            new StripSweep(StripBriefs.Deg(90), 5, null),
            new StripStraight(10, 4, null),
        ])
        {
            ApproachRad = 0,
            SeatedOn = "floor",
        };
        Says("overlaps itself", Refusal(loop));
        Says("over 2 mm", Refusal(loop with { Shape = [new StripStraight(20, 4, null), new StripSweep(1, 2, null)] }));
    }

    [Fact]
    public void Of_FreeContactAboveTheCopper_IsRefusedWithTheHeight()
    {
        StripBrief high = StripCases.All["no auto"];
        Says("above the copper face", Refusal(high with { Shape = [.. high.Shape.Select((p, i) => i == 2 ? new StripStraight(10, 5, null) : p)] }));
    }

    [Fact]
    public void Of_AutoThatCannotBeSolved_IsRefusedWithTheReason()
    {
        StripBrief levelAuto = Wiper with
        {
            Shape =
            [
                new StripStraight(14, 6, null),
                new StripStraight(null, 6, null),
                new StripBend(StripBriefs.Deg(90), 1, false),
                new StripStraight(7, 5, null),
                new StripBend(StripBriefs.Deg(-93.6), 1, false),
                new StripStraight(24, 5, 3),
                new StripRivet(2.2, 1.5, 2.5),
            ],
            Clamp = new(2, 14),
        };
        Says("level", Refusal(levelAuto));
        Says("would need a length of -", Refusal(Wiper with { DeflectionMm = 12 }));
        Says("only one can be solved", Refusal(With(5, new StripStraight(null, 5, 3))));
        Says("no deflection", Refusal(Wiper with { DeflectionMm = null }));
        Says("but its lengths give", Refusal(With(3, new StripStraight(6.7, 5, null))));
    }

    [Fact]
    public void Of_MissingKeys_AreAllToldAtOnce()
    {
        string message = Refusal(Wiper with { SeatedOn = null, Clamp = null, Material = "C51000-H4" });
        Says("seated_on", message);
        Says("clamp", message);
        Says("C51000-H04", message);
        Says("\"floor\"", Refusal(Wiper with { SeatedOn = "flor" }));
        Says("its fold (piece 3) takes 21.3", Refusal(Wiper with { Clamp = new(8, 22) }));
        Says("no contact", Refusal(Wiper with { Shape = [.. Wiper.Shape.SkipLast(1)] }));
    }

    // Named for what was wrong: a direction that was a property of its own type printed itself without end.
    [Fact]
    public void PrintedPlaceOfAStripEnds() => Assert.Contains("X = 1", new SpaceVector(1, 2, 3).ToString(), StringComparison.Ordinal);
}
