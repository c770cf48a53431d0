namespace WheelDraft.Engineering;

/// <summary>A station of the spring: a place on its free centre line and how far a unit load at the nose turns and carries it.</summary>
/// <param name="Piece">Index of its piece.</param>
/// <param name="AtMm">Developed position.</param>
/// <param name="Frame">Free frame, seat coordinates.</param>
/// <param name="WidthMm">Width.</param>
internal readonly record struct ChainStation(int Piece, double AtMm, StripFrame Frame, double WidthMm)
{
    /// <summary>How much more the inside of a curve is stressed than a straight strip (<see cref="CurvedBeam"/>); 1 on a straight.</summary>
    internal double CurveFactor { get; init; }

    /// <summary>Whether it is curved in its plane; else out of it.</summary>
    internal bool IsSweep { get; init; }

    /// <summary>By 1 N up.</summary>
    internal CarriedBy Vertical { get; init; }

}

/// <summary>A small turn and a shift that a part of a strip undergoes, as moments about the origin: a place X moves by Turn × X − Offset.</summary>
internal readonly record struct CarriedBy(SpaceVector Turn, SpaceVector Offset)
{
    public static CarriedBy operator *(CarriedBy a, double by) => new(a.Turn * by, a.Offset * by);

    internal SpaceVector Shift(SpaceVector place) => Turn.Cross(place) - Offset;

    internal StripFrame Carry(StripFrame free)
    {
        SpaceVector along = (free.Along + Turn.Cross(free.Along)).Unit();
        SpaceVector up = free.Up + Turn.Cross(free.Up);
        return new(free.Origin + Shift(free.Origin), along, (up - (along * up.Dot(along))).Unit());
    }
}

/// <summary>Loads at a nose, N: up and outward through its centre, onward at the point where it touches.</summary>
/// <param name="UpN">Up, of the copper that is pressed.</param>
/// <param name="OutwardN">Outward along the radius, of the screw; at the place where it pushes, if that is known, else through the nose.</param>
/// <param name="OnwardN">Onward, a quarter turn anticlockwise from outward, of friction.</param>
internal readonly record struct NoseLoads(double UpN, double OutwardN, double OnwardN);

/// <summary>The elastic line from the clamp to the nose under unit loads at the nose.</summary>
/// <remarks>Clamped at one end and free at the other, the chain is statically determinate: the moment at X is (C − X) × load. Its
/// curvatures (about the strip's own axis, in its plane, in torsion; shear and stretch left out) are integrated by Gauss's rule of
/// four points on short cells, exact for constant sections and tested against halved cells elsewhere; carried to the nose they are the
/// unit-load (Maxwell–Mohr) integrals. Linear: small turns.</remarks>
internal sealed class SpringChain
{
    // A straight is cut into cells of about this length, mm, so that its deflected shape is known between them by a cubic, and so
    // that its width changes by about a fifth in each, where four Gauss points are exact to 1e-9 (tested on a taper of 10 to 1).
    private const double CellMm = 2;
    private const double CellTaper = 0.2;
    private const int MostCells = 40;

    // A fold or sweep is cut into cells of at most this angle, where the rule is exact to 1e-12.
    private const double CellRad = Math.PI / 12;

    private static readonly double[] GaussAt = [0.0694318442029737, 0.3300094782075719, 0.6699905217924281, 0.9305681557970263];
    private static readonly double[] GaussWeight = [0.1739274225687269, 0.3260725774312731, 0.3260725774312731, 0.1739274225687269];

    // Four points on a cell that halves its width, or turns by 60°, are still exact to 1e-6 (tested against the fine cells): enough for
    // bands, which are moved by a thousandth to their safe side.
    private const double CoarseTaper = 0.7;
    private const double CoarseRad = Math.PI / 3;

    private readonly List<ChainStation> _stations = [];
    private readonly SpaceVector _nose;
    private readonly SpaceVector _touch;
    private readonly SpaceVector _push;
    private readonly double _pushAtMm;
    private readonly double _noseAtMm;
    private readonly SpaceVector _radial;
    private readonly SpaceVector _onwardWay;
    private readonly double _thickness;
    private readonly double _modulus;
    private readonly double _shear;
    private CarriedBy _vertical;
    private CarriedBy _verticalAtPush;
    private CarriedBy _outward;
    private CarriedBy _onward;

    /// <summary>Integrates along the chain.</summary>
    /// <param name="form">The strip; it has a nose.</param>
    /// <param name="radial">Outward along the radius at the contact, seat coordinates.</param>
    /// <param name="refine">Cells in place of one, for tests of the integration; 0 for as few as bands need, with their ends alone as stations.</param>
    /// <param name="pushAtMm">Developed position, between clamp and nose, at which a screw pushes the strip's outer edge; null where that is not
    /// known: the load outward then goes through the nose.</param>
    internal SpringChain(StripForm form, SpaceVector radial, int refine = 1, double? pushAtMm = null)
    {
        StripNose nose = form.Nose ?? throw new ArgumentException("A plain strip is no spring.", nameof(form));
        _nose = nose.Centre;
        _touch = nose.Centre - (SpaceVector.Upward * nose.RadiusMm);
        _radial = radial;
        _noseAtMm = nose.AtMm;
        _pushAtMm = pushAtMm is double at && at > form.Clamp.ToMm && at < nose.AtMm ? at : nose.AtMm;
        _push = _pushAtMm < nose.AtMm ? EdgeOf(form, _pushAtMm, radial) : _nose;
        _onwardWay = SpaceVector.Upward.Cross(radial);
        _thickness = form.Strip.ThicknessMm;
        _modulus = form.Material.ModulusGpa.Value * 1000;
        _shear = form.Material.ShearModulusGpa * 1000;
        for (int i = 0; i < form.Pieces.Count; i++)
        {
            FormedPiece piece = form.Pieces[i];
            double from = Math.Max(piece.FromMm, form.Clamp.ToMm);
            double to = Math.Min(piece.ToMm, nose.AtMm);
            double middle = Math.Clamp(_pushAtMm, from, Math.Max(from, to));
            foreach ((double start, double end) in new[] { (from, middle), (middle, to) })
            {
                if (end > start && piece.DevelopedMm > 0)
                {
                    Run(i, piece, (start - piece.FromMm) / piece.DevelopedMm, (end - piece.FromMm) / piece.DevelopedMm, refine);
                }
            }
        }
    }

    /// <summary>Where a screw meets a strip's edge: the edge on the outer side, halfway up its thickness.</summary>
    internal static SpaceVector EdgeOf(StripForm form, double atMm, SpaceVector radial)
    {
        FormedPiece piece = form.PieceAt(atMm);
        StripFrame frame = form.FrameAt(atMm);
        double half = piece.WidthAt(piece.DevelopedMm > 0 ? (atMm - piece.FromMm) / piece.DevelopedMm : 0) / 2;
        return frame.Origin + (frame.Left * (frame.Left.Dot(radial) >= 0 ? half : -half));
    }

    internal IReadOnlyList<ChainStation> Stations => _stations;

    /// <summary>How the end of the chain, and all beyond it, is carried by 1 N up at the nose.</summary>
    internal CarriedBy Vertical => _vertical;

    /// <summary>The same by 1 N outward, where the screw pushes.</summary>
    internal CarriedBy Outward => _outward;

    /// <summary>How far the contact moves outward for each mm that the place moves at which the screw pushes, while the copper holds its height; 1 where
    /// the screw pushes the contact itself.</summary>
    internal double ContactPerPush
    {
        get
        {
            double up = -_outward.Shift(_nose).Z / _vertical.Shift(_nose).Z;
            SpaceVector contact = _outward.Shift(_nose) + (_vertical.Shift(_nose) * up);
            SpaceVector pushed = _outward.Shift(_push) + (_verticalAtPush.Shift(_push) * up);
            return _pushAtMm < _noseAtMm ? contact.Dot(_radial) / pushed.Dot(_radial) : 1;
        }
    }

    /// <summary>The same by 1 N onward, a quarter turn anticlockwise from outward, where the nose touches.</summary>
    internal CarriedBy Onward => _onward;

    /// <summary>Equivalent stress at a station under loads at the nose, MPa; on the inside of a fold or sweep.</summary>
    internal double StressMpa(ChainStation at, NoseLoads loads)
    {
        SpaceVector moment = (_nose - at.Frame.Origin).Cross(SpaceVector.Upward * loads.UpN) + (_touch - at.Frame.Origin).Cross(_onwardWay * loads.OnwardN);
        if (at.AtMm <= _pushAtMm)
        {
            moment += (_push - at.Frame.Origin).Cross(_radial * loads.OutwardN);
        }

        double own = moment.Dot(at.Frame.Left) * (at.IsSweep ? 1 : at.CurveFactor);
        double inPlane = moment.Dot(at.Frame.Up) * (at.IsSweep ? at.CurveFactor : 1);
        return new StripSection(at.WidthMm, _thickness).StressMpa(own, inPlane, moment.Dot(at.Frame.Along));
    }

    private void Run(int index, FormedPiece piece, double fromShare, double toShare, int refine)
    {
        int cells = refine == 0 ? CoarseCellsOf(piece, toShare - fromShare) : refine * CellsOf(piece, toShare - fromShare);
        Station(index, piece, fromShare);
        double step = (toShare - fromShare) / cells;
        bool even = piece.WidthMm == piece.WidthEndMm;
        SectionStiffness section = StiffnessAt(piece, fromShare);
        for (int cell = 0; cell < cells; cell++)
        {
            double start = fromShare + (cell * step);
            for (int g = 0; g < GaussAt.Length; g++)
            {
                double share = start + (step * GaussAt[g]);
                Add(piece.FromMm + (piece.DevelopedMm * share), piece.FrameAt(share), even ? section : StiffnessAt(piece, share), piece.LengthMm * step * GaussWeight[g]);
            }

            Station(index, piece, cell == cells - 1 ? toShare : start + step);
        }
    }

    private static int CellsOf(FormedPiece piece, double share)
    {
        double wanted = piece.Kind == FormedKind.Straight
            ? Math.Max(piece.LengthMm * share / CellMm, Math.Abs(Math.Log(piece.WidthEndMm / piece.WidthMm)) / CellTaper)
            : Math.Abs(piece.AngleRad) * share / CellRad;
        return (int)Math.Ceiling(Math.Clamp(wanted, 2, MostCells));
    }

    private static int CoarseCellsOf(FormedPiece piece, double share)
    {
        double wanted = piece.Kind == FormedKind.Straight ? Math.Abs(Math.Log(piece.WidthEndMm / piece.WidthMm)) / CoarseTaper : Math.Abs(piece.AngleRad) * share / CoarseRad;
        return (int)Math.Ceiling(Math.Clamp(wanted, 1, MostCells));
    }

    private void Station(int index, FormedPiece piece, double share) =>
        _stations.Add(new ChainStation(index, piece.FromMm + (piece.DevelopedMm * share), piece.FrameAt(share), piece.WidthAt(share))
        {
            Vertical = _vertical,
            CurveFactor = CurveFactor(piece, share),
            IsSweep = piece.Kind == FormedKind.Sweep,
        });

    // A fold curves its thickness, a sweep its width.
    private double CurveFactor(FormedPiece piece, double share) => piece.Kind switch
    {
        FormedKind.Fold => CurvedBeam.InnerFactor(piece.RadiusMm - (_thickness / 2), _thickness),
        FormedKind.Sweep => CurvedBeam.InnerFactor(piece.RadiusMm - (piece.WidthAt(share) / 2), piece.WidthAt(share)),
        _ => 1,
    };

    private void Add(double atMm, StripFrame frame, SectionStiffness section, double lengthMm)
    {
        SpaceVector arm = _nose - frame.Origin;
        Bending bends = new(frame.Left, frame.Up, frame.Along, lengthMm / section.OwnAxis, lengthMm / section.InPlane, lengthMm / section.Torsion);
        bends.By(new SpaceVector(arm.Y, -arm.X, 0), frame.Origin, ref _vertical);
        if (atMm < _pushAtMm)
        {
            bends.By((_push - frame.Origin).Cross(_radial), frame.Origin, ref _outward);
            _verticalAtPush = _vertical;
        }

        bends.By((_touch - frame.Origin).Cross(_onwardWay), frame.Origin, ref _onward);
    }

    private SectionStiffness StiffnessAt(FormedPiece piece, double share)
    {
        StripSection section = new(piece.WidthAt(share), _thickness);
        return new(_modulus * section.OwnAxisMm4, _modulus * section.InPlaneMm4, _shear * section.TorsionMm4);
    }

    // Of one section, N mm²: about its own axis, in its plane, in torsion.
    private readonly record struct SectionStiffness(double OwnAxis, double InPlane, double Torsion);

    // What a short length of strip does under a moment: how far it turns about its three axes, radians per N mm.
    private readonly struct Bending(SpaceVector left, SpaceVector up, SpaceVector along, double own, double inPlane, double torsion)
    {
        internal void By(SpaceVector moment, SpaceVector place, ref CarriedBy sum)
        {
            double l = moment.Dot(left) * own;
            double u = moment.Dot(up) * inPlane;
            double a = moment.Dot(along) * torsion;
            SpaceVector turn = new((left.X * l) + (up.X * u) + (along.X * a), (left.Y * l) + (up.Y * u) + (along.Y * a), (left.Z * l) + (up.Z * u) + (along.Z * a));
            sum = new CarriedBy(sum.Turn + turn, sum.Offset + turn.Cross(place));
        }
    }
}
