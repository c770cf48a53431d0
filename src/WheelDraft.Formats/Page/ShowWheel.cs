using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Page;

/// <summary>The wheel from the wiper side, as cut, with its wipers and strips; the script turns the group "turning".</summary>
internal sealed class ShowWheel
{
    // How far an arm is drawn beyond the rim where no strip is given, as a share of the wheel's radius.
    private const double ArmShare = 0.18;

    // Room for a tag outside plain arms, as a share of how far they reach.
    private const double TagShare = 0.15;

    // Room outside strips, as a share of how far they reach.
    private const double EdgeShare = 0.04;

    private readonly Design _design;
    private readonly CircuitNetwork _network;
    private readonly Markup _svg = new();
    private readonly double _radiusMm;
    private readonly double _reachMm;
    private readonly double _halfMm;

    private ShowWheel(Design design, CircuitNetwork network)
    {
        _design = design;
        _network = network;
        _radiusMm = design.Wheel.OuterDiameterMm / 2;
        _reachMm = _radiusMm * (1 + ArmShare);
        double strips = design.Strips.Solids.SelectMany(s => s.Outline.Pieces).Select(p => Farthest(p.Bounds)).DefaultIfEmpty(0).Max();
        double levers = design.Cams.Select(c => Math.Max(Farthest(LeverPen.BoundsOf(c, 0)), Farthest(LeverPen.BoundsOf(c, c.Brief.Latch ?? c.TopLift)))).DefaultIfEmpty(0).Max();
        _halfMm = Math.Max(Math.Max(_reachMm * (1 + TagShare), strips * (1 + EdgeShare)), levers * (1 + EdgeShare));
    }

    /// <summary>The picture.</summary>
    public static string Write(Design design, CircuitNetwork network) => new ShowWheel(design, network).Draw();

    private static double Farthest(Bounds b) =>
        Math.Max(Math.Max(Math.Abs(b.MinX), Math.Abs(b.MaxX)), Math.Max(Math.Abs(b.MinY), Math.Abs(b.MaxY)));

    private static string N(double value) => SvgMarkup.Number(value);

    private string Draw()
    {
        string half = N(_halfMm);
        string full = N(2 * _halfMm);
        _svg.Put($"<svg id=\"wheel\" class=\"wheel\" viewBox=\"-{half} -{half} {full} {full}\" role=\"img\" aria-labelledby=\"wheel-title wheel-desc\">\n");
        _svg.Add("<title id=\"wheel-title\">The wheel and its wipers, seen from the wiper side</title>\n");
        _svg.Add("<desc id=\"wheel-desc\">Copper as cut; the wheel turns under wipers that stand still. Each wiper's tag says whether it is live.</desc>\n");
        Wheel();
        Home();
        foreach (CamLayout cam in _design.Cams)
        {
            SvgPath lever = new(0);
            foreach (IReadOnlyList<Piece> line in LeverPen.Lines(cam, 0))
            {
                lever.Add(line, closed: false);
            }

            _svg.Put($"<g class=\"lever\" data-cam=\"{cam.Index}\"><title>lever of {SvgMarkup.Escaped(cam.Brief.Name)}</title><path class=\"strip-edge\" d=\"{lever}\"/></g>\n");
        }

        List<RingLayout> rings = [.. _design.Wheel.AllRings];
        int first = _design.Wheel.Feed is null ? 0 : -1; // the feed is no contact
        for (int i = 0; i < rings.Count; i++)
        {
            Wiper(rings[i], Data(i + first, rings[i].Net, rings[i].Lands.Select(l => l.OnWiper)));
            if (rings[i].Return is ReturnWiper other)
            {
                Wiper(
                    rings[i] with { Name = $"{rings[i].Name}, second wiper", StationRad = other.StationRad, Patch = other.Patch },
                    Data(i + first, other.Net, rings[i].Lands.Select(l => l.OnReturn)));
            }
        }

        for (int i = 0; i < rings.Count; i++)
        {
            Tag(rings[i], Data(i + first, rings[i].Net, []));
        }

        return _svg.Add("</svg>\n").ToString();
    }

    /// <summary>What the script needs to know of a wiper: its contact, its net, and with lands when it stands on one.</summary>
    private string Data(int contact, string net, IEnumerable<CircleArc> onLands)
    {
        IEnumerable<string> times = onLands
            .Select(a => a.IsFull ? (From: 0, To: _design.Motion.TurnTimeS) : ShowData.Seconds(a, _design.Motion.TurnTimeS))
            .Select(t => $"{FixedPoint.Short(t.From, 9)} {FixedPoint.Short(t.To, 9)}");
        string on = string.Join(' ', times);
        return FormattableString.Invariant($"data-contact=\"{contact}\" data-node=\"{_network.NodeOf(net)}\"{(on.Length > 0 ? $" data-on=\"{on}\"" : "")}");
    }

    private void Wheel()
    {
        double carrier = (_design.Brief.Carrier.DiameterMm ?? _design.Wheel.OuterDiameterMm) / 2;
        _svg.Put($"<g id=\"turning\">\n<circle class=\"carrier\" r=\"{N(carrier)}\"/>\n");
        foreach (CutShape copper in _design.Parts.Wheel.Shapes)
        {
            _svg.Put($"<path class=\"copper\" fill-rule=\"evenodd\" d=\"{new SvgPath(0).Add(copper.Finished)}\"/>\n");
        }

        _svg.Put($"<path class=\"bore\" d=\"{new SvgPath(0).Add(new Outline(_design.Wheel.Bore))}\"/>\n");
        SvgPath marks = new(0);
        foreach (IReadOnlyList<Piece> stroke in WheelMarks.Of(_design).Strokes)
        {
            marks.Add(stroke, closed: false);
        }

        _svg.Put($"<path class=\"scribed\" d=\"{marks}\"/>\n");
        foreach (CamLayout cam in _design.Cams)
        {
            _svg.Put($"<path class=\"cam\" fill-rule=\"evenodd\" d=\"{new SvgPath(0).Add(cam.Outline)}\"><title>cam {SvgMarkup.Escaped(cam.Brief.Name)}</title></path>\n");
        }

        double rim = _radiusMm;
        _svg.Put($"<path class=\"home\" d=\"M{N(rim)} 0L{N(rim * 0.93)} {N(rim * 0.035)}L{N(rim * 0.93)} {N(-rim * 0.035)}Z\"><title>Home mark</title></path>\n</g>\n");
    }

    /// <summary>The fixed mark that the home mark meets at programme angle zero, and beside it an arrow for the way the wheel turns.</summary>
    private void Home()
    {
        double r = _radiusMm;
        _svg.Put($"<g class=\"index\"><title>Home: where the wheel's mark stands at time 0; the arrow shows the way it turns</title><path d=\"M{N(r * 1.015)} 0L{N(r * 1.085)} {N(r * 0.035)}L{N(r * 1.085)} {N(-r * 0.035)}Z\"/>");
        double sense = _design.Motion.Sigma;
        Arc way = new(Point.Origin, r * 1.06, sense * 0.09, sense * 0.3);
        Vector back = -way.TangentAt(1) * (r * 0.05);
        SvgPath arrow = new SvgPath(0).Add([way], closed: false);
        foreach (double side in (double[])[0.45, -0.45])
        {
            arrow.Add([new Segment(way.End, way.End + back.Turned(side))], closed: false);
        }

        _svg.Put($"<path class=\"way\" d=\"{arrow}\"/></g>\n");
    }

    private void Wiper(RingLayout ring, string data)
    {
        string name = ring.IsFeed ? "feed" : ring.Name;
        _svg.Put($"<g class=\"wiper\" {data}><title>{SvgMarkup.Escaped(name)}</title>\n");
        PlacedStrip? strip = _design.Strips.At(ring.RadiusMm, ring.StationRad);
        SvgPath plan = new(0);
        if (strip is not null)
        {
            foreach (Solid solid in strip.Solids)
            {
                plan.Add(solid.Outline);
            }
        }
        else
        {
            double halfWidth = Math.Max(ring.Patch.HalfWidthMm, ring.Patch.HalfLengthMm);
            Contour arm = Contour.Rectangle(new(ring.RadiusMm - ring.Patch.HalfLengthMm, -halfWidth), new(_reachMm, halfWidth));
            plan.Add(new Outline(arm.Placed(Placement.Turn(ring.StationRad))));
        }

        _svg.Put($"<path class=\"strip-edge\" d=\"{plan}\"/><path class=\"strip\" d=\"{plan}\"/>\n");
        _svg.Put($"<path class=\"patch\" d=\"{new SvgPath(0).Add(ring.Patch.At(ring.RadiusMm, ring.StationRad))}\"/>\n");
        Point at = Point.Polar(ring.RadiusMm, ring.StationRad);
        _svg.Put($"<circle class=\"spot\" cx=\"{N(at.X)}\" cy=\"{N(-at.Y)}\" r=\"{N(_radiusMm * 0.035)}\"/>\n</g>\n");
    }

    private void Tag(RingLayout ring, string data)
    {
        string name = ring.IsFeed ? "feed" : ring.Name;
        Point at = Point.Polar(_reachMm + (_halfMm * 0.02), ring.StationRad);
        double cos = Math.Cos(ring.StationRad);
        bool upright = Math.Abs(cos) <= 0.35;
        string anchor = upright ? "middle" : cos > 0 ? "end" : "start";
        double x = upright ? at.X : Math.CopySign(_halfMm * 0.985, cos);

        // Beside the arm's end and not on it: above where the arm rises, below where it falls.
        bool rises = Math.Sin(ring.StationRad) >= 0;
        double y = -at.Y + (_halfMm * (upright ? (rises ? -0.06 : 0.045) : rises ? -0.085 : 0.085));
        _svg.Put($"<g class=\"tag\" {data} font-size=\"{N(_halfMm * 0.052)}\" text-anchor=\"{anchor}\">");
        _svg.Put($"<text class=\"tag-name\" x=\"{N(x)}\" y=\"{N(y)}\">{SvgMarkup.Escaped(name)}</text>");
        _svg.Put($"<text class=\"tag-state\" x=\"{N(x)}\" y=\"{N(y + (_halfMm * 0.05))}\"></text></g>\n");
    }
}
