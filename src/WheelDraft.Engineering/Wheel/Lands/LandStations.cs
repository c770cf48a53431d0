using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The stations of both wipers of every ring of lands; those left to "auto" found before the rings are set, because a land is
/// as long as its wipers stand apart.</summary>
internal static class LandStations
{
    // Wipers left to "auto" stand within this share of the output's shortest off-time: the gap between lands is then at least
    // two thirds of it, and a lone land never reaches from one wiper round to the other.
    private const double ShareOfOffTime = 1.0 / 3;

    /// <summary>How far the wipers of an output left to "auto" may stand apart, rad.</summary>
    public static double MostApartRad(OutputProgramme programme)
    {
        double most = Math.PI;
        for (int i = 0; i < programme.Periods.Count; i++)
        {
            int next = (i + 1) % programme.Periods.Count;
            double off = programme.Periods[next].StartRad + (next == 0 ? Angles.TurnRad : 0) - programme.Periods[i].EndRad;
            most = Math.Min(most, off * ShareOfOffTime);
        }

        return most;
    }

    /// <summary>Stations to begin with: those asked for, the others an equal spread with both wipers of an output side by side.</summary>
    public static (double OwnRad, double ReturnRad) First(OutputBrief output, OutputProgramme programme, int index, int count)
    {
        double apart = Math.Min(MostApartRad(programme), Math.PI / count);
        double whole = Angles.RadFromDeg(Math.Max(1, Math.Floor(Angles.DegFromRad(apart))));
        double own = output.StationRad
            ?? (output.ReturnStationRad is double other ? Angles.InTurn(other - whole) : WiperArm.EqualRad(index, count));
        return (own, output.ReturnStationRad ?? Angles.InTurn(own + whole));
    }

    /// <summary>The spread on rings that are roughly in place: the outputs' own wipers, then the second ones, both in file order.</summary>
    public static StationSpread Spread(Brief brief, Programme programme, PackedWheel roughly)
    {
        int count = brief.Outputs.Count;
        WiperArm Arm(int i, bool isReturn)
        {
            OutputBrief output = brief.Outputs[i];
            (double own, double other) = First(output, programme.Outputs[i], i, count);
            double approach = WiperArm.Approach(brief, s => s.Task is ServesOutput serves
                && string.Equals(serves.Output, output.Name, StringComparison.OrdinalIgnoreCase) && serves.IsReturn == isReturn);
            return new WiperArm(
                isReturn ? $"the second wiper of '{output.Name}'" : $"'{output.Name}'",
                isReturn ? "return_station" : "station",
                isReturn ? output.ReturnNet! : output.Net,
                roughly.Rings[i].Trial.RadiusMm,
                isReturn ? output.ReturnStationRad : output.StationRad,
                isReturn ? other : own,
                approach)
            {
                Partner = isReturn ? i : count + i,
                MostApartRad = MostApartRad(programme.Outputs[i]),
            };
        }

        return StationSpread.Of(
            [.. Enumerable.Range(0, count).Select(i => Arm(i, isReturn: false)), .. Enumerable.Range(0, count).Select(i => Arm(i, isReturn: true))],
            roughly.OuterRadiusMm);
    }
}
