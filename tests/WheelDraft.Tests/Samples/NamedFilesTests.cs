using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using Xunit;

namespace WheelDraft.Tests.Samples;

/// <summary>Names without files and single files, against the whole set.</summary>
public sealed class NamedFilesTests
{
    private static readonly OutputRequest Asked = new() { Kinds = [OutputKind.Report, OutputKind.Cut, OutputKind.Draw, OutputKind.Pdf, OutputKind.Print, OutputKind.Show, OutputKind.Bench] };

    [Fact]
    public void NamesOf_Demos_AreThoseOfTheFilesInTheirOrder()
    {
        foreach (string demo in Demos.Names)
        {
            Design design = Demos.Of(demo);
            OutputRequest small = new() { PngDpi = 10 };
            Assert.Equal(OutputFiles.Of(design, small).Select(f => f.Name), OutputFiles.NamesOf(design, small), StringComparer.Ordinal);
            Assert.All(OutputFiles.Of(design, small with { Only = "" }), f => Assert.Empty(f.Bytes));
        }
    }

    [Theory]
    [InlineData("draw/wheel.png")]
    [InlineData("cut/wheel.dxf")]
    [InlineData("report.html")]
    public void Of_OnlyOneFile_WritesNoOther(string name)
    {
        OutputRequest one = new() { PngDpi = 10, Only = name };
        Assert.Equal([name], OutputFiles.Of(Demos.Of("tank-doser"), one).Where(f => f.Bytes.Length > 0).Select(f => f.Name), StringComparer.Ordinal);
    }

    [Fact]
    public void Named_EachFileOfADemo_IsThatOfTheWholeSet()
    {
        Design design = Demos.Of("tank-doser");
        OutputFile[] all = [.. OutputFiles.Of(design, Asked)];
        Assert.True(all.Length > 20);
        foreach (OutputFile file in all)
        {
            Assert.Equal(file.Bytes, OutputFiles.Named(file.Name, design, Asked)!.Bytes);
        }

        Assert.Null(OutputFiles.Named("draw/nothing.svg", design, Asked));
    }
}
