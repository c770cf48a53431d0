using System.Text;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Parameters;

/// <summary>Two outputs that have one name by mistake.</summary>
public sealed class OutputsOfOneNameTests
{
    // The on-periods of the first were taken for those of the second, and one that it does not have was looked for.
    [Fact]
    public void Read_SecondHasFewerOnPeriods_NamesBothFaults()
    {
        string text = new ChangedDemo("tank-doser").With("{ from = \"10 min\", for = \"2 min\" } ]", "{ from = \"10 min\", to = \"10 min\" } ]").With("[[output]]\nname = \"buffer\"", "[[output]]\nname = \"stirrer\"").Text;
        ParameterResult read = ParameterReader.Read(Encoding.UTF8.GetBytes(text));
        Assert.Null(read.Brief);
        Assert.Contains(read.Diagnostics, d => d.Message.Contains("ends where it starts", StringComparison.Ordinal));
        Assert.Contains(read.Diagnostics, d => d.Message.Contains("\"stirrer\"", StringComparison.Ordinal));
    }
}
