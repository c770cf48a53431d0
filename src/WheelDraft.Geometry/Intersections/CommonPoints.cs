namespace WheelDraft.Geometry;

/// <summary>Common points of two pieces by the plain formulas, without any tolerance.</summary>
/// <remarks>Coincident pieces (collinear, co-circular) give none; common end points may or may not be among them.</remarks>
internal static class CommonPoints
{
    internal static List<Point> Of(Segment a, Segment b)
    {
        Vector first = a.End - a.Start;
        Vector second = b.End - b.Start;
        double startSide = first.Cross(b.Start - a.Start);
        double endSide = first.Cross(b.End - a.Start);
        double otherStart = second.Cross(a.Start - b.Start);
        double otherEnd = second.Cross(a.End - b.Start);
        return Opposite(startSide, endSide) && Opposite(otherStart, otherEnd)
            ? [b.Start.Towards(b.End, startSide / (startSide - endSide))]
            : [];
    }

    internal static List<Point> Of(Segment a, Arc b)
    {
        List<Point> common = [];
        Vector direction = a.Direction;
        double foot = (b.Centre - a.Start).Dot(direction);
        double height = Math.Abs((b.Centre - a.Start).Cross(direction));
        if (height > b.RadiusMm)
        {
            return common;
        }

        double half = Math.Sqrt((b.RadiusMm - height) * (b.RadiusMm + height));
        Keep(foot - half);
        if (half > 0)
        {
            Keep(foot + half);
        }

        return common;

        void Keep(double along)
        {
            Point at = a.Start + (direction * along);
            if (along >= 0 && along <= a.Length && b.Faces(at - b.Centre))
            {
                common.Add(at);
            }
        }
    }

    internal static List<Point> Of(Arc a, Arc b)
    {
        List<Point> common = [];
        Vector centres = b.Centre - a.Centre;
        double apart = centres.Length;
        if (!(apart > 0))
        {
            return common;
        }

        double along = ((apart * apart) + ((a.RadiusMm - b.RadiusMm) * (a.RadiusMm + b.RadiusMm))) / (2 * apart);
        double square = (a.RadiusMm - along) * (a.RadiusMm + along);
        if (!(square >= 0))
        {
            return common;
        }

        double half = Math.Sqrt(square);
        Vector unit = centres / apart;
        Keep((unit * along) + (unit.Left * half));
        if (half > 0)
        {
            Keep((unit * along) - (unit.Left * half));
        }

        return common;

        void Keep(Vector outward)
        {
            Point at = a.Centre + outward;
            if (a.Faces(outward) && b.Faces(at - b.Centre))
            {
                common.Add(at);
            }
        }
    }

    private static bool Opposite(double a, double b) => (a > 0 && b < 0) || (a < 0 && b > 0);
}
