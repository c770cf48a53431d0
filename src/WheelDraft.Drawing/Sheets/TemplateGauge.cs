using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A folded strip from the side at true size: a gauge to hold the strip's edge against, fold after fold.</summary>
internal sealed class TemplateGauge
{
    private const double NameMm = 3.2;
    private const double RoundMm = 8;

    private readonly StripForm _form;
    private readonly int _number;
    private readonly DrawingNumbers _numbers;
    private readonly StripProfile _profile;

    public TemplateGauge(Design design, StripForm form, int number)
    {
        (_form, _number, _numbers) = (form, number, new(design.Brief.DrawingUnit));
        _profile = StripProfile.Of(form);
    }

    /// <summary>Whether a strip has anything to hold against it.</summary>
    public static bool IsWanted(StripForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return form.Folds.Count > 0;
    }

    /// <summary>The sheet.</summary>
    public Sheet Draw()
    {
        TemplatePart part = TemplatePart.Of(
            new(Invariant.Text($"template-gauge-{_number}"), $"Fold gauge of strip '{_form.Strip.Name}'", "A folded strip from the side at true size, free of the wheel, to hold the strip's edge against while it is folded."),
            _profile.Bounds,
            new(BesideMm: RoundMm, AboveAndBelowMm: RoundMm),
            [
                $"Fold gauge of strip '{_form.Strip.Name}', seen from its edge, free: as it is before the wheel presses on it. Lay the folded strip on it on edge; both lines of its thickness, {_numbers.Thickness(_form.Strip.ThicknessMm)}, are drawn. Terminal end {(_profile.Legs[0].Start.At.X < _profile.Legs[^1].Along(1).At.X ? "left" : "right")}, wiper side up.{(_form.Pieces.Any(p => p.Kind == FormedKind.Sweep) ? " Sweeps in the plane are laid out straight: hold only the legs between folds against it." : "")}",
                .. _form.Folds.Select((f, i) => $"{DrawingNumbers.Trimmed(i + 1, 0)}: {DrawingNumbers.Angle(Math.Abs(f.AngleRad))} {(f.AngleRad > 0 ? "up" : "down")} inside {_numbers.Radius(f.RadiusMm)}, made as number {DrawingNumbers.Trimmed(f.Order, 0)}; bend to {DrawingNumbers.Fixed(Math.Abs(Angles.DegFromRad(f.Setting.AngleRad)), 1)}° and let it spring back."),
            ]);
        ViewPen pen = part.In("profile", "The strip from its edge");
        pen.Area(new Outline(_profile.Edge), Fill.Of(FillKind.CopperPale), TemplateMarks.Cut);
        if (_profile.Rivet is Contour rivet)
        {
            pen.Area(new Outline(rivet), Fill.Of(FillKind.CopperPale), TemplateMarks.Scribed);
        }

        GroupPen names = part.On("names", "Numbers of the folds");
        int number = 0;
        foreach (ProfileLeg leg in _profile.Legs.Where(l => l.AngleRad != 0))
        {
            number++;

            // Outside the fold, away from its centre.
            ProfileFrame middle = leg.Along(0.5);
            Vector out1 = Vector.Polar(1, middle.DirectionRad).Left * -Math.Sign(leg.AngleRad);
            names.Text(DrawingNumbers.Trimmed(number, 0), new(part.View.Of(middle.At) + (out1 * (NameMm + (_form.Strip.ThicknessMm / 2))), TextAlong.Middle, TextAcross.Middle), TextStyle.Small);
        }

        return part.Build();
    }
}
