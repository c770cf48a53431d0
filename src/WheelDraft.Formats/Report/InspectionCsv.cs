using System.Globalization;
using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>What an inspector measures on made parts, as a table: every edge, hole and strip dimension, with its tolerance and a place for what was found.</summary>
internal static class InspectionCsv
{
    private static readonly string[] Columns =
        ["part", "feature", "ring", "output", "radius_mm", "wheel_angle_deg", "tolerance_mm", "tolerance_deg", "x_mm", "y_mm", "dimension", "nominal", "unit", "measured"];

    /// <summary>Writes it: UTF-8, LF; lengths in mm, wheel angles in degrees from the home mark, anticlockwise seen from the wiper side.</summary>
    public static byte[] Write(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        StringBuilder csv = new();
        CsvText.Row(csv, Columns);
        double cut = design.Brief.Process.ToleranceMm;
        int ring = 0;
        RingLayout? last = null;
        foreach (SetOutEdge edge in SetOut.Of(design.Wheel, design.Motion).Edges)
        {
            ring += ReferenceEquals(last, edge.Ring) ? 0 : 1;
            last = edge.Ring;
            string end = edge.End == EdgeEnd.Make ? "make edge" : "break edge";
            foreach ((string where, SetOutPoint point) in (ReadOnlySpan<(string, SetOutPoint)>)[("at the inner corner", edge.Inner), ("on the ring", edge.OnRing), ("at the outer corner", edge.Outer)])
            {
                Point(csv, ("wheel", $"{end} {where}", Whole(ring), edge.Ring.Name), point.At, cut);
            }
        }

        foreach (RingLayout whole in design.Wheel.AllRings.Where(r => r.WindowFromMm is double))
        {
            Dimension(csv, ("wheel", "inner radius of windows", whole.Name), whole.WindowFromMm!.Value, cut);
            Dimension(csv, ("wheel", "outer radius of windows", whole.Name), whole.WindowToMm!.Value, cut);
        }

        Dimension(csv, ("wheel", "outer diameter", ""), design.Wheel.OuterDiameterMm, 2 * cut);
        Dimension(csv, ("wheel", "bore diameter", ""), design.Brief.Wheel.Bore.DiameterMm, 2 * cut);
        if (design.Brief.Wheel.Bore.FlatMm is double flat)
        {
            Dimension(csv, ("wheel", "bore over the flat", ""), flat, 2 * cut);
        }

        foreach (Point fixing in design.Wheel.Fixings)
        {
            Point(csv, ("wheel", "fixing hole", "", ""), fixing, cut);
        }

        Strips(csv, design);
        return Encoding.UTF8.GetBytes(csv.ToString());
    }

    private static void Strips(StringBuilder csv, Design design)
    {
        FormingBrief forming = design.Brief.Forming;
        foreach (PlacedStrip strip in design.Strips.Strips)
        {
            string name = strip.Form.Strip.Name;
            Dimension(csv, (name, "blank length", ""), strip.Form.LengthMm, design.Brief.Process.ToleranceMm);
            foreach (StripHole hole in strip.Form.Strip.Holes)
            {
                Dimension(csv, (name, "hole from the terminal end", ""), hole.AtMm, design.Brief.Process.ToleranceMm);
                Dimension(csv, (name, "hole diameter", ""), hole.DiameterMm, 2 * design.Brief.Process.ToleranceMm);
            }

            foreach (StripFold fold in strip.Form.Folds)
            {
                Dimension(csv, (name, "fold line from the terminal end", ""), fold.AtMm, design.Brief.Process.ToleranceMm);
                Row(csv, name, "fold", "fold angle", Number(Angles.DegFromRad(fold.AngleRad)), "deg", "", Number(Angles.DegFromRad(forming.FoldRad.Value)));
                Dimension(csv, (name, "inside radius of the fold", ""), fold.RadiusMm, forming.RadiusMm.Value);
            }

            if (strip.Form.DeflectionMm is double deflection)
            {
                Dimension(csv, (name, "free contact below the copper face", ""), deflection, forming.HeightMm.Value);
            }
        }
    }

    private static void Point(StringBuilder csv, (string Part, string Feature, string Ring, string Output) what, Point at, double toleranceMm)
    {
        double radius = Math.Sqrt((at.X * at.X) + (at.Y * at.Y));
        double deg = Angles.DegFromRad(Angles.InTurn(Math.Atan2(at.Y, at.X)));
        CsvText.Row(csv, [what.Part, what.Feature, what.Ring, what.Output, Number(radius), Number(deg), Number(toleranceMm), radius > 0 ? Number(Angles.DegFromRad(toleranceMm / radius)) : "", Number(at.X), Number(at.Y), "", "", "", ""]);
    }

    private static void Dimension(StringBuilder csv, (string Part, string Name, string Output) what, double valueMm, double toleranceMm) =>
        CsvText.Row(csv, [what.Part, "dimension", "", what.Output, "", "", Number(toleranceMm), "", "", "", what.Name, Number(valueMm), "mm", ""]);

    private static void Row(StringBuilder csv, string part, string feature, string dimension, string nominal, string unit, string toleranceMm, string toleranceDeg) =>
        CsvText.Row(csv, [part, feature, "", "", "", "", toleranceMm, toleranceDeg, "", "", dimension, nominal, unit, ""]);

    private static string Number(double value) => Wording.Number(value, 4);

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);
}
