using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How a wiper is used, as far as its band asks.</summary>
/// <param name="WornMm">How deep its nose wears.</param>
/// <param name="TravelMm">How far its screw moves it along the radius in all; 0 without one.</param>
/// <param name="PushAtMm">Where the screw pushes it; null where that is not known.</param>
internal readonly record struct PressingUse(double WornMm, double TravelMm, double? PushAtMm);

/// <summary>Finds the band of a strip.</summary>
/// <remarks>Each figure is sought over the box as a whole (<see cref="BoxExtremes"/>), every member formed and bent again, never added up
/// from first-order parts; then moved to its unsafe side by <see cref="Beyond"/>.</remarks>
internal sealed class StripBanding
{
    // What a search one error at a time may leave at most: far more than it does, by 200 random strips against a frame in the tests.
    private const double Beyond = 0.001;

    private readonly StripForm _form;
    private readonly PressingLimits _limits;
    private readonly SpaceVector _radial;
    private readonly double _wornMm;
    private readonly double _travelMm;
    private readonly double? _pushAtMm;
    private readonly int[] _folds;
    private readonly List<Action<double, Draft>> _errors = [];
    private readonly Dictionary<double[], Member?> _members = new(new SameErrors());
    private readonly int _shaping;
    private string? _fails;

    internal StripBanding(StripForm form, PressingLimits limits, SpaceVector radial, PressingUse use)
    {
        _form = form;
        _limits = limits;
        _radial = radial;
        (_wornMm, _travelMm, _pushAtMm) = (use.WornMm, use.TravelMm, use.PushAtMm);
        _folds = [.. Enumerable.Range(0, form.Folds.Count).Where(i => Bends(form, form.Folds[i]))];
        FormingBrief forming = limits.Forming;
        foreach (int fold in _folds)
        {
            Vary(forming.FoldRad.Value, (e, d) => d.Angles[fold] = e);
            Vary(Math.Min(forming.RadiusMm.Value, form.Folds[fold].RadiusMm), (e, d) => d.Radii[fold] = e);
        }

        Vary(forming.ThicknessShare.Value * form.Strip.ThicknessMm, (e, d) => d.ThicknessMm = e);
        Vary(2 * limits.CutMm, (e, d) => d.WidthMm = e);
        _shaping = _errors.Count;
        Vary(forming.HeightMm.Value + (limits.FaceRunOutMm / 2), (e, d) => d.HeightMm = e);
        if (limits.Friction is { Most: > 0 })
        {
            Vary(1, (e, d) => d.FrictionShare = (1 + e) / 2);
        }
    }

    /// <summary>The errors of one member while they are gathered.</summary>
    private sealed record Draft(double[] Angles, double[] Radii)
    {
        public double ThicknessMm { get; set; }

        public double WidthMm { get; set; }

        public double HeightMm { get; set; }

        public double FrictionShare { get; set; }
    }

    /// <summary>One strip of the batch, at the drawn height, bent when it is first asked for.</summary>
    private sealed class Member(StripForm form, SpaceVector radial, Turning direction, double? pushAtMm)
    {
        private SpringChain? _chain;
        private NoseBalance? _balance;

        public double DepthMm { get; } = form.Nose!.DepthMm;

        public SpringChain Chain => _chain ??= new SpringChain(form, radial, refine: 0, pushAtMm);

        public NoseBalance Balance => _balance ??= new NoseBalance(Chain, form.Nose!, radial, direction);

        public SpringChain FineChain() => new(form, radial, pushAtMm: pushAtMm);
    }

    private sealed class SameErrors : IEqualityComparer<double[]>
    {
        public bool Equals(double[]? x, double[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(double[] obj)
        {
            HashCode hash = default;
            foreach (double error in obj)
            {
                hash.Add(error);
            }

            return hash.ToHashCode();
        }
    }

    internal StripBand Find()
    {
        double least = Worst((m, d, off) => Force(m, d, off, worn: true), Math.Min, BoxExtremes.Least);
        double most = Worst((m, d, off) => Force(m, d, off, worn: false), Math.Max, BoxExtremes.Most);
        double stress = Worst((m, d, off) => Stress(m.Chain, m, d, off), Math.Max, BoxExtremes.Most, (m, d, off) => Stress(m.FineChain(), m, d, off));
        return new StripBand(Math.Max(0, least) * (1 - Beyond), most * (1 + Beyond), stress * (1 + Beyond))
        {
            LeastDeflectionMm = BoxExtremes.Least(_errors.Count, x => Figure(x, 0, (m, d, _) => m.DepthMm + d.HeightMm - _wornMm)).Value,
            WindUp = _limits.Friction is null ? null : Winding(),
            Fails = _fails,
        };
    }

    private WindUp Winding()
    {
        double least = Worst((m, d, off) => Wind(m, d, off, onCarrier: true).AlongMm, Math.Min, BoxExtremes.Least);
        double most = Worst((m, d, off) => Wind(m, d, off, onCarrier: false).AlongMm, Math.Max, BoxExtremes.Most);
        double side = Worst((m, d, off) => Math.Abs(Wind(m, d, off, onCarrier: false).OutwardMm), Math.Max, BoxExtremes.Most);
        return new WindUp(least - (Beyond * Math.Abs(least)), most + (Beyond * Math.Abs(most))) { MostRadialMm = side * (1 + Beyond) };
    }

    private double Force(Member member, Draft draft, double off, bool worn) =>
        member.Balance.At(member.DepthMm + draft.HeightMm - (worn ? _wornMm : 0), Friction(draft), off).UpN;

    private double Stress(SpringChain chain, Member member, Draft draft, double off) =>
        StripSpring.Worst(chain, member.Balance.At(member.DepthMm + draft.HeightMm, Friction(draft), off)).Mpa;

    // What friction alone does to the place of the nose; on the carrier, lower by the step and worn, the least of it.
    private (double AlongMm, double OutwardMm) Wind(Member member, Draft draft, double off, bool onCarrier)
    {
        FrictionBand band = _limits.Friction!.Value;
        double friction = band.Least + ((band.Most - band.Least) * draft.FrictionShare);
        double depth = member.DepthMm + draft.HeightMm - (onCarrier ? _wornMm + _limits.StepMm : 0);
        if (!(depth > 0))
        {
            return default;
        }

        (double along, double outward) = member.Balance.Place(member.Balance.At(depth, friction, off));
        (double freely, double freelyOut) = member.Balance.Place(member.Balance.At(depth, 0, off));
        return (along - freely, outward - freelyOut);
    }

    // From standing still to the greatest drag: a band that begins above nothing is passed through at every start.
    private double Friction(Draft draft) => (_limits.Friction?.Most ?? 0) * draft.FrictionShare;

    // The worst of both ends of travel and its middle, each over the whole box; worked out again by the finer figure where it was found.
    private double Worst(
        Func<Member, Draft, double, double> figure,
        Func<double, double, double> worse,
        Func<int, Func<double[], double>, (double Value, double[] At)> extreme,
        Func<Member, Draft, double, double>? finer = null)
    {
        double[] ends = _travelMm > 0 ? [0, -_travelMm / 2, _travelMm / 2] : [0];
        return ends.Select(off =>
        {
            (double value, double[] at) = extreme(_errors.Count, x => Figure(x, off, figure));
            return finer is null ? value : Figure(at, off, finer);
        }).Aggregate(worse);
    }

    private double Figure(double[] at, double off, Func<Member, Draft, double, double> of)
    {
        Draft draft = new(new double[_form.Folds.Count], new double[_form.Folds.Count]);
        for (int i = 0; i < at.Length; i++)
        {
            _errors[i](at[i], draft);
        }

        if (MemberOf(at, draft) is not Member member)
        {
            _fails ??= "its contact fold no longer faces the wheel";
            return 0;
        }

        if (_limits.Friction is FrictionBand band && member.Balance.Jams(band.Most))
        {
            _fails ??= string.Create(CultureInfo.InvariantCulture, $"with friction of {band.Most:0.##} it digs in and jams, because the drag of the copper presses it down more than the copper can lift it");
            return 0;
        }

        return of(member, draft, off);
    }

    // Height and friction leave the shape alone: strips of the same shape are bent once.
    private Member? MemberOf(double[] at, Draft draft)
    {
        double[] key = at[.._shaping];
        if (!_members.TryGetValue(key, out Member? member))
        {
            StripErrors errors = new(draft.Angles, draft.Radii, draft.ThicknessMm, 0, draft.WidthMm);
            StripForm? made = _shaping == 0 ? _form : errors.Of(_form);
            member = made is null ? null : new Member(made, _radial, _limits.Direction, _pushAtMm);
            _members.Add(key, member);
        }

        return member;
    }

    private void Vary(double most, Action<double, Draft> set)
    {
        if (most > 0)
        {
            _errors.Add((e, d) => set(e * most, d));
        }
    }

    // A fold before the clamp or beyond the contact moves nothing.
    private static bool Bends(StripForm form, StripFold fold)
    {
        FormedPiece piece = form.Pieces.First(p => p.ShapeIndex == fold.ShapeIndex);
        return piece.ToMm > form.Clamp.ToMm && piece.FromMm < form.Nose!.AtMm;
    }
}
