using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>Lays out an R2000 file (AC1015): header, classes, tables, blocks, entities, objects.</summary>
/// <remarks>Every record has a handle of its own and an owner that exists. Only what readers need is there; what each
/// record must hold follows the published notes on minimal content by the ezdxf project.</remarks>
internal static class R2000File
{
    /// <summary>Handle of the first entity; everything fixed lies below it.</summary>
    private const int FirstEntity = 0x100;

    internal static string Write(CutPlan plan)
    {
        DxfTags tags = new(plan.Decimals);
        Header(tags, plan);
        tags.Add(0, "SECTION").Add(2, "CLASSES").Add(0, "ENDSEC");
        R2000Tables.Write(tags, plan);
        Blocks(tags);
        tags.Add(0, "SECTION").Add(2, "ENTITIES");
        for (int i = 0; i < plan.Entities.Count; i++)
        {
            Entity(tags, plan.Entities[i], FirstEntity + i);
        }

        tags.Add(0, "ENDSEC");
        R2000Objects.Write(tags);
        return tags.Add(0, "EOF").ToString();
    }

    private static void Header(DxfTags tags, CutPlan plan)
    {
        bool inch = plan.Unit == DrawingUnit.Inch;
        tags.Add(0, "SECTION").Add(2, "HEADER");
        tags.Add(9, "$ACADVER").Add(1, "AC1015");
        tags.Add(9, "$DWGCODEPAGE").Add(3, "ANSI_1252");
        tags.Add(9, "$HANDSEED").Handle(5, FirstEntity + plan.Entities.Count);
        tags.Extents(plan.Bounds);
        tags.Add(9, "$INSUNITS").Add(70, inch ? 1 : 4);
        tags.Add(9, "$MEASUREMENT").Add(70, inch ? 0 : 1);
        tags.Add(0, "ENDSEC");
    }

    private static void Blocks(DxfTags tags)
    {
        tags.Add(0, "SECTION").Add(2, "BLOCKS");
        Block(tags, "*Model_Space", R2000Handles.ModelRecord, R2000Handles.ModelBlock);
        Block(tags, "*Paper_Space", R2000Handles.PaperRecord, R2000Handles.PaperBlock);
        tags.Add(0, "ENDSEC");
    }

    private static void Block(DxfTags tags, string name, int record, int handle)
    {
        bool paper = record == R2000Handles.PaperRecord;
        Common(tags.Add(0, "BLOCK"), handle, record, paper).Add(8, "0").Add(100, "AcDbBlockBegin").Add(2, name).Add(70, 0);
        tags.PointInPlane(10, default).Add(3, name).Add(1, "");
        Common(tags.Add(0, "ENDBLK"), handle + 1, record, paper).Add(8, "0").Add(100, "AcDbBlockEnd");
    }

    private static DxfTags Common(DxfTags tags, int handle, int owner, bool paper)
    {
        tags.Handle(5, handle).Handle(330, owner).Add(100, "AcDbEntity");
        return paper ? tags.Add(67, 1) : tags;
    }

    private static void Entity(DxfTags tags, CutEntity entity, int handle)
    {
        DxfTags Begin(string kind, string marker) =>
            Common(tags.Add(0, kind), handle, R2000Handles.ModelRecord, false).Add(8, CutLayerNames.NameOf(entity.Layer)).Add(100, marker);

        switch (entity)
        {
            case CutPolyline polyline:
                WritePolyline(Begin("LWPOLYLINE", "AcDbPolyline"), polyline);
                break;
            case CutCircle circle:
                Begin("CIRCLE", "AcDbCircle").PointInPlane(10, circle.Centre).Length(40, circle.Radius);
                break;
            case CutArc arc:
                Begin("ARC", "AcDbCircle").PointInPlane(10, arc.Arc.Centre).Length(40, arc.Arc.RadiusMm)
                    .Add(100, "AcDbArc").Angle(50, arc.FromDeg).Angle(51, arc.ToDeg);
                break;
            case CutLine line:
                Begin("LINE", "AcDbLine").PointInPlane(10, line.Start).PointInPlane(11, line.End);
                break;
            case CutText text:
                Begin("TEXT", "AcDbText").PointInPlane(10, text.At).Length(40, text.Height).Text(1, text.Text).Add(100, "AcDbText");
                break;
            default:
                throw new NotSupportedException($"No DXF entity for {entity.GetType().Name}.");
        }
    }

    private static void WritePolyline(DxfTags tags, CutPolyline polyline)
    {
        tags.Add(90, polyline.Vertices.Count).Add(70, polyline.Closed ? 1 : 0).Add(43, "0.0");
        foreach (CutVertex vertex in polyline.Vertices)
        {
            tags.Point(10, vertex.At.X, vertex.At.Y).Bulge(vertex.Bulge);
        }
    }
}

/// <summary>The fixed handles of the files written here.</summary>
internal static class R2000Handles
{
    internal const int BlockRecordTable = 0x1;
    internal const int LayerTable = 0x2;
    internal const int StyleTable = 0x3;
    internal const int LinetypeTable = 0x5;
    internal const int ViewTable = 0x6;
    internal const int UcsTable = 0x7;
    internal const int ViewportTable = 0x8;
    internal const int ApplicationTable = 0x9;
    internal const int DimensionStyleTable = 0xA;
    internal const int Root = 0xC;
    internal const int Groups = 0xD;
    internal const int PlotStyles = 0xE;
    internal const int PlotStyle = 0xF;
    internal const int StandardStyle = 0x12;
    internal const int Application = 0x13;
    internal const int FirstLinetype = 0x14;
    internal const int DimensionStyle = 0x17;
    internal const int ModelRecord = 0x18;
    internal const int PaperRecord = 0x19;
    internal const int ModelBlock = 0x1A;
    internal const int PaperBlock = 0x1C;
    internal const int ModelLayout = 0x1E;
    internal const int PaperLayout = 0x1F;
    internal const int Layouts = 0x20;
    internal const int Viewport = 0x21;
    internal const int FirstLayer = 0x30;
}
