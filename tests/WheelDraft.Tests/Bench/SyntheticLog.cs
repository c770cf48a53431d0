using System.Globalization;
using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.BenchLog;
using Xunit;

namespace WheelDraft.Tests.Bench;

/// <summary>A programme to log: the turn and when each contact is on, as programme times.</summary>
internal sealed record LoggedProgramme(double TurnS, IReadOnlyList<(string Name, IReadOnlyList<(double FromS, double ForS)> On)> Contacts)
{
    public static LoggedProgramme Of(Design design) => new(
        design.Motion.TurnTimeS,
        [.. design.Programme.Outputs.Select(o => (o.Output, (IReadOnlyList<(double, double)>)(o.IsAlways ? [(0, design.Motion.TurnTimeS)] : [.. o.Periods.Select(p => (design.Motion.SecondsFromRad(p.StartRad), design.Motion.SecondsFromRad(p.SweepRad)))])))]);

    /// <summary>Another place or length of what one contact does.</summary>
    public LoggedProgramme With(int contact, Func<(double FromS, double ForS), int, (double FromS, double ForS)> change) =>
        this with { Contacts = [.. Contacts.Select((c, i) => i == contact ? (c.Name, [.. c.On.Select(change)]) : c)] };
}

/// <summary>Logs a programme as an instrument would: rows at a fixed rate, some lost, contacts that bounce, mains that drift.</summary>
/// <remarks>Its bounce is a contact that touches first, then opens briefly and often, open a quarter of the time, until it rests: for 60 ms at a make, for
/// 20 ms before a break, where strips only chatter (common practice, no source).</remarks>
internal sealed record SyntheticLog(LoggedProgramme Programme)
{
    public double StepS { get; init; } = 0.02;

    public double MakeBounceS { get; init; } = 0.06;

    public double BreakBounceS { get; init; } = 0.02;

    public double DriftShare { get; init; } = 0.005;

    public double LostShare { get; init; } = 0.01;

    public double Turns { get; init; } = 12.3;

    public double BeginsAtS { get; init; } = 37.7;

    /// <summary>How much slower everything is: 0.01 for a turn 1 % longer.</summary>
    public double SlowShare { get; init; }

    public int Seed { get; init; } = 1;

    /// <summary>Programme times at which the wheel stands, and for how long.</summary>
    public IReadOnlyList<(double AtS, double ForS)> Stops { get; init; } = [];

    /// <summary>What is read from the log.</summary>
    public BenchRecord Record() => Read(Csv(), new LogOptions()).Record;

    /// <summary>Reads a log's bytes.</summary>
    public static LogReading Read(byte[] csv, LogOptions options) => LogReader.Read(new MemoryStream(csv), options, stop: TestContext.Current.CancellationToken);

    public byte[] Csv()
    {
        Random random = new(Seed);
        StringBuilder csv = new("time_s");
        foreach ((string name, _) in Programme.Contacts)
        {
            csv.Append(',').Append(name);
        }

        csv.Append('\n');
        double turn = Programme.TurnS, length = Turns * turn;
        List<(double From, double To)>[] open = new List<(double, double)>[Programme.Contacts.Count];
        for (int c = 0; c < open.Length; c++)
        {
            open[c] = Chatter(Programme.Contacts[c].On, random);
        }

        double stood = 0;
        double clock = 0;
        int stop = 0;
        for (long row = 0; ; row++)
        {
            double time = row * StepS;
            double running = time - stood;

            // Mains that drift through the log by DriftShare in all, right on the mean.
            double share = running / length;
            double programme = BeginsAtS + ((running + (DriftShare * length * ((share * share) - share) / 2)) / (1 + SlowShare));
            if (stop < Stops.Count && programme >= Stops[stop].AtS)
            {
                clock += StepS;
                stood += StepS;
                if (clock >= Stops[stop].ForS)
                {
                    (stop, clock) = (stop + 1, 0);
                }
            }

            if (share > 1)
            {
                break;
            }

            if (random.NextDouble() < LostShare)
            {
                continue;
            }

            csv.Append(time.ToString("0.###", CultureInfo.InvariantCulture));
            for (int c = 0; c < open.Length; c++)
            {
                csv.Append(',').Append(IsOn(Programme.Contacts[c].On, open[c], programme) ? '1' : '0');
            }

            csv.Append('\n');
        }

        return Encoding.ASCII.GetBytes(csv.ToString());
    }

    private bool IsOn(IReadOnlyList<(double FromS, double ForS)> on, List<(double From, double To)> open, double programme)
    {
        double turn = Programme.TurnS;
        foreach ((double from, double length) in on)
        {
            double since = programme - from;
            since -= turn * Math.Floor(since / turn);
            if (since < length)
            {
                return length >= turn || !(since < MakeBounceS || since > length - BreakBounceS) || !open.Exists(o => programme >= o.From && programme < o.To);
            }
        }

        return false;
    }

    private List<(double From, double To)> Chatter(IReadOnlyList<(double FromS, double ForS)> on, Random random)
    {
        const double closedMostS = 0.018, openMostS = 0.006;
        List<(double, double)> open = [];
        for (int turn = -1; turn < Turns + 2; turn++)
        {
            foreach ((double from, double length) in on)
            {
                double make = from + (turn * Programme.TurnS);
                foreach ((double begin, double end) in (ReadOnlySpan<(double, double)>)[(make, make + MakeBounceS), (make + length - BreakBounceS, make + length)])
                {
                    for (double at = begin + (random.NextDouble() * closedMostS); at < end;)
                    {
                        double to = at + (random.NextDouble() * openMostS);
                        open.Add((at, Math.Min(to, end - 0.001)));
                        at = to + (random.NextDouble() * closedMostS);
                    }
                }
            }
        }

        return open;
    }
}
