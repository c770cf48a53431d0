using System.Globalization;
using System.Text;
using CsCheck;
using WheelDraft.Formats.BenchLog;
using Xunit;

namespace WheelDraft.Tests.Bench;

/// <summary>Rows that are passed over: as many as comparing one row after the other by its bytes finds.</summary>
public sealed class PlainRowsTests
{
    private const int Register = 32;
    private const string Noise = "0123456789,.:\nx -";

    [Fact]
    public void Pass_RegularRowsWithBytesChanged_StopsWhereTheFirstRowIsNotPlain() =>
        (from step in Gen.OneOf(1, 2, 5, 10, 20, 50, 3, 7)
         from decimals in Gen.Int[0, 5]
         from start in Gen.Int[100, 90_000]
         from tail in Gen.OneOf(",0\n", ",1,0\n", ";0,0;\r\n")
         from changes in Gen.Select(Gen.Int[0, 3000], Gen.Int[0, Noise.Length - 1]).Array[0, 2]
         select (Block(start, step, decimals, tail, changes), tail[0])).Sample(
            drawn =>
            {
                (byte[] block, char separator) = drawn;
                int before = 0, at = block.AsSpan().IndexOf((byte)'\n') + 1;
                PlainRows rows = PlainRows.Like(block.AsSpan(0, at), (byte)separator);
                Assert.Equal(OneByOne(block, at, before, separator), rows.Length == 0 ? at : rows.Pass(block, at, before));
            },
            iter: 20_000);

    [Fact]
    public void Pass_ALogOfEverySecondThousandth_PassesOverAllOfIt()
    {
        byte[] block = Block(100_000, 1, 3, ",0\n", []);
        int at = block.AsSpan().IndexOf((byte)'\n') + 1;
        Assert.InRange(PlainRows.Like(block.AsSpan(0, at), (byte)',').Pass(block, at, 0), block.Length - Register, block.Length);
    }

    private static byte[] Block(int start, int step, int decimals, string tail, (int At, int To)[] changes)
    {
        StringBuilder text = new();
        for (int i = 0; i < 240; i++)
        {
            text.Append(((start + (i * step)) / Math.Pow(10, decimals)).ToString("F" + decimals, CultureInfo.InvariantCulture)).Append(tail);
        }

        byte[] block = Encoding.ASCII.GetBytes(text.ToString());
        foreach ((int at, int to) in changes.Where(c => c.At > 20 && c.At < block.Length))
        {
            block[at] = (byte)Noise[to];
        }

        return block;
    }

    private static int OneByOne(byte[] block, int at, int before, char separator)
    {
        int length = at - before, cut = Array.IndexOf(block, (byte)separator);
        if (length > Register)
        {
            return at;
        }

        for (; at + Register <= block.Length; (before, at) = (at, at + length))
        {
            ReadOnlySpan<byte> row = block.AsSpan(at, length), last = block.AsSpan(before, length);
            int first = row.CommonPrefixLength(last);
            bool isPlain = first < cut && row.IndexOf((byte)'\n') == length - 1 && row[cut..].SequenceEqual(last[cut..]) && row[first] > last[first];
            for (int i = 0; i < cut; i++)
            {
                isPlain &= row[i] == last[i] || char.IsAsciiDigit((char)row[i]);
            }

            if (!isPlain)
            {
                return at;
            }
        }

        return at;
    }
}
