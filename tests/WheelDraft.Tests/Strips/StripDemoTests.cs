using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class StripDemoTests(ITestOutputHelper output)
{
    [Fact]
    public void Print()
    {
        Brief brief = StripBriefs.With(
            StripBriefs.Wiper("feed strip", new ServesFeed(), 90, 26),
            StripBriefs.Wiper("hold strip", new ServesOutput("hold", false), 90, 26),
            StripBriefs.Wiper("fan strip", new ServesOutput("fan", false), 90, 24),
            StripBriefs.Wiper("mist strip", new ServesOutput("mist", false), 90, 22));
        StripSet set = StripSet.Of(brief, StripBriefs.Rings);
        foreach (PlacedStrip s in set.Strips)
        {
            output.WriteLine(FormattableString.Invariant($"{s.Form.Strip.Name}: len {s.Form.LengthMm:0.####} auto {s.Form.AutoLengthMm:0.####} k {s.Spring!.StiffnessNPerMm:0.####} F {s.Spring.ForceN:0.####} worn {s.Spring.WornForceN:0.####} stress {s.Spring.StressMpa:0.##} at {s.Spring.StressAtMm:0.##} turn {Angles.DegFromRad(s.Spring.TurnRad):0.###} gives {s.Spring.GivesMmPerN}"));
            output.WriteLine(FormattableString.Invariant($"  free {s.FreeContact} working {s.WorkingContact} sense {s.Sense} solids {s.Solids.Count} R {s.Electrics.ResistanceOhm * 1000:0.###} mohm life {s.Life}"));
            output.WriteLine(FormattableString.Invariant($"  least underside over wheel {s.Solids.Where(x => !x.IsNose && x.Outline.Bounds.Centre.RadiusMm < 26).Min(x => x.FromZMm):0.###}"));
            foreach (Solid x in s.Solids)
            {
                output.WriteLine(FormattableString.Invariant($"    z {x.FromZMm:0.###}..{x.ToZMm:0.###} nose {x.IsNose} {x.OnSurface} {x.Outline.Bounds}"));
            }
        }

        foreach (Finding f in set.Findings)
        {
            output.WriteLine($"{f.Code}: {f.Message}");
        }

        output.WriteLine($"{set.Friction}");
    }
}
