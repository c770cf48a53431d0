using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using CsCheck;
using Xunit;

namespace WheelDraft.Tests;

public sealed class PropertiesTests
{
    // CsCheck's seed once fixed the first case of 3000 and left the others to luck.
    [Fact]
    public void Sample_Twice_DrawsTheSameCasesAndAllOfThem()
    {
        List<double> first = Drawn("this test");
        Assert.Equal(500, first.Count);
        Assert.True(first.Distinct().Count() > 100);
        Assert.Equal(first, Drawn("this test"));
        Assert.NotEqual(first, Drawn("another test"));
    }

    [Fact]
    public void Sample_CaseThatFails_IsToldWithASeedThatBringsItBack()
    {
        Gen<int> gen = Gen.Int[0, 1000];
        CsCheckException told = Assert.Throws<CsCheckException>(() => gen.Sample(n => Assert.True(n < 990), iter: 5000));
        string seed = told.Message.Split('"')[1];
        Assert.True(gen.Generate(PCG.Parse(seed), null, out _) >= 990);
    }

    // A property of a shape that the methods here do not know would fall through to CsCheck's own, and to luck, unseen.
    [Fact]
    public void Sample_InEveryTest_IsTheOneWithTheSameCases()
    {
        using PEReader assembly = new(File.OpenRead(typeof(PropertiesTests).Assembly.Location));
        MetadataReader names = assembly.GetMetadataReader();
        int direct = names.MemberReferences.Select(names.GetMemberReference).Count(m =>
            names.GetString(m.Name) is nameof(Check.Sample)
            && m.Parent.Kind == HandleKind.TypeReference
            && names.GetString(names.GetTypeReference((TypeReferenceHandle)m.Parent).Name) is nameof(Check));
        Assert.Equal(1, direct);
    }

    private static List<double> Drawn(string test)
    {
        List<double> drawn = [];
        Gen.Double[0, 1].Select(d => d + 1).Sample(drawn.Add, iter: 500, threads: 1, test: test);
        return drawn;
    }
}
