using System.Globalization;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Bench;

/// <summary>What is learned from logs of random programmes. The oracle is the programme that was logged.</summary>
public sealed class LearnPropertyTests
{
    // How many programmes are logged; 500 with WHEELDRAFT_BENCH_CASES=500.
    private static int Cases => int.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_BENCH_CASES"), NumberStyles.None, CultureInfo.InvariantCulture, out int cases) ? cases : 16;

    [Fact]
    public void Learn_RandomProgrammes_RecoversTurnTimeAndOnTimes()
    {
        List<string> wrong = [];
        for (int seed = 1; seed <= Cases; seed++)
        {
            LoggedProgramme programme = RandomProgramme(seed);
            SyntheticLog log = new(programme) { Seed = seed, Turns = 24.3, BeginsAtS = programme.TurnS * ((seed * 0.377) % 1) };
            BenchTurns turns = BenchTurns.Of(log.Record());
            if (Math.Abs(turns.TurnTime.MeanS - programme.TurnS) > 0.05)
            {
                wrong.Add(FormattableString.Invariant($"{seed}: turn {turns.TurnTime.MeanS:0.###} s of {programme.TurnS:0.###} s"));
            }

            foreach ((string name, IReadOnlyList<(double FromS, double ForS)> on) in programme.Contacts)
            {
                BenchContact contact = turns.Contacts.First(c => string.Equals(c.Name, name, StringComparison.Ordinal));
                double[] found = [.. contact.Periods.Select(p => p.On.MeanS).Order()], wanted = [.. on.Select(p => p.ForS).Order()];
                if (found.Length != wanted.Length || found.Zip(wanted).Any(p => Math.Abs(p.First - p.Second) > log.StepS))
                {
                    wrong.Add(FormattableString.Invariant($"{seed}: {name} {string.Join("; ", found.Select(f => f.ToString("0.###", CultureInfo.InvariantCulture)))} of {string.Join("; ", wanted.Select(f => f.ToString("0.###", CultureInfo.InvariantCulture)))}"));
                }
            }
        }

        Assert.True(wrong.Count == 0, FormattableString.Invariant($"{wrong.Count} wrong of {Cases} programmes:\n{string.Join('\n', wrong)}"));
    }

    [Fact]
    public void Learn_WheelThatStops_NamesWhatHoldsTheMotor()
    {
        LoggedProgramme programme = new(60, [("run", [(2, 57)]), ("fan", [(5, 20)]), ("mist", [(33, 4.5)])]);
        SyntheticLog log = new(programme) { Turns = 6.3, BeginsAtS = 20, Stops = [(179.02, 47.3), (299.02, 12.1)] };
        BenchTurns turns = BenchTurns.Of(log.Record());
        Assert.Equal(2, turns.Stops);
        Assert.Equal("run", Assert.Single(turns.MotorHolders));
        Assert.Equal(60, turns.TurnTime.MeanS, 0.1);
        Assert.Equal(57, turns.Contacts[0].Periods[0].On.MeanS, 0.05);
    }

    [Fact]
    public void Learn_BreaksThatCoincide_NamesBoth()
    {
        LoggedProgramme programme = new(60, [("run", [(2, 57)]), ("fan", [(40, 19)]), ("mist", [(33, 4.5)])]);
        SyntheticLog log = new(programme) { Turns = 6.3, BeginsAtS = 20, Stops = [(179.02, 47.3)] };
        BenchTurns turns = BenchTurns.Of(log.Record());
        Assert.Equal(["run", "fan"], turns.MotorHolders);
    }

    [Fact]
    public void Learn_LogOfOneTurn_AsksForTheTurnTime()
    {
        LoggedProgramme programme = new(60, [("fan", [(5, 20)]), ("mist", [(33, 4.5)])]);
        BenchRecord record = new SyntheticLog(programme) { Turns = 1.1, BeginsAtS = 0 }.Record();
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => BenchTurns.Of(record));
        Assert.Contains("--turn-time", refused.Message, StringComparison.Ordinal);
        Assert.Equal(20, BenchTurns.Of(record, 60).Contacts[0].Periods[0].On.MeanS, 0.05);
    }

    [Fact]
    public void Learn_TwoNearlyEqualHalves_AreOneTurn()
    {
        // The second half is half a second later and longer: half a turn does not repeat.
        LoggedProgramme programme = new(180, [("valve", [(10, 30), (101.5, 31)])]);
        BenchTurns turns = BenchTurns.Of(new SyntheticLog(programme) { Turns = 6.2 }.Record());
        Assert.Equal(180, turns.TurnTime.MeanS, 0.05);
    }

    /// <summary>Two to five contacts of one to three on-periods, turns of 15 to 150 s.</summary>
    private static LoggedProgramme RandomProgramme(int seed)
    {
        Random random = new(seed);
        double turn = Math.Round(15 * Math.Pow(10, random.NextDouble()), 2);
        List<(string, IReadOnlyList<(double, double)>)> contacts = [];
        int count = random.Next(2, 6);
        for (int c = 0; c < count; c++)
        {
            int periods = random.Next(1, 4);
            double[] cuts = Cuts(random, 2 * periods, turn);
            List<(double, double)> on = [];
            for (int p = 0; p < periods; p++)
            {
                on.Add((cuts[2 * p], cuts[(2 * p) + 1] - cuts[2 * p]));
            }

            contacts.Add((FormattableString.Invariant($"out{c + 1}"), on));
        }

        return new(turn, contacts);
    }

    // Edges at least half a second, and a fortieth of the turn, apart.
    private static double[] Cuts(Random random, int count, double turn)
    {
        double least = Math.Max(0.5, turn / 40);
        while (true)
        {
            double[] cuts = [.. Enumerable.Range(0, count).Select(_ => random.NextDouble() * turn).Order()];
            if (Enumerable.Range(0, count).All(i => (i + 1 < count ? cuts[i + 1] : cuts[0] + turn) - cuts[i] >= least))
            {
                return cuts;
            }
        }
    }
}
