using System.Diagnostics;
using System.Text;

namespace WheelDraft.Fuzz;

/// <summary>Makes a failing case smaller: lines go as long as it fails alike.</summary>
internal static class Smaller
{
    private const int MostTries = 600;
    private static readonly TimeSpan MostTime = TimeSpan.FromSeconds(15);

    /// <summary>The smallest found.</summary>
    /// <param name="bytes">The case.</param>
    /// <param name="unit">How many lines go together: two in drawings.</param>
    /// <param name="failsAlike">Whether another case fails in the same way.</param>
    public static byte[] Of(byte[] bytes, int unit, Func<byte[], bool> failsAlike)
    {
        List<string> lines = [.. Encoding.Latin1.GetString(bytes).Split('\n')];
        long begun = Stopwatch.GetTimestamp();
        int tries = 0;
        for (int size = Math.Max(unit, lines.Count / 2 / unit * unit); size >= unit;)
        {
            bool any = false;
            for (int at = 0; at + size <= lines.Count;)
            {
                if (++tries > MostTries || Stopwatch.GetElapsedTime(begun) > MostTime)
                {
                    return Joined(lines);
                }

                List<string> fewer = [.. lines[..at], .. lines[(at + size)..]];
                if (failsAlike(Joined(fewer)))
                {
                    (lines, any) = (fewer, true);
                }
                else
                {
                    at += size;
                }
            }

            size = any && size == unit ? unit : size == unit ? 0 : Math.Max(unit, size / 2 / unit * unit);
        }

        return Joined(lines);
    }

    private static byte[] Joined(List<string> lines) => Encoding.Latin1.GetBytes(string.Join('\n', lines));
}
