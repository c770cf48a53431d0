using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>Finds out whether a cutting file is the design's at another scale, mirrored, turned or moved.</summary>
/// <remarks>Of a list of placements (whole factors of units, the ratio of the boxes, quarter turns, a mirror, and the shift that each then needs)
/// the one is taken under which most contours have the box that the design asks; the file as it lies goes before all others.</remarks>
internal static class CutWhereabouts
{
    // Factors of units that a person mistakes: inch, centimetre, metre, and back.
    private static readonly double[] UnitFactors = [25.4, 1 / 25.4, 10, 0.1, 1000, 0.001];

    // Factors that differ by less than this are the same, and one that differs from 1 by less is none.
    private const double SameFactor = 1e-7;

    /// <summary>From the file to the design; the identity unless another placement fits better.</summary>
    public static Placement Of(ReadDrawing wanted, ReadDrawing found)
    {
        Bounds[] should = [.. Boxes(wanted, Placement.Identity)];
        Contour[] there = [.. found.Layers.Where(l => !CutComparison.IsUncut(l.Name)).SelectMany(l => l.Contours).Select(c => c.Contour)];
        if (should.Length == 0 || there.Length == 0)
        {
            return Placement.Identity;
        }

        Placement best = Placement.Identity;
        int most = Fits(should, there, best);
        foreach (Placement candidate in Candidates(should.Aggregate((a, b) => a.With(b)), there))
        {
            if (most == should.Length)
            {
                break;
            }

            int fits = Fits(should, there, candidate);
            (best, most) = fits > most ? (candidate, fits) : (best, most);
        }

        return best;
    }

    /// <summary>What a placement other than the identity means, in words.</summary>
    public static IEnumerable<CutDifference> Words(Placement place)
    {
        double factor = 1 / place.Scale;
        if (Math.Abs(factor - 1) > SameFactor)
        {
            double? unit = UnitFactors.Cast<double?>().FirstOrDefault(u => Math.Abs((u!.Value / factor) - 1) < 1e-6);
            string why = unit is double f && Math.Abs((f > 1 ? f : 1 / f) - 25.4) < 1e-9 ? (f > 1 ? ": millimetres were taken for inches" : ": inches were taken for millimetres") : "";
            yield return new(unit is null ? "against.scale" : "against.unit", null, $"The drawing is {Wording.Number(factor, 6)} times as large as the design asks{why}. What follows is measured after that is undone.");
        }

        if (place.Mirrors)
        {
            yield return new("against.mirrored", null, "The drawing is mirrored: the part would come out left for right. What follows is measured after that is undone.");
        }

        double turned = Math.IEEERemainder(-Angles.DegFromRad(place.TurnRad), 360);
        if (!place.Mirrors && Math.Abs(turned) > SameFactor)
        {
            yield return new("against.turned", null, $"The drawing is turned by {Wording.Number(turned, 3)}°; the part is the same where its grain does not matter.") { IsHarmless = true };
        }

        if (place == Moved(place) && place.Shift.Length > CutComparison.ToleranceMm)
        {
            yield return new("against.moved", null, $"The drawing is moved by {CutComparison.At(Point.Origin - place.Shift)} mm; the part is the same.") { IsHarmless = true, SizeMm = place.Shift.Length };
        }
    }

    // A shift tells something by itself only where nothing else was changed: otherwise it goes with that.
    private static Placement? Moved(Placement place) => place is { Mirrors: false, Scale: 1, TurnRad: 0 } ? place : null;

    private static IEnumerable<Placement> Candidates(Bounds should, Contour[] there)
    {
        Bounds box = BoxOf(there, Placement.Identity);
        double[] factors = [1, .. UnitFactors.Select(f => 1 / f), should.Width / box.Width, should.Height / box.Height, should.Width / box.Height, should.Height / box.Width];
        foreach (double factor in factors.Where(f => double.IsFinite(f) && f > 0))
        {
            foreach (bool mirrors in (bool[])[false, true])
            {
                for (int quarter = 0; quarter < 4; quarter++)
                {
                    Placement way = (mirrors ? Placement.MirrorInX : Placement.Identity).Then(Placement.Scaling(factor)).Then(Placement.Turn(quarter * Math.PI / 2));
                    Bounds now = BoxOf(there, way);
                    yield return way;
                    yield return way.Then(Placement.Translation(new Point(should.MinX, should.MinY) - new Point(now.MinX, now.MinY)));
                    yield return way.Then(Placement.Translation(new Point(should.MaxX, should.MaxY) - new Point(now.MaxX, now.MaxY)));
                }
            }
        }
    }

    private static Bounds BoxOf(Contour[] contours, Placement way) => contours.Select(c => c.Placed(way).Bounds).Aggregate((a, b) => a.With(b));

    private static IEnumerable<Bounds> Boxes(ReadDrawing drawing, Placement way) =>
        drawing.Layers.Where(l => !CutComparison.IsUncut(l.Name)).SelectMany(l => l.Contours).Select(c => c.Contour.Placed(way).Bounds);

    /// <summary>How many of the boxes there are under a placement.</summary>
    private static int Fits(Bounds[] should, Contour[] there, Placement way)
    {
        Bounds[] placed = [.. there.Select(c => c.Placed(way).Bounds)];
        return should.Count(s => placed.Any(p => CutComparison.Apart(s, p) <= CutComparison.ToleranceMm));
    }
}
