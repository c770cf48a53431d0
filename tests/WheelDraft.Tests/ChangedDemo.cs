using System.Text.RegularExpressions;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>An example wheel with something of its text changed, for tests that begin where a person does.</summary>
internal sealed class ChangedDemo(string name)
{
    public string Text { get; private set; } = File.ReadAllText(Demos.PathOf(name));

    /// <summary>Changes what stands there once or more; a text that is not there is a fault of the test.</summary>
    public ChangedDemo With(string text, string instead)
    {
        Assert.Contains(text, Text, StringComparison.Ordinal);
        Text = Text.Replace(text, instead, StringComparison.Ordinal);
        return this;
    }

    /// <summary>Changes every match of a pattern.</summary>
    public ChangedDemo WithEvery(string pattern, MatchEvaluator instead)
    {
        Text = Regex.Replace(Text, pattern, instead, RegexOptions.None, TimeSpan.FromSeconds(10));
        return this;
    }

    public ChangedDemo And(string more)
    {
        Text += more;
        return this;
    }

    public ParameterResult Read() => ParameterReader.Read(Text);

    public WheelDraft.Engineering.Design Design() => WheelDraft.Engineering.Design.Of(Read().Brief!);
}
