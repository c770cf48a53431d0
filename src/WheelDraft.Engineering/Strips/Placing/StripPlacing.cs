using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Where the wheel layout has put a ring: what a strip needs to know of the wheel.</summary>
/// <param name="RadiusMm">Ring radius, at mid travel.</param>
/// <param name="StationRad">Where its wiper touches, housing angle.</param>
/// <param name="InnerMm">Least radius of the wheel's copper: its bore.</param>
/// <param name="OuterMm">Greatest radius of the wheel's copper.</param>
public sealed record RingPlace(double RadiusMm, double StationRad, double InnerMm, double OuterMm)
{
    /// <summary>The place of the contact.</summary>
    public Point Contact => Point.Polar(RadiusMm, StationRad);
}

/// <summary>A strip in its place in the housing, pressed on the wheel.</summary>
public sealed record PlacedStrip
{
    /// <summary>The strip, formed and seated.</summary>
    public required StripForm Form { get; init; }

    /// <summary>From seat coordinates to the housing.</summary>
    public required SpacePlacement Placement { get; init; }

    /// <summary>Its net.</summary>
    public required string Net { get; init; }

    /// <summary>Its contact; null for a plain strip.</summary>
    public StripContact? Contact { get; init; }

    /// <summary>Its spring; null for a plain strip.</summary>
    public StripSpring? Spring { get; init; }

    /// <summary>Its ring; null for a plain strip.</summary>
    public RingPlace? Ring { get; init; }

    /// <summary>How the arm meets the moving copper; null for a plain strip.</summary>
    public ArmSense? Sense { get; init; }

    /// <summary>Lowest point of the nose when free of the wheel; null for a plain strip.</summary>
    public SpaceVector? FreeContact => Form.Nose is StripNose nose ? Placement.Of(nose.Centre) - (SpaceVector.Upward * nose.RadiusMm) : null;

    /// <summary>The contact in the working position: on its ring at its station, on the copper face; null for a plain strip.</summary>
    public SpaceVector? WorkingContact =>
        Form.Nose is StripNose nose && Spring is StripSpring spring
            ? Placement.Of(nose.Centre + (spring.GivesMmPerN * spring.ForceN)) - (SpaceVector.Upward * nose.RadiusMm)
            : null;

    /// <summary>The working shape from the terminal end to the tip.</summary>
    public required IReadOnlyList<WorkingStation> Working { get; init; }

    /// <summary>Its solids, in the working position.</summary>
    public required IReadOnlyList<Solid> Solids { get; init; }

    /// <summary>Its solids while its output is open and it rides on the carrier, lower by the step of the copper and the less deflected;
    /// empty where both are flush or it never leaves the copper.</summary>
    public IReadOnlyList<Solid> LoweredSolids { get; init; } = [];

    /// <summary>Its solids in every position that it rides in.</summary>
    public IEnumerable<Solid> AllSolids => Solids.Concat(LoweredSolids);

    /// <summary>Currents, losses and contact voltage.</summary>
    public required StripElectrics Electrics { get; init; }

    /// <summary>How long the contact lasts; null when no worn length says when it is worn.</summary>
    public WearLife? Life { get; init; }

    /// <summary>What the person should know.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}

/// <summary>One place along a strip as it lies in the housing when pressed on the wheel.</summary>
/// <param name="Piece">Index of its piece in <see cref="StripForm.Pieces"/>; a place where two pieces meet is there twice.</param>
/// <param name="AtMm">Developed position.</param>
/// <param name="Frame">How it lies.</param>
/// <param name="WidthMm">Width.</param>
/// <param name="LiftMm">How far it is pushed up from its free position.</param>
public readonly record struct WorkingStation(int Piece, double AtMm, StripFrame Frame, double WidthMm, double LiftMm);

/// <summary>Puts a formed strip in its place: the contact on its ring at its station, the arm leaving in the approach direction.</summary>
/// <remarks>Heights come from the seat alone. In plan the pressed contact lies on the ring; the free one lies off it by what pressing
/// moves it sideways. Directions are those of the free form.</remarks>
internal static class StripPlacing
{
    /// <summary>Where a wiper goes.</summary>
    internal static SpacePlacement OfWiper(StripForm form, StripSpring spring, double approachRad, RingPlace ring)
    {
        StripNose nose = form.Nose!;
        SpaceVector working = nose.Centre + (spring.GivesMmPerN * spring.ForceN);
        Vector back = -new Vector(nose.Frame.Along.X, nose.Frame.Along.Y);
        return At(working, ring.Contact, ring.StationRad + approachRad - back.AngleRad);
    }

    /// <summary>Where a plain strip goes: its end at a point, the strip leaving in the approach direction from the radial there.</summary>
    internal static SpacePlacement OfPlain(StripForm form, Point tip, double approachRad)
    {
        StripFrame end = form.Pieces[^1].End;
        Vector back = -new Vector(end.Along.X, end.Along.Y);
        return At(end.Origin, tip, tip.AngleRad + approachRad - back.AngleRad);
    }

    private static SpacePlacement At(SpaceVector local, Point place, double turnRad)
    {
        SpaceVector turned = new SpacePlacement(turnRad, default).Turned(local);
        return new SpacePlacement(turnRad, new(place.X - turned.X, place.Y - turned.Y, 0));
    }

    /// <summary>Why the contact leaves the wheel's copper ring over its travel, or null.</summary>
    internal static string? OffRing(string name, StripContact contact, RingPlace ring, double travelMm)
    {
        double halfWidth = contact.WidthMm / 2;
        double halfLength = contact.WornLengthMm / 2;
        double least = ring.RadiusMm - (travelMm / 2);
        double most = ring.RadiusMm + (travelMm / 2);
        double inward;
        double outward;
        if (contact.Shape == ContactShape.Disc)
        {
            (inward, outward) = (least - halfLength, most + halfLength);
        }
        else
        {
            (double sin, double cos) = Math.SinCos(contact.AngleRad);
            double radial = (halfWidth * Math.Abs(cos)) + (halfLength * Math.Abs(sin));
            inward = least - radial;
            outward = new[] { 1, -1 }.Max(s => new Vector(most + (halfWidth * cos) + (s * halfLength * sin), (halfWidth * sin) - (s * halfLength * cos)).Length);
        }

        return inward < ring.InnerMm || outward > ring.OuterMm
            ? string.Create(CultureInfo.InvariantCulture, $"the contact of strip \"{name}\" covers radii {inward:0.###} to {outward:0.###} mm over its travel of {travelMm:0.###} mm (worn, on ring radius {ring.RadiusMm:0.###} mm), but the wheel's copper reaches from {ring.InnerMm:0.###} to {ring.OuterMm:0.###} mm; move the ring, or shorten travel or contact")
            : null;
    }

    /// <summary>The working shape: every piece sampled, each place carried as the spring carries it.</summary>
    internal static IReadOnlyList<WorkingStation> Working(StripForm form, StripSpring? spring, SpacePlacement placement)
    {
        List<WorkingStation> line = [];
        double force = spring?.ForceN ?? 0;
        ILookup<int, ChainStation> chain = (spring?.Chain.Stations ?? []).ToLookup(s => s.Piece);
        CarriedBy end = spring is null ? default : spring.Chain.Vertical * force;
        for (int i = 0; i < form.Pieces.Count; i++)
        {
            FormedPiece piece = form.Pieces[i];
            ChainStation[] own = [.. chain[i]];
            double sprung = form.Nose?.AtMm ?? double.PositiveInfinity;
            List<(double At, CarriedBy By)> places = [.. own.Select(s => (s.AtMm, s.Vertical * force))];
            if (own.Length == 0 || own[0].AtMm > piece.FromMm)
            {
                CarriedBy before = piece.FromMm >= sprung ? end : default;
                places.InsertRange(0, Even(piece, piece.FromMm, own.Length == 0 ? piece.ToMm : own[0].AtMm).Select(at => (at, before)));
            }

            if (own.Length > 0 && own[^1].AtMm < piece.ToMm)
            {
                places.AddRange(Even(piece, own[^1].AtMm, piece.ToMm).Skip(1).Select(at => (at, end)));
            }

            foreach ((double at, CarriedBy by) in places)
            {
                double share = piece.DevelopedMm > 0 ? Math.Clamp((at - piece.FromMm) / piece.DevelopedMm, 0, 1) : 0;
                StripFrame free = piece.FrameAt(share);
                line.Add(new WorkingStation(i, at, placement.Of(by.Carry(free)), piece.WidthAt(share), by.Shift(free.Origin).Z));
            }
        }

        return line;
    }

    // What does not bend needs its ends only; a sweep its arcs' middles, a fold enough for a picture.
    private static IEnumerable<double> Even(FormedPiece piece, double fromMm, double toMm)
    {
        int cells = piece.Kind == FormedKind.Straight ? 1 : Math.Max(2, (int)Math.Ceiling(Math.Abs(piece.AngleRad) / (Math.PI / 12)));
        return Enumerable.Range(0, cells + 1).Select(k => k == cells ? toMm : fromMm + ((toMm - fromMm) * k / cells));
    }
}
