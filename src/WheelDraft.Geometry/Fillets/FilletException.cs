using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>A corner cannot be rounded with the wanted radius.</summary>
public sealed class FilletException : InvalidOperationException
{
    internal FilletException(double radiusMm, Point at, double neededMm, double availableMm)
        : base(string.Create(CultureInfo.InvariantCulture, $"A fillet of radius {radiusMm:0.######} mm at ({at.X:0.######}, {at.Y:0.######}) takes {neededMm:0.######} mm of a side that is {availableMm:0.######} mm long."))
    {
        RadiusMm = radiusMm;
        At = at;
        NeededMm = neededMm;
        AvailableMm = availableMm;
    }

    internal FilletException(double radiusMm, Point at)
        : base(string.Create(CultureInfo.InvariantCulture, $"No circle of radius {radiusMm:0.######} mm touches both sides of the corner at ({at.X:0.######}, {at.Y:0.######})."))
    {
        RadiusMm = radiusMm;
        At = at;
        NeededMm = double.PositiveInfinity;
    }

    /// <summary>The wanted radius, mm.</summary>
    public double RadiusMm { get; }

    /// <summary>The corner.</summary>
    public Point At { get; }

    /// <summary>How much of one side the fillets at its ends take together, mm; infinite where no circle touches both sides.</summary>
    public double NeededMm { get; }

    /// <summary>How long that side is, mm; 0 where no circle touches both sides.</summary>
    public double AvailableMm { get; }
}
