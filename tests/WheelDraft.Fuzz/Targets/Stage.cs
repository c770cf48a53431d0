namespace WheelDraft.Fuzz;

/// <summary>What is being done with the case at work, and what took longest.</summary>
internal static class Stage
{
    private static volatile string _now = "";
    private static TimeSpan _begun;
    private static TimeSpan _most;

    /// <summary>What is being done.</summary>
    public static string Now
    {
        get => _now;
        set
        {
            Close();
            _now = value;
        }
    }

    /// <summary>What took the most processor time since the case began.</summary>
    public static string Longest { get; private set; } = "";

    /// <summary>A case begins.</summary>
    public static void Begin() => (_now, Longest, _begun, _most) = ("", "", Environment.CpuUsage.TotalTime, TimeSpan.Zero);

    /// <summary>What was being done is done.</summary>
    public static void Close()
    {
        TimeSpan now = Environment.CpuUsage.TotalTime;
        if (now - _begun > _most)
        {
            (_most, Longest) = (now - _begun, _now);
        }

        _begun = now;
    }
}
