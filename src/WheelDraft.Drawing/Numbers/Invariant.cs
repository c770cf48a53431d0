using System.Globalization;
using System.Runtime.CompilerServices;

namespace WheelDraft.Drawing;

/// <summary>Interpolated texts whose numbers are the same on every machine.</summary>
internal static class Invariant
{
    public static string Text(ref DefaultInterpolatedStringHandler text) => string.Create(CultureInfo.InvariantCulture, ref text);
}
