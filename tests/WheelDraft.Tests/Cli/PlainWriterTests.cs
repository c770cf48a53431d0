using WheelDraft.Cli;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>What a terminal would obey (ECMA-48 control sequences) or nobody could see (Unicode Standard Annex 9, bidirectional controls) is spelled out.</summary>
public sealed class PlainWriterTests
{
    [Theory]
    [InlineData("a\u001b[31mb", "a\\u001b[31mb")]
    [InlineData("a\u009b31mb", "a\\u009b31mb")]
    [InlineData("a\rb\tc\u0007\u007f", "a\\u000db\\u0009c\\u0007\\u007f")]
    [InlineData("\u202egpj.exe", "\\u202egpj.exe")]
    [InlineData("a\u2028b\u2029c\u200bd\ufeff", "a\\u2028b\\u2029c\\u200bd\\ufeff")]
    [InlineData("\U000e0041x", "\\udb40\\udc41x")]
    [InlineData("line\nline, Ü, 漢, \U0001f600", "line\nline, Ü, 漢, \U0001f600")]
    public void Write_WhatCannotBeSeen_IsSpelledOut(string words, string plain)
    {
        using StringWriter under = new() { NewLine = "\n" };
        using PlainWriter writer = new(under);
        writer.Write(words);
        writer.WriteLine(words);
        Assert.Equal(plain + plain + "\n", under.ToString());
    }

    [Fact]
    public void Plain_HalfACharacter_IsSpelledOut()
    {
        Assert.Equal("a\\ud800x", PlainWriter.Plain("a" + (char)0xD800 + "x"));
    }

    [Fact]
    public void Run_EscapeSequenceInAFileName_DoesNotReachTheTerminal()
    {
        using CliRun run = new();
        Assert.Equal(3, run.Run("check", "a\u001b]0;x\u0007\u202e.toml"));
        Assert.DoesNotContain(run.Error, c => c != '\n' && char.IsControl(c));
        Assert.Contains("\\u001b]0;x\\u0007\\u202e.toml", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_EscapeSequenceInAnArgumentAskedAsJson_IsReadBackTheSame()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("schema", "--json", "a\u001b\u202e", "y\u009b"));
        Assert.DoesNotContain(run.Out, c => c != '\n' && char.IsControl(c));
        Assert.Contains("y\u009b", (string)System.Text.Json.Nodes.JsonNode.Parse(run.Out)!["faults"]![1]!["message"]!, StringComparison.Ordinal);
    }
}
