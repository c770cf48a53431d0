using System.Collections.Frozen;

namespace WheelDraft.Drawing;

/// <summary>The letters as data, in the notation of <see cref="Glyph.Parse"/>: one line each, the character first.</summary>
internal static class Alphabet
{
    /// <summary>What stands for a character without a letter.</summary>
    public const string MissingBox = "5;0,0 5,0 5,9 0,9 z;0,0 5,9;0,9 5,0";

    private static readonly Lazy<FrozenDictionary<int, string>> Sources = new(() => FrozenDictionary<int, string>.Empty);

    /// <summary>The source of a letter, or null.</summary>
    public static string? Source(int codePoint) => Sources.Value.GetValueOrDefault(codePoint);
}
