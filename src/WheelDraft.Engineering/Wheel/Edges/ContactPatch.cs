using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The patch in which a wiper touches, in the wiper's own frame: x along the outward radius, y anticlockwise.</summary>
/// <remarks>A rectangle across and along the fold, turned by the contact angle, or the disc of a rivet; centred on the
/// station at the ring radius.</remarks>
public sealed record ContactPatch
{
    /// <summary>Whether the patch is a disc (a rivet) and not a rectangle.</summary>
    public required bool IsDisc { get; init; }

    /// <summary>Half the contact length, along the motion at contact angle 0; the radius of a disc, mm.</summary>
    public required double HalfLengthMm { get; init; }

    /// <summary>Half the contact width, along the fold, mm; for a disc the same as the half length.</summary>
    public required double HalfWidthMm { get; init; }

    /// <summary>Half the contact length at the end of its life, at least <see cref="HalfLengthMm"/>, mm.</summary>
    public required double WornHalfLengthMm { get; init; }

    /// <summary>Fold line from the radial direction, anticlockwise, rad in (−π/2, π/2].</summary>
    public required double AngleRad { get; init; }

    /// <summary>Radius of the nose along the motion, mm; null when unknown: then the nose stands upright on the patch.</summary>
    public double? NoseRadiusMm { get; init; }

    /// <summary>The legs beside a contact fold, which are part of its nose; null for a dome, and where no strip is known.</summary>
    internal NoseSection? Section { get; init; }

    /// <summary>How far the nose rides below the copper's face while it is off it, mm: the step of the copper over the carrier.</summary>
    public double StepMm { get; init; }

    /// <summary>The patch of a wiper's contact.</summary>
    public static ContactPatch Of(StripContact contact) => new()
    {
        IsDisc = contact.Shape == ContactShape.Disc,
        HalfLengthMm = contact.LengthMm / 2,
        HalfWidthMm = contact.WidthMm / 2,
        WornHalfLengthMm = contact.WornLengthMm / 2,
        AngleRad = contact.AngleRad,
        NoseRadiusMm = contact.NoseRadiusMm,
    };

    /// <summary>The same patch at the end of its life.</summary>
    public ContactPatch Worn => IsDisc
        ? this with { HalfLengthMm = WornHalfLengthMm, HalfWidthMm = WornHalfLengthMm }
        : this with { HalfLengthMm = WornHalfLengthMm };

    /// <summary>By how much the patch reaches further to either side of its length at the end of its life, mm; in no direction more.</summary>
    public double WearMm => WornHalfLengthMm - HalfLengthMm;

    /// <summary>By how much the patch reaches further along the radius, to either side, at the end of its life, mm.</summary>
    /// <remarks>A disc grows all round. A rectangle grows across its fold, so that only the part of it along the radius counts:
    /// nothing where the fold lies along the radius. What the corners of the longer rectangle reach further round the circle depends
    /// on the ring radius: <see cref="LeastRadiusMm"/> and <see cref="GreatestRadiusMm"/> of the <see cref="Worn"/> patch give it.</remarks>
    public double SidewaysWearMm => WearMm * (IsDisc ? 1 : Math.Abs(Math.Sin(AngleRad)));

    /// <summary>The patch that counts for edges when the copper stands proud of the carrier.</summary>
    /// <remarks>A round nose of radius R meets an edge of height s early by √(2Rs − s²) from its lowest line, or by what its legs take where the
    /// edge is higher than they begin. A worn one has come down
    /// by as much as it has lost, w, and meets the edge as a new one would meet an edge of height s + w.</remarks>
    /// <param name="stepMm">How far the copper stands proud, at least 0.</param>
    /// <exception cref="InvalidOperationException">The nose radius is unknown and the step is not 0.</exception>
    public ContactPatch OverStep(double stepMm)
    {
        if (stepMm == 0)
        {
            return this;
        }

        double radius = NoseRadiusMm ?? throw new InvalidOperationException("A step needs the radius of the nose.");
        double Reach(double heightMm) => ReachMm(radius, heightMm);
        double Depth(double halfMm) => StripContact.DepthOf(2 * halfMm, radius);
        double half = Math.Max(HalfLengthMm, Reach(stepMm));
        return this with
        {
            HalfLengthMm = half,
            HalfWidthMm = IsDisc ? half : HalfWidthMm,
            WornHalfLengthMm = Math.Max(WornHalfLengthMm, Reach(stepMm + Depth(WornHalfLengthMm) - Depth(HalfLengthMm))),
            StepMm = stepMm,
        };
    }

    /// <summary>How deep the nose has worn when its patch has its full worn length, mm; 0 where its radius is unknown.</summary>
    internal double WearDepthMm => NoseRadiusMm is double radius ? Math.Max(0, StripContact.DepthOf(2 * WornHalfLengthMm, radius) - StripContact.DepthOf(2 * HalfLengthMm, radius)) : 0;

    // From the lowest line of a nose to where its section is so high: on its arc, or on a leg where that begins lower.
    private double ReachMm(double radiusMm, double heightMm)
    {
        if (Section is { SlopeRad: < Math.PI / 2 } legs && heightMm > radiusMm * (1 - Math.Cos(legs.SlopeRad)))
        {
            return (radiusMm * Math.Sin(legs.SlopeRad)) + ((heightMm - (radiusMm * (1 - Math.Cos(legs.SlopeRad)))) / Math.Tan(legs.SlopeRad));
        }

        return heightMm >= radiusMm ? radiusMm : Math.Sqrt((2 * radiusMm * heightMm) - (heightMm * heightMm));
    }

    /// <summary>The corners of a rectangle about its centre, wiper frame, anticlockwise.</summary>
    /// <exception cref="NotSupportedException">A disc has no corners.</exception>
    public IReadOnlyList<Vector> Corners
    {
        get
        {
            if (IsDisc)
            {
                throw new NotSupportedException("A disc has no corners.");
            }

            Vector along = Vector.Polar(HalfWidthMm, AngleRad);
            Vector across = Vector.Polar(HalfLengthMm, AngleRad).Left;
            return [-along - across, along - across, along + across, across - along];
        }
    }

    /// <summary>The least radius from the shaft axis that the patch covers on a ring, mm; 0 when it covers the axis.</summary>
    public double LeastRadiusMm(double ringRadiusMm)
    {
        if (IsDisc)
        {
            return Math.Max(0, ringRadiusMm - HalfLengthMm);
        }

        double beyondWidth = Math.Max(0, (ringRadiusMm * Math.Abs(Math.Cos(AngleRad))) - HalfWidthMm);
        double beyondLength = Math.Max(0, (ringRadiusMm * Math.Abs(Math.Sin(AngleRad))) - HalfLengthMm);
        return Math.Sqrt((beyondWidth * beyondWidth) + (beyondLength * beyondLength));
    }

    /// <summary>The greatest radius from the shaft axis that the patch covers on a ring, mm.</summary>
    public double GreatestRadiusMm(double ringRadiusMm)
    {
        if (IsDisc)
        {
            return ringRadiusMm + HalfLengthMm;
        }

        Vector centre = new(ringRadiusMm, 0);
        return Corners.Max(c => (centre + c).Length);
    }

    /// <summary>The point of the patch on a ring at the station 0 that is nearest to the shaft axis, at <see cref="LeastRadiusMm"/>.</summary>
    public Point NearestToAxis(double ringRadiusMm)
    {
        if (IsDisc)
        {
            return new(LeastRadiusMm(ringRadiusMm), 0);
        }

        // The axis in the frame of the fold, and the nearest point of the rectangle to it.
        Vector alongFold = Vector.Polar(1, AngleRad);
        double along = Math.Clamp(-ringRadiusMm * Math.Cos(AngleRad), -HalfWidthMm, HalfWidthMm);
        double across = Math.Clamp(ringRadiusMm * Math.Sin(AngleRad), -HalfLengthMm, HalfLengthMm);
        return new Point(ringRadiusMm, 0) + (alongFold * along) + (alongFold.Left * across);
    }

    /// <summary>A point of the patch on a ring at the station 0 that is farthest from the shaft axis, at <see cref="GreatestRadiusMm"/>.</summary>
    public Point FarthestFromAxis(double ringRadiusMm)
    {
        Point centre = new(ringRadiusMm, 0);
        return IsDisc ? new(ringRadiusMm + HalfLengthMm, 0) : centre + Corners.MaxBy(c => (centre + c).RadiusMm);
    }

    /// <summary>The ring radius on which the least radius covered is as given, mm.</summary>
    /// <param name="leastRadiusMm">At least 0.</param>
    public double RingRadiusFromLeast(double leastRadiusMm)
    {
        if (IsDisc)
        {
            return leastRadiusMm + HalfLengthMm;
        }

        double cos = Math.Abs(Math.Cos(AngleRad));
        double sin = Math.Abs(Math.Sin(AngleRad));
        double bySide = (leastRadiusMm + HalfWidthMm) / cos;
        if (cos > 0 && bySide * sin <= HalfLengthMm)
        {
            return bySide;
        }

        double byEnd = (leastRadiusMm + HalfLengthMm) / sin;
        if (byEnd * cos <= HalfWidthMm)
        {
            return byEnd;
        }

        // Nearest is a corner: (r cos − w)² + (r sin − a)² = least².
        double half = (cos * HalfWidthMm) + (sin * HalfLengthMm);
        double rest = (HalfWidthMm * HalfWidthMm) + (HalfLengthMm * HalfLengthMm) - (leastRadiusMm * leastRadiusMm);
        return half + Math.Sqrt(Math.Max(0, (half * half) - rest));
    }

    /// <summary>The patch as a shape about the origin of its own frame.</summary>
    public Contour Shape => IsDisc
        ? Contour.Circle(Point.Origin, HalfLengthMm)
        : Contour.Polygon([.. Corners.Select(c => Point.Origin + c)]);

    /// <summary>All that the patch covers while it moves along the radius, in the wiper's frame with the shaft axis as origin.</summary>
    /// <remarks>Convex, so that its distance from anything is the least over all places between the two, exactly.</remarks>
    /// <param name="fromMm">Ring radius at the inner end.</param>
    /// <param name="toMm">Ring radius at the outer end, at least the inner one.</param>
    public Contour Swept(double fromMm, double toMm)
    {
        if (fromMm >= toMm)
        {
            return Shape.Placed(Placement.Translation(new(fromMm, 0)));
        }

        return IsDisc ? SweptDisc(fromMm, toMm) : SweptRectangle(fromMm, toMm);
    }

    private Contour SweptDisc(double fromMm, double toMm)
    {
        (Point inner, Point outer, Vector up) = (new(fromMm, 0), new(toMm, 0), new(0, HalfLengthMm));
        return new Contour(
        [
            Arc.About(outer, outer - up, outer + up, Turning.Anticlockwise),
            new Segment(outer + up, inner + up),
            Arc.About(inner, inner + up, inner - up, Turning.Anticlockwise),
            new Segment(inner - up, outer - up),
        ]);
    }

    // Edges that face outward move to the outer end, those that face inward to the inner one; level ones are bridged by what joins both.
    private Contour SweptRectangle(double fromMm, double toMm)
    {
        const double levelMm = 1e-9;
        IReadOnlyList<Vector> corners = Corners;
        List<Point> outline = [];
        for (int i = 0; i < corners.Count; i++)
        {
            (Vector start, Vector end) = (corners[i], corners[(i + 1) % corners.Count]);
            if (Math.Abs(end.Y - start.Y) > levelMm)
            {
                Point centre = new(end.Y > start.Y ? toMm : fromMm, 0);
                outline.Add(centre + start);
                outline.Add(centre + end);
            }
        }

        return Contour.Polygon([.. outline.Where((p, i) => p.DistanceTo(outline[(i + 1) % outline.Count]) > levelMm)]);
    }

    /// <summary>The patch as a shape where it touches, in the housing.</summary>
    /// <param name="ringRadiusMm">Radius of the ring.</param>
    /// <param name="stationRad">Housing angle.</param>
    public Outline At(double ringRadiusMm, double stationRad) =>
        new(Shape.Placed(Placement.Translation(new(ringRadiusMm, 0)).Then(Placement.Turn(stationRad))));
}
