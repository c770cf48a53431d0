using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Levers that conduct: bodies that hold every place of theirs, and what is then judged near them.</summary>
public sealed class LeverSolidsTests
{
    private const double ArmMm = 3;

    /// <summary>Brute force: the lever is put at a hundred lifts, and points of its arm, roller, face and tail are looked for in its bodies.</summary>
    [Fact]
    public void Of_RandomLevers_HoldEveryPlaceOfTheirs()
    {
        int made = 0;
        Gen.Select(Gen.OneOf(CamCases.Rollers, CamCases.Flats), Gen.Double[1, 9], Gen.Double[0, 12], Gen.Double[1, 1.8]).Sample(
            (task, width, tail, more) =>
            {
                if (Layout(task, (width, tail), more) is not { } cam)
                {
                    return;
                }

                made++;
                Solid[] solids = [.. LeverSolids.Of(CircuitBrief, cam)];
                double most = LeverSolids.MostLift(cam);
                Assert.Equal(cam.TopLift * more, most, 1e-12);
                for (int k = 0; k <= 100; k++)
                {
                    foreach (Point p in PointsOf(cam, most * k / 100))
                    {
                        Assert.True(solids.Any(s => s.Outline.Locate(p, 1e-6) != Whereabouts.Outside), FormattableString.Invariant($"{p} of {cam.Brief.Lever} at share {k} lies outside"));
                    }
                }
            },
            iter: CamCases.Count);
        Assert.True(made > CamCases.Count / 3, FormattableString.Invariant($"only {made} levers were made"));
    }

    /// <summary>And no more than that: every point of their edges is a point of the lever somewhere on its way, but for a corner of w²/2L behind the end of a flat face.</summary>
    [Fact]
    public void Of_RandomLevers_HoldNothingElse()
    {
        Gen.Select(Gen.OneOf(CamCases.Rollers, CamCases.Flats), Gen.Double[1, 9], Gen.Double[1, 1.8]).Sample(
            (task, width, more) =>
            {
                if (Layout(task, (width, 12.0), more) is not { } cam)
                {
                    return;
                }

                double most = LeverSolids.MostLift(cam);
                (Point From, Point To)[][] places = [.. Enumerable.Range(0, 400).Select(k => Bones(cam, most * k / 399).ToArray())];
                double roller = cam.Brief.RollerRadiusMm ?? 0, allowed = cam.Brief.RollerRadiusMm is null ? width : width / 2;
                foreach (Point p in LeverSolids.Of(CircuitBrief, cam).SelectMany(s => s.Outline.Pieces).SelectMany(q => new[] { q.PointAt(0.3), q.PointAt(0.7) }))
                {
                    double least = places.Min(bones => bones.Min(b => ToSegment(p, b)));
                    double rollers = cam.Brief.RollerRadiusMm is null ? double.PositiveInfinity : Enumerable.Range(0, 400).Min(k => cam.Shape.RollerAt(most * k / 399)!.Value.DistanceTo(p));
                    double beside = cam.Brief.RollerRadiusMm is null && cam.Brief.Lever is SwingingLever swing ? (width * width / (2 * swing.ArmMm)) + (width * 0.5) : 0.2;
                    Assert.True(least <= allowed + beside || rollers <= roller + 0.1, FormattableString.Invariant($"{p} of {cam.Brief.Lever} is {least} mm from where the lever ever is"));
                }
            },
            iter: CamCases.Count / 2);
    }

    private static Brief CircuitBrief => new CircuitBuilder().Input("low", "L", "run").Request().Brief;

    private static CamLayout? Layout((CamTask Task, double BaseMm) of, (double WidthMm, double TailMm) body, double more)
    {
        if (CamShape.Of(of.Task, of.BaseMm) is not { } shape || shape.MostPressure().PressureRad > 60 * Math.PI / 180 || shape.IsUndercut)
        {
            return null;
        }

        CamBrief brief = CamBriefs.RiseAndReturn((30, 110, 160, 250), 5) with
        {
            Lever = of.Task.Lever,
            RollerRadiusMm = of.Task.RollerMm,
            Body = new("E", body.WidthMm, 5, 8, body.TailMm),
            Stop = of.Task.Profile.TopLift * more,
        };
        return new CamLayout
        {
            Brief = brief,
            Index = 0,
            Shape = shape,
            Outline = new Outline(Contour.Circle(Point.Origin, of.BaseMm)),
            BaseRadiusMm = of.BaseMm,
            OffMm = 0,
            MostPressureRad = 0,
            MostPressureAtRad = 0,
            LeastRadiusMm = 1,
            LeastRadiusAtRad = 0,
            Falls = [],
            Torque = new(0, 0, 0, 0) { At = _ => null },
            Findings = [],
        };
    }

    // Centre lines of arm or bar and tail, or the face itself, at a lift.
    private static IEnumerable<(Point From, Point To)> Bones(CamLayout cam, double lift)
    {
        double tail = cam.Brief.Body!.TailMm;
        Point end = cam.Shape.RollerAt(lift) ?? cam.Shape.FaceAt(lift)!.Value.Foot;
        switch (cam.Brief.Lever)
        {
            case SwingingLever swing:
                Vector way = (end - swing.Pivot).Unit();
                yield return (swing.Pivot, swing.Pivot + (way * swing.ArmMm));
                yield return (swing.Pivot, swing.Pivot - (way * Math.Max(tail, 1e-3)));
                break;
            case SlidingLever slide:
                Vector along = Vector.Polar(1, slide.DirectionRad);
                yield return (end, end + (along * Math.Max(tail, cam.Brief.RollerRadiusMm is null ? cam.Brief.Body.WidthMm : 1e-3)));
                if (cam.Brief.RollerRadiusMm is null)
                {
                    double beside = cam.Shape.MostAsideMm() + LeverSolids.FaceBesideMm;
                    yield return (end - (along.Left * beside), end + (along.Left * beside));
                }

                break;
        }
    }

    // Points of the metal: half the width to each side of centre lines, a face's body on the side away from the cam, a roller's rim.
    private static IEnumerable<Point> PointsOf(CamLayout cam, double lift)
    {
        double half = cam.Brief.Body!.WidthMm / 2;
        bool isFlatArm = cam.Brief is { RollerRadiusMm: null, Lever: SwingingLever };
        foreach ((Point from, Point to) in Bones(cam, lift).Take(isFlatArm ? 1 : 2))
        {
            Vector left = (to - from).Unit().Left;
            Vector outward = cam.Shape.FaceAt(lift) is { } face ? Vector.Polar(1, face.NormalRad) : default;
            foreach (double share in (double[])[0, 0.25, 0.5, 0.75, 1])
            {
                Point at = from + ((to - from) * share);
                if (outward != default && Math.Abs(left.Dot(outward)) > 0.9)
                {
                    yield return at;
                    yield return at + (outward * (2 * half));
                    continue;
                }

                if (outward != default && share == 0)
                {
                    continue;
                }

                yield return at + (left * half);
                yield return at - (left * half);
            }
        }

        if (cam.Shape.RollerAt(lift) is Point roller)
        {
            foreach (int k in Enumerable.Range(0, 12))
            {
                yield return roller + Vector.Polar(cam.Brief.RollerRadiusMm!.Value, k * Math.PI / 6);
            }
        }
    }

    private static double ToSegment(Point p, (Point From, Point To) bone)
    {
        Vector way = bone.To - bone.From;
        double share = Math.Clamp((p - bone.From).Dot(way) / way.Dot(way), 0, 1);
        return p.DistanceTo(bone.From + (way * share));
    }

    private static ChangedDemo WithLever(string keys) =>
        new ChangedDemo("fry-feeder").With("lifts = \"anticlockwise\" }", $"lifts = \"anticlockwise\", {keys} }}");

    // No wider than its roller: a wider arm is rounded by half its width beyond the roller's axis.
    private const string EarthedBrass = "material = \"brass\", net = \"E\", width = \"3 mm\"";

    /// <summary>A live part stands beside where the hooked-up arm comes to, far from where it rests: the gap is that of the hooked-up arm, by the formula of a point and a line.</summary>
    [Fact]
    public void Spacing_LiveBesideTheHookedUpLever_IsMeasuredThere()
    {
        Design plain = Demos.Of("fry-feeder");
        CamLayout cam = plain.Cams[0];
        SwingingLever swing = (SwingingLever)cam.Brief.Lever;
        Vector arm = cam.Shape.RollerAt(cam.Brief.Latch!.Value)!.Value - swing.Pivot;

        // 7 mm beyond the arm's edge at its latch, in the sense in which it is lifted, in the middle of the arm.
        Point at = swing.Pivot + (arm / 2) + (arm.Unit().Left * ((ArmMm / 2) + 7 + 1));
        string part = FormattableString.Invariant($"\n[[part]]\nname = \"clip\"\nkind = \"live\"\nnet = \"clip\"\ncircle = {{ at = [\"{at.X} mm\", \"{at.Y} mm\"], diameter = \"2 mm\" }}\nz = [\"9 mm\", \"12 mm\"]\n");
        Design design = WithLever(EarthedBrass).And(part).Design();
        SpacingRow row = Assert.Single(design.Spacing.Rows, r => r.Kind == SpacingKind.Clearance && Items(r, "clip", "lever feeler cam"));
        Assert.Equal(7, row.NominalMm, 1e-6);
    }

    private static bool Items(SpacingRow row, string a, string b) =>
        (string.Equals(row.FirstItem, a, StringComparison.Ordinal) && string.Equals(row.SecondItem, b, StringComparison.Ordinal)) || (string.Equals(row.FirstItem, b, StringComparison.Ordinal) && string.Equals(row.SecondItem, a, StringComparison.Ordinal));

    [Fact]
    public void Spacing_MetalLeverOnACamOfPlastic_PathOverTheCamIsJudged()
    {
        Design design = WithLever(EarthedBrass).With("shaft = \"insulating\"", "shaft = \"live\"\nshaft_net = \"L\"\nshaft_diameter = \"6 mm\"").Design();
        SpacingRow row = Assert.Single(design.Spacing.Rows, r => r.Kind == SpacingKind.Creepage && Items(r, "shaft", "lever feeler cam"));
        Assert.Equal(design.Cams[0].BaseRadiusMm - 3, row.NominalMm, 0.01);
    }

    [Fact]
    public void Solids_MetalShaftOfACam_ReachesThroughIt()
    {
        Design design = new ChangedDemo("fry-feeder").With("shaft = \"insulating\"", "shaft = \"live\"\nshaft_net = \"L\"\nshaft_diameter = \"6 mm\"").Design();
        Assert.True(design.Solids.Single(s => string.Equals(s.Name, "shaft", StringComparison.Ordinal)).ToZMm >= 12, "the shaft ends below the cam that sits on it");
    }

    [Theory]
    [InlineData("E", "Earthed")]
    [InlineData("lever metal", "Touchable")]
    [InlineData("N", "Live")]
    public void Of_NetOfALever_DecidesWhatItIs(string net, string kind)
    {
        Design design = WithLever($"net = \"{net}\", width = \"5 mm\"").Design();
        Assert.All(design.Solids.Where(s => string.Equals(s.Name, "lever feeler cam", StringComparison.Ordinal)), s => Assert.Equal(kind, s.Kind.ToString()));
        Assert.Equal(string.Equals(net, "N", StringComparison.Ordinal), design.Findings.Any(f => f is { Code: "cam.live-lever", Severity: FindingSeverity.Error }));
    }

    /// <summary>A metal cam on a net of its own floats: nothing says what it carries, so it counts at the supply's voltage.</summary>
    [Fact]
    public void WorkingVoltage_CamOnANetOfItsOwn_IsThatOfTheSupply()
    {
        Design design = new ChangedDemo("fry-feeder").With("material = \"acetal\"", "material = \"brass\"\nnet = \"cam metal\"").Design();
        Assert.All(design.Spacing.Rows.Where(r => r.Nets.First is "cam metal" || r.Nets.Second is "cam metal"), r => Assert.Equal(230, r.Nets.WorkingV, 1e-9));
        Assert.Contains(design.Findings, f => string.Equals(f.Code, "circuit.outside-net", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("material = \"brass\"", "no 'net'")]
    [InlineData("net = \"E\"", "width")]
    [InlineData("width = \"5 mm\", z = [\"9 mm\", \"8 mm\"]", "does not go upwards")]
    [InlineData("stop = \"19 deg\"", "goes to 20 deg")]
    [InlineData("stop = \"19 mm\"", "'stop' of a swinging lever")]
    public void Read_LeverWrong_IsTold(string keys, string told)
    {
        Assert.Contains(WithLever(keys).Read().Diagnostics, d => d.Message.Contains(told, StringComparison.Ordinal));
    }

    [Fact]
    public void Assumptions_LeverNotGiven_SaySo()
    {
        Assert.Contains(Demos.Of("fry-feeder").Assumptions, a => a.Words.Contains("lever, roller and pin insulate", StringComparison.Ordinal));
        Assert.Contains(WithLever(EarthedBrass).Design().Assumptions, a => a.Words.Contains("no further than its latch", StringComparison.Ordinal));
    }

    /// <summary>A lever as low as the copper sweeps over the wheel; one at its own height over it does not.</summary>
    [Theory]
    [InlineData("width = \"3 mm\"", false)]
    [InlineData("width = \"3 mm\", z = [\"-2 mm\", \"11 mm\"]", true)]
    public void Findings_LeverInTheWheel_IsAnError(string keys, bool meets)
    {
        Design design = WithLever(keys).Design();
        Assert.Equal(meets, design.Findings.Any(f => f is { Code: "cam.lever-meets", Severity: FindingSeverity.Error } && f.Message.Contains("carrier", StringComparison.Ordinal)));
    }

    /// <summary>One flat holds both: a cam that names it at another angle than its wheel would be put on turned.</summary>
    [Theory]
    [InlineData("{ diameter = \"6 mm\", flat = \"5 mm\", flat_at = \"0 deg\" }", null)]
    [InlineData("{ diameter = \"6 mm\", flat = \"5 mm\", flat_at = \"90 deg\" }", "cam.flat")]
    [InlineData("{ diameter = \"6 mm\" }", "cam.no-flat")]
    public void Findings_BoreOfItsOwn_MustHaveTheWheelsFlat(string bore, string? code)
    {
        Design design = new ChangedDemo("fry-feeder").With("bore = \"wheel\"", $"bore = {bore}").Design();
        Assert.Equal(code, design.Findings.Select(f => f.Code).FirstOrDefault(c => c is "cam.flat" or "cam.no-flat"));
    }
}
