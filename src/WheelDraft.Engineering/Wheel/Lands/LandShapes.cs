using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Draws the lands of one ring and says when each wiper touches them.</summary>
internal sealed class LandShapes(WiperPair pair, RingTrial trial, StationFrame frame)
{
    /// <summary>The lands in the order of the on-periods, or the one whole ring.</summary>
    public IReadOnlyList<LandLayout> Build(Func<int, string> name)
    {
        if (trial.Cuts.Count == 0)
        {
            Outline whole = new(Contour.Circle(Point.Origin, trial.BandToMm), [Contour.Circle(Point.Origin, trial.BandFromMm)]);
            return [new(name(0), whole, CircleArc.Full, CircleArc.Full)];
        }

        return [.. trial.Cuts.Select((cut, i) => new LandLayout(
            name(i),
            new Outline(Sector(cut).Placed(frame.ToWheel)),
            Touched(cut, isReturn: false),
            Touched(cut, isReturn: true)))];
    }

    /// <summary>The land in the programme frame, anticlockwise.</summary>
    private Contour Sector(PeriodCut cut)
    {
        (double from, double to) = (trial.BandFromMm, trial.BandToMm);
        (double begins, double ends) = (cut.Make.AngleAt(trial.RadiusMm), cut.Break.AngleAt(trial.RadiusMm));
        Arc outer = new(Point.Origin, to, begins, ends - begins);
        Arc inner = new(Point.Origin, from, ends, begins - ends);
        return new([outer, new Segment(outer.End, inner.Start), inner, new Segment(inner.End, outer.Start)]);
    }

    private CircleArc Touched(PeriodCut cut, bool isReturn)
    {
        double r = trial.RadiusMm;
        bool isUpstream = isReturn == pair.ReturnIsUpstream;
        double later = isReturn ? pair.ReturnLaterRad : 0;
        double from = cut.Make.AngleAt(r) + later - pair.ReachRad(isUpstream, EdgeEnd.Make, r);
        double to = cut.Break.AngleAt(r) + later + pair.ReachRad(isUpstream, EdgeEnd.Break, r);
        return CircleArc.Sweep(from, to - from);
    }
}
