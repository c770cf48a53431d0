using System.Runtime.CompilerServices;
using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>What holds for every wheel of lands.</summary>
public sealed class LandPropertyTests
{
    private const int Cases = 300;
    private const double SameMm = 1e-6;

    private static readonly Gen<(bool Clockwise, double StationDeg, double ApartDeg, double AngleDeg, double[] EndsS)> Rings =
        from clockwise in Gen.Bool
        from station in Gen.Double[0, 360]
        from apart in Gen.Double[-60, 60]
        from angle in Gen.Double[-89, 90]
        from ends in Gen.Double[0, 180].Array[2, 6]
        select (clockwise, station, apart, angle, ends);

    /// <summary>Oracle: the definition. An output is closed exactly while one land is under both wipers.</summary>
    [Fact]
    public void Joins_AnyRing_AreTheOnPeriods() => Sample((design, _) =>
    {
        RingLayout ring = design.Wheel.Rings[0];
        foreach ((LandLayout land, OnPeriod period) in ring.Lands.Zip(design.Programme.Outputs[0].Periods))
        {
            CircleArc joined = Assert.Single(land.Joins);
            Assert.Equal(0, Angles.Signed(joined.StartRad - period.StartRad), 1e-9);
            Assert.Equal(period.SweepRad, joined.SweepRad, 1e-9);
        }
    });

    /// <summary>Oracle: distances of the outlines themselves. Every two lands keep what the rules ask and both cut edges.</summary>
    [Fact]
    public void Lands_AnyRing_KeepTheRequiredDistance() => Sample((design, brief) =>
    {
        double required = LandDistances.Of(brief).LiveMm + (2 * brief.Process.ToleranceMm);
        IReadOnlyList<CopperPiece> lands = design.Wheel.Copper;
        for (int i = 0; i < lands.Count; i++)
        {
            for (int k = i + 1; k < lands.Count; k++)
            {
                Assert.True(Distances.Between(lands[i].Outline, lands[k].Outline).DistanceMm >= required - SameMm);
            }
        }

        Assert.True(design.Wheel.Rings[0].Return!.PatchGapMm >= required - (2 * brief.Process.ToleranceMm) - SameMm);
    });

    /// <summary>Oracle: symmetry. The mirrored wheel turns the other way and is else the same.</summary>
    [Fact]
    public void Of_MirroredBrief_GivesTheMirroredWheel() => Sample((design, brief) =>
    {
        OutputBrief o = brief.Outputs[0];
        Brief mirrored = brief with
        {
            Drive = brief.Drive with { Direction = brief.Drive.Direction == Turning.Clockwise ? Turning.Anticlockwise : Turning.Clockwise },
            Outputs = [o with { StationRad = Angles.InTurn(-o.StationRad!.Value), ReturnStationRad = Angles.InTurn(-o.ReturnStationRad!.Value), Contact = o.Contact with { AngleRad = -o.Contact.AngleRad } }],
        };
        RingLayout one = design.Wheel.Rings[0];
        RingLayout other = Design.Of(mirrored).Wheel.Rings[0];
        Assert.Equal(one.RadiusMm, other.RadiusMm, SameMm);
        Assert.Equal(one.Return!.IsUpstream, other.Return!.IsUpstream);
        foreach ((RingPeriod here, RingPeriod there) in one.Periods.Zip(other.Periods))
        {
            Assert.Equal(0, Angles.Signed(here.CopperRad.StartRad - there.CopperRad.Mirrored().StartRad), 1e-9);
            Assert.Equal(here.CopperRad.SweepRad, there.CopperRad.SweepRad, 1e-9);
        }
    });

    /// <summary>Oracle: symmetry. Both wipers exchanged, the same lands serve.</summary>
    [Fact]
    public void Of_WipersExchanged_GivesTheSameLands() => Sample((design, brief) =>
    {
        OutputBrief o = brief.Outputs[0];
        Design other = Design.Of(brief with { Outputs = [o with { StationRad = o.ReturnStationRad, ReturnStationRad = o.StationRad }] });
        Assert.Equal(design.Wheel.Rings[0].RadiusMm, other.Wheel.Rings[0].RadiusMm, SameMm);
        foreach ((CopperPiece here, CopperPiece there) in design.Wheel.Copper.Zip(other.Wheel.Copper))
        {
            Assert.True(here.Outline.Outer.Pieces[0].Start.DistanceTo(there.Outline.Outer.Pieces[0].Start) < SameMm);
            Assert.Equal(here.Outline.AreaMm2, there.Outline.AreaMm2, SameMm);
        }
    });

    /// <summary>Builds random rings; those that cannot be are refused with a reason, and most can be.</summary>
    private static void Sample(Action<Design, Brief> holds, [CallerMemberName] string test = "")
    {
        int built = 0;
        Rings.Sample(
            g =>
            {
                double[] ends = [.. g.EndsS.Take(g.EndsS.Length / 2 * 2).Order()];
                if (ends.Zip(ends.Skip(1)).Any(p => p.Second - p.First < 2) || ends[0] + 180 - ends[^1] < 2)
                {
                    return;
                }

                (double, double)[] periods = [.. ends.Chunk(2).Select(c => (c[0], c[1] - c[0]))];
                OutputBrief output = Briefs.TwoWipers(Briefs.Output("any", 10, periods), g.StationDeg, (g.StationDeg + g.ApartDeg + 360) % 360);
                output = output with { Contact = output.Contact with { AngleRad = Angles.RadFromDeg(g.AngleDeg) }, OverOpenContact = null };
                Brief brief = Briefs.Lands(output) with { Drive = new(180, g.Clockwise ? Turning.Clockwise : Turning.Anticlockwise, 0, default) };
                try
                {
                    Design design = Design.Of(brief);
                    Interlocked.Increment(ref built);
                    holds(design, brief);
                }
                catch (DesignRefusedException refused)
                {
                    Assert.All(refused.Reasons, r => Assert.StartsWith("wheel.", r.Code, StringComparison.Ordinal));
                }
            },
            iter: Cases,
            threads: 1,
            test: test);
        Assert.InRange(built, Cases / 10, Cases);
    }
}
