using CsCheck;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Parameters;

/// <summary>Whatever stands in a file, reading it gives a brief or located diagnostics, and never throws.</summary>
public sealed class ReaderFuzzTests
{
    private const string Odd = "\"'[]{}=#,.\n\r\t \\0123456789-+eE_abcdefgLNmz%°\u00E9\u0000\uD83D\uDE00";

    private static readonly string Whole = File.ReadAllText(Path.Combine(ReaderCaseTests.Folder, "whole-windowed.toml"));

    private static readonly string[] Lines = Whole.Split('\n');

    [Fact]
    public void Read_CharactersChanged_NeverThrows() =>
        Gen.Select(Gen.Int[0, Whole.Length - 1], Gen.Int[0, Odd.Length - 1], Gen.Int[0, 2]).Array[1, 6].Sample(
            changes =>
            {
                string text = Whole;
                foreach ((int at, int character, int kind) in changes)
                {
                    int place = Math.Min(at, text.Length - 1);
                    string insert = kind == 0 ? "" : Odd[character].ToString();
                    text = text[..place] + insert + text[(kind == 2 ? place : place + 1)..];
                }

                return IsSound(text);
            },
            iter: 200);

    [Fact]
    public void Read_LinesMovedOrLost_NeverThrows() =>
        Gen.Select(Gen.Int[0, Lines.Length - 1], Gen.Int[0, Lines.Length - 1]).Array[1, 8].Sample(
            moves =>
            {
                List<string> lines = [.. Lines];
                foreach ((int from, int to) in moves)
                {
                    string line = lines[from % lines.Count];
                    if (from > to)
                    {
                        lines.RemoveAt(from % lines.Count);
                    }

                    lines.Insert(to % lines.Count, line);
                }

                return IsSound(string.Join('\n', lines));
            },
            iter: 200);

    [Fact]
    public void Read_ValuesSwapped_NeverThrows() =>
        Gen.Select(Gen.Int[0, Lines.Length - 1], Gen.Int[0, Lines.Length - 1]).Array[1, 8].Sample(
            swaps =>
            {
                string[] lines = [.. Lines];
                foreach ((int to, int from) in swaps)
                {
                    string[] key = lines[to].Split(" = ", 2);
                    string[] value = Lines[from].Split(" = ", 2);
                    lines[to] = key.Length == 2 && value.Length == 2 ? $"{key[0]} = {value[1]}" : lines[to];
                }

                return IsSound(string.Join('\n', lines));
            },
            iter: 200);

    [Fact]
    public void Read_AnyBytes_NeverThrows() => Gen.Byte.Array[0, 200].Sample(bytes => (ParameterReader.Read(bytes).Brief is null) || bytes.Length > 0, iter: 500);

    private static bool IsSound(string text)
    {
        ParameterResult result = ParameterReader.Read(text);
        int lines = text.Count(c => c == '\n') + 1;
        return (result.Brief is null) == (result.Diagnostics.Count > 0)
            && result.Diagnostics.All(d => d.Place.Line >= 1 && d.Place.Line <= lines && d.Place.Column >= 1 && d.Wrong.Length > 0 && d.Right.Length > 0);
    }
}
