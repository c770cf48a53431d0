using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>Surfaces, parts, ribs and slots.</summary>
internal static class BoardMaker
{
    /// <summary>A surface.</summary>
    public static SurfaceBrief Surface(CheckedTable table) => new(
        table.Text("name")!,
        table.Group(),
        table.Base("level"),
        PlanPoints.Of(table, "outline") is { } corners ? new Outline(Contour.Polygon(corners)) : null)
    {
        ThicknessMm = table.BaseOrNull("thickness"),
    };

    /// <summary>A part.</summary>
    public static PartBrief Part(CheckedTable table)
    {
        (PartKind kind, string net) = table.Text("kind") switch
        {
            "live" => (PartKind.Live, table.Text("net")!),
            "earthed" => (PartKind.Earthed, "E"),
            "touchable" => (PartKind.Touchable, table.Text("name")!),
            _ => (PartKind.Floating, table.Text("name")!),
        };
        IReadOnlyList<CheckedValue> z = table.Items("z");
        return new PartBrief(table.Text("name")!, kind, net, PartOutline(table), z[0].Quantity!.Value.Value, z[1].Quantity!.Value.Value);
    }

    /// <summary>A rib.</summary>
    public static RibBrief Rib(CheckedTable table) => new(
        table.Text("surface")!,
        PlanPoints.Of(table, "path")!,
        table.Base("height"),
        table.Base("thickness"),
        table.Text("joint") switch { "cemented" => RibJoint.Cemented, "loose" => RibJoint.Loose, _ => RibJoint.Moulded });

    /// <summary>A slot or groove.</summary>
    public static SlotBrief Slot(CheckedTable table) => new(
        table.Text("surface")!,
        PlanPoints.Of(table, "path")!,
        table.Base("width"),
        table.BaseOrNull("depth"),
        table.Is("profile", "v") ? SlotProfile.V : SlotProfile.Parallel);

    /// <summary>A circle or an upright rectangle.</summary>
    public static Outline Plain(CheckedTable table) => PartOutline(table);

    private static Outline PartOutline(CheckedTable table)
    {
        if (table.Table("circle") is { } circle)
        {
            return new Outline(Contour.Circle(PlanPoints.One(circle, "at")!.Value, circle.Base("diameter") / 2));
        }

        return table.Table("rectangle") is { } rectangle
            ? new Outline(Contour.Rectangle(PlanPoints.One(rectangle, "from")!.Value, PlanPoints.One(rectangle, "to")!.Value))
            : PathOutline.Of(PlanPoints.Of(table, "path")!, table.Base("width"));
    }
}
