using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>The tables of an R2000 file.</summary>
internal static class R2000Tables
{
    internal static void Write(DxfTags tags, CutPlan plan)
    {
        tags.Add(0, "SECTION").Add(2, "TABLES");
        Viewport(tags, plan.Bounds);
        Linetypes(tags);
        Layers(tags, plan.Layers);
        Style(tags);
        Table(tags, "VIEW", R2000Handles.ViewTable, 0).Add(0, "ENDTAB");
        Table(tags, "UCS", R2000Handles.UcsTable, 0).Add(0, "ENDTAB");
        Table(tags, "APPID", R2000Handles.ApplicationTable, 1);
        Record(tags, "APPID", R2000Handles.Application, R2000Handles.ApplicationTable, "AcDbRegAppTableRecord").Add(2, "ACAD").Add(70, 0);
        tags.Add(0, "ENDTAB");
        DimensionStyle(tags);
        BlockRecords(tags);
        tags.Add(0, "ENDSEC");
    }

    private static DxfTags Table(DxfTags tags, string name, int handle, int count) =>
        tags.Add(0, "TABLE").Add(2, name).Handle(5, handle).Add(330, "0").Add(100, "AcDbSymbolTable").Add(70, count);

    private static DxfTags Record(DxfTags tags, string name, int handle, int owner, string marker) =>
        tags.Add(0, name).Handle(5, handle).Handle(330, owner).Add(100, "AcDbSymbolTableRecord").Add(100, marker);

    /// <summary>One view that shows the whole drawing when the file is opened.</summary>
    private static void Viewport(DxfTags tags, Bounds bounds)
    {
        Table(tags, "VPORT", R2000Handles.ViewportTable, 1);
        Record(tags, "VPORT", R2000Handles.Viewport, R2000Handles.ViewportTable, "AcDbViewportTableRecord").Add(2, "*ACTIVE").Add(70, 0);
        tags.Point(10, 0, 0).Point(11, 1, 1).Point(12, bounds.Centre.X, bounds.Centre.Y).Point(13, 0, 0).Point(14, 1, 1).Point(15, 1, 1);
        tags.Point(16, 0, 0).Add(36, "1.0").Point(17, 0, 0).Add(37, "0.0");
        double height = Math.Max(bounds.Height, bounds.Width / 1.5) * 1.1;
        tags.Length(40, Math.Max(height, 1e-3)).Add(41, "1.5").Add(42, "50.0").Add(43, "0.0").Add(44, "0.0").Add(50, "0.0").Add(51, "0.0");
        tags.Add(71, 0).Add(72, 1000).Add(73, 1).Add(74, 3).Add(75, 0).Add(76, 0).Add(77, 0).Add(78, 0).Add(0, "ENDTAB");
    }

    private static void Linetypes(DxfTags tags)
    {
        string[] names = ["ByBlock", "ByLayer", "Continuous"];
        Table(tags, "LTYPE", R2000Handles.LinetypeTable, names.Length);
        for (int i = 0; i < names.Length; i++)
        {
            Record(tags, "LTYPE", R2000Handles.FirstLinetype + i, R2000Handles.LinetypeTable, "AcDbLinetypeTableRecord").Add(2, names[i]).Add(70, 0);
            tags.Add(3, i == 2 ? "Solid line" : "").Add(72, 65).Add(73, 0).Add(40, "0.0");
        }

        tags.Add(0, "ENDTAB");
    }

    private static void Layers(DxfTags tags, IReadOnlyList<CutLayer> layers)
    {
        Table(tags, "LAYER", R2000Handles.LayerTable, layers.Count + 1);
        Layer(tags, R2000Handles.FirstLayer, "0", 7);
        for (int i = 0; i < layers.Count; i++)
        {
            Layer(tags, R2000Handles.FirstLayer + 1 + i, CutLayerNames.NameOf(layers[i]), CutLayerNames.ColourOf(layers[i]));
        }

        tags.Add(0, "ENDTAB");
    }

    private static void Layer(DxfTags tags, int handle, string name, int colour) =>
        Record(tags, "LAYER", handle, R2000Handles.LayerTable, "AcDbLayerTableRecord")
            .Add(2, name).Add(70, 0).Add(62, colour).Add(6, "Continuous").Add(370, -3).Handle(390, R2000Handles.PlotStyle);

    private static void Style(DxfTags tags)
    {
        Table(tags, "STYLE", R2000Handles.StyleTable, 1);
        Record(tags, "STYLE", R2000Handles.StandardStyle, R2000Handles.StyleTable, "AcDbTextStyleTableRecord").Add(2, "Standard").Add(70, 0);
        tags.Add(40, "0.0").Add(41, "1.0").Add(50, "0.0").Add(71, 0).Add(42, "2.5").Add(3, "txt").Add(4, "").Add(0, "ENDTAB");
    }

    private static void DimensionStyle(DxfTags tags)
    {
        Table(tags, "DIMSTYLE", R2000Handles.DimensionStyleTable, 1).Add(100, "AcDbDimStyleTable");

        // Alone among all records, this one has its handle in group 105.
        tags.Add(0, "DIMSTYLE").Handle(105, R2000Handles.DimensionStyle).Handle(330, R2000Handles.DimensionStyleTable)
            .Add(100, "AcDbSymbolTableRecord").Add(100, "AcDbDimStyleTableRecord").Add(2, "Standard").Add(70, 0).Add(0, "ENDTAB");
    }

    private static void BlockRecords(DxfTags tags)
    {
        Table(tags, "BLOCK_RECORD", R2000Handles.BlockRecordTable, 2);
        Record(tags, "BLOCK_RECORD", R2000Handles.ModelRecord, R2000Handles.BlockRecordTable, "AcDbBlockTableRecord")
            .Add(2, "*Model_Space").Handle(340, R2000Handles.ModelLayout);
        Record(tags, "BLOCK_RECORD", R2000Handles.PaperRecord, R2000Handles.BlockRecordTable, "AcDbBlockTableRecord")
            .Add(2, "*Paper_Space").Handle(340, R2000Handles.PaperLayout);
        tags.Add(0, "ENDTAB");
    }
}
