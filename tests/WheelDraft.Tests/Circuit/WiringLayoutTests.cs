using CsCheck;
using WheelDraft.Drawing;
using Xunit;

namespace WheelDraft.Tests;

public sealed class WiringLayoutTests
{
    [Fact]
    public void Of_SelfHoldingTimer_HasNoCrossing()
    {
        // Worked here: start switch and hold ring both feed "run"; two valves hang on rings of their own.
        WiringLayout layout = WiringLayout.Of(new CircuitBuilder().Ring("hold", "run", 0, (3, 360)).Ring("dose", (100, 110)).Ring("mist", (120, 125))
            .Watts("dosing valve", "dose", "N", 7).Watts("mist valve", "mist", "N", 7).Motor("run", "N").Input("thermostat", "L", "run").Request());
        Assert.Equal(0, layout.Crossings);
        Assert.Equal(1 + 1 + 3 + 2 + 1, layout.Symbols.Count);
        Assert.Equal("100–110° = 100–110 s", layout.Symbols.Single(s => s.Kind == WiringKind.Ring && s.Name is "dose").Words);
        Assert.Equal(0, layout.Bars[0].XMm);
        Assert.Equal(layout.WidthMm, layout.Bars[1].XMm);
        Keeps(layout);
    }

    [Fact]
    public void Of_LadderWithABypass_HasNoCrossing()
    {
        // Worked here: heater and valve in series with a thermostat across the valve is planar.
        WiringLayout layout = WiringLayout.Of(new CircuitBuilder().Ring("dose", (10, 20)).Ohms("heater", "dose", "mid", 50).Ohms("valve", "mid", "N", 450)
            .Input("thermostat", "mid", "N").Request());
        Assert.Equal(0, layout.Crossings);
        Keeps(layout);
    }

    [Fact]
    public void Of_RandomCircuit_JoinsEverySymbolToItsBarsWithoutOverlap()
    {
        string[] nets = ["L", "N", "a", "b", "c", "E"];
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5]).Array[1, 8].Sample(
            links =>
            {
                CircuitBuilder circuit = new CircuitBuilder().Ring("a", (10, 20)).Ring("b", (30, 40));
                for (int l = 0; l < links.Length; l++)
                {
                    circuit.Watts($"load {(char)('a' + l)}", nets[links[l].Item1], nets[links[l].Item2], 7);
                }

                WiringLayout first = WiringLayout.Of(circuit.Request());
                WiringLayout second = WiringLayout.Of(circuit.Request());
                Assert.Equal(first.Symbols.AsEnumerable(), second.Symbols);
                Keeps(first);
            },
            iter: 200,
            threads: 1);
    }

    private static void Keeps(WiringLayout layout)
    {
        foreach (WiringSymbol symbol in layout.Symbols)
        {
            Assert.True(symbol.LeftMm < symbol.CentreMm && symbol.CentreMm < symbol.RightMm);
            foreach ((int bar, double x) in new[] { (symbol.LeftBar, symbol.LeftMm), (symbol.RightBar, symbol.RightMm) })
            {
                Assert.Equal(x, layout.Bars[bar].XMm);
                Assert.InRange(symbol.YMm, layout.Bars[bar].TopMm, layout.Bars[bar].BottomMm);
            }

            // Symbols on one rung do not overlap, bars in one column do not meet.
            Assert.DoesNotContain(layout.Symbols, s => !ReferenceEquals(s, symbol) && s.YMm == symbol.YMm && s.LeftMm < symbol.RightMm && symbol.LeftMm < s.RightMm);
        }

        foreach (WiringBar bar in layout.Bars)
        {
            Assert.DoesNotContain(layout.Bars, b => !ReferenceEquals(b, bar) && b.XMm == bar.XMm && b.TopMm < bar.BottomMm && bar.TopMm < b.BottomMm);
        }
    }
}
