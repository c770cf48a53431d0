using System.Text.Json.Nodes;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Report;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>Where the gaps of open contacts are: the report once told their length alone.</summary>
public sealed class OpenContactPointTests
{
    private const double ToldMm = 1e-6;

    public static TheoryData<string, Turning> Cases
    {
        get
        {
            TheoryData<string, Turning> all = [];
            foreach (Turning turning in new[] { Turning.Clockwise, Turning.Anticlockwise })
            {
                foreach (string name in new[] { "fold", "turned", "rivet" })
                {
                    all.Add(name, turning);
                }
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Windowed_DecidingGap_LiesBetweenTheNoseAndTheTurnedCopper(string nose, Turning turning)
    {
        Brief brief = Turned(Briefs.Worked(), turning);
        int sideways = 0, along = 0;
        foreach (ParkedPosition parked in new ParkedPosition[] { new(0, 0.02, null), new(0.01, 0.03, null), new(0.3, 1.2, null), new(4.5, 4.55, null) })
        {
            MeasuredContacts measured = MeasuredContacts.Of(brief, Patch(nose), parked);
            foreach (OpenContact open in measured.Open)
            {
                RingLayout ring = measured.Wheel.Ring(open.Output);
                OpenGap gap = open.Deciding;
                Assert.All(Gaps(open), g => Assert.Equal(g.NominalMm, g.OnNose.DistanceTo(g.OnCopper), ToldMm));
                double half = ring.TravelMm / 2;
                Assert.Equal(0, new[] { -half, 0, half }.Min(t => ToEdge(gap.OnNose, ring.Patch.At(ring.RadiusMm + t, ring.StationRad))), ToldMm);
                Assert.Equal(0, measured.Wheel.Copper.Min(c => ToEdge(gap.OnCopper, Placed(c.Outline, brief, gap))), ToldMm);
                Interlocked.Increment(ref open.SidewaysDecides ? ref sideways : ref along);
            }
        }

        Assert.True(sideways > 0 && along > 0);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Lands_EveryGap_LiesBetweenPatchesAndTurnedLands(string nose, Turning turning)
    {
        // Wipers so near that one land follows the other, and so far apart that one waits on each.
        foreach (double apart in new[] { 15, 40, -40 })
        {
            Brief brief = Turned(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("heater", 30, (20, 30), (75, 20)), 50, 50 + apart)), turning);
            foreach (ParkedPosition parked in new ParkedPosition[] { new(0, 0.02, null), new(1.85, 1.9, null), new(1.6, 1.8, null), new(2.1, 2.5, null) })
            {
                MeasuredContacts measured = MeasuredContacts.Of(brief, Patch(nose), parked);
                RingLayout ring = measured.Wheel.Rings[0];
                Outline[] patches = [ring.Patch.At(ring.RadiusMm, ring.StationRad), ring.Return!.Patch.At(ring.RadiusMm, ring.Return.StationRad)];
                foreach (OpenGap gap in Gaps(measured.Only))
                {
                    Assert.Equal(gap.NominalMm, gap.OnNose.DistanceTo(gap.OnCopper), ToldMm);
                    Outline[] conductors = [.. patches, .. measured.Wheel.Copper.Select(c => Placed(c.Outline, brief, gap))];
                    Assert.Equal(0, conductors.Min(c => ToEdge(gap.OnNose, c)), ToldMm);
                    Assert.Equal(0, conductors.Min(c => ToEdge(gap.OnCopper, c)), ToldMm);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(ReportSchemaTests.Demos), MemberType = typeof(ReportSchemaTests))]
    public void Report_OpenContactRow_TellsTwoPointsAsFarApartAsItsGap(string demo)
    {
        JsonArray rows = ReportSchemaTests.Report(ReportSchemaTests.DemoDesign(demo))["spacing"]!.AsArray();
        foreach (JsonNode row in rows.Where(r => string.Equals((string?)r!["kind"], "open-contact", StringComparison.Ordinal) && r["along_over"] is null).Select(r => r!))
        {
            double[][] points = [.. row["points"]!.AsArray().Select(p => p!.AsArray().Select(n => (double)n!).ToArray())];
            Assert.Equal(2, points.Length);
            Assert.All(points, p => Assert.Equal(0, p[2]));

            // Each of four figures is rounded to 1e-6 mm.
            Assert.Equal((double)row["nominal_mm"]!, double.Hypot(points[0][0] - points[1][0], points[0][1] - points[1][1]), 2 * ToldMm);
        }
    }

    private static IEnumerable<OpenGap> Gaps(OpenContact open) =>
        new[] { open.Along, open.Sideways, open.Parked?.Along }.Concat(open.Periods.Select(p => p.Along)).OfType<OpenGap>();

    private static ContactPatch Patch(string nose) => nose switch
    {
        "rivet" => MeasuredContacts.Rivet(1.5),
        "turned" => MeasuredContacts.Fold(1.5, 0.6),
        _ => MeasuredContacts.Fold(1.5),
    };

    private static Brief Turned(Brief brief, Turning turning) => brief with { Drive = brief.Drive with { Direction = turning } };

    private static Outline Placed(Outline copper, Brief brief, OpenGap gap) => copper.Placed(Motion.Of(brief).WheelAt(gap.AtRad));

    private static double ToEdge(Point point, Outline outline) => outline.Pieces.Min(p => Distances.Between(point, p).DistanceMm);
}
