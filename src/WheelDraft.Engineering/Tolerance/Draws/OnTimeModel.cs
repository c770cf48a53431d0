using System.Runtime.Intrinsics;

namespace WheelDraft.Engineering;

/// <summary>Start, on-time and dose of one on-period as a function of everything that may depart from the drawing, for four draws at once.</summary>
/// <remarks>The same edges and patches as the worst case, no first-order sum, so that no draw leaves it. A wiper's placing is taken along its
/// circle at its own radius. Strips' friction is not in it, as it is not in the worst case.</remarks>
internal sealed class OnTimeModel
{
    /// <summary>How many numbers a draw has.</summary>
    public const int Variates = 13;

    private readonly TimedPeriod _of;
    private readonly EdgeMoments _make;
    private readonly EdgeMoments _off;
    private readonly double _apartCos;
    private readonly double _apartSin;
    private readonly int[] _normals;
    private readonly int[] _uniforms;
    private readonly int[] _oneSided;

    /// <param name="of">The on-period.</param>
    /// <param name="asked">The law of deviations that have no law of their own.</param>
    public OnTimeModel(TimedPeriod of, DrawDistribution asked)
    {
        _of = of;
        RidingPlace wiper = new(of.RadiusMm, of.MovedMm, of.Deviations.SidePlayMm);
        _make = new(Points(of.MakePatch, EdgeEnd.Make), of.Make, wiper, of.Deviations.MakeCutMm + of.Deviations.CentreMm);
        _off = new(Points(of.BreakPatch, EdgeEnd.Break), of.Break, wiper, of.Deviations.BreakCutMm + of.Deviations.CentreMm);
        (_apartSin, _apartCos) = Math.SinCos(of.Break.NormalRad + of.Make.NormalRad);
        DrawLaw law = asked == DrawDistribution.Uniform ? DrawLaw.Uniform : DrawLaw.Normal;
        Kinds = [.. Drawn(law)];
        int[] normals = [.. Kinds.Where(k => k.Law == DrawLaw.Normal).SelectMany(k => k.Of).Select(v => (int)v)];
        _normals = normals.Length % 2 == 0 ? normals : [.. normals, (int)Variate.Unused];
        _uniforms = [.. Kinds.Where(k => k.Law == DrawLaw.Uniform).SelectMany(k => k.Of).Select(v => (int)v)];
        _oneSided = [.. Kinds.Where(k => k.IsOneSided).SelectMany(k => k.Of).Select(v => (int)v)];
        OnS = of.Motion.SecondsFromRad(of.Wanted.SweepRad);
        StartS = of.Motion.SecondsFromRad(of.Wanted.StartRad);
    }

    /// <summary>What is drawn: every deviation whose band is not nothing, in fixed order.</summary>
    public IReadOnlyList<DrawnKind> Kinds { get; }

    /// <summary>The on-time as drawn, at mid travel, s.</summary>
    public double OnS { get; }

    /// <summary>The start as drawn, s after home.</summary>
    public double StartS { get; }

    /// <summary>The dose as drawn, mL; 0 when nothing flows.</summary>
    public double DoseMl => OnS * _of.FlowLPerS * 1000;

    /// <summary>On-time, start and dose of four draws.</summary>
    /// <param name="drawn">By <see cref="Variate"/>, each as a share of its band.</param>
    public DrawnTimes Of(ReadOnlySpan<Vector256<double>> drawn)
    {
        Deviations d = _of.Deviations;
        Vector256<double> along = drawn[(int)Variate.CentreAlong];
        Vector256<double> makeCentre = (along * Vector256.Create(_apartCos)) + (drawn[(int)Variate.CentreAcross] * Vector256.Create(_apartSin));
        Vector256<double> makePlay = drawn[(int)Variate.MakePlay] * Vector256.Create(d.SidePlayMm);
        Vector256<double> breakPlay = drawn[(int)Variate.BreakPlay] * Vector256.Create(d.SidePlayMm);
        Vector256<double> wear = drawn[(int)Variate.Wear];
        Vector256<double> centre = Vector256.Create(d.CentreMm);
        Vector256<double> makeOut = (drawn[(int)Variate.MakeCut] * Vector256.Create(d.MakeCutMm)) + (makeCentre * centre);
        Vector256<double> breakOut = (drawn[(int)Variate.BreakCut] * Vector256.Create(d.BreakCutMm)) + (along * centre);
        (Vector256<double> makeBeside, Vector256<double> makeAhead) = _make.Later(makePlay, makeOut, wear);
        (Vector256<double> breakBeside, Vector256<double> breakAhead) = _off.Later(breakPlay, breakOut, wear);

        // One division for three quotients.
        Vector256<double> speed = (drawn[(int)Variate.Frequency] * Vector256.Create(d.FrequencyShare * _of.Motion.SpeedRadPerS)) + Vector256.Create(_of.Motion.SpeedRadPerS);
        Vector256<double> both = makeAhead * breakAhead;
        Vector256<double> inverse = Vector256<double>.One / (both * speed);
        Vector256<double> toS = inverse * both;
        Vector256<double> perBoth = inverse * speed;
        Vector256<double> sooner = _make.LaterRad(makeBeside * (breakAhead * perBoth));
        Vector256<double> later = _off.LaterRad(breakBeside * (makeAhead * perBoth));
        Vector256<double> start = Vector256.Create(_of.Wanted.StartRad) - sooner;
        Vector256<double> on = Vector256.Create(_of.Wanted.SweepRad) + sooner + later;
        if (d.PlacingMm > 0)
        {
            Vector256<double> riding = Vector256.Create(_of.RadiusMm + _of.MovedMm);
            Vector256<double> placing = Vector256.Create(d.PlacingMm);
            Vector256<double> makes = drawn[(int)Variate.MakePlacing] * placing / (riding + makePlay);
            start += makes;
            on += _of.HasTwoWipers ? (drawn[(int)Variate.BreakPlacing] * placing / (riding + breakPlay)) - makes : Vector256<double>.Zero;
        }

        start = (drawn[(int)Variate.Backlash] * Vector256.Create(d.BacklashRad)) + start;

        // A contact that never closes is on for no time, and not for less.
        on = Vector256.MaxNative(on * toS, Vector256<double>.Zero);
        Vector256<double> flow = Vector256.Create(_of.FlowLPerS * 1000) * (Vector256<double>.One + (drawn[(int)Variate.Flow] * Vector256.Create(_of.FlowShare)));
        return new(on, start * toS, on * flow);
    }

    /// <summary>Draws all numbers of four draws.</summary>
    public void Draw(ref DrawStream from, Span<Vector256<double>> into)
    {
        DrawStream stream = from;
        for (int i = 0; i < _normals.Length; i += 2)
        {
            (into[_normals[i]], into[_normals[i + 1]]) = stream.TwoNormals();
        }

        foreach (int i in _uniforms)
        {
            into[i] = stream.Uniform();
        }

        if (_of.Deviations.CentreMm > 0)
        {
            (into[(int)Variate.CentreAlong], into[(int)Variate.CentreAcross]) = stream.Direction();
        }

        // What lies on one side of nominal only is half a band up.
        foreach (int i in _oneSided)
        {
            into[i] = (into[i] + Vector256<double>.One) * Vector256.Create(0.5);
        }

        from = stream;
    }

    private (EdgePatchPoints New, EdgePatchPoints Worn) Points(ContactPatch patch, EdgeEnd end) => (
        new ProgrammePatch(patch, _of.Motion.Direction).PointsFor(end),
        new ProgrammePatch(_of.Deviations.Wears ? patch.Worn : patch, _of.Motion.Direction).PointsFor(end));

    private IEnumerable<DrawnKind> Drawn(DrawLaw law)
    {
        Deviations d = _of.Deviations;
        bool wears = d.Wears && (_of.MakePatch.WearMm > 0 || _of.BreakPatch.WearMm > 0);
        (bool Is, DrawnKind Kind)[] all =
        [
            (d.FrequencyShare > 0, new(DeviationKind.Frequency, law, [Variate.Frequency])),
            (d.MakeCutMm > 0, new(DeviationKind.MakeCut, law, [Variate.MakeCut])),
            (d.BreakCutMm > 0, new(DeviationKind.BreakCut, law, [Variate.BreakCut])),
            (d.CentreMm > 0, new(DeviationKind.Centre, DrawLaw.Arcsine, [Variate.CentreAlong, Variate.CentreAcross])),
            (d.SidePlayMm > 0, new(DeviationKind.SidePlay, law, [Variate.MakePlay, Variate.BreakPlay])),
            (wears, new(DeviationKind.Wear, DrawLaw.Uniform, [Variate.Wear])),
            (d.PlacingMm > 0, new(DeviationKind.Placing, law, _of.HasTwoWipers ? [Variate.MakePlacing, Variate.BreakPlacing] : [Variate.MakePlacing])),
            (d.BacklashRad > 0, new(DeviationKind.Backlash, law, [Variate.Backlash])),
            (_of is { FlowLPerS: > 0, FlowShare: > 0 }, new(DeviationKind.Flow, law, [Variate.Flow])),
        ];
        return all.Where(a => a.Is).Select(a => a.Kind);
    }
}

/// <summary>Four draws of an on-period.</summary>
/// <param name="OnS">On-time, s.</param>
/// <param name="StartS">Start after home, s.</param>
/// <param name="DoseMl">Dose, mL; 0 when nothing flows.</param>
internal readonly record struct DrawnTimes(Vector256<double> OnS, Vector256<double> StartS, Vector256<double> DoseMl);
