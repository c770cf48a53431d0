using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>One wiper of a brief, and what of it is free.</summary>
/// <param name="Output">Its output, by number; −1 for the feed.</param>
/// <param name="IsReturn">Whether it is the second wiper of a lands wheel.</param>
/// <param name="Strip">Its strip, by number; −1 without one.</param>
internal sealed record WiperSlot(int Output, bool IsReturn, int Strip)
{
    /// <summary>Whether its station is free.</summary>
    public required bool FreeStation { get; init; }

    /// <summary>What of its strip is free.</summary>
    public required StripChoices Free { get; init; }

    /// <summary>All wipers of a brief: the feed, then the outputs in file order, then second wipers.</summary>
    public static IReadOnlyList<WiperSlot> Of(Brief brief)
    {
        List<WiperSlot> slots = [];
        if (brief.Feed is FeedBrief feed)
        {
            slots.Add(Slot(brief, -1, isReturn: false, feed.StationRad is null));
        }

        for (int i = 0; i < brief.Outputs.Count; i++)
        {
            slots.Add(Slot(brief, i, isReturn: false, brief.Outputs[i].StationRad is null));
        }

        for (int i = 0; i < brief.Outputs.Count && brief.Wheel.Construction == WheelConstruction.Lands; i++)
        {
            slots.Add(Slot(brief, i, isReturn: true, brief.Outputs[i].ReturnStationRad is null));
        }

        return slots;
    }

    /// <summary>The ring that it touches.</summary>
    public RingLayout Ring(WheelLayout wheel) => Output < 0 ? wheel.Feed! : wheel.Rings[Output];

    /// <summary>Its station on a wheel.</summary>
    public double StationRad(WheelLayout wheel) => IsReturn ? wheel.Rings[Output].Return!.StationRad : Ring(wheel).StationRad;

    /// <summary>A brief with another station for it.</summary>
    public Brief At(Brief brief, double stationDeg)
    {
        double station = Angles.RadFromDeg(stationDeg);
        return Output < 0 ? brief with { Feed = brief.Feed! with { StationRad = station } }
            : brief with { Outputs = [.. brief.Outputs.Select((o, i) => i != Output ? o : IsReturn ? o with { ReturnStationRad = station } : o with { StationRad = station })] };
    }

    private static WiperSlot Slot(Brief brief, int output, bool isReturn, bool freeStation)
    {
        int strip = Enumerable.Range(0, brief.Strips.Count).FirstOrDefault(i => brief.Strips[i].Task switch
        {
            ServesFeed => output < 0,
            ServesOutput serves => output >= 0 && serves.IsReturn == isReturn && string.Equals(serves.Output, brief.Outputs[output].Name, StringComparison.OrdinalIgnoreCase),
            _ => false,
        }, -1);
        return new(output, isReturn, strip) { FreeStation = freeStation, Free = strip < 0 ? default : brief.Strips[strip].Left };
    }
}

/// <summary>The choices of a candidate, whole degrees, by wiper.</summary>
/// <param name="Stations">Stations; of a wiper whose station is given that one is kept and this counts for nothing.</param>
/// <param name="Approaches">Approaches, likewise.</param>
internal sealed record Candidate(IReadOnlyList<int> Stations, IReadOnlyList<int> Approaches)
{
    /// <summary>The same with one station turned.</summary>
    public Candidate Turned(int wiper, int byDeg) => this with { Stations = [.. Stations.Select((s, i) => i == wiper ? (((s + byDeg) % 360) + 360) % 360 : s)] };

    /// <summary>The same with one approach turned, within half a turn on its side.</summary>
    public Candidate Leaning(int wiper, int byDeg, int most) =>
        this with { Approaches = [.. Approaches.Select((a, i) => i == wiper ? Math.Sign(a) * Math.Clamp(Math.Abs(a) + byDeg, 1, most) : a)] };

    /// <summary>Whether it chooses the same.</summary>
    public bool IsSame(Candidate other) => Stations.SequenceEqual(other.Stations) && Approaches.SequenceEqual(other.Approaches);
}
