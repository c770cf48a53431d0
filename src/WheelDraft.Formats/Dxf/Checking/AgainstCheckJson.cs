using System.Text;
using WheelDraft.Formats.Report;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>A cutting file held against its design, as JSON.</summary>
internal static class AgainstCheckJson
{
    /// <summary>The whole document, with a last LF.</summary>
    public static string Write(AgainstCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        using JsonSheet json = new();
        json.Object(() =>
        {
            json.Whole("format", 1);
            json.Text("verdict", check.Meets ? "meets" : "misses");
            json.Text("part", check.Name);
            json.Text("file", check.FileName);
            json.Mm("kerf_mm", check.KerfMm);
            json.Objects("differences", check.Differences, d =>
            {
                json.Text("code", d.Code);
                if (d.Layer is string layer)
                {
                    json.Text("layer", layer);
                }

                if (d.At is Point at)
                {
                    json.MmList("at_mm", at.X, at.Y);
                }

                if (d.SizeMm is double size)
                {
                    json.Mm("size_mm", size);
                }

                json.Text("message", d.Message);
            });
            json.Objects("findings", check.Findings, f => ReportJson.Finding(json, f));
        });
        return Encoding.UTF8.GetString(json.Finish());
    }
}
