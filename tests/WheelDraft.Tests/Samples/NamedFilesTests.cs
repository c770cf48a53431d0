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
            Assert.All(OutputFiles.Of(design, small with { OnlyNames = true }).Where(f => !f.Name.StartsWith("cut/", StringComparison.Ordinal)), f => Assert.Empty(f.Bytes));
        }
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
