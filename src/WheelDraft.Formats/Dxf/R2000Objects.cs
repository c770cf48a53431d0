using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>The objects of an R2000 file: the root dictionary and what readers look up in it.</summary>
internal static class R2000Objects
{
    internal static void Write(DxfTags tags)
    {
        tags.Add(0, "SECTION").Add(2, "OBJECTS");
        Dictionary(tags, "DICTIONARY", R2000Handles.Root, 0)
            .Add(3, "ACAD_GROUP").Handle(350, R2000Handles.Groups)
            .Add(3, "ACAD_LAYOUT").Handle(350, R2000Handles.Layouts)
            .Add(3, "ACAD_PLOTSTYLENAME").Handle(350, R2000Handles.PlotStyles);
        Dictionary(tags, "DICTIONARY", R2000Handles.Groups, R2000Handles.Root);
        Dictionary(tags, "ACDBDICTIONARYWDFLT", R2000Handles.PlotStyles, R2000Handles.Root)
            .Add(3, "Normal").Handle(350, R2000Handles.PlotStyle).Add(100, "AcDbDictionaryWithDefault").Handle(340, R2000Handles.PlotStyle);
        tags.Add(0, "ACDBPLACEHOLDER").Handle(5, R2000Handles.PlotStyle).Handle(330, R2000Handles.PlotStyles);
        Dictionary(tags, "DICTIONARY", R2000Handles.Layouts, R2000Handles.Root)
            .Add(3, "Model").Handle(350, R2000Handles.ModelLayout).Add(3, "Layout1").Handle(350, R2000Handles.PaperLayout);
        Layout(tags, "Model", R2000Handles.ModelLayout, R2000Handles.ModelRecord);
        Layout(tags, "Layout1", R2000Handles.PaperLayout, R2000Handles.PaperRecord);
        tags.Add(0, "ENDSEC");
    }

    private static DxfTags Dictionary(DxfTags tags, string kind, int handle, int owner) =>
        tags.Add(0, kind).Handle(5, handle).Handle(330, owner).Add(100, "AcDbDictionary").Add(281, 1);

    private static void Layout(DxfTags tags, string name, int handle, int record)
    {
        bool model = record == R2000Handles.ModelRecord;
        tags.Add(0, "LAYOUT").Handle(5, handle).Handle(330, R2000Handles.Layouts).Add(100, "AcDbPlotSettings");
        PlotSettings(tags, model);
        tags.Add(100, "AcDbLayout").Add(1, name).Add(70, 1).Add(71, model ? 0 : 1);
        tags.Point(10, 0, 0).Point(11, 420, 297);
        foreach (int code in (int[])[12, 14, 15])
        {
            tags.PointInPlane(code, default);
        }

        tags.Add(146, "0.0").PointInPlane(13, default).PointInPlane(16, new Point(1, 0)).PointInPlane(17, new Point(0, 1));
        tags.Add(76, 1).Handle(330, record);
    }

    private static void PlotSettings(DxfTags tags, bool model)
    {
        foreach (int code in (int[])[1, 2, 4, 6])
        {
            tags.Add(code, "");
        }

        double[] paper = [7.5, 7.5, 7.5, 7.5, 210, 297, 0, 0, 0, 0];
        for (int i = 0; i < paper.Length; i++)
        {
            tags.Length(40 + i, paper[i]);
        }

        tags.Add(140, "0.0").Add(141, "0.0").Add(142, "1.0").Add(143, "1.0").Add(70, model ? 1024 : 0).Add(72, 1).Add(73, 0).Add(74, 5);
        tags.Add(7, "").Add(75, 16).Add(147, "1.0").Add(148, "0.0").Add(149, "0.0");
    }
}
