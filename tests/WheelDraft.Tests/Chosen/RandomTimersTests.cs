using System.Globalization;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Chosen;

/// <summary>Timers set out by the program against the same timers with orders, stations and approaches by chance.</summary>
public sealed class RandomTimersTests
{
    // "200x5000" for so many timers and candidates each; some hours of work.
    private const string Asked = "WHEELDRAFT_RANDOM_TIMERS";

    private static (int Timers, int Candidates) Size =>
        Environment.GetEnvironmentVariable(Asked)?.Split('x') is [string timers, string candidates]
            ? (int.Parse(timers, CultureInfo.InvariantCulture), int.Parse(candidates, CultureInfo.InvariantCulture)) : (4, 15);

    [Fact]
    public void SettingOut_RandomTimers_FindsWhatChanceFindsAndNoLargerWheel()
    {
        (int timers, int candidates) = Size;
        int missed = 0;
        for (int number = 0; number < timers; number++)
        {
            Brief brief = RandomTimers.Of(number);

            // Strips take long, and no station changes a wheel whose contacts are rivets: of these one in twelve.
            if (brief.Strips.Count > 0 && number % 12 != 2)
            {
                continue;
            }

            double ours = DiameterMm(() => SettingOut.IsNeeded(brief) ? SettingOut.Of(brief, new SearchRequest { Effort = SearchEffort.Quick }).Brief : brief);
            double best = Best(brief, number, brief.Strips.Count > 0 ? 0 : candidates, ours);
            missed += double.IsInfinity(ours) && !double.IsInfinity(best) ? 1 : 0;
            Assert.True(double.IsInfinity(ours) || ours <= best + 1e-6, FormattableString.Invariant($"timer {number}: {ours} mm, by chance {best} mm"));
        }

        Assert.True(missed <= timers / 50, FormattableString.Invariant($"{missed} of {timers} missed"));
    }

    // The smallest wheel without error that chance finds; only those that would beat ours are judged in full.
    private static double Best(Brief brief, int number, int candidates, double oursMm)
    {
        Random random = new(1_000_003 * (number + 1));
        double best = double.PositiveInfinity;
        for (int k = 0; k < candidates; k++)
        {
            Brief candidate = RandomTimers.ByChance(brief, random);
            try
            {
                if (new DesignStages(candidate).WheelOnly().Wheel.OuterDiameterMm < Math.Min(oursMm, best) - 1e-6)
                {
                    best = Math.Min(best, DiameterMm(() => candidate));
                }
            }
            catch (DesignRefusedException)
            {
                // Chance finds few that can be built.
            }
        }

        return best;
    }

    private static double DiameterMm(Func<Brief> brief)
    {
        try
        {
            Design design = Design.Judged(brief());
            return design.Meets ? design.Wheel.OuterDiameterMm : double.PositiveInfinity;
        }
        catch (DesignRefusedException)
        {
            return double.PositiveInfinity;
        }
    }
}
