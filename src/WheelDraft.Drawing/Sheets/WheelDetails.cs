using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A window or land that is too small to be read at the scale of the plan.</summary>
/// <param name="Ring">Its ring.</param>
/// <param name="Centre">The middle of what is shown, wheel frame.</param>
/// <param name="ReachMm">How far round it is shown, mm of the model.</param>
/// <param name="Count">How many of the ring are as small: the first stands for them.</param>
internal sealed record SmallPlace(RingLayout Ring, Point Centre, double ReachMm, int Count);

/// <summary>Enlarged views of windows and lands that are too small on the plan, each in a circle with the letter that marks it there.</summary>
internal sealed class WheelDetails(Design design)
{
    // Narrower than this on the paper, its corners cannot be told from its edges, mm.
    private const double LeastMm = 6;

    private const double DiscMm = 15;

    // An enlargement by less shows nothing more.
    private const double LeastEnlarging = 1.8;
    private const double CaptionMm = 6;
    private const double AirMm = 3;

    // Longer than this many times its width, one end stands for all of a window.
    private const double LongShare = 3;

    /// <summary>Letters of details: A is the section and the datum; I and O are left out, as they are read as figures.</summary>
    private const string Letters = "BCDEFGHJKLMNPQRSTUVWXYZ";

    /// <summary>How many times as large as it is drawn the sheet is made afterwards.</summary>
    public double Size { get; init; } = 1;

    /// <summary>What is too small at a scale, the smallest of each ring.</summary>
    public IReadOnlyList<SmallPlace> At(DrawingScale scale)
    {
        List<SmallPlace> small = [];
        foreach (RingLayout ring in design.Wheel.Rings)
        {
            (double Width, SmallPlace Place)[] all = [.. Openings(ring)
                .Select(o => (Width: Math.Min(o.AngleRad * ring.RadiusMm, o.HighMm), Place: Place(ring, o)))
                .Where(p => p.Width > Tolerances.JoinMm && p.Width * scale.Factor < LeastMm)];
            if (all.Length > 0)
            {
                small.Add(all.MinBy(p => p.Width).Place with { Count = all.Length });
            }
        }

        return small;
    }

    /// <summary>Draws what finds room, and marks it on the plan.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="area">Where details may stand; what is taken there they keep off.</param>
    /// <param name="keepOff">What the plan itself takes, and what else is drawn without being taken.</param>
    /// <returns>How many found no room.</returns>
    public int Draw(SheetBuilder sheet, SheetView plan, Bounds area, IReadOnlyList<Bounds> keepOff)
    {
        int missing = 0;
        int letter = 0;
        foreach (SmallPlace place in At(plan.Scale))
        {
            if (letter < Letters.Length && Spot(sheet, (area, keepOff), CaptionOf(place)) is Point middle)
            {
                Draw(sheet, plan, place, (Letters[letter++].ToString(), middle, CaptionOf(place)));
            }
            else
            {
                missing++;
            }
        }

        return missing;
    }

    /// <summary>Draws those that are much larger than on the plan in rows from side to side, the first under the top of an area, and marks them on the plan.</summary>
    /// <returns>How many there was no room or no letter for.</returns>
    public int DrawRows(SheetBuilder sheet, SheetView plan, Bounds area)
    {
        int missing = 0;
        int letter = 0;
        Point corner = new(area.MinX, area.MaxY);
        foreach (SmallPlace place in At(plan.Scale).Where(p => ScaleOf(p).Factor >= LeastEnlarging * plan.Scale.Factor))
        {
            string caption = TextFit.Shortened(CaptionOf(place), area.Width - 1, TextStyle.Small);
            double half = Math.Max(DiscMm, TextFit.WidthMm(caption, TextStyle.Small) / 2) + 0.5;
            if (letter == Letters.Length)
            {
                missing++;
                continue;
            }

            if (corner.X + (2 * half) > area.MaxX)
            {
                corner = new(area.MinX, corner.Y - (2 * (DiscMm + CaptionMm + AirMm)));
            }

            Draw(sheet, plan, place, (Letters[letter++].ToString(), corner + new Vector(half, -DiscMm - AirMm), caption));
            corner += new Vector((2 * half) + AirMm, 0);
        }

        return missing;
    }

    // Between pieces of copper lies the carrier, if it is drawn on the plan; a windowed wheel is drawn by itself.
    private Fill Ground => Fill.Of(design.Wheel.Feed is null ? FillKind.Carrier : FillKind.Paper);

    private readonly record struct Opening(double FromRad, double AngleRad, double HighMm);

    // Between a break and the next make stands a window; with lands, the copper itself is what may be small.
    private static IEnumerable<Opening> Openings(RingLayout ring)
    {
        if (ring.LandFromMm is double landFrom && ring.LandToMm is double landTo)
        {
            return ring.Periods.Select(p => new Opening(p.CopperRad.StartRad, p.CopperRad.SweepRad, landTo - landFrom));
        }

        if (ring.WindowFromMm is not double from || ring.WindowToMm is not double to)
        {
            return [];
        }

        CircleArc[] copper = [.. ring.Periods.Select(p => p.CopperRad).OrderBy(c => Angles.InTurn(c.StartRad))];
        return copper.Select((c, i) => new Opening(c.EndRad, copper.Length == 1 ? Angles.TurnRad - c.SweepRad : Angles.InTurn(copper[(i + 1) % copper.Length].StartRad - c.EndRad), to - from));
    }

    private static SmallPlace Place(RingLayout ring, Opening opening)
    {
        double middle = ((ring.WindowFromMm ?? ring.LandFromMm) + (ring.WindowToMm ?? ring.LandToMm))!.Value / 2;
        double wide = opening.AngleRad * middle;
        double least = Math.Min(wide, opening.HighMm);
        bool isLong = Math.Max(wide, opening.HighMm) > LongShare * least;
        double reach = isLong ? 1.6 * least : 0.65 * Math.Sqrt((wide * wide) + (opening.HighMm * opening.HighMm));
        double at = isLong && wide > opening.HighMm ? opening.FromRad + (0.8 * least / middle) : opening.FromRad + (opening.AngleRad / 2);
        double radius = isLong && wide <= opening.HighMm ? (ring.WindowFromMm ?? ring.LandFromMm)!.Value + (0.8 * least) : middle;
        return new(ring, Point.Polar(radius, at), reach, 1);
    }

    private string CaptionOf(SmallPlace place)
    {
        string what = design.Wheel.Feed is null ? "land" : "window";
        return place.Count > 1 ? $"{place.Ring.Name}, one of {DrawingNumbers.Trimmed(place.Count, 0)} {what}s" : $"{place.Ring.Name}, {what}";
    }

    private static DrawingScale ScaleOf(SmallPlace place) =>
        DrawingScale.Fitting(new(-place.ReachMm, -place.ReachMm, place.ReachMm, place.ReachMm), new(-DiscMm, -DiscMm, DiscMm, DiscMm));

    // The free place nearest to the middle of the area.
    private static Point? Spot(SheetBuilder sheet, (Bounds Area, IReadOnlyList<Bounds> KeepOff) where, string caption)
    {
        Bounds area = where.Area;
        const double stepMm = 3;
        double half = Math.Max(DiscMm, TextFit.WidthMm(caption, TextStyle.Small) / 2) + AirMm;
        List<Point> spots = [];
        for (double y = area.MinY + DiscMm + AirMm + (2 * CaptionMm); y <= area.MaxY - DiscMm - AirMm; y += stepMm)
        {
            for (double x = area.MinX + half; x <= area.MaxX - half; x += stepMm)
            {
                spots.Add(new(x, y));
            }
        }

        return spots.OrderBy(p => p.DistanceTo(area.Centre))
            .Where(p =>
            {
                Bounds box = new(p.X - half, p.Y - DiscMm - (2 * CaptionMm) - AirMm, p.X + half, p.Y + DiscMm + AirMm);
                return !where.KeepOff.Any(box.Overlaps) && sheet.Texts.IsFree(TextBox.Of(box));
            })
            .Cast<Point?>().FirstOrDefault();
    }

    private void Draw(SheetBuilder sheet, SheetView plan, SmallPlace place, (string Letter, Point Middle, string Caption) at)
    {
        (string letter, Point middle, string caption) = at;
        GroupPen pen = sheet.Group($"detail-{letter.ToLowerInvariant()}", $"Detail {letter}: {CaptionOf(place)}", "detail");
        DrawingScale scale = ScaleOf(place);
        SheetView view = SheetView.At(scale, place.Centre, middle);
        Arc disc = new(place.Centre, DiscMm / scale.Factor, 0, Angles.TurnRad);
        pen.In(view).Area(new Outline(Contour.Circle(disc.Centre, disc.RadiusMm)), Ground);
        Copper(pen.In(view), disc);
        pen.In(view).Line(CircleClip.Inside(new Arc(Point.Origin, place.Ring.RadiusMm, 0, Angles.TurnRad), disc).ToArray() is { Length: > 0 } ring ? ring : [disc], LineStyle.Centre);
        pen.Line(Contour.Circle(middle, DiscMm), LineStyle.Thin);
        Point top = middle - new Vector(0, DiscMm + 1.4);
        pen.Text(Size == 1 ? Invariant.Text($"{letter} ({scale})") : Invariant.Text($"{letter} ({scale.Factor * Size:0.##}:1)"), new(top, TextAlong.Middle, TextAcross.Top), new TextStyle(3.5, TextWeight.Heavy));
        pen.Text(caption, new(top - new Vector(0, CaptionMm), TextAlong.Middle, TextAcross.Top), TextStyle.Small);
        pen.Texts.Block(new Bounds(middle.X - DiscMm, middle.Y - DiscMm, middle.X + DiscMm, middle.Y + DiscMm));
        Mark(sheet, plan, (place, letter, disc.RadiusMm));
    }

    // The circle on the plan that the detail shows, with its letter.
    private static void Mark(SheetBuilder sheet, SheetView plan, (SmallPlace Place, string Letter, double RadiusMm) of)
    {
        GroupPen pen = sheet.Group($"detail-mark-{of.Letter.ToLowerInvariant()}", $"Where detail {of.Letter} is", "detail");
        Point centre = plan.Of(of.Place.Centre);
        double radius = plan.OnPaperMm(of.RadiusMm);
        pen.Line(Contour.Circle(centre, radius), LineStyle.Thin);
        IEnumerable<TextSpot> spots = Enumerable.Range(0, 24).Select(i => new TextSpot(centre + Vector.Polar(radius + 3, Angles.RadFromDeg(40 + (i * 15))), TextAlong.Middle, TextAcross.Middle));
        SheetText[] candidates = [.. spots.Select(s => new SheetText(of.Letter, s, TextStyle.Label))];
        SheetText chosen = candidates.FirstOrDefault(t => pen.Texts.IsFree(t.Box) && pen.Texts.IsOffEdges(t.Box)) ?? candidates.FirstOrDefault(t => pen.Texts.IsFree(t.Box)) ?? candidates[0];
        pen.PlatedText(of.Letter, chosen.Place, TextStyle.Label);
    }

    private void Copper(ViewPen pen, Arc disc)
    {
        foreach (CopperPiece piece in design.Wheel.Copper)
        {
            foreach (Outline part in CircleClip.Inside(piece.Outline, disc.Centre, disc.RadiusMm))
            {
                pen.Area(part, Fill.Of(FillKind.Copper));
            }

            foreach (Piece edge in piece.Outline.Pieces.SelectMany(p => CircleClip.Inside(p, disc)))
            {
                pen.Line([edge], LineStyle.Edge);
            }
        }
    }
}
