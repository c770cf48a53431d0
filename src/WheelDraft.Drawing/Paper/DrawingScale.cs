using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A scale of ISO 5455: paper to model.</summary>
/// <param name="Paper">Millimetres on the paper.</param>
/// <param name="Model">Millimetres of the model.</param>
internal readonly record struct DrawingScale(int Paper, int Model)
{
    /// <summary>Full size.</summary>
    public static DrawingScale FullSize => new(1, 1);

    /// <summary>The scales of ISO 5455:1979, the largest first.</summary>
    public static IReadOnlyList<DrawingScale> Iso { get; } =
    [
        new(50, 1), new(20, 1), new(10, 1), new(5, 1), new(2, 1), new(1, 1),
        new(1, 2), new(1, 5), new(1, 10), new(1, 20), new(1, 50), new(1, 100), new(1, 200), new(1, 500),
        new(1, 1000), new(1, 2000), new(1, 5000), new(1, 10_000),
    ];

    /// <summary>Length on the paper by length of the model.</summary>
    public double Factor => (double)Paper / Model;

    /// <summary>The largest scale at which something fits an area.</summary>
    /// <exception cref="NoRoomException">It fits at none, or the area has no size.</exception>
    public static DrawingScale Fitting(Bounds model, Bounds area)
    {
        foreach (DrawingScale scale in Iso)
        {
            if (model.Width * scale.Factor <= area.Width && model.Height * scale.Factor <= area.Height)
            {
                return scale;
            }
        }

        throw new NoRoomException(
            string.Create(CultureInfo.InvariantCulture, $"{model.Width:0.###} by {model.Height:0.###} mm fit {area.Width:0.###} by {area.Height:0.###} mm of paper at no standard scale."));
    }

    /// <summary>The largest scale at which something fits an area, standard or not, in thousandths: for pictures that nobody measures on.</summary>
    /// <param name="model">What must be seen, of a size above 0 on at least one side.</param>
    /// <param name="area">The area.</param>
    /// <exception cref="NoRoomException">The area has no size.</exception>
    public static DrawingScale Free(Bounds model, Bounds area)
    {
        const int parts = 1000;
        double factor = Math.Min(area.Width / model.Width, area.Height / model.Height);
        return factor * parts >= 1
            ? new((int)Math.Floor(parts * Math.Min(factor, Iso[0].Factor)), parts)
            : throw new NoRoomException(string.Create(CultureInfo.InvariantCulture, $"{area.Width:0.###} by {area.Height:0.###} mm leave no room for a picture."));
    }

    /// <summary>As it is written in the title block: 2:1.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Paper}:{Model}");
}

/// <summary>A picture for which labels, tables and notes leave no room on the paper.</summary>
public sealed class NoRoomException(string message) : ArgumentException(message);
