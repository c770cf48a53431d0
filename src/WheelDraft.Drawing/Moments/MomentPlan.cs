using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The wheel with its strips, each wiper with a tag of its state; places are found once, for all moments of a turn.</summary>
internal sealed class MomentPlan
{
    // Round the model for tags, as shares of its size: the first at which every tag finds room.
    private static readonly double[] AirShares = [0.03, 0.06, 0.1, 0.14, 0.18, 0.24];

    private readonly Design _design;
    private readonly SheetView _view;
    private readonly IReadOnlyList<MomentWiper> _wipers;
    private readonly IReadOnlyList<MomentTag> _tags;

    /// <summary>Puts it into an area, as large as it fits.</summary>
    public MomentPlan(Design design, Bounds area)
    {
        _design = design;
        PlanView plan = new(design, null);
        _wipers = MomentWiper.Of(design, plan.CarrierMm);
        Bounds model = _wipers.SelectMany(w => w.Outline).Aggregate(plan.Model, (all, c) => all.With(c.Bounds));
        model = design.Cams.SelectMany(c => new[] { 0, c.Brief.Latch ?? c.TopLift }.Select(l => LeverPen.BoundsOf(c, l))).Aggregate(model, (all, b) => all.With(b));
        _view = SheetView.At(DrawingScale.FullSize, Point.Origin, area.Centre);
        _tags = [];
        foreach (double air in AirShares)
        {
            _view = View(model.Grown(Math.Max(model.Width, model.Height) * air), area);
            _tags = new MomentTags(_view, _wipers, plan.CarrierMm, area).Place(numbers: false);
            if (_tags.Count == _wipers.Count)
            {
                break;
            }
        }

        if (_tags.Count < _wipers.Count)
        {
            _tags = new MomentTags(_view, _wipers, plan.CarrierMm, area).Place(numbers: true);
        }
    }

    /// <summary>The axis of the wheel on the paper.</summary>
    public Point Axis => _view.Of(Point.Origin);

    /// <summary>What the numbers beside wipers mean, and which wipers have not even a number; empty where every name found room.</summary>
    public IReadOnlyList<string> Key =>
    [
        .. _tags.Where(t => t.IsNumber).Select(t => $"{t.Lines[0]}: {t.Wiper.Name}"),
        .. Untagged.Select(name => $"not labelled: {name}"),
    ];

    /// <summary>The key with every wiper in it: the longest that it can become.</summary>
    public IReadOnlyList<string> LongestKey => [.. _wipers.Select(w => $"not labelled: {w.Name}")];

    /// <summary>Wipers whose tag finds no room.</summary>
    public IEnumerable<string> Untagged => _wipers.Except(_tags.Select(t => t.Wiper)).Select(w => w.Name);

    /// <summary>Draws a moment.</summary>
    public void Draw(SheetBuilder sheet, MomentView moment)
    {
        PlanView plan = new(_design, moment);
        plan.Draw(sheet, _view);
        GroupPen arms = sheet.Group("wipers", "Arms in place of strips, and their contact patches", "wipers");
        foreach (MomentWiper wiper in _wipers.Where(w => w.Patch is not null))
        {
            arms.In(_view).Area(new Outline(wiper.Outline[0]), MomentView.FillOf(moment.Net(wiper.Net)), LineStyle.Edge).Area(wiper.Patch!, Fill.Solid(Ink.Accent));
        }

        plan.DrawIndex(sheet, _view);
        ViewPen cams = sheet.Group("cams", "Cams over the wheel, turned with it", "cam").In(_view);
        ViewPen pivots = sheet.Group("pivots", "Pivots of levers", "lever").In(_view);
        for (int i = 0; i < _design.Cams.Count; i++)
        {
            CamLayout cam = _design.Cams[i];
            cams.Line(cam.Outline.Outer.Placed(moment.Wheel), LineStyle.Thin);
            LeverPen.Pivot(pivots, cam);
            ViewPen lever = sheet.Group(LeverGroup(i), Invariant.Text($"The lever of cam {cam.Brief.Name}, where it is"), "lever").In(_view);
            LeverPen.Body(lever, cam, moment.IsUnmoved ? 0 : moment.PlaceOf(cam), LineStyle.Edge);
        }

        GroupPen tags = sheet.Group("tags", "How each wiper stands", "tags");
        foreach (MomentTag tag in _tags)
        {
            tag.Draw(tags, moment);
        }
    }

    /// <summary>The group that a lever is drawn in.</summary>
    public static string LeverGroup(int index) => Invariant.Text($"lever-{index + 1}");

    /// <summary>How the lever of a cam goes on the paper as it is lifted.</summary>
    public LeverWay WayOf(CamLayout cam) => cam.Brief.Lever switch
    {
        SwingingLever swing => new(_view.Of(swing.Pivot), swing.Lifts == Turning.Anticlockwise ? 1 : -1, default),
        SlidingLever slide => new(null, 0, Vector.Polar(_view.OnPaperMm(1), slide.DirectionRad)),
        _ => throw new NotSupportedException("A lever of no known kind."),
    };

    // A picture, not a drawing to measure on: any scale will do.
    private static SheetView View(Bounds model, Bounds area)
    {
        const int parts = 1000;
        int scale = Math.Max(1, (int)Math.Floor(parts * Math.Min(area.Width / model.Width, area.Height / model.Height)));
        return SheetView.At(new DrawingScale(scale, parts), model.Centre, area.Centre);
    }
}

/// <summary>How a lever goes on the paper as it is lifted: it turns about its pivot, or slides.</summary>
/// <param name="Pivot">The pivot on the paper; null for a slide.</param>
/// <param name="Sense">1 where it turns anticlockwise, −1 clockwise; 0 for a slide.</param>
/// <param name="AlongMm">How far a slide goes for a lift of 1 mm.</param>
internal sealed record LeverWay(Point? Pivot, double Sense, Vector AlongMm);
