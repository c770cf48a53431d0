using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>Closed contours and filled areas on no net: metal without a name. What touches a net is part of it, the rest floats.</summary>
/// <remarks>Shapes that touch each other are one conductor. What touches two nets joins them. A lone contour that holds every net whole, and
/// touches none, is the edge of the board or the frame of the sheet: as a plate it would join all nets. Floating metal that
/// is too far away to shorten any path below what is asked, by the boxes round the shapes, is left out of the measuring.</remarks>
internal sealed class LooseCopper
{
    // Above this chains over floating metal take minutes.
    private const int MostFloating = 300;

    // Pairs of near boxes; with this many a second or two.
    private const int MostPairs = 2_000_000;

    // The widest X of any pollution degree (IEC 60664-1:2020 clause 6.8): gaps below it may count as nothing.
    private const double WidestXMm = 1.5;

    private readonly List<(CopperShape Shape, string Layer)> _loose = [];
    private readonly IReadOnlyList<Solid> _nets;
    private readonly List<Finding> _findings;
    private int[] _clusters = [];

    private LooseCopper(IReadOnlyList<Solid> nets, List<Finding> findings)
    {
        _nets = nets;
        _findings = findings;
    }

    /// <summary>Shapes that hold all nets, taken as edges of the drawing.</summary>
    internal List<LeftOut> Frames { get; } = [];

    /// <summary>The solids that loose metal adds: to nets that it touches, and floating.</summary>
    /// <param name="layers">The layers on no net that count.</param>
    /// <param name="nets">The copper of the nets.</param>
    /// <param name="reachMm">No path longer than this matters, mm.</param>
    /// <param name="findings">Takes what is found.</param>
    internal static (IReadOnlyList<Solid> Solids, IReadOnlyList<LeftOut> Frames) Of(IEnumerable<ReadLayer> layers, IReadOnlyList<Solid> nets, double reachMm, List<Finding> findings)
    {
        LooseCopper copper = new(nets, findings);
        foreach (ReadLayer layer in layers)
        {
            copper.Take(layer);
        }

        return (copper._loose.Count == 0 ? [] : copper.Solids(reachMm), copper.Frames);
    }

    private void Take(ReadLayer layer)
    {
        Contour[] contours = [.. layer.Contours.Select(c => c.Contour)];
        bool sound = contours.Length == 0 || Soundness.Faults(contours).Count == 0;

        // Contours that cross cannot be nested: each is filled.
        IReadOnlyList<CopperShape> shapes = sound
            ? NetCopper.Of(layer, [], _findings)
            : [.. layer.Contours.Select(c => new CopperShape(new Outline(c.Contour), c.OffMm, c.Source)), .. layer.Areas.Select(a => new CopperShape(a.Outline, a.OffMm, a.Source))];
        foreach (CopperShape shape in shapes)
        {
            if (HoldsAllNets(shape.Outline))
            {
                Frames.Add(new(layer.Name, "closed contour round all nets", LeftOutKind.Frame, 1, shape.Source.Line, "it is taken as the edge of the board or a frame, not as copper"));
            }
            else
            {
                _loose.Add((shape, layer.Name));
            }
        }
    }

    private bool HoldsAllNets(Outline outline)
    {
        Bounds box = outline.Bounds;
        return _nets.All(n => box.Contains(new(n.Outline.Bounds.MinX, n.Outline.Bounds.MinY)) && box.Contains(new(n.Outline.Bounds.MaxX, n.Outline.Bounds.MaxY)))
            && _nets.All(n => outline.Locate(n.Outline.Outer.Pieces[0].Start) == Whereabouts.Inside)
            && Soundness.Faults([.. outline.Contours, .. _nets.Select(n => n.Outline.Outer)]).All(f => Math.Min(f.First, f.Second) > outline.Holes.Count);
    }

    private List<Solid> Solids(double reachMm)
    {
        List<(int First, int Second, double LeastMm)> near = Near(reachMm);
        int count = _loose.Count;
        _clusters = [.. Enumerable.Range(0, count)];
        HashSet<(int Cluster, string Net)> touching = [];
        foreach ((int first, int second, double least) in near.Where(n => n.LeastMm == 0 && n.First < count))
        {
            if (Touch(OutlineOf(first), OutlineOf(second)))
            {
                if (second < count)
                {
                    _clusters[Root(first)] = Root(second);
                }
                else
                {
                    touching.Add((first, _nets[second - count].Net));
                }
            }
        }

        ILookup<int, string> netsOf = touching.Select(t => (Root(t.Cluster), t.Net)).Distinct().ToLookup(t => t.Item1, t => t.Net);
        HashSet<int> relevant = Relevant(near, reachMm, netsOf);
        List<Solid> solids = [];
        for (int i = 0; i < count; i++)
        {
            string[] nets = [.. netsOf[Root(i)].Order(StringComparer.Ordinal)];
            if (nets.Length > 0 || relevant.Contains(Root(i)))
            {
                solids.Add(SolidOf(i, nets));
            }
        }

        Report(netsOf, relevant.Count);
        return solids;
    }

    private Solid SolidOf(int loose, string[] nets)
    {
        (CopperShape shape, string layer) = _loose[loose];
        if (nets.Length == 1)
        {
            Solid joined = _nets.First(n => string.Equals(n.Net, nets[0], StringComparison.Ordinal));
            return joined with { Name = layer, Outline = shape.Outline, Tolerance = shape.Tolerance };
        }

        CopperShape first = _loose[Root(loose)].Shape;
        string name = $"copper on no net (layer {layer}, {first.Source})";
        return new Solid(name, name, SolidKind.Floating, Turns: false, 0, 0, shape.Outline) { OnSurface = DrawingCheck.SurfaceName, Tolerance = shape.Tolerance };
    }

    private void Report(ILookup<int, string> netsOf, int floating)
    {
        const string cure = "Give its layer to --net, or leave it out with --ignore if it is no copper.";
        foreach (IGrouping<int, string> joined in netsOf.OrderBy(g => _loose[g.Key].Shape.Source.Line))
        {
            (CopperShape shape, string layer) = _loose[joined.Key];
            string[] nets = [.. joined.Order(NaturalOrder.Names)];
            TextPlace place = new(shape.Source.Line, 1);
            _findings.Add(nets.Length > 1
                ? Finding.Error("drawing.joined", $"Copper on no net, {shape.Source} on layer {layer}, touches the nets {string.Join(", ", nets)}. {cure}", place)
                : Finding.Note("drawing.joined", $"Copper on no net, {shape.Source} on layer {layer}, touches net '{nets[0]}' and counts as part of it. {cure}", place));
        }

        int others = _loose.Select((_, i) => Root(i)).Distinct().Count(r => !netsOf[r].Any());
        if (others > 0)
        {
            string layers = string.Join(", ", _loose.Select(l => l.Layer).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal));
            _findings.Add(Finding.Note("drawing.floating", $"{DxfReader.Count(others)} closed shapes on no net (layers {layers}) count as floating copper, {DxfReader.Count(floating)} of them near enough to two nets to matter: ways over the others are longer than what is asked, and the figures here leave them out. Give their layers to --net, or leave them out with --ignore if they are no copper."));
        }
    }

    /// <summary>Pairs of shapes, loose ones first and then those of nets, whose boxes are within reach, with the gap of the boxes.</summary>
    private List<(int First, int Second, double LeastMm)> Near(double reachMm)
    {
        Bounds[] boxes = [.. Enumerable.Range(0, _loose.Count + _nets.Count).Select(i => OutlineOf(i).Bounds.Grown(OffMm(i) + Tolerances.JoinMm))];
        List<(int, int, double)> near = [];
        long looked = 0;
        foreach ((int first, int second) in new BoxGrid([.. boxes.Select(b => b.Grown(reachMm / 2))]).Pairs(() => ++looked <= 50L * MostPairs))
        {
            if (Math.Min(first, second) < _loose.Count)
            {
                near.Add((Math.Min(first, second), Math.Max(first, second), boxes[first].DistanceTo(boxes[second])));
            }

            if (near.Count > MostPairs)
            {
                break;
            }
        }

        return near.Count > MostPairs || looked > 50L * MostPairs ? throw TooMany() : near;
    }

    /// <summary>The conductors that may shorten a path between two nets below the reach, by the boxes round them.</summary>
    private HashSet<int> Relevant(List<(int First, int Second, double LeastMm)> near, double reachMm, ILookup<int, string> netsOf)
    {
        Dictionary<int, List<(int Other, double Mm)>> steps = [];
        Dictionary<string, List<(int Other, double Mm)>> starts = new(StringComparer.Ordinal);
        foreach ((int first, int second, double gap) in near)
        {
            double counted = gap < WidestXMm ? 0 : gap;
            int from = Root(first);
            if (second >= _loose.Count)
            {
                Add(starts, _nets[second - _loose.Count].Net, (from, counted));
            }
            else if (Root(second) is int to && to != from)
            {
                Add(steps, from, (to, counted));
                Add(steps, to, (from, counted));
            }
        }

        Dictionary<int, (double Least, double Second)> costs = [];
        foreach (List<(int, double)> start in starts.Values)
        {
            foreach ((int at, double mm) in Spread(start, steps, reachMm))
            {
                (double least, double second) = costs.GetValueOrDefault(at, (double.PositiveInfinity, double.PositiveInfinity));
                costs[at] = mm < least ? (mm, least) : (least, Math.Min(second, mm));
            }
        }

        HashSet<int> relevant = [.. costs.Where(c => c.Value.Least + c.Value.Second <= reachMm && netsOf[c.Key].Count() != 1).Select(c => c.Key)];
        return relevant.Count > MostFloating ? throw TooMany() : relevant;
    }

    private static void Add<T>(Dictionary<T, List<(int, double)>> lists, T key, (int, double) item)
        where T : notnull
    {
        if (!lists.TryGetValue(key, out List<(int, double)>? list))
        {
            lists.Add(key, list = []);
        }

        list.Add(item);
    }

    /// <summary>Least cost of every conductor within reach (E. W. Dijkstra, A note on two problems in connexion with graphs, 1959).</summary>
    private static Dictionary<int, double> Spread(List<(int Other, double Mm)> start, Dictionary<int, List<(int Other, double Mm)>> steps, double reachMm)
    {
        Dictionary<int, double> settled = [];
        PriorityQueue<int, double> open = new(start.Select(s => (s.Other, s.Mm)));
        while (open.TryDequeue(out int at, out double mm))
        {
            if (mm <= reachMm && settled.TryAdd(at, mm) && steps.TryGetValue(at, out List<(int Other, double Mm)>? next))
            {
                open.EnqueueRange(next.Where(n => !settled.ContainsKey(n.Other)).Select(n => (n.Other, mm + n.Mm)));
            }
        }

        return settled;
    }

    private static DesignRefusedException TooMany() => new(
        "drawing.floating",
        $"More than {DxfReader.Count(MostFloating)} closed shapes on no net lie between nets: too many to follow paths over. Leave layers that are no copper out with --ignore, or give them to --net.");

    private int Root(int loose)
    {
        while (_clusters[loose] != loose)
        {
            loose = _clusters[loose] = _clusters[_clusters[loose]];
        }

        return loose;
    }

    private Outline OutlineOf(int i) => i < _loose.Count ? _loose[i].Shape.Outline : _nets[i - _loose.Count].Outline;

    private double OffMm(int i) => i < _loose.Count ? _loose[i].Shape.OffMm : _nets[i - _loose.Count].Tolerance.CutEdgeMm;

    private static bool Touch(Outline a, Outline b) => Distances.Between(a, b).DistanceMm <= Tolerances.JoinMm;
}
