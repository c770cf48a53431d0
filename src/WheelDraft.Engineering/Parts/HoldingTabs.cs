using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A stretch of an outer contour that is left uncut, so that the part stays in its sheet.</summary>
/// <param name="Stretch">What is left, along the cutter's path: the tab's width and the kerf, which rounds its ends off.</param>
internal sealed record HoldingTab(Piece Stretch)
{
    /// <summary>Its middle.</summary>
    public Point At => Stretch.PointAt(0.5);
}

/// <summary>An outer contour with its tabs: the runs that are cut and the stretches that are not, one after the other all round.</summary>
/// <param name="Of">The contour.</param>
/// <param name="Runs">What is cut, each run open, in the order of the contour.</param>
/// <param name="Tabs">What is left.</param>
internal sealed record TabbedContour(Contour Of, IReadOnlyList<IReadOnlyList<Piece>> Runs, IReadOnlyList<HoldingTab> Tabs)
{
    /// <summary>The same, placed.</summary>
    public TabbedContour Placed(Placement place) => new(Of.Placed(place), [.. Runs.Select(r => (IReadOnlyList<Piece>)[.. r.Select(p => p.Placed(place))])], [.. Tabs.Select(t => new HoldingTab(t.Stretch.Placed(place)))]);
}

/// <summary>Puts holding tabs on the outer contours of a part.</summary>
/// <remarks>A tab leaves a stub that is broken and filed, so it stands where neither does harm: on copper of a wheel on edges that run round the axis, clear of
/// every patch path by play, run-out and the stub; on a strip on straight edges from behind its terminal tab to the end of its clamp, clear of
/// folds. Tabs are shared out evenly along what is allowed. Windows need none: what falls out of them is scrap.</remarks>
internal static class HoldingTabs
{
    /// <summary>How deep filing may go and a stub may stand, mm: patch paths are kept clear by as much. Common practice, no source.</summary>
    public const double FilingMm = 0.3;

    // Copper that stays between a tab and the end of an edge, or the next tab, mm: a cutter has to start there.
    private const double ApartMm = 0.5;

    /// <summary>The outer contours of a part that have tabs.</summary>
    /// <param name="brief">What was asked.</param>
    /// <param name="wheel">The wheel.</param>
    /// <param name="strips">The strips.</param>
    /// <param name="part">The part; one that another process cuts has none.</param>
    /// <param name="leads">Its lead-ins: no tab stands where a cut begins.</param>
    public static IReadOnlyList<TabbedContour> Of(Brief brief, WheelLayout wheel, StripSet strips, Part part, IReadOnlyList<LeadIn>? leads = null)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(part);
        return brief.Process.HoldingTabs == 0 || part.KerfMm is null ? []
            : [.. part.Shapes.Select(s => Tabbed(brief, s.ToCut.Outer, leads?.FirstOrDefault(l => ReferenceEquals(l.Of, s.ToCut.Outer)), p => Allowed(brief, wheel, strips, part, p))).OfType<TabbedContour>()];
    }

    /// <summary>What is left uncut along the cutter's path, mm.</summary>
    public static double StretchMm(ProcessBrief process) => process.TabWidthMm + process.KerfMm;

    /// <summary>A note for every part that has fewer tabs than were asked: what falls free there is the shop's to know.</summary>
    public static IEnumerable<Finding> Findings(Brief brief, WheelLayout wheel, StripSet strips, PartList parts)
    {
        ArgumentNullException.ThrowIfNull(brief);
        ArgumentNullException.ThrowIfNull(parts);
        int asked = brief.Process.HoldingTabs;
        foreach (Part part in parts.Strips.Prepend(parts.Wheel).Where(_ => asked > 0))
        {
            IReadOnlyList<TabbedContour> tabbed = Of(brief, wheel, strips, part);
            int least = tabbed.Count < part.Shapes.Count ? 0 : tabbed.Min(t => t.Tabs.Count);
            if (least < asked)
            {
                yield return Finding.Note(
                    "cut.tabs",
                    $"{part.Name}: {(least == 0 ? "no holding tab has" : FormattableString.Invariant($"only {least} of {asked} holding tabs have"))} room on {(part.Shapes.Count > 1 ? "every outer edge" : "its outer edge")} where nothing slides, springs or folds; it is held by less, and may fall or tip as it is cut free.",
                    brief.PlaceOf("process.holding_tabs"));
            }
        }
    }

    private static TabbedContour? Tabbed(Brief brief, Contour of, LeadIn? lead, Func<Piece, List<(double From, double To)>> allowed)
    {
        Contour contour = lead?.Contour ?? of;
        double stretch = StretchMm(brief.Process);
        List<(int Piece, double From, double To)> rooms = [.. contour.Pieces.SelectMany((p, i) => allowed(p).Select(a => (i, a.From, a.To)))];
        List<(int Piece, double Mm)> places = Places(rooms, brief.Process.HoldingTabs, stretch);
        return places.Count == 0 ? null : Cut(contour, places, stretch, lead is null) with { Of = of };
    }

    // Middles of tabs along their pieces, in the order of the contour: as many as have room, evenly along all that is allowed.
    private static List<(int Piece, double Mm)> Places(List<(int Piece, double From, double To)> rooms, int asked, double stretch)
    {
        double margin = (stretch / 2) + ApartMm;
        List<(int Piece, double From, double To)> middles = [.. rooms.Where(r => r.To - r.From >= 2 * margin).Select(r => (r.Piece, r.From + margin, r.To - margin))];
        double whole = middles.Sum(m => m.To - m.From);
        for (int count = asked; count > 0 && middles.Count > 0; count--)
        {
            List<(int Piece, double Mm)> places = [.. Enumerable.Range(0, count).Select(k => At(middles, whole * ((2 * k) + 1) / (2 * count)))];
            if (places.Zip(places.Skip(1)).All(p => p.First.Piece != p.Second.Piece || p.Second.Mm - p.First.Mm >= stretch + ApartMm))
            {
                return places;
            }
        }

        return [];
    }

    private static (int Piece, double Mm) At(List<(int Piece, double From, double To)> middles, double along)
    {
        foreach ((int piece, double from, double to) in middles)
        {
            if (along <= to - from)
            {
                return (piece, from + along);
            }

            along -= to - from;
        }

        return (middles[^1].Piece, middles[^1].To);
    }

    private static TabbedContour Cut(Contour contour, List<(int Piece, double Mm)> places, double stretch, bool runsOn)
    {
        List<IReadOnlyList<Piece>> runs = [];
        List<HoldingTab> tabs = [];
        List<Piece> run = [];
        for (int i = 0; i < contour.Pieces.Count; i++)
        {
            Piece piece = contour.Pieces[i];
            double at = 0;
            foreach ((_, double middle) in places.Where(p => p.Piece == i))
            {
                double from = (middle - (stretch / 2)) / piece.Length;
                double to = (middle + (stretch / 2)) / piece.Length;
                run.Add(piece.Part(at, from));
                runs.Add([.. run]);
                run.Clear();
                tabs.Add(new(piece.Part(from, to)));
                at = to;
            }

            run.Add(at == 0 ? piece : piece.Part(at, 1));
        }

        // What is left over runs on into the first run, unless the cut begins there.
        if (runsOn)
        {
            runs[0] = [.. run, .. runs[0]];
        }
        else
        {
            runs.Add(run);
        }

        return new(contour, runs, tabs);
    }

    // Where on a piece tabs may stand, mm along it.
    private static List<(double From, double To)> Allowed(Brief brief, WheelLayout wheel, StripSet strips, Part part, Piece piece) =>
        part.Role == PartRole.Strip ? OnStrip(strips.Strips[part.StripIndex].Form, piece)
        : part.Role == PartRole.Wheel && QuietEdges.RunsRound(piece) && IsClear(brief, wheel, ((Arc)piece).RadiusMm) ? [(0, piece.Length)]
        : [];

    private static bool IsClear(Brief brief, WheelLayout wheel, double radiusMm)
    {
        double off = FilingMm + (brief.Process.KerfMm / 2) + (brief.Wheel.RunOutMm / 2);
        return wheel.AllRings.All(r => radiusMm - off >= r.PathToMm + r.SidePlayMm || radiusMm + off <= r.PathFromMm - r.SidePlayMm);
    }

    private static List<(double From, double To)> OnStrip(StripForm form, Piece piece)
    {
        if (piece is not Segment edge)
        {
            return [];
        }

        // A terminal tab goes into its receptacle, and its shoulder against it.
        double behindMm = form.Tab is null ? 0 : form.Pieces[0].ToMm + FilingMm;
        double clearMm = form.Folds.Count == 0 ? 0 : form.Folds.Max(f => (2 * form.Strip.ThicknessMm) + f.RadiusMm + (f.AllowanceMm / 2));
        List<(double From, double To)> rooms = [.. QuietEdges.HeldOf(form, edge, behindMm)];
        foreach (Segment fold in form.Blank.FoldLines)
        {
            rooms = [.. rooms.SelectMany(r => Without(r, edge, fold, clearMm))];
        }

        return rooms;
    }

    // A stretch of an edge without what lies near a fold: near its line, measured along the edge from where that is nearest.
    private static IEnumerable<(double From, double To)> Without((double From, double To) room, Segment edge, Segment fold, double clearMm)
    {
        Point near = fold.Start.DistanceTo(edge.PointAt(edge.ShareNearest(fold.Start))) <= fold.End.DistanceTo(edge.PointAt(edge.ShareNearest(fold.End))) ? fold.Start : fold.End;
        double at = edge.ShareNearest(near) * edge.Length;
        if (edge.PointAt(at / edge.Length).DistanceTo(near) >= clearMm)
        {
            return [room];
        }

        return ((double From, double To)[])[(room.From, Math.Min(room.To, at - clearMm)), (Math.Max(room.From, at + clearMm), room.To)] is var parts ? parts.Where(p => p.To > p.From) : [];
    }
}
