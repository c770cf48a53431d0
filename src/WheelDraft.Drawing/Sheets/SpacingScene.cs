using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What plan and details of the spacing drawing show: insulation and conductive items, each with its look, the lowest first.</summary>
internal sealed class SpacingScene
{
    /// <summary>The scene of a design.</summary>
    public SpacingScene(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        Design = design;
        Looks = NetLooks.Of(design);
        Parts = [.. SpacingPart.Of(design).Select(p => p with { Look = p.Kind == SolidKind.Floating ? Fill.Of(FillKind.Part) : Looks.FillOf(p.Net) })];
        All = [.. Insulation().Concat(Parts).OrderBy(p => p.TopMm)];
    }

    /// <summary>The design.</summary>
    public Design Design { get; }

    /// <summary>The looks of nets, as on every sheet.</summary>
    public NetLooks Looks { get; }

    /// <summary>The conductive items.</summary>
    public IReadOnlyList<SpacingPart> Parts { get; }

    /// <summary>Carrier, surfaces and conductive items.</summary>
    public IReadOnlyList<SpacingPart> All { get; }

    /// <summary>The nets that are drawn and have a look, in natural order.</summary>
    public IEnumerable<string> Nets => Looks.Nets.Where(n => Parts.Any(p => string.Equals(p.Net, n, StringComparison.Ordinal)));

    /// <summary>What lies under the carrier and shows through as hidden edges. Every strip rises beside the carrier: seen whole, though its foot lies lower.</summary>
    public IEnumerable<SpacingPart> Hidden => Parts.Where(p => p.TopMm <= -Design.Brief.Carrier.StepMm - Design.Brief.Carrier.ThicknessMm);

    private IEnumerable<SpacingPart> Insulation()
    {
        Brief brief = Design.Brief;
        Fill carrier = Fill.Of(FillKind.Carrier);
        yield return new("carrier", "", SolidKind.Floating, [Design.Wheel.Carrier]) { IsInsulation = true, Look = carrier, TopMm = -brief.Carrier.StepMm - brief.Wheel.ThicknessMm, Turns = true };
        foreach (SurfaceBrief surface in brief.Surfaces)
        {
            IEnumerable<IReadOnlyList<Point>> paths = brief.Ribs.Where(r => IsOn(r.Surface, surface)).Select(r => r.Path)
                .Concat(brief.Slots.Where(s => IsOn(s.Surface, surface)).Select(s => s.Path));
            yield return new(surface.Name, "", SolidKind.Floating, surface.Outline is Outline outline ? [outline] : [])
            {
                IsInsulation = true,
                Look = carrier,
                TopMm = surface.LevelMm,
                Walls = [.. paths.SelectMany(p => p.Skip(1).Select((to, i) => new Segment(p[i], to)))],
            };
        }
    }

    private static bool IsOn(string name, SurfaceBrief surface) => string.Equals(name, surface.Name, StringComparison.OrdinalIgnoreCase);
}
