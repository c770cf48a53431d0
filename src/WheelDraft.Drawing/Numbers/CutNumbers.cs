using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Numbers by which a part is set out and cut: as fine as the process can hold and no finer.</summary>
/// <remarks>Steps are 1, 2 or 5 times a power of ten, the least that is not below a tenth of the process tolerance, and 4 times where rounding to 5 would
/// move a place by more than that tenth: no figure promises what no saw can keep. Cutting files stay exact.</remarks>
internal sealed class CutNumbers
{
    private const double MmPerInch = 25.4;

    // Beyond this many decimals nothing is given, whatever the process.
    private const int MostDecimals = 5;

    private readonly double _shareMm;
    private readonly double _unitMm;

    /// <summary>Numbers for a unit and a process.</summary>
    public CutNumbers(DrawingUnit unit, double toleranceMm)
    {
        _unitMm = unit == DrawingUnit.Inch ? MmPerInch : 1;
        _shareMm = SetOut.ShareOfTolerance * toleranceMm;
        UnitSign = unit == DrawingUnit.Inch ? "in" : "mm";
    }

    /// <summary>Numbers of a design's drawings.</summary>
    public static CutNumbers Of(Design design) => new(design.Brief.DrawingUnit, design.Brief.Process.ToleranceMm);

    /// <summary>The unit of lengths: mm or in.</summary>
    public string UnitSign { get; }

    /// <summary>The step to which lengths are given, with its unit.</summary>
    public string StepWords => $"{Length(StepOf(_shareMm / _unitMm) * _unitMm)} {UnitSign}";

    /// <summary>A length, in the unit of the drawings.</summary>
    public string Length(double lengthMm) => Stepped(lengthMm / _unitMm, StepOf(_shareMm / _unitMm));

    /// <summary>A wheel angle on a radius, degrees in [0, 360): as fine as the length that it stands for there.</summary>
    public string Direction(double angleRad, double radiusMm)
    {
        double step = StepOf(Angles.DegFromRad(_shareMm / radiusMm));
        double degrees = Math.Round(Angles.DegFromRad(Angles.InTurn(angleRad)) / step) * step;
        return Stepped(degrees >= 360 - (step / 2) ? 0 : degrees, step);
    }

    /// <summary>The least of 1, 2, 5, 10, … and their tenths that is not below a value; 4 instead of 5 where half of 5 is above the value.</summary>
    /// <param name="least">The value; 0 for no limit.</param>
    internal static double StepOf(double least)
    {
        double finest = Math.Pow(10, -MostDecimals);
        double power = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(least, finest)) + 1e-9));

        // A hair of room, so that a tenth of 0.05 is 0.005 and not the step above.
        double step = ((double[])[1, 2, 5, 10]).Select(f => f * power).First(s => s >= least * (1 - 1e-9));
        return step / 2 > Math.Max(least, finest) * (1 + 1e-9) ? 0.8 * step : step;
    }

    private static string Stepped(double value, double step) =>
        DrawingNumbers.Fixed(Math.Round(value / step) * step, Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, MostDecimals));
}
