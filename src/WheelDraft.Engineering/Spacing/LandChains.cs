using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A way from the one wiper of an output to the other over conductors that belong to neither: floating lands, other rings.</summary>
/// <param name="NominalMm">What its parts count as drawn, mm.</param>
/// <param name="WorstMm">The same at the worst tolerance, mm; over part of the turn nowhere less.</param>
/// <param name="AtRad">Programme angle.</param>
/// <param name="OnFirst">Where it begins, in the housing.</param>
/// <param name="OnLast">Where it ends.</param>
/// <param name="Over">The conductors on the way, in order.</param>
internal sealed record LandChain(double NominalMm, double WorstMm, double AtRad, Point OnFirst, Point OnLast, IReadOnlyList<string> Over);

/// <summary>Finds the shortest chain over floating lands and other rings while an output of a lands wheel is open.</summary>
/// <remarks>The rule is that of pairs: first the gap between every two conductors, those below X counted as nothing, then the shortest chain. A
/// chain of one gap is no chain: that is the gap between both sides themselves, which counts in full. Over part of the turn the
/// least is certified by branch and bound: no gap between a patch and a land changes by more than the angle times the lesser
/// of their greatest radii (A. H. Land and A. G. Doig, Econometrica 28, 1960).</remarks>
internal sealed class LandChains
{
    /// <summary>How far the reported least of a part of the turn may lie below the true one, mm.</summary>
    /// <remarks>A floating land between two wipers is as near to both together wherever it stands: if finer, such a stretch would be halved without end.</remarks>
    internal const double WithinMm = 0.01;

    /// <summary>Parts looked at before the bound of the rest is reported instead: on the safe side.</summary>
    private const int MostParts = 2000;

    private readonly Motion _motion;
    private readonly double _offCentreMm;
    private readonly double _xMm;
    private readonly double _reachMm;
    private readonly List<Conductor> _all = [];
    private readonly Dictionary<(int, int), Nearest> _together = [];

    /// <param name="brief">The brief.</param>
    /// <param name="motion">The turning.</param>
    /// <param name="wheel">The wheel.</param>
    /// <param name="index">The output whose open contact is measured.</param>
    /// <param name="xMm">A part below this counts as nothing, mm.</param>
    internal LandChains(Brief brief, Motion motion, WheelLayout wheel, int index, double xMm)
    {
        (_motion, _offCentreMm, _xMm) = (motion, brief.Wheel.RunOutMm / 2, xMm);
        foreach (RingLayout ring in wheel.Rings.Skip(index).Take(1).Concat(wheel.Rings.Where((_, i) => i != index)))
        {
            double off = ring.SidePlayMm + brief.Housing.PlacingMm;
            _all.AddRange(ring.Wipers.Select(w => new Conductor($"the wiper of {w.Name}", w.Patch.At(ring.RadiusMm, w.StationRad), Turns: false, off + w.Patch.WearMm)));
        }

        _all.AddRange(wheel.Rings.SelectMany(r => r.Lands).Select(l => new Conductor(l.Name, l.Outline, Turns: true, brief.Process.ToleranceMm)));
        _reachMm = _all.Max(c => c.Radii.GreatestMm);
    }

    /// <summary>The shortest chain with the wheel standing at a programme angle; null when none is below a length.</summary>
    internal LandChain? At(double atRad, double belowMm) => new Search(this, atRad, 0, belowMm).Run();

    /// <summary>The least chain over part of the turn; null when none is below a length.</summary>
    internal LandChain? Least(double fromRad, double toRad, double belowMm)
    {
        LandChain? best = null;
        double lower = double.PositiveInfinity;
        PriorityQueue<(double From, double To), double> open = new();
        open.Enqueue((fromRad, toRad), 0);
        for (int looked = 0; open.TryDequeue(out (double From, double To) part, out double known); looked++)
        {
            double limit = Math.Min(belowMm, best?.WorstMm ?? belowMm);
            if (known >= limit - WithinMm)
            {
                break;
            }

            double middle = (part.From + part.To) / 2, half = (part.To - part.From) / 2;
            if (At(middle, limit) is { } here)
            {
                (best, limit) = (here, here.WorstMm);
            }

            if (half == 0 || new Search(this, middle, half, limit - WithinMm).Run() is not { } bound)
            {
                continue;
            }

            // Where a gap falls below X the sum leaps; then, or when it takes too long, the bound itself is the answer.
            if (looked > MostParts || half * _reachMm < WithinMm / 4)
            {
                (best, lower) = bound.WorstMm < lower ? (bound, bound.WorstMm) : (best, lower);
                continue;
            }

            open.Enqueue((part.From, middle), bound.WorstMm);
            open.Enqueue((middle, part.To), bound.WorstMm);
        }

        return best is null ? null : best with { WorstMm = Math.Max(0, Math.Min(best.WorstMm, lower) - WithinMm) };
    }

    /// <summary>The gap between two that stand still to each other, found once.</summary>
    private Nearest Together(int first, int second)
    {
        if (!_together.TryGetValue((first, second), out Nearest nearest))
        {
            nearest = Distances.Between(_all[first].Outline, _all[second].Outline);
            _together.Add((first, second), nearest);
        }

        return nearest;
    }

    private double ToleranceMm(Conductor a, Conductor b) => a.OffMm + b.OffMm + (a.Turns == b.Turns ? 0 : _offCentreMm);

    /// <summary>A patch or a land.</summary>
    private sealed record Conductor(string Name, Outline Outline, bool Turns, double OffMm)
    {
        internal RadialInterval Radii { get; } = Distances.Radii(Outline, Point.Origin);
    }

    /// <summary>One search over all conductors (Dijkstra), the wheel at one angle or anywhere within a half of a part of the turn.</summary>
    private sealed class Search(LandChains chains, double atRad, double halfRad, double belowMm)
    {
        /// <summary>A chain counts its gaps up to this: two or more make a chain.</summary>
        private const int Gaps = 2;

        private readonly Placement _wheel = chains._motion.WheelAt(atRad);
        private readonly Outline?[] _placed = new Outline?[chains._all.Count];
        private readonly Dictionary<(int Conductor, int Gaps), ReachedBy> _reached = new() { [(0, 0)] = new(0, 0, null, default) };
        private readonly PriorityQueue<(int Conductor, int Gaps), (double WorstMm, int Conductor, int Gaps)> _open = new([((0, 0), (0, 0, 0))]);
        private readonly HashSet<(int, int)> _settled = [];

        internal LandChain? Run()
        {
            while (_open.TryDequeue(out (int Conductor, int Gaps) at, out _))
            {
                if (!_settled.Add(at))
                {
                    continue;
                }

                if (at == (1, Gaps))
                {
                    return ChainTo(at);
                }

                for (int other = 1; other < chains._all.Count; other++)
                {
                    // The far wiper ends a chain, and nothing leads on through it.
                    if (at.Conductor != 1 && other != at.Conductor)
                    {
                        Step(at, other);
                    }
                }
            }

            return null;
        }

        private void Step((int Conductor, int Gaps) at, int other)
        {
            Conductor a = chains._all[at.Conductor], b = chains._all[other];
            double tolerance = chains.ToleranceMm(a, b);
            if (_reached[at].WorstMm + Counted(a.Radii.GapMm(b.Radii) - tolerance) >= belowMm)
            {
                return;
            }

            Nearest nearest = Between(at.Conductor, other);
            double off = a.Turns == b.Turns ? 0 : halfRad * Math.Min(a.Radii.GreatestMm, b.Radii.GreatestMm);
            double least = Math.Max(0, nearest.DistanceMm - off);
            if (least == 0)
            {
                Reach(at, (other, at.Gaps), 0, 0, nearest);
            }

            if (nearest.DistanceMm > 0)
            {
                Reach(at, (other, Math.Min(Gaps, at.Gaps + 1)), Counted(least - tolerance), Counted(nearest.DistanceMm), nearest);
            }
        }

        private double Counted(double mm) => SpacingTolerances.IsBelow(mm, chains._xMm) ? 0 : mm;

        private void Reach((int, int) from, (int, int) to, double worstMm, double nominalMm, Nearest way)
        {
            double worst = _reached[from].WorstMm + worstMm;
            if (worst < belowMm && (!_reached.TryGetValue(to, out ReachedBy? known) || worst < known.WorstMm))
            {
                _reached[to] = new(worst, _reached[from].NominalMm + nominalMm, from, way);
                _open.Enqueue(to, (worst, to.Item1, to.Item2));
            }
        }

        private Nearest Between(int first, int second)
        {
            if (first > second)
            {
                Nearest back = Between(second, first);
                return new(back.DistanceMm, back.OnSecond, back.OnFirst);
            }

            Conductor a = chains._all[first], b = chains._all[second];
            if (a.Turns == b.Turns)
            {
                Nearest drawn = chains.Together(first, second);
                return a.Turns ? new(drawn.DistanceMm, _wheel.Of(drawn.OnFirst), _wheel.Of(drawn.OnSecond)) : drawn;
            }

            return Distances.Between(Placed(first), Placed(second));
        }

        private Outline Placed(int conductor) => _placed[conductor] ??=
            chains._all[conductor].Turns ? chains._all[conductor].Outline.Placed(_wheel) : chains._all[conductor].Outline;

        private LandChain ChainTo((int Conductor, int Gaps) end)
        {
            ReachedBy last = _reached[end];
            List<string> over = [];
            Point onFirst = last.Way.OnFirst;
            for (ReachedBy at = last; at.From is (int, int) from; at = _reached[from])
            {
                onFirst = at.Way.OnFirst;
                if (from.Item1 != 0)
                {
                    over.Insert(0, chains._all[from.Item1].Name);
                }
            }

            return new(last.NominalMm, last.WorstMm, atRad, onFirst, last.Way.OnSecond, over);
        }
    }

    /// <summary>How a conductor was reached.</summary>
    private sealed record ReachedBy(double WorstMm, double NominalMm, (int, int)? From, Nearest Way);
}
