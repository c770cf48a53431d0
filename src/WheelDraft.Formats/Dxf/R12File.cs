namespace WheelDraft.Formats.Dxf;

/// <summary>Lays out an R12 file (AC1009).</summary>
/// <remarks>It has no handles and no variable for units; whoever reads it must be given the unit.</remarks>
internal static class R12File
{
    internal static string Write(CutPlan plan)
    {
        DxfTags tags = new(plan.Decimals);
        tags.Add(0, "SECTION").Add(2, "HEADER").Add(9, "$ACADVER").Add(1, "AC1009").Extents(plan.Bounds).Add(0, "ENDSEC");
        Tables(tags, plan);
        tags.Add(0, "SECTION").Add(2, "BLOCKS").Add(0, "ENDSEC");
        tags.Add(0, "SECTION").Add(2, "ENTITIES");
        foreach (CutEntity entity in plan.Entities)
        {
            Write(tags, entity);
        }

        return tags.Add(0, "ENDSEC").Add(0, "EOF").ToString();
    }

    private static void Tables(DxfTags tags, CutPlan plan)
    {
        tags.Add(0, "SECTION").Add(2, "TABLES");
        tags.Add(0, "TABLE").Add(2, "LTYPE").Add(70, 1);
        tags.Add(0, "LTYPE").Add(2, "CONTINUOUS").Add(70, 0).Add(3, "Solid line").Add(72, 65).Add(73, 0).Add(40, "0.0");
        tags.Add(0, "ENDTAB");
        tags.Add(0, "TABLE").Add(2, "LAYER").Add(70, plan.Layers.Count + 1);
        tags.Add(0, "LAYER").Add(2, "0").Add(70, 0).Add(62, 7).Add(6, "CONTINUOUS");
        foreach (CutLayer layer in plan.Layers)
        {
            tags.Add(0, "LAYER").Add(2, CutLayerNames.NameOf(layer)).Add(70, 0).Add(62, CutLayerNames.ColourOf(layer)).Add(6, "CONTINUOUS");
        }

        tags.Add(0, "ENDTAB");
        tags.Add(0, "TABLE").Add(2, "STYLE").Add(70, 1);
        tags.Add(0, "STYLE").Add(2, "STANDARD").Add(70, 0).Add(40, "0.0").Add(41, "1.0").Add(50, "0.0").Add(71, 0).Add(42, "2.5").Add(3, "txt").Add(4, "");
        tags.Add(0, "ENDTAB").Add(0, "ENDSEC");
    }

    private static void Write(DxfTags tags, CutEntity entity)
    {
        string layer = CutLayerNames.NameOf(entity.Layer);
        switch (entity)
        {
            case CutPolyline polyline:
                WritePolyline(tags, layer, polyline);
                break;
            case CutCircle circle:
                tags.Add(0, "CIRCLE").Add(8, layer).PointInPlane(10, circle.Centre).Length(40, circle.Radius);
                break;
            case CutArc arc:
                tags.Add(0, "ARC").Add(8, layer).PointInPlane(10, arc.Arc.Centre).Length(40, arc.Arc.RadiusMm).Angle(50, arc.FromDeg).Angle(51, arc.ToDeg);
                break;
            case CutLine line:
                tags.Add(0, "LINE").Add(8, layer).PointInPlane(10, line.Start).PointInPlane(11, line.End);
                break;
            case CutText text:
                tags.Add(0, "TEXT").Add(8, layer).PointInPlane(10, text.At).Length(40, text.Height).Text(1, text.Text);
                break;
            default:
                throw new NotSupportedException($"No DXF entity for {entity.GetType().Name}.");
        }
    }

    private static void WritePolyline(DxfTags tags, string layer, CutPolyline polyline)
    {
        tags.Add(0, "POLYLINE").Add(8, layer).Add(66, 1).PointInPlane(10, default).Add(70, polyline.Closed ? 1 : 0);
        foreach (CutVertex vertex in polyline.Vertices)
        {
            tags.Add(0, "VERTEX").Add(8, layer).PointInPlane(10, vertex.At).Bulge(vertex.Bulge);
        }

        tags.Add(0, "SEQEND").Add(8, layer);
    }
}
