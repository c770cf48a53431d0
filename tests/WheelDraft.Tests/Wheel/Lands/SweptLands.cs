using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Operation.Distance;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Dxf;

namespace WheelDraft.Tests.Wheel;

/// <summary>What a bench would see of a file of lands: the lands read from DXF, two patches swept over them, and a meter between both wipers.</summary>
/// <remarks>Shares no code with layout or writer. The meter rings exactly while both patches are joined through lands that they
/// touch: sets of what touches are merged, whatever the rings are meant for.</remarks>
internal sealed class SweptLands
{
    private readonly List<IPreparedGeometry> _lands = [];
    private readonly List<IndexedFacetDistance> _reach = [];

    internal SweptLands(string dxf)
    {
        GeometryFactory factory = new();
        PlainDxf file = new(dxf);
        double toMm = file.Header("$INSUNITS").Trim() is "1" ? 25.4 : 1;
        List<Polygon> holes = [.. file.Records.Where(r => r.Layer is "WINDOW").Select(r => factory.CreatePolygon([.. SweptPatch.Flat(r, toMm)]))];
        foreach (PlainDxf.Record record in file.Records.Where(r => r.Layer is "OUTLINE"))
        {
            Polygon outer = factory.CreatePolygon([.. SweptPatch.Flat(record, toMm)]);
            Polygon? hole = holes.SingleOrDefault(h => outer.Contains(h));
            Polygon land = hole is null ? outer : factory.CreatePolygon(outer.Shell, [hole.Shell]);
            _lands.Add(PreparedGeometryFactory.Prepare(land));
            _reach.Add(new(land));
        }
    }

    internal int Count => _lands.Count;

    /// <summary>On-periods in degrees after home, by make.</summary>
    internal List<(double FromDeg, double ToDeg)> OnPeriods(SweptPatch.Wiper one, SweptPatch.Wiper other, bool clockwise) =>
        SweptPatch.PeriodsOf(at => AreJoined(one, other, clockwise ? at : -at));

    /// <summary>The distance between all that is joined to the one wiper and all that is joined to the other.</summary>
    internal double GapMm(SweptPatch.Wiper one, SweptPatch.Wiper other, double turnedDeg)
    {
        Polygon a = SweptPatch.Patch(one, one.StationDeg + turnedDeg);
        Polygon b = SweptPatch.Patch(other, other.StationDeg + turnedDeg);
        int[] onA = [.. Enumerable.Range(0, _lands.Count).Where(i => _lands[i].Intersects(a))];
        int[] onB = [.. Enumerable.Range(0, _lands.Count).Where(i => _lands[i].Intersects(b))];
        double least = a.Distance(b);
        foreach (int i in onA)
        {
            least = Math.Min(least, Math.Min(_reach[i].Distance(b), onB.Select(k => _reach[i].Distance(_lands[k].Geometry)).DefaultIfEmpty(least).Min()));
        }

        return onB.Select(k => _reach[k].Distance(a)).Append(least).Min();
    }

    /// <summary>The same over every conductor: the shortest sum of gaps from the one side to the other by way of lands under neither wiper and
    /// wipers of other rings, gaps below X nothing, unless there is only one. All pairs at once (R. W. Floyd, Algorithm 97, 1962).</summary>
    internal double ChainMm(SweptPatch.Wiper one, SweptPatch.Wiper other, IReadOnlyList<SweptPatch.Wiper> strange, double turnedDeg, double xMm)
    {
        Polygon a = SweptPatch.Patch(one, one.StationDeg + turnedDeg);
        Polygon b = SweptPatch.Patch(other, other.StationDeg + turnedDeg);
        bool[] onA = [.. _lands.Select(l => l.Intersects(a))], onB = [.. _lands.Select(l => l.Intersects(b))];

        // A node is a list of shapes: a land by its number, a patch as it lies; the two sides first.
        List<List<(int Land, Polygon? Patch)>> nodes = [[(-1, a)], [(-1, b)]];
        for (int i = 0; i < _lands.Count; i++)
        {
            if (onA[i] || onB[i])
            {
                nodes[onA[i] ? 0 : 1].Add((i, null));
            }
            else
            {
                nodes.Add([(i, null)]);
            }
        }

        nodes.AddRange(strange.Select(w => new List<(int, Polygon?)> { (-1, SweptPatch.Patch(w, w.StationDeg + turnedDeg)) }));
        int n = nodes.Count;
        double[,] least = new double[n, n];
        double whole = double.PositiveInfinity;
        for (int i = 0; i < n; i++)
        {
            for (int j = i + 1; j < n; j++)
            {
                double gap = nodes[i].Min(x => nodes[j].Min(y => Apart(x, y)));
                whole = (i, j) == (0, 1) ? gap : whole;
                least[i, j] = least[j, i] = (i, j) == (0, 1) ? double.PositiveInfinity : gap < xMm ? 0 : gap;
            }
        }

        for (int k = 2; k < n; k++)
        {
            for (int i = 0; i < n; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    least[i, j] = Math.Min(least[i, j], least[i, k] + least[k, j]);
                }
            }
        }

        return Math.Min(whole, least[0, 1]);
    }

    private double Apart((int Land, Polygon? Patch) one, (int Land, Polygon? Patch) other)
    {
        if (one.Patch is { } first)
        {
            return other.Patch is { } second ? first.Distance(second) : _lands[other.Land].Intersects(first) ? 0 : _reach[other.Land].Distance(first);
        }

        if (other.Patch is not null)
        {
            return Apart(other, one);
        }

        if (!_apart.TryGetValue((one.Land, other.Land), out double gap))
        {
            gap = _reach[one.Land].Distance(_lands[other.Land].Geometry);
            _apart.Add((one.Land, other.Land), gap);
        }

        return gap;
    }

    private readonly Dictionary<(int, int), double> _apart = [];

    private bool AreJoined(SweptPatch.Wiper one, SweptPatch.Wiper other, double turnedDeg)
    {
        Polygon a = SweptPatch.Patch(one, one.StationDeg + turnedDeg);
        Polygon b = SweptPatch.Patch(other, other.StationDeg + turnedDeg);
        int[] joined = [.. Enumerable.Range(0, _lands.Count + 2)];
        int Root(int i) => joined[i] == i ? i : joined[i] = Root(joined[i]);
        for (int i = 0; i < _lands.Count; i++)
        {
            if (_lands[i].Intersects(a))
            {
                joined[Root(i + 2)] = Root(0);
            }

            if (_lands[i].Intersects(b))
            {
                joined[Root(i + 2)] = Root(1);
            }
        }

        return Root(0) == Root(1);
    }

    internal static (SweptPatch.Wiper Own, SweptPatch.Wiper Other) WipersOf(RingLayout ring) =>
        (Wiper(ring, ring.Patch, ring.StationRad), Wiper(ring, ring.Return!.Patch, ring.Return.StationRad));

    private static SweptPatch.Wiper Wiper(RingLayout ring, ContactPatch patch, double stationRad) => new(
        ring.RadiusMm,
        Angles.DegFromRad(stationRad),
        2 * patch.HalfLengthMm,
        2 * patch.HalfWidthMm,
        Angles.DegFromRad(patch.AngleRad),
        patch.IsDisc);
}
