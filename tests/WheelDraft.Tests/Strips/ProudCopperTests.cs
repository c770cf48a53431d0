using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>Wipers on copper that stands proud of its carrier: while an output is open its nose rides lower, and the arm with it.</summary>
/// <remarks>Arms were once judged as they lie on the copper only.</remarks>
public sealed class ProudCopperTests
{
    private const double RoundingMm = 1e-9;

    private static readonly string[] Opens = ["mist strip"];

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    public void Solids_WhileItsOutputIsOpen_LieLowerByTheSpringsOwnShape(double stepMm)
    {
        // Oracle: linear springs. Pressed by d − s the elastic line is (d − s)/d of that pressed by d: every place lies between its free and its
        // pressed height in that share.
        PlacedStrip strip = Placed(stepMm);
        Solid nose = strip.LoweredSolids.Single(s => s.IsNose);
        Assert.Equal(-stepMm, nose.FromZMm, RoundingMm);
        Assert.All(strip.LoweredSolids, s => Assert.True(s.IsLowered));
        Assert.All(strip.Solids, s => Assert.False(s.IsLowered));
        double share = stepMm / strip.Spring!.DeflectionMm;
        double half = strip.Form.Strip.ThicknessMm / 2;
        foreach (WorkingStation s in strip.Working.Where(s => strip.Form.Pieces[s.Piece].Kind == FormedKind.Straight && Math.Abs(s.Frame.Along.Z) < 0.2))
        {
            double under = s.Frame.Origin.Z - half - (s.LiftMm * share);
            Assert.Contains(strip.LoweredSolids, b => Math.Abs(b.FromZMm - under) < 0.06 && Distances.Between(s.Frame.Origin.Plan, b.Outline).DistanceMm < 0.1);
        }
    }

    [Fact]
    public void Arm_OverProudCopper_IsJudgedWhereItIsLowest()
    {
        // The arm's least height over the copper, as drawn: a step of half a millimetre takes from it what the spring gives way there.
        double flush = Least(Placed(0).AllSolids), proud = Least(Placed(0.5).AllSolids);
        Assert.InRange(flush - proud, 0.3, 0.5);
        static double Least(IEnumerable<Solid> solids) => solids.Where(s => !s.IsNose && s.Outline.Bounds.Centre.RadiusMm < 22).Min(s => s.FromZMm);
    }

    [Fact]
    public void Spacing_OfAnArmOverProudCopper_CountsTheLesserDistance()
    {
        // The strips' own solids, both positions, against a disc of copper: nothing else stands between, so that the least height decides.
        StripSet set = StripSet.Of(Brief(0.5, StripBriefs.Wiper("mist strip", new ServesOutput("mist", IsReturn: false), 0)), StripBriefs.Rings);
        Solid copper = new("wheel", "L", SolidKind.Live, Turns: true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, 26), [Contour.Circle(Point.Origin, 3)])) { IsWheelCopper = true };
        SpacingDemands demands = new(new(230, 50, 0.01, OvervoltageCategory.II), new(3, 300, true), Briefs.Plain().Spacing, (_, _) => 230);
        SpacingTable table = SpacingTable.Of(new SpacingTask([copper, .. set.Solids], [], demands, Turning.Clockwise));
        SpacingRow row = table.Rows.Single(r => r.Kind == SpacingKind.Clearance);
        PlacedStrip strip = set.Strips[0];
        Assert.Equal(strip.LoweredSolids.Where(s => !s.IsNose && Distances.Radii(s.Outline, Point.Origin).LeastMm < 26).Min(s => s.FromZMm), row.NominalMm, 1e-6);
        Assert.True(row.NominalMm < strip.Solids.Where(s => !s.IsNose && Distances.Radii(s.Outline, Point.Origin).LeastMm < 26).Min(s => s.FromZMm) - 0.2);
    }

    [Fact]
    public void Solids_OfWipersThatNeverLeaveTheCopper_LieInOnePositionOnly()
    {
        Brief brief = Brief(0.5, StripBriefs.Wiper("feed strip", new ServesFeed(), 45, 26), StripBriefs.Wiper("fan strip", new ServesOutput("fan", IsReturn: false)), StripBriefs.Wiper("mist strip", new ServesOutput("mist", IsReturn: false)));
        Assert.Equal(Opens, StripSet.Of(brief, StripBriefs.Rings).Strips.Where(s => s.LoweredSolids.Count > 0).Select(s => s.Form.Strip.Name), StringComparer.Ordinal);
        Assert.Empty(Placed(0).LoweredSolids);
    }

    [Fact]
    public void Solids_StepOfMoreThanItsDeflection_HangFree()
    {
        PlacedStrip strip = Placed(1.8);
        Assert.Equal(-1.5, strip.LoweredSolids.Single(s => s.IsNose).FromZMm, RoundingMm);
        Assert.Equal(strip.FreeContact!.Value.Z, strip.LoweredSolids.Single(s => s.IsNose).FromZMm, RoundingMm);
    }

    [Fact]
    public void Collision_OfALoweredArmOnly_IsFound()
    {
        // A screw head that ends 0.1 mm under the lowest place of the arm as it lies on the copper.
        PlacedStrip strip = Placed(0.5, approachDeg: 0);
        Solid arm = strip.Solids.Where(s => s.FromZMm > 1 && s.ToZMm < 5 && s.Outline.Bounds.Centre.DistanceTo(strip.Ring!.Contact) is > 4 and < 10).MinBy(s => s.FromZMm)!;
        Solid head = new("fixing", "L", SolidKind.Live, Turns: true, -3, arm.FromZMm - 0.1 - Worn(strip), new Outline(Contour.Circle(arm.Outline.Bounds.Centre, 1)));
        Assert.Single(StripCollisions.Of([strip], [head], Turning.Clockwise, _ => null));
        Assert.Empty(StripCollisions.Of([strip with { LoweredSolids = [] }], [head], Turning.Clockwise, _ => null));
    }

    [Theory]
    [InlineData("0.5 mm", false)]
    [InlineData("0.501 mm", true)]
    [InlineData("0.02 in", true)]
    public void Read_StepOfMoreThanTheCoppersThickness_IsWrongAtItsPlace(string step, bool isWrong)
    {
        string text = File.ReadAllText(Demos.PathOf("propagation-bench")).Replace("step = \"0 mm\"", $"step = \"{step}\"", StringComparison.Ordinal);
        IReadOnlyList<Diagnostic> told = ParameterReader.Read(Encoding.UTF8.GetBytes(text)).Diagnostics;
        Assert.Equal(isWrong ? 1 : 0, told.Count);
        int line = text.Split('\n').ToList().FindIndex(l => l.StartsWith("step", StringComparison.Ordinal)) + 1;
        Assert.All(told, d => Assert.Equal((line, 8), (d.Place.Line, d.Place.Column)));
        Assert.All(told, d => Assert.Contains("more than the copper is thick (0.5 mm)", d.ToString("f"), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.3)]
    public void OverStep_WornNose_MeetsTheEdgeFurtherOut(double stepMm)
    {
        // Oracle: the worn section by its definition, a circle of radius R whose lowest part is worn off; riding on the carrier its lowest line is
        // s under the copper's face, and where it passes the face is found by walking down the circle. Wear counts from the new contact on.
        const double nose = 1.5, half = 0.2, worn = 0.5;
        ContactPatch patch = (MeasuredFold(nose, half) with { WornHalfLengthMm = worn }).OverStep(stepMm);
        double lost = Math.Sqrt((nose * nose) - (half * half)) - Math.Sqrt((nose * nose) - (worn * worn));
        double walked = 0;
        for (double angle = 0; angle < Math.PI / 2 && nose - (nose * Math.Cos(angle)) - lost < stepMm; angle += 1e-6)
        {
            walked = nose * Math.Sin(angle);
        }

        Assert.Equal(walked, patch.WornHalfLengthMm, 1e-5);
        Assert.Equal(Math.Sqrt((2 * nose * stepMm) - (stepMm * stepMm)), patch.HalfLengthMm, RoundingMm);
    }

    private static ContactPatch MeasuredFold(double noseMm, double halfMm) =>
        new() { IsDisc = false, HalfLengthMm = halfMm, HalfWidthMm = 1, WornHalfLengthMm = halfMm, AngleRad = 0, NoseRadiusMm = noseMm };

    private static double Worn(PlacedStrip strip) => strip.Contact!.WearDepthMm ?? 0;

    private static PlacedStrip Placed(double stepMm, double approachDeg = 90) => StripSet.Of(Brief(stepMm, StripBriefs.Wiper("mist strip", new ServesOutput("mist", IsReturn: false), approachDeg)), StripBriefs.Rings).Strips[0];

    private static Brief Brief(double stepMm, params IReadOnlyList<StripBrief> strips)
    {
        Brief brief = StripBriefs.With(strips);
        OutputBrief mist = brief.Outputs[2] with { On = new([new(new StartAt(TurnAmount.Seconds(10)), new LastsFor(TurnAmount.Seconds(20)))]) };
        return brief with { Carrier = brief.Carrier with { StepMm = stepMm }, Outputs = [brief.Outputs[0], brief.Outputs[1], mist] };
    }
}
