namespace WheelDraft.Geometry;

/// <summary>The legs of a way that a beam found, followed back to its beginning.</summary>
internal sealed class BeamPath
{
    private readonly List<(Point From, Point To, double LengthMm, Crossing? Crossed)> _moves = [];

    private BeamPath()
    {
    }

    /// <summary>The legs from the source to the arrival; their lengths add up to the arrival's.</summary>
    internal static IReadOnlyList<SurfaceLeg> Legs(Arrival arrival)
    {
        BeamPath path = new();
        Point at = arrival.At;
        if (arrival.Linked is { } linked)
        {
            double rest = arrival.LengthMm - arrival.Beam.LengthTo(at);
            path._moves.Add((at, linked, rest, new Crossing(arrival.Over!.Region, at, rest - at.DistanceTo(linked), true)));
        }

        Beam? beam = arrival.Beam;
        while (beam is not null)
        {
            Beam here = beam;
            (beam, at) = path.Back(here, at);
        }

        path._moves.Reverse();
        return Joined(path._moves, arrival.LengthMm);
    }

    private (Beam? Before, Point At) Back(Beam beam, Point at)
    {
        if (beam.Wall is { } wall)
        {
            return BackOnWall(beam, wall, at);
        }

        if (beam.Entry == BeamEntry.Source)
        {
            Point start = beam.FromMm > 0 ? beam.Source.Towards(at, beam.FromMm / beam.Source.DistanceTo(at)) : beam.Source;
            Add(start, at, null);
            return (null, at);
        }

        ReliefEdge through = beam.Through!;
        Point entry = through.At(Math.Clamp(through.AlongOf(On(beam.Source, at, through)), 0, through.LengthMm));
        Add(entry, at, null);
        if (beam.Entry == BeamEntry.Link)
        {
            double length = beam.LengthTo(entry);
            _moves.Add((beam.LinkedFrom, entry, length, new Crossing(through.Region, entry, length - beam.LinkedFrom.DistanceTo(entry), true)));
            return (null, entry);
        }

        if (beam.Entry == BeamEntry.AcrossRecess)
        {
            Beam before = beam.Before!;
            Point left = On(before.Source, before.Source + (at - beam.Source), beam.Near!);
            double step = through.BrinkMm - beam.Near!.BrinkMm, plan = left.DistanceTo(entry), length = Math.Sqrt((plan * plan) + (step * step));
            _moves.Add((left, entry, length, new Crossing(through.Region, entry, length - plan, true)));
            return (before, left);
        }

        return (beam.Before, new Point(through.AlongOf(entry), beam.IsHigh ? through.HighMm : through.LowMm));
    }

    private (Beam? Before, Point At) BackOnWall(Beam beam, ReliefEdge wall, Point at)
    {
        double slack = beam.Entry == BeamEntry.RoundCorner ? 0 : wall.SlackMm;
        double side = beam.Source.X <= 0 ? 0 : wall.LengthMm;
        Point entry = beam.Entry switch
        {
            BeamEntry.Source => beam.Source,
            BeamEntry.RoundCorner => new Point(side, beam.Source.Y + ((at.Y - beam.Source.Y) * (side - beam.Source.X) / (at.X - beam.Source.X))),
            _ => Level(beam.Source, at, beam.IsHigh ? wall.HighMm : wall.LowMm),
        };
        double length = entry.DistanceTo(at) - slack, plan = Math.Abs(at.X - entry.X);
        if (length + slack > 0)
        {
            _moves.Add((wall.At(entry.X), wall.At(at.X), length, new Crossing(wall.Region, wall.At((entry.X + at.X) / 2), length - plan, false)));
        }

        return beam.Entry switch
        {
            BeamEntry.Source => (null, at),
            BeamEntry.RoundCorner => (beam.Before, new Point(beam.LeftByFrom ? 0 : beam.Before!.Wall!.LengthMm, entry.Y)),
            _ => (beam.Before, wall.At(entry.X)),
        };
    }

    private static Point Level(Point source, Point at, double level) =>
        new(at.Y == source.Y ? at.X : source.X + ((at.X - source.X) * (level - source.Y) / (at.Y - source.Y)), level);

    /// <summary>Where the line through two points meets an edge's line.</summary>
    private static Point On(Point a, Point b, ReliefEdge edge)
    {
        double atA = edge.UphillOf(a), atB = edge.UphillOf(b);
        return atA == atB ? b : a.Towards(b, atA / (atA - atB));
    }

    private void Add(Point from, Point to, Crossing? crossed) => _moves.Add((from, to, from.DistanceTo(to), crossed));

    /// <summary>Moves along one line as one leg; a wall climbed on the spot belongs to the leg before it.</summary>
    private static List<SurfaceLeg> Joined(List<(Point From, Point To, double LengthMm, Crossing? Crossed)> moves, double lengthMm)
    {
        List<SurfaceLeg> legs = [];
        Point? from = null, to = null;
        double length = 0;
        List<Crossing> crossed = [];
        foreach ((Point From, Point To, double LengthMm, Crossing? Crossed) move in moves)
        {
            if (from is { } f && to is { } t && !IsInLine(f, t, move.From, move.To))
            {
                Close(f, t);
                (from, length, crossed) = (t, 0, []);
            }

            from ??= move.From;
            to = move.To;
            length += move.LengthMm;
            if (move.Crossed is not null)
            {
                crossed.Add(move.Crossed);
            }
        }

        if (from is { } first && to is { } last)
        {
            Close(first, last);
        }

        if (legs.Count > 0)
        {
            // What is taken off to be certain belongs to the last leg.
            double rest = lengthMm - legs.Sum(l => l.LengthMm);
            legs[^1] = legs[^1] with { LengthMm = legs[^1].LengthMm + rest };
        }

        return legs;

        void Close(Point a, Point b)
        {
            if (a.DistanceTo(b) > Tolerances.ShortestPieceMm)
            {
                legs.Add(new SurfaceLeg(new Segment(a, b), length, crossed));
            }
            else if (legs.Count > 0)
            {
                legs[^1] = legs[^1] with { LengthMm = legs[^1].LengthMm + length, Crossed = [.. legs[^1].Crossed, .. crossed] };
            }
        }
    }

    /// <summary>Whether a move goes straight on (or stays where it is).</summary>
    private static bool IsInLine(Point from, Point to, Point next, Point end)
    {
        Vector first = to - from, second = end - next;
        return to.DistanceTo(next) <= SurfaceTolerances.InLineMm && (second.Length <= SurfaceTolerances.InLineMm || first.Length <= SurfaceTolerances.InLineMm
            || (first.Dot(second) > 0 && Math.Abs(first.Cross(second)) <= SurfaceTolerances.InLineMm * (first.Length + second.Length)));
    }
}
