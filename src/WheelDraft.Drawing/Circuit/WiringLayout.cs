using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

// The chapter "Circuit": where things stand on the wiring diagram, as numbers. Nets are upright bars, contacts, inputs and loads
// lie on level rungs between two bars, line to the left and neutral to the right. What a symbol looks like is drawn elsewhere.

/// <summary>What a symbol of the wiring diagram stands for.</summary>
internal enum WiringKind
{
    /// <summary>The feed wiper on the wheel.</summary>
    Feed,

    /// <summary>An output's contact.</summary>
    Ring,

    /// <summary>A sensor or switch.</summary>
    Input,

    /// <summary>A load.</summary>
    Load,

    /// <summary>The drive motor.</summary>
    Motor,
}

/// <summary>One net as an upright bar.</summary>
/// <param name="Net">Its name; the wheel's own copper carries its feed's net.</param>
/// <param name="IsWheel">Whether it is the wheel's copper.</param>
/// <param name="XMm">Where it stands.</param>
/// <param name="TopMm">Its upper end, y downward.</param>
/// <param name="BottomMm">Its lower end, at least the upper one.</param>
internal sealed record WiringBar(string Net, bool IsWheel, double XMm, double TopMm, double BottomMm);

/// <summary>One two-ended symbol on a level rung.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Name of the output, input or load.</param>
/// <param name="Words">What is written below: the angles of a ring, the condition of an input; empty for none.</param>
/// <param name="YMm">Its level, y downward.</param>
/// <param name="LeftMm">Where its left lead meets a bar.</param>
/// <param name="RightMm">Where its right lead meets a bar, right of the left one.</param>
/// <param name="CentreMm">Where the symbol itself stands.</param>
internal sealed record WiringSymbol(WiringKind Kind, string Name, string Words, double YMm, double LeftMm, double RightMm, double CentreMm)
{
    /// <summary>Its reference designation; empty for none.</summary>
    public string Designation { get; init; } = "";

    /// <summary>Whether it is a contact that is closed all the turn.</summary>
    public bool IsAlways { get; init; }

    /// <summary>Index of the bar at its left end.</summary>
    public required int LeftBar { get; init; }

    /// <summary>Index of the bar at its right end.</summary>
    public required int RightBar { get; init; }
}

/// <summary>The wiring diagram's geometry.</summary>
/// <remarks>Every symbol lies on a rung of its own or shares one end to end. A rung that must pass a bar that is not its own crosses
/// it: rungs are ordered so that this happens as seldom as a deterministic local search finds. A circuit that is planar between
/// line and neutral can be drawn without any (Tamassia and Tollis, visibility representations, 1986, from memory); the search
/// is good, not proved best, so <see cref="Crossings"/> is the count that was reached.</remarks>
internal sealed class WiringLayout
{
    internal WiringLayout(IReadOnlyList<WiringBar> bars, IReadOnlyList<WiringSymbol> symbols)
    {
        Bars = bars;
        Symbols = symbols;
        Crossings = symbols.Sum(s => bars.Where((b, i) => i != s.LeftBar && i != s.RightBar).Count(b => Crosses(s, b)));
        WidthMm = bars.Max(b => b.XMm);
        HeightMm = bars.Max(b => b.BottomMm);
    }

    /// <summary>The nets.</summary>
    public IReadOnlyList<WiringBar> Bars { get; }

    /// <summary>The symbols.</summary>
    public IReadOnlyList<WiringSymbol> Symbols { get; }

    /// <summary>How often a rung crosses a bar that is not its own.</summary>
    public int Crossings { get; }

    /// <summary>From the leftmost bar to the rightmost.</summary>
    public double WidthMm { get; }

    /// <summary>From the top of the tallest bar to the lowest end.</summary>
    public double HeightMm { get; }

    /// <summary>Lays out a circuit.</summary>
    /// <param name="request">The circuit.</param>
    /// <param name="columnMm">From net to net, mm; as usual when null.</param>
    public static WiringLayout Of(CircuitRequest request, double? columnMm = null)
    {
        ArgumentNullException.ThrowIfNull(request);
        return new WiringPlacer(WiringGraph.Of(request)) { ColumnMm = columnMm ?? WiringPlacer.UsualColumnMm }.Place();
    }

    private static bool Crosses(WiringSymbol symbol, WiringBar bar) =>
        bar.XMm > symbol.LeftMm && bar.XMm < symbol.RightMm && bar.TopMm <= symbol.YMm && bar.BottomMm >= symbol.YMm;
}
