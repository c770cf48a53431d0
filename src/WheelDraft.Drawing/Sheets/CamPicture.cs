using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Plan and diagrams of a cam in an area of the paper.</summary>
internal sealed class CamPicture
{
    private const double AroundMm = 16;
    private const double LeastDiagramMm = 22;
    private const double PlanShare = 0.55;
    private const double WideShare = 1.4;

    private readonly Design _design;
    private readonly CamLayout _cam;
    private readonly SheetView _plan;
    private readonly Bounds _diagrams;
    private readonly Bounds _drawing;

    /// <param name="design">The design.</param>
    /// <param name="cam">The cam.</param>
    /// <param name="picture">Where both stand.</param>
    public CamPicture(Design design, CamLayout cam, Bounds picture)
    {
        (_design, _cam) = (design, cam);
        if (IsWide(picture))
        {
            double half = (picture.MinX + picture.MaxX) / 2;
            _drawing = picture with { MaxX = half };
            _diagrams = new(half + AroundMm, picture.MinY + 9, picture.MaxX - 4, picture.MaxY - 2);
        }
        else
        {
            double foot = picture.MinY + Math.Max((1 - PlanShare) * picture.Height, 4 * LeastDiagramMm);
            _drawing = picture with { MinY = foot };
            _diagrams = new(picture.MinX + AroundMm, picture.MinY + 9, picture.MaxX - 4, foot - 2);
        }

        _plan = SheetView.Fitted(CamPlan.Seen(cam), _drawing.Grown(-AroundMm));
    }

    // Where there is more width than height the diagrams stand beside the plan, else under it.
    private static bool IsWide(Bounds picture) => picture.Width > WideShare * picture.Height;

    /// <summary>Both in an area, or null where the plan does not fit at a scale or larger.</summary>
    public static CamPicture? Fitted(Design design, CamLayout cam, Bounds picture, double leastScale)
    {
        try
        {
            return (IsWide(picture) ? picture.Height > 5 * LeastDiagramMm && picture.Width > 10 * LeastDiagramMm : picture.Height > 8 * LeastDiagramMm) && new CamPicture(design, cam, picture) is { } fitted && fitted.Scale.Factor >= leastScale ? fitted : null;
        }
        catch (NoRoomException)
        {
            return null;
        }
    }

    /// <summary>The scale of the plan.</summary>
    public DrawingScale Scale => _plan.Scale;

    /// <summary>Draws both.</summary>
    public void Draw(SheetBuilder sheet)
    {
        new CamPlan(_design, _cam, _plan).Draw(sheet);
        AngleSense.TryDraw(sheet, _drawing);
        CamDiagrams.Draw(sheet, _design, _cam, _diagrams);
    }
}
