using WheelDraft.Formats.Outputs;
using Xunit;

namespace WheelDraft.Tests.Samples;

/// <summary>Files that are given while later ones are made.</summary>
public sealed class AsMadeTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 4)]
    [InlineData(50, 1)]
    [InlineData(50, 3)]
    public void InOrder_Things_ComeInTheirOrder(int count, int atOnce) =>
        Assert.Equal(Enumerable.Range(0, count), AsMade.InOrder(count, atOnce, i => i));

    [Fact]
    public void InOrder_SlowReader_FindsFewMadeAhead()
    {
        int begun = 0, running = 0, most = 0, given = 0;
        foreach (int i in AsMade.InOrder(40, 3, Make))
        {
            // This one is given already; six may have been made meanwhile or be under way.
            Assert.InRange(Volatile.Read(ref begun), i + 1, i + 6);
            given++;
        }

        Assert.Equal(40, given);
        Assert.InRange(most, 1, 3);

        int Make(int i)
        {
            Interlocked.Increment(ref begun);
            int now = Interlocked.Increment(ref running);
            InterlockedMax(ref most, now);
            Thread.Yield();
            Interlocked.Decrement(ref running);
            return i;
        }
    }

    [Fact]
    public void InOrder_OneFails_ThrowsInItsPlaceAndLeavesNothingRunning()
    {
        int running = 0;
        List<int> given = [];
        Assert.Throws<InvalidDataException>(() => given.AddRange(AsMade.InOrder(20, 4, Make)));
        Assert.Equal(0, running);

        given.Clear();
        Assert.Equal([0, 1, 2, 3, 4], AsMade.InOrder(20, 4, Make).Take(5));
        Assert.Equal(0, running);

        int Make(int i)
        {
            Interlocked.Increment(ref running);
            try
            {
                Thread.Yield();
                return i == 7 ? throw new InvalidDataException("the eighth") : i;
            }
            finally
            {
                Interlocked.Decrement(ref running);
            }
        }
    }

    private static void InterlockedMax(ref int most, int value)
    {
        for (int known = Volatile.Read(ref most); value > known; known = Volatile.Read(ref most))
        {
            Interlocked.CompareExchange(ref most, value, known);
        }
    }
}
