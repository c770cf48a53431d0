using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

// The chapter "Strips": how a formed strip looks from the side and from the wiper side, as exact lines and arcs. Which sheet shows it,
// with what dimensions, is the business of the sheets.

/// <summary>A formed strip from the side, free of the wheel: x along the strip from the end of the clamp, y the height over the copper face, mm.</summary>
/// <remarks>Folds are arcs, everything else straight; sweeps are unrolled, so that lengths along the strip are true.</remarks>
internal sealed record StripProfile
{
    private StripProfile(StripForm form, IReadOnlyList<ProfileLeg> legs)
    {
        (Form, Legs) = (form, legs);
        Edge = EdgeOf(form, legs);
    }

    /// <summary>The strip.</summary>
    public StripForm Form { get; }

    /// <summary>Its pieces, from the terminal end to the tip.</summary>
    public IReadOnlyList<ProfileLeg> Legs { get; }

    /// <summary>Its outline.</summary>
    public Contour Edge { get; }

    /// <summary>The contact rivet's outline; null without one.</summary>
    public Contour? Rivet { get; private init; }

    /// <summary>The point that touches, free; null for a plain strip.</summary>
    public Point? Contact { get; private init; }

    /// <summary>What must be seen of it.</summary>
    public Bounds Bounds => Rivet is Contour rivet ? Edge.Bounds.With(rivet.Bounds) : Edge.Bounds;

    /// <summary>Draws a strip from the side.</summary>
    public static StripProfile Of(StripForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        double half = form.Strip.ThicknessMm / 2;
        List<ProfileLeg> raw = Chain(form, new(Point.Origin, 0));
        ProfileFrame held = FrameAt(raw, form, form.Clamp.ToMm);
        Placement seat = Placement.Translation(Point.Origin - held.At)
            .Then(Placement.Turn(-held.DirectionRad))
            .Then(Placement.Translation(new(0, form.SeatLevelMm + half)));
        ProfileFrame first = new(seat.Of(Point.Origin), seat.TurnRad);
        StripProfile profile = new(form, Chain(form, first));
        return form.Nose is StripNose nose ? profile.WithNose(nose) : profile;
    }

    /// <summary>The frame at a developed position, mm.</summary>
    public ProfileFrame At(double atMm) => FrameAt(Legs, Form, atMm);

    private static ProfileFrame FrameAt(IReadOnlyList<ProfileLeg> legs, StripForm form, double atMm)
    {
        int index = Enumerable.Range(0, legs.Count).FirstOrDefault(i => atMm <= form.Pieces[i].ToMm, legs.Count - 1);
        FormedPiece piece = form.Pieces[index];
        return legs[index].Along(piece.DevelopedMm > 0 ? Math.Clamp((atMm - piece.FromMm) / piece.DevelopedMm, 0, 1) : 0);
    }

    private static List<ProfileLeg> Chain(StripForm form, ProfileFrame start)
    {
        List<ProfileLeg> legs = [];
        foreach (FormedPiece piece in form.Pieces)
        {
            ProfileLeg leg = new(start, piece.LengthMm, piece.Kind == FormedKind.Fold ? piece.AngleRad : 0);
            legs.Add(leg);
            start = leg.Along(1);
        }

        return legs;
    }

    private StripProfile WithNose(StripNose nose)
    {
        ProfileFrame at = At(nose.AtMm);
        double half = Form.Strip.ThicknessMm / 2;
        if (nose.Rivet is not StripRivet rivet)
        {
            // The lowest point of the fold's outside, straight below its centre.
            ProfileLeg fold = Legs[nose.PieceIndex];
            return this with { Contact = fold.Centre - new Vector(0, nose.RadiusMm) };
        }

        double chord = Math.Min(rivet.DiameterMm / 2, rivet.DomeRadiusMm);
        double sagitta = rivet.DomeRadiusMm - Math.Sqrt((rivet.DomeRadiusMm * rivet.DomeRadiusMm) - (chord * chord));
        double shoulder = half + rivet.HeightMm - sagitta;
        double radius = rivet.DiameterMm / 2;
        List<Point> corners = [at.Off(radius, -half), at.Off(-radius, -half), at.Off(-radius, -shoulder)];
        List<Piece> pieces = [new Segment(corners[0], corners[1])];
        Add(pieces, corners[2]);
        Add(pieces, at.Off(-chord, -shoulder));
        pieces.Add(Arc.About(at.Off(0, rivet.DomeRadiusMm - half - rivet.HeightMm), pieces[^1].End, at.Off(chord, -shoulder), Turning.Anticlockwise));
        Add(pieces, at.Off(radius, -shoulder));
        Add(pieces, corners[0]);
        Point centre = at.Off(0, rivet.DomeRadiusMm - half - rivet.HeightMm);
        return this with { Rivet = new Contour(pieces), Contact = centre - new Vector(0, rivet.DomeRadiusMm) };
    }

    private static void Add(List<Piece> pieces, Point to)
    {
        if (pieces[^1].End.DistanceTo(to) > Tolerances.JoinMm)
        {
            pieces.Add(new Segment(pieces[^1].End, to));
        }
    }

    private static Contour EdgeOf(StripForm form, IReadOnlyList<ProfileLeg> legs)
    {
        double half = form.Strip.ThicknessMm / 2;
        List<Piece> lower = [.. legs.Select(l => l.Side(-half)).OfType<Piece>()];
        List<Piece> upper = [.. legs.Select(l => l.Side(half)).OfType<Piece>()];
        return new Contour(
        [
            .. lower,
            new Segment(lower[^1].End, upper[^1].End),
            .. Enumerable.Reverse(upper).Select(p => p.Reversed()),
            new Segment(upper[0].Start, lower[0].Start),
        ]);
    }
}

/// <summary>A place on the middle line of a strip from the side, and its direction.</summary>
/// <param name="At">The place.</param>
/// <param name="DirectionRad">Toward the tip, radians from level.</param>
internal readonly record struct ProfileFrame(Point At, double DirectionRad)
{
    /// <summary>The point so far along and up from here, mm.</summary>
    public Point Off(double alongMm, double upMm)
    {
        Vector along = Vector.Polar(1, DirectionRad);
        return At + (along * alongMm) + (along.Left * upMm);
    }
}

/// <summary>One piece of a strip from the side.</summary>
/// <param name="Start">Its terminal side.</param>
/// <param name="LengthMm">Length of its middle line.</param>
/// <param name="AngleRad">Angle that it folds through, positive toward the wiper side; 0 when straight.</param>
internal readonly record struct ProfileLeg(ProfileFrame Start, double LengthMm, double AngleRad)
{
    private double RadiusMm => LengthMm / Math.Abs(AngleRad);

    /// <summary>Centre of a fold.</summary>
    public Point Centre => Start.Off(0, Math.Sign(AngleRad) * RadiusMm);

    /// <summary>The frame at a share of its length.</summary>
    public ProfileFrame Along(double share)
    {
        if (AngleRad == 0)
        {
            return new(Start.Off(LengthMm * share, 0), Start.DirectionRad);
        }

        double turned = AngleRad * share;
        return new(Start.At.RotatedAbout(Centre, turned), Start.DirectionRad + turned);
    }

    /// <summary>The line of one of its faces: so far up from the middle line; null where it has no length.</summary>
    internal Piece? Side(double upMm)
    {
        Point from = Start.Off(0, upMm);
        Point to = Along(1).Off(0, upMm);
        if (AngleRad == 0)
        {
            return from.DistanceTo(to) > Tolerances.ShortestPieceMm ? new Segment(from, to) : null;
        }

        double radius = RadiusMm - (Math.Sign(AngleRad) * upMm);
        double start = Start.DirectionRad - (Math.Sign(AngleRad) * Math.PI / 2);
        return radius > Tolerances.ShortestPieceMm ? new Arc(Centre, radius, start, AngleRad) : null;
    }
}

/// <summary>Turning points about points.</summary>
internal static class PointTurning
{
    public static Point RotatedAbout(this Point point, Point centre, double angleRad) => Placement.Turn(angleRad, centre).Of(point);
}
