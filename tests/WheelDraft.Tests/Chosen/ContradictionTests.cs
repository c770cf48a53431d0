using System.Globalization;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Chosen;

/// <summary>Made-up briefs that nothing meets: the wishes that are told to contradict each other do, and no fewer of them.</summary>
public sealed class ContradictionTests
{
    private const string Asked = "WHEELDRAFT_CONTRADICTIONS";

    private static int Cases => int.TryParse(Environment.GetEnvironmentVariable(Asked), CultureInfo.InvariantCulture, out int asked) ? asked : 5;

    // Two or three outputs with wishes of every kind, at least one of them far too great.
    private static Brief Impossible(int number)
    {
        Random random = new(7919 * (number + 1));
        OutputBrief[] outputs = [.. Enumerable.Range(0, random.Next(2, 4)).Select(i =>
        {
            OutputBrief plain = Briefs.Output(FormattableString.Invariant($"o{i}"), 10 + (50 * i), 12 + random.Next(0, 20), random.Next(3) == 0 ? 0.25 : 1 + random.NextDouble());
            return plain with
            {
                OverOpenContact = random.Next(3) switch { 0 => Insulation.Reinforced, 1 => Insulation.Basic, _ => null },
                Adjust = random.Next(4) == 0 ? new(AdjustedEdge.Off, 0.5 + random.NextDouble(), 2, LongerWay.In, "M3", 0.5, 1) : null,
            };
        })];
        Brief brief = Briefs.Plain(outputs);
        return brief with
        {
            Wheel = brief.Wheel with { OuterDiameterMm = random.Next(24, 48), WebMm = 0.8 + (3 * random.NextDouble()) },
            Spacing = brief.Spacing with { MarginMm = random.Next(2) == 0 ? 0 : random.NextDouble(), BetweenLive = random.Next(3) == 0 ? Insulation.Basic : Insulation.Functional },
        };
    }

    private static bool Meets(Brief brief)
    {
        try
        {
            return Design.Of(brief).Meets;
        }
        catch (DesignRefusedException)
        {
            return false;
        }
    }

    private static Brief Without(Brief brief, IEnumerable<Wish> wishes) => wishes.Aggregate(brief, (b, w) => w.Dropped(b));

    [Fact]
    public void Contradiction_MadeUpImpossibleBriefs_IsALeastSet()
    {
        int found = 0;
        for (int number = 0; found < Cases; number++)
        {
            Assert.True(number < 20 * Cases, "too few of them are impossible");
            Brief brief = Impossible(number);
            if (Contradiction.Of(brief, new SearchRequest()) is not { Together.Count: > 0 } told)
            {
                continue;
            }

            found++;
            Wish[] all = [.. Wishes.Of(brief)];
            Wish[] others = [.. all.Where(w => told.Together.All(t => !string.Equals(t.Path, w.Path, StringComparison.Ordinal)))];

            // By themselves, with everything else dropped, they cannot be had; without any one of them they can.
            Assert.False(Meets(Without(brief, others)), Words(number, told));
            Assert.All(told.Together, wish => Assert.True(Meets(Without(brief, others.Append(all.Single(w => string.Equals(w.Path, wish.Path, StringComparison.Ordinal))))), $"{Words(number, told)}; without {wish.Words}"));
            Assert.Equal(told.Together.Count, told.Instead.Count);
            Assert.All(told.Instead, i => Assert.False(string.IsNullOrWhiteSpace(i)));
        }
    }

    private static string Words(int number, Contradiction told) => FormattableString.Invariant($"{number}: {string.Join(", ", told.Together.Select(w => w.Words))}");

    [Fact]
    public void Contradiction_OfABriefThatMeets_IsNone() => Assert.Null(Contradiction.Of(Briefs.Worked(), new SearchRequest()));
}
