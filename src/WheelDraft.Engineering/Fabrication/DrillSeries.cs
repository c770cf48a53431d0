using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The twist drills that a workshop has: every size of a stated series.</summary>
/// <param name="Name">The series in words, as drawings state it.</param>
/// <param name="StepMm">From one size to the next, mm.</param>
/// <param name="Count">How many sizes there are: the smallest is one step, unless <see cref="FirstMm"/> is larger.</param>
internal sealed record DrillSeries(string Name, double StepMm, int Count)
{
    /// <summary>A hole comes out larger than its drill by up to this, mm on the diameter (common practice, no source): a pilot leaves it to be filed.</summary>
    public const double OversizeMm = 0.1;

    // Sizes are compared after rounding to this, mm: far below what a drill can hold, above the rounding of an inch.
    private const int ComparedDecimals = 6;

    /// <summary>The smallest drill, mm.</summary>
    public double FirstMm { get; init; }

    /// <summary>Jobber drills from 0.5 to 13 mm in steps of 0.1 mm (sizes of ISO 235, from memory).</summary>
    public static DrillSeries Metric { get; } = new("0.1 mm steps, 0.5 to 13 mm", 0.1, 130) { FirstMm = 0.5 };

    /// <summary>Fractional drills from 1/64 to 1/2 in in steps of 1/64 in (common practice, no source).</summary>
    public static DrillSeries Fractional { get; } = new("1/64 in steps, 1/64 to 1/2 in", 25.4 / 64, 32) { FirstMm = 25.4 / 64 };

    /// <summary>The series of a unit of drawings.</summary>
    public static DrillSeries Of(DrawingUnit unit) => unit == DrawingUnit.Inch ? Fractional : Metric;

    /// <summary>The largest drill of at most a size, mm; null when every drill is larger.</summary>
    public double? LargestUpTo(double sizeMm)
    {
        for (int i = Count; i > 0; i--)
        {
            double drill = Math.Round(i * StepMm, ComparedDecimals);
            if (drill >= Math.Round(FirstMm, ComparedDecimals) && drill <= Math.Round(sizeMm, ComparedDecimals))
            {
                return drill;
            }
        }

        return null;
    }
}

/// <summary>How a hole is drilled: to its size where the series has it, else under size, to be filed to the line.</summary>
/// <param name="At">Where the drill goes in.</param>
/// <param name="DrillMm">Diameter of the drill, mm.</param>
/// <param name="ToSize">Whether nothing is left to file.</param>
internal sealed record DrillPlan(Point At, double DrillMm, bool ToSize)
{
    // Where a drill about the axis would have less than this share of the room that there is, it goes in beside it.
    private const double LeastShareOnAxis = 0.5;

    /// <summary>A round hole; null when it is smaller than every drill.</summary>
    public static DrillPlan? Round(Point centre, double diameterMm, DrillSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        double? exact = series.LargestUpTo(diameterMm);
        return exact is double size && Math.Abs(size - diameterMm) < 1e-3 ? new(centre, size, true) : Pilot(centre, diameterMm, series);
    }

    /// <summary>A bore: round, or with a flat, which no drill makes. The pilot is then the largest drill about the axis whose hole stays inside the
    /// outline, flat and rounded corners included; where the flat lies so near the axis that hardly any drill would, the largest one beside it.</summary>
    public static DrillPlan? Bore(BoreBrief bore, Contour asCut, DrillSeries series)
    {
        ArgumentNullException.ThrowIfNull(bore);
        if (bore.FlatMm is not double flat)
        {
            return Round(Point.Origin, bore.DiameterMm, series);
        }

        // The largest circle between the flat and the opposite side.
        Point middle = Point.Polar((bore.DiameterMm - flat) / 2, bore.FlatAtRad + Math.PI);
        DrillPlan? onAxis = Pilot(Point.Origin, RoomMm(Point.Origin, asCut), series);
        DrillPlan? offAxis = Pilot(middle, RoomMm(middle, asCut), series);
        return onAxis is not null && (offAxis is null || onAxis.DrillMm >= LeastShareOnAxis * offAxis.DrillMm) ? onAxis : offAxis;
    }

    private static DrillPlan? Pilot(Point centre, double roomMm, DrillSeries series) =>
        series.LargestUpTo(roomMm - DrillSeries.OversizeMm) is double drill ? new(centre, drill, false) : null;

    // Diameter of the largest circle about a point inside a contour, mm; 0 for a point outside.
    private static double RoomMm(Point centre, Contour asCut)
    {
        Outline inside = new(asCut.Travelled(Turning.Anticlockwise));
        return inside.Contains(centre) ? 2 * Distances.ToEdge(centre, inside).DistanceMm : 0;
    }
}
