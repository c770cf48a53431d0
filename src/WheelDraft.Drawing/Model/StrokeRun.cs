using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>An unbroken stroke: each piece begins where the one before ends.</summary>
/// <param name="Pieces">At least one.</param>
/// <param name="IsClosed">Whether it ends where it began: to be closed, so that the corner there is joined.</param>
internal sealed record StrokeRun(IReadOnlyList<Piece> Pieces, bool IsClosed)
{
    /// <summary>Length, mm.</summary>
    public double LengthMm => Pieces.Sum(p => p.Length);

    /// <summary>The unbroken runs among pieces, in order.</summary>
    public static IReadOnlyList<StrokeRun> Of(IReadOnlyList<Piece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        List<StrokeRun> runs = [];
        List<Piece> run = [];
        foreach (Piece piece in pieces)
        {
            if (run.Count > 0 && !Meets(run[^1].End, piece.Start))
            {
                runs.Add(Finished(run));
                run = [];
            }

            run.Add(piece);
        }

        if (run.Count > 0)
        {
            runs.Add(Finished(run));
        }

        return runs;
    }

    /// <summary>The runs cut into dashes.</summary>
    /// <param name="pieces">The pieces of the line.</param>
    /// <param name="dashesMm">Dashes and gaps in turn, an even number; empty for a line without gaps.</param>
    internal static IReadOnlyList<StrokeRun> Dashed(IReadOnlyList<Piece> pieces, IReadOnlyList<double> dashesMm)
    {
        IReadOnlyList<StrokeRun> runs = Of(pieces);
        return dashesMm.Count == 0 ? runs : [.. runs.SelectMany(r => r.Cut(dashesMm))];
    }

    private static StrokeRun Finished(List<Piece> run) => new(run, Meets(run[^1].End, run[0].Start));

    private static bool Meets(Point end, Point start) => end.DistanceTo(start) <= Tolerances.JoinMm;

    /// <summary>Whole periods are stretched or shrunk to fit: an open run also gets a last dash, a closed one none.</summary>
    private List<StrokeRun> Cut(IReadOnlyList<double> dashesMm)
    {
        double period = dashesMm.Sum();
        double length = LengthMm;
        double ending = IsClosed ? 0 : dashesMm[0];
        double periods = Math.Round((length - ending) / period);
        if (periods < 1)
        {
            return [this];
        }

        double scale = length / ((periods * period) + ending);
        List<StrokeRun> cut = [];
        double at = 0;
        int entries = ((int)periods * dashesMm.Count) + (IsClosed ? 0 : 1);
        for (int i = 0; i < entries; i++)
        {
            double step = dashesMm[i % dashesMm.Count] * scale;
            if (i % 2 == 0)
            {
                cut.Add(new StrokeRun(Between(at, Math.Min(at + step, length)), IsClosed: false));
            }

            at += step;
        }

        return cut;
    }

    private List<Piece> Between(double fromMm, double toMm)
    {
        List<Piece> part = [];
        double at = 0;
        foreach (Piece piece in Pieces)
        {
            double from = Math.Max(fromMm - at, 0);
            double to = Math.Min(toMm - at, piece.Length);
            if (to - from > Tolerances.ShortestPieceMm)
            {
                part.Add(Part(piece, from / piece.Length, to / piece.Length));
            }

            at += piece.Length;
        }

        return part;
    }

    private static Piece Part(Piece piece, double from, double to) => piece switch
    {
        _ when from == 0 && to == 1 => piece,
        Arc arc => new Arc(arc.Centre, arc.RadiusMm, arc.StartRad + (from * arc.SweepRad), (to - from) * arc.SweepRad),
        _ => new Segment(piece.PointAt(from), piece.PointAt(to)),
    };
}
