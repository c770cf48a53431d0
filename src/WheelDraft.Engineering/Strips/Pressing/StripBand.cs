using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>How far the figures of a strip may lie from the drawn ones: over the whole box of <see cref="PressingLimits"/> at once.</summary>
/// <param name="LeastForceN">Smallest force on copper: worn, over travel; 0 when the contact may leave the copper.</param>
/// <param name="MostForceN">Largest force on copper: new, over travel.</param>
/// <param name="MostStressMpa">Largest stress.</param>
public sealed record StripBand(double LeastForceN, double MostForceN, double MostStressMpa)
{
    /// <summary>The smallest deflection that is left when worn, mm; not above 0 when the contact may leave the copper.</summary>
    public required double LeastDeflectionMm { get; init; }

    /// <summary>How friction winds up the nose; null when no friction is given.</summary>
    public WindUp? WindUp { get; init; }

    /// <summary>Why some strip within the limits cannot work at all; null when all can.</summary>
    public string? Fails { get; init; }
}

/// <summary>Finds the band of a strip.</summary>
/// <remarks>Each figure is sought over the box as a whole (<see cref="BoxExtremes"/>), every member formed and bent anew, never added up
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
    private readonly int[] _folds;
    private readonly List<Action<double, Draft>> _errors = [];
    private readonly Dictionary<string, Member?> _members = new(StringComparer.Ordinal);
    private readonly int _shaping;
    private string? _fails;

    internal StripBanding(StripForm form, PressingLimits limits, SpaceVector radial, (double WornMm, double TravelMm) use)
    {
        _form = form;
        _limits = limits;
        _radial = radial;
        (_wornMm, _travelMm) = use;
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

    /// <summary>One strip of the batch, at the drawn height.</summary>
    private sealed record Member(SpringChain Chain, NoseBalance Balance, double DepthMm);

    internal StripBand Find()
    {
        double least = ForEachEnd((m, d, off) => Force(m, d, off, worn: true), Math.Min, BoxExtremes.Least);
        double most = ForEachEnd((m, d, off) => Force(m, d, off, worn: false), Math.Max, BoxExtremes.Most);
        double stress = ForEachEnd(Stress, Math.Max, BoxExtremes.Most);
        double depth = BoxExtremes.Least(_errors.Count, x => Figure(x, (m, d) => m.DepthMm + d.HeightMm - _wornMm, 0));
        return new StripBand(Math.Max(0, least) * (1 - Beyond), most * (1 + Beyond), stress * (1 + Beyond))
        {
            LeastDeflectionMm = depth,
            WindUp = _limits.Friction is null ? null : Winding(),
            Fails = _fails,
        };
    }

    private WindUp Winding()
    {
        double least = ForEachEnd((m, d, off) => Wind(m, d, off, onCarrier: true).AlongMm, Math.Min, BoxExtremes.Least);
        double most = ForEachEnd((m, d, off) => Wind(m, d, off, onCarrier: false).AlongMm, Math.Max, BoxExtremes.Most);
        double side = ForEachEnd((m, d, off) => Math.Abs(Wind(m, d, off, onCarrier: false).OutwardMm), Math.Max, BoxExtremes.Most);
        return new WindUp(least - (Beyond * Math.Abs(least)), most + (Beyond * Math.Abs(most))) { MostRadialMm = side * (1 + Beyond) };
    }

    private double Force(Member member, Draft draft, double off, bool worn) =>
        member.Balance.At(member.DepthMm + draft.HeightMm - (worn ? _wornMm : 0), Friction(draft), off).UpN;

    private double Stress(Member member, Draft draft, double off) =>
        StripSpring.Worst(member.Chain, member.Balance.At(member.DepthMm + draft.HeightMm, Friction(draft), off)).Mpa;

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

    private double ForEachEnd(Func<Member, Draft, double, double> figure, Func<double, double, double> worse, Func<int, Func<double[], double>, double> extreme)
    {
        double[] ends = _travelMm > 0 ? [0, -_travelMm / 2, _travelMm / 2] : [0];
        return ends.Select(off => extreme(_errors.Count, x => Figure(x, (m, d) => figure(m, d, off), off))).Aggregate(worse);
    }

    private double Figure(double[] at, Func<Member, Draft, double> of, double off)
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

        return of(member, draft);
    }

    // Height and friction leave the shape alone: strips of the same shape are bent once.
    private Member? MemberOf(double[] at, Draft draft)
    {
        string key = string.Join(' ', at.Take(_shaping).Select(x => x.ToString("R", CultureInfo.InvariantCulture)));
        if (!_members.TryGetValue(key, out Member? member))
        {
            StripErrors errors = new(draft.Angles, draft.Radii, draft.ThicknessMm, 0, draft.WidthMm);
            member = _shaping == 0 ? Bent(_form) : errors.Of(_form) is StripForm made ? Bent(made) : null;
            _members.Add(key, member);
        }

        return member;
    }

    private Member Bent(StripForm made)
    {
        SpringChain chain = new(made, _radial);
        return new Member(chain, new NoseBalance(chain, made.Nose!, _radial, _limits.Direction), made.Nose!.DepthMm);
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
