using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests;

/// <summary>Briefs made in code, for tests that vary one thing at a time.</summary>
internal static class Briefs
{
    internal static ProcessBrief Cutter { get; } = new(null, 0, 0.05, 0.5, 0.5, 0.5, 0.15);

    /// <summary>A plain 230 V wheel of three minutes a turn, clockwise, with the given outputs.</summary>
    internal static Brief Plain(params IReadOnlyList<OutputBrief> outputs) => new()
    {
        Title = "Plain wheel",
        Supply = new(230, 50, 0.01, OvervoltageCategory.II),
        Environment = new(3, 300, true),
        Drive = new(180, Turning.Clockwise, 0, default),
        Spacing = new(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Reinforced, Insulation.Functional, 0.2, GrooveX.Full),
        Wheel = new(WheelConstruction.Windowed, 0.5, "C11000-H02", new(6, null, 0), ShaftKind.Insulating, 1.2) { RunOutMm = 0.1 },
        Carrier = new(MaterialGroup.IIIa, 3, 0),
        Process = Cutter,
        Feed = new("L", 0, new(0.8, 3, 0.8, 0, null), 0.1),
        Outputs = outputs,

        // Nobody looks at how many draws a plain wheel's figures come from.
        MonteCarlo = new() { Draws = 20_000 },
    };

    /// <summary>The end of a parameter file whose draws are a matter of milliseconds: for tests of anything but draws.</summary>
    internal const string FewDraws = "\n[monte_carlo]\ndraws = 20000\n";

    /// <summary>An output on from one time for another, its patch 0.4 by 2 mm.</summary>
    internal static OutputBrief Output(string name, double fromS, double forS, double toleranceS = 3) =>
        Output(name, toleranceS, (fromS, forS));

    internal static OutputBrief Output(string name, double toleranceS, params (double FromS, double ForS)[] periods) =>
        new(name, name, new([.. periods.Select(p => new OnPeriodBrief(new StartAt(TurnAmount.Seconds(p.FromS)), new LastsFor(TurnAmount.Seconds(p.ForS))))]), new(0.4, 2, 0.4, 0, null))
        {
            ToleranceS = toleranceS,
            StationRad = 0,
            SidePlayMm = 0.1,
            OverOpenContact = Insulation.Functional,
        };

    /// <summary>The same surroundings with a wheel of lands.</summary>
    internal static Brief Lands(params IReadOnlyList<OutputBrief> outputs)
    {
        Brief plain = Plain(outputs);
        return plain with { Feed = null, Wheel = plain.Wheel with { Construction = WheelConstruction.Lands } };
    }

    /// <summary>An output with two wipers, joined to L.</summary>
    internal static OutputBrief TwoWipers(OutputBrief output, double? stationDeg, double? returnDeg) => output with
    {
        StationRad = stationDeg is double own ? Angles.RadFromDeg(own) : null,
        ReturnStationRad = returnDeg is double other ? Angles.RadFromDeg(other) : null,
        ReturnNet = "L",
    };

    /// <summary>The worked wheel of cases/worked, key by key.</summary>
    internal static Brief Worked() => Plain(
        new OutputBrief("hold", "hold", new([new(new StartAt(TurnAmount.Seconds(3)), new LastsTo(TurnAmount.Seconds(180)))]), new(0.4, 2, 0.4, 0, null))
        {
            ToleranceS = 3,
            StationRad = Angles.RadFromDeg(60),
            SidePlayMm = 0.1,
        },
        new OutputBrief("mist", "mist", new([new(new StartAt(TurnAmount.Seconds(122)), new LastsFor(TurnAmount.Seconds(5.5)))]), new(0.4, 2, 0.8, 0, null))
        {
            ToleranceS = 1,
            StationRad = Angles.RadFromDeg(150),
            SidePlayMm = 0.1,
            OverOpenContact = Insulation.Functional,
            FlowLPerS = 1.2 / 60,
            Adjust = new(AdjustedEdge.Off, 1, 2, LongerWay.In, "M3", 0.5, 1),
        });
}
