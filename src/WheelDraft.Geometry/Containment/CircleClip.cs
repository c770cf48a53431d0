namespace WheelDraft.Geometry;

/// <summary>What of a shape lies inside a circle, exact: its pieces cut where they cross the circle, joined by arcs of the circle.</summary>
public static class CircleClip
{
    // Shares of a piece closer than this are one cut.
    private const double SameShare = 1e-9;

    // Places tried along a circle that may touch edges: by the golden section no two are near each other.
    private const int MostTouches = 30;
    private const double GoldenShare = 0.6180339887498949;

    // What is smaller comes from rounding where an edge only touches the circle, mm².
    private const double LeastAreaMm2 = 1e-9;

    /// <summary>The part of a shape inside a circle: several shapes where the circle cuts it apart, none where it lies outside.</summary>
    /// <param name="outline">The shape; its contours do not cross.</param>
    /// <param name="centre">Centre of the circle.</param>
    /// <param name="radiusMm">Radius, above 0.</param>
    public static IReadOnlyList<Outline> Inside(Outline outline, Point centre, double radiusMm)
    {
        ArgumentNullException.ThrowIfNull(outline);
        Arc circle = new(centre, radiusMm, 0, Angles.TurnRad);
        List<Contour> contours = [];
        List<List<Piece>> chains = [];
        foreach (Contour contour in outline.Contours.Where(c => c.Bounds.Overlaps(circle.Bounds)))
        {
            Cut(contour, circle, contours, chains);
        }

        if (chains.Count == 0 && IsInside(circle, outline))
        {
            contours.Add(Contour.Circle(centre, radiusMm));
        }

        contours.AddRange(Joined(chains, circle));
        return ContourNesting.Outlines([.. contours.Where(c => Math.Abs(c.SignedAreaMm2) > LeastAreaMm2)]);
    }

    /// <summary>The parts of a piece that lie inside a circle, in order along it.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="circle">The whole circle.</param>
    public static IReadOnlyList<Piece> Inside(Piece piece, Arc circle)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(circle);
        if (!piece.Bounds.Overlaps(circle.Bounds))
        {
            return [];
        }

        List<Piece> inside = [];
        Meeting meeting = Intersections.Of(piece, circle);
        double[] cuts = [0, .. meeting.Points.Select(p => p.ShareOnFirst).Concat(meeting.Stretches.SelectMany(s => new[] { s.From.ShareOnFirst, s.To.ShareOnFirst })).Order(), 1];
        int from = 0;
        for (int i = 1; i < cuts.Length; i++)
        {
            if (cuts[i] - cuts[from] > SameShare)
            {
                if (piece.PointAt((cuts[from] + cuts[i]) / 2).DistanceTo(circle.Centre) < circle.RadiusMm)
                {
                    inside.Add(piece.Part(cuts[from], cuts[i]));
                }

                from = i;
            }
        }

        return inside;
    }

    // A circle that crosses no edge lies on one side of all; where it touches one is no answer.
    private static bool IsInside(Arc circle, Outline outline) =>
        Enumerable.Range(1, MostTouches + 1).Select(k => outline.Locate(circle.PointAt(k * GoldenShare % 1))).FirstOrDefault(w => w != Whereabouts.OnEdge) == Whereabouts.Inside;

    // A contour that stays inside is kept; of others each run of pieces inside is a chain from the circle to the circle.
    private static void Cut(Contour contour, Arc circle, List<Contour> whole, List<List<Piece>> chains)
    {
        List<List<Piece>> own = [];
        foreach (Piece part in contour.Pieces.SelectMany(p => Inside(p, circle)))
        {
            if (own.Count > 0 && own[^1][^1].End.DistanceTo(part.Start) <= Tolerances.JoinMm)
            {
                own[^1].Add(part);
            }
            else
            {
                own.Add([part]);
            }
        }

        bool isRound = own.Count > 0 && own[^1][^1].End.DistanceTo(own[0][0].Start) <= Tolerances.JoinMm;
        if (own.Count == 1 && isRound)
        {
            whole.Add(new Contour(own[0]));
            return;
        }

        if (isRound)
        {
            own[^1].AddRange(own[0]);
            own.RemoveAt(0);
        }

        chains.AddRange(own);
    }

    // Material lies on the left of every chain: where one leaves, the next that enters anticlockwise along the circle goes on.
    private static IEnumerable<Contour> Joined(List<List<Piece>> chains, Arc circle)
    {
        bool[] used = new bool[chains.Count];
        for (int first = 0; first < chains.Count; first++)
        {
            List<Piece> loop = [];
            for (int at = first; !used[at];)
            {
                used[at] = true;
                loop.AddRange(chains[at]);
                int next = Next(chains, chains[at][^1].End, circle);
                if (chains[at][^1].End.DistanceTo(chains[next][0].Start) > Tolerances.JoinMm)
                {
                    loop.Add(Arc.About(circle.Centre, chains[at][^1].End, chains[next][0].Start, Turning.Anticlockwise));
                }

                at = next;
            }

            if (loop.Count > 0)
            {
                yield return new Contour(loop);
            }
        }
    }

    private static int Next(List<List<Piece>> chains, Point leaves, Arc circle) =>
        Enumerable.Range(0, chains.Count).MinBy(i =>
        {
            double ahead = Angles.InTurn((chains[i][0].Start - circle.Centre).AngleRad - (leaves - circle.Centre).AngleRad);
            return leaves.DistanceTo(chains[i][0].Start) <= Tolerances.JoinMm ? 0 : ahead;
        });
}
