using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Strips;

/// <summary>Folds a flat blank in space as a person would: plate by plate about its fold lines, from the drawing's fold table alone.</summary>
/// <remarks>Written apart from the forming code: a fold is a sharp hinge where the middle surfaces of its two plates would meet,
/// the plate beyond moved out by what the hinge takes more than the allowance, then turned about the hinge (Rodrigues).</remarks>
internal static class FoldedBlank
{
    internal readonly record struct Place(double X, double Y, double Z);

    /// <summary>Where a place of the flat blank comes to lie when folded; the first plate stays in the flat.</summary>
    /// <param name="form">Its blank and fold table are read, nothing else.</param>
    /// <param name="x">On the blank.</param>
    /// <param name="y">On the blank.</param>
    /// <param name="height">Above the middle surface.</param>
    /// <param name="foldsBefore">How many folds lie between the first plate and the place.</param>
    internal static Place Fold(StripForm form, double x, double y, double height, int foldsBefore)
    {
        Place at = new(x, y, height);
        for (int i = foldsBefore - 1; i >= 0; i--)
        {
            StripFold fold = form.Folds[i];
            Segment line = form.Blank.FoldLines[i];
            Vector left = line.Direction;
            Vector along = new(left.Y, -left.X);
            double middle = fold.RadiusMm + (form.Strip.ThicknessMm / 2);
            double setback = middle * Math.Tan(Math.Abs(fold.AngleRad) / 2);
            Point hinge = line.PointAt(0.5) + (along * (setback - (fold.AllowanceMm / 2)));
            Vector out_ = along * ((2 * setback) - fold.AllowanceMm);
            at = Turn(new(at.X + out_.X - hinge.X, at.Y + out_.Y - hinge.Y, at.Z), left, -fold.AngleRad);
            at = new(at.X + hinge.X, at.Y + hinge.Y, at.Z);
        }

        return at;
    }

    /// <summary>The nose's centre, from the drawing: the rivet's mark, or the contact fold's line.</summary>
    internal static Place NoseCentre(StripForm form)
    {
        double half = form.Strip.ThicknessMm / 2;
        if (form.Strip.Shape[^1] is StripRivet rivet)
        {
            Point mark = form.Blank.Marks.Single(m => m.Means == BlankMarkKind.Rivet).At;
            return Fold(form, mark.X, mark.Y, -(half + rivet.HeightMm - rivet.DomeRadiusMm), form.Folds.Count);
        }

        int contact = form.Folds.ToList().FindIndex(f => f.IsContact);
        StripFold fold = form.Folds[contact];
        Segment line = form.Blank.FoldLines[contact];
        Vector along = new(line.Direction.Y, -line.Direction.X);
        Point tangent = line.PointAt(0.5) - (along * (fold.AllowanceMm / 2));
        return Fold(form, tangent.X, tangent.Y, Math.Sign(fold.AngleRad) * (fold.RadiusMm + half), contact);
    }

    private static Place Turn(Place p, Vector axis, double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        double dot = (p.X * axis.X) + (p.Y * axis.Y);
        (double x, double y, double z) cross = (axis.Y * p.Z, -axis.X * p.Z, (axis.X * p.Y) - (axis.Y * p.X));
        return new(
            (p.X * cos) + (cross.x * sin) + (axis.X * dot * (1 - cos)),
            (p.Y * cos) + (cross.y * sin) + (axis.Y * dot * (1 - cos)),
            (p.Z * cos) + (cross.z * sin));
    }
}
