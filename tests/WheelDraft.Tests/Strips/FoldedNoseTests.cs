using CsCheck;
using WheelDraft.Cli;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>Contacts that are folds: what is left out as their nose, and that nothing unsafe is left out with it.</summary>
/// <remarks>The legs beside a contact fold once "collided" with the wheel, or missed the clearance from the copper just before the make, so that no
/// design with folded contacts was free of errors. Oracle: the underside of the pressed nose as points in space, against the copper as it turns.
/// <c>WHEELDRAFT_FOLDED_DESIGNS=500</c> lets both properties draw that many designs.</remarks>
public sealed class FoldedNoseTests
{
    private static long Designs => long.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_FOLDED_DESIGNS"), System.Globalization.CultureInfo.InvariantCulture, out long many) ? many : 24;

    private static readonly string[] Names = ["feed", "fan", "pump", "wheel"];

    [Fact]
    public void Of_StarterWithFoldedContacts_HasNoError()
    {
        Template starter = TemplateShelf.All.First(t => t.Name is "folded-strips");
        Design design = Design.Of(ParameterReader.Read(starter.Bytes()).Brief!);
        Assert.Empty(design.Findings.Where(f => f.Severity == FindingSeverity.Error).Select(f => f.Message));
        Assert.Contains(design.Strips.Strips, s => s.Solids.Any(p => p.NoseRingMm is not null));
    }

    [Fact]
    public void Of_FoldsInSensibleProportions_HaveNoErrorThatRivetsDoNotHave()
    {
        List<string> more = [];
        int shown = 0;
        FoldedDesigns.Any.Sample(
            drawn =>
            {
                (Design? folded, Design? riveted) = (drawn.Of(rivets: false), drawn.Of(rivets: true));
                string[] added = [.. Errors(folded).Except(Errors(riveted), StringComparer.Ordinal)];
                bool real = folded is not null && added.All(a => Array.TrueForAll(["fan", "pump", "feed"], n => !a.Contains(n + "/wheel", StringComparison.Ordinal) || IsReal(folded, n)) && a.Contains("/wheel", StringComparison.Ordinal));
                if (added.Length > 0)
                {
                    if (real)
                    {
                        Interlocked.Increment(ref shown);
                        return;
                    }

                    lock (more)
                    {
                        more.Add($"{drawn}: {string.Join(" | ", added)}\n{(folded is null ? "" : string.Join("\n", folded.Findings.Where(f => f.Severity == FindingSeverity.Error).Select(f => f.Message)))}");
                    }
                }
            },
            iter: Designs);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{shown} of {Designs} with errors whose place is real"));
        Assert.True(shown <= Designs / 10, FormattableString.Invariant($"{shown} of {Designs} have errors whose place is real: proportions are not sensible"));
        Assert.True(more.Count == 0, FormattableString.Invariant($"{more.Count} of {Designs}, besides {shown} whose place is real:\n{string.Join("\n", more)}"));
    }

    [Fact]
    public void Of_FoldsWhereTheContactCountsAsOpen_AreAtLeastTheClearanceFromTheCopper() => FoldedDesigns.Any.Sample(
        drawn =>
        {
            Design design = (drawn with { Exact = true }).Of(rivets: false)!;
            for (int i = 0; i < design.OpenContacts.Count; i++)
            {
                OpenContact open = design.OpenContacts[i];
                foreach (OpenPeriod period in open.Periods.Where(p => p.ReachedAfterRad is not null))
                {
                    double clearance = open.Requirement!.Clearance.RequiredMm;
                    for (int k = 0; k <= 10; k++)
                    {
                        double from = period.BreakRad + period.ReachedAfterRad!.Value;
                        double at = from + ((period.GreatestAtRad - from) * k / 10);
                        double found = NoseToCopperMm(design, open.Output, at);
                        Assert.True(found >= clearance - 1e-6, FormattableString.Invariant($"{open.Output}: {found} mm of {clearance} mm at {Angles.DegFromRad(at)}°"));
                    }
                }
            }
        },
        iter: Designs);

    // Points of the underside of bend and legs, over their width, against the copper turned to a programme angle.
    private static double NoseToCopperMm(Design design, string output, double atRad)
    {
        PlacedStrip strip = design.Strips.Strips.First(s => s.Form.Strip.Task is ServesOutput o && string.Equals(o.Output, output, StringComparison.Ordinal));
        int fold = strip.Form.Nose!.PieceIndex;
        double half = strip.Form.Strip.ThicknessMm / 2;
        double step = design.Brief.Carrier.StepMm;
        Placement toWheel = Placement.Turn(design.Motion.Sigma < 0 ? atRad : -atRad);
        double least = double.PositiveInfinity;
        for (int piece = fold - 1; piece <= fold + 1; piece++)
        {
            FormedPiece formed = strip.Form.Pieces[piece];
            for (int k = 0; k <= 60; k++)
            {
                StripFrame frame = FrameAt(strip, formed, k / 60.0);
                foreach (double across in new[] { -1, -0.5, 0, 0.5, 1 })
                {
                    SpaceVector under = frame.At(0, across * formed.WidthAt(k / 60.0) / 2, -half) - (SpaceVector.Upward * step);
                    double plan = Distances.Between(toWheel.Of(under.Plan), design.Wheel.Copper[0].Outline).DistanceMm;
                    least = Math.Min(least, double.Hypot(plan, Math.Max(0, under.Z)));
                }
            }
        }

        return least;
    }

    // Bend and legs as one body, turned about the axis of the bend as pressing turns it, exactly (Rodrigues), not to the first order.
    private static StripFrame FrameAt(PlacedStrip strip, FormedPiece piece, double share)
    {
        (StripSpring spring, StripNose nose) = (strip.Spring!, strip.Form.Nose!);
        SpaceVector turn = spring.Chain.Vertical.Turn * spring.ForceN;
        (double sin, double cos) = Math.SinCos(turn.Length);
        SpaceVector axis = turn.Unit();
        SpaceVector Turned(SpaceVector v) => (v * cos) + (axis.Cross(v) * sin) + (axis * (axis.Dot(v) * (1 - cos)));
        StripFrame free = piece.FrameAt(share);
        SpaceVector centre = nose.Centre + (spring.GivesMmPerN * spring.ForceN);
        return strip.Placement.Of(new StripFrame(centre + Turned(free.Origin - nose.Centre), Turned(free.Along), Turned(free.Up)));
    }

    // Whether some place of a strip, its nose aside, comes nearer to what wheel and carrier sweep than the largest distance asked, tolerances and X added.
    private static bool IsReal(Design design, string name)
    {
        PlacedStrip strip = design.Strips.Strips.First(s => s.Form.Strip.Name.StartsWith(name, StringComparison.Ordinal));
        int fold = strip.Form.Nose!.PieceIndex;
        double rim = design.Wheel.OuterDiameterMm / 2;
        double under = -design.Brief.Carrier.StepMm - design.Brief.Carrier.ThicknessMm;
        double asked = design.Spacing.Rows.Max(r => r.Required.RequiredMm) + 0.5;
        return strip.Working.Where(s => s.Piece < fold - 1).Any(s => double.Hypot(
            Math.Max(0, s.Frame.Origin.Plan.RadiusMm - (s.WidthMm / 2) - rim),
            Math.Max(0, Math.Max(s.Frame.Origin.Z - 0.5, under - s.Frame.Origin.Z))) < asked);
    }

    private static IEnumerable<string> Errors(Design? design) => design is null
        ? ["refused"]
        : design.Findings.Where(f => f.Severity == FindingSeverity.Error).Select(f => $"{f.Code} of {string.Join('/', Names.Where(n => f.Message.Contains(n, StringComparison.Ordinal)))}").Distinct(StringComparer.Ordinal);
}
