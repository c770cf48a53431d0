namespace WheelDraft.Fuzz;

/// <summary>Changes that know nothing of what a file holds.</summary>
internal static class ByteMutator
{
    private static readonly byte[] Odd = [0, 9, 10, 13, 32, 34, 39, 44, 46, 61, 91, 92, 93, 123, 125, 127, 128, 0xC3, 0xE2, 0xED, 0xEF, 0xF0, 0xFF, .. "0123456789-+eE_#azAZ"u8];

    /// <summary>One to eight changes.</summary>
    public static byte[] Mutate(byte[] file, byte[] donor, Chance chance)
    {
        List<byte> bytes = [.. file];
        for (int left = 1 + chance.Below(8); left > 0; left--)
        {
            Change(bytes, donor, chance);
        }

        return [.. bytes];
    }

    private static void Change(List<byte> bytes, byte[] donor, Chance chance)
    {
        int at = chance.Below(bytes.Count);
        int length = Math.Min(1 + chance.Below(chance.OneIn(4) ? 400 : 6), bytes.Count - at);
        switch (chance.Below(7))
        {
            case 0 when bytes.Count > 0:
                bytes[at] = chance.Of(Odd);
                break;
            case 1 when bytes.Count > 0:
                bytes[at] ^= (byte)(1 << chance.Below(8));
                break;
            case 2:
                bytes.Insert(at, chance.Of(Odd));
                break;
            case 3:
                bytes.RemoveRange(at, length);
                break;
            case 4:
                bytes.InsertRange(chance.Below(bytes.Count + 1), bytes.GetRange(at, length));
                break;
            case 5 when donor.Length > 0:
                int from = chance.Below(donor.Length);
                bytes.InsertRange(at, donor[from..Math.Min(donor.Length, from + 1 + chance.Below(200))]);
                break;
            default:
                if (chance.OneIn(5))
                {
                    bytes.RemoveRange(at, bytes.Count - at);
                }

                break;
        }
    }
}
