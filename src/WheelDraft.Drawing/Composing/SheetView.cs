using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A view: how the model, in its own millimetres, lies on the paper.</summary>
/// <param name="ToPaper">From the model to the paper; its scale is that of <paramref name="Scale"/>.</param>
/// <param name="Scale">Scale of the view.</param>
internal sealed record SheetView(Placement ToPaper, DrawingScale Scale)
{
    /// <summary>The view that puts a point of the model on a point of the paper.</summary>
    public static SheetView At(DrawingScale scale, Point model, Point paper)
    {
        Placement scaling = Placement.Scaling(scale.Factor);
        return new(scaling.Then(Placement.Translation(paper - scaling.Of(model))), scale);
    }

    /// <summary>The view of the largest standard scale whose content fits an area, centred in it.</summary>
    /// <param name="model">What must be seen, model mm.</param>
    /// <param name="area">The area on the paper.</param>
    public static SheetView Fitted(Bounds model, Bounds area) => At(DrawingScale.Fitting(model, area), model.Centre, area.Centre);

    /// <summary>A point of the model on the paper.</summary>
    public Point Of(Point model) => ToPaper.Of(model);

    /// <summary>A length of the model on the paper, mm.</summary>
    public double OnPaperMm(double modelMm) => modelMm * ToPaper.Scale;

    /// <summary>The rectangle on the paper that a rectangle of the model takes.</summary>
    public Bounds Of(Bounds model) =>
        Bounds.Of([.. TextBox.Of(model).Corners.Select(ToPaper.Of)]);
}

/// <summary>Draws into a group in millimetres of the model; widths and letters keep their size on the paper.</summary>
internal sealed class ViewPen
{
    internal ViewPen(GroupPen pen, SheetView view)
    {
        Pen = pen;
        View = view;
    }

    /// <summary>The pen on the paper.</summary>
    public GroupPen Pen { get; }

    /// <summary>The view.</summary>
    public SheetView View { get; }

    /// <summary>Draws an area.</summary>
    public ViewPen Area(Outline shape, Fill fill, LineStyle? edge = null)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Pen.Area(shape.Placed(View.ToPaper), fill, edge);
        return this;
    }

    /// <summary>Draws a line along pieces.</summary>
    public ViewPen Line(IReadOnlyList<Piece> pieces, LineStyle style)
    {
        Pen.Line([.. pieces.Select(p => p.Placed(View.ToPaper))], style);
        return this;
    }

    /// <summary>Draws a closed line.</summary>
    public ViewPen Line(Contour contour, LineStyle style)
    {
        ArgumentNullException.ThrowIfNull(contour);
        return Line(contour.Pieces, style);
    }

    /// <summary>Draws a straight line.</summary>
    public ViewPen Line(Point from, Point to, LineStyle style) => Line([new Segment(from, to)], style);

    /// <summary>Draws the centre cross of a circle: two chain lines that reach beyond it by 2 mm on the paper.</summary>
    public ViewPen CentreCross(Point centre, double radiusMm)
    {
        const double beyondMm = 2;
        Point c = View.Of(centre);
        double reach = View.OnPaperMm(radiusMm) + beyondMm;
        Pen.Line(c - new Vector(reach, 0), c + new Vector(reach, 0), LineStyle.Centre);
        Pen.Line(c - new Vector(0, reach), c + new Vector(0, reach), LineStyle.Centre);
        return this;
    }
}
