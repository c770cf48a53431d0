using CsCheck;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Words;

public sealed class FileSlugsTests
{
    // Oracle: written out by hand after ICAO Doc 9303-3 section 6 (Latin), ELOT 743 (Greek) and GOST 7.79-2000 system B (Cyrillic), all from memory; kh for х is our own.
    [Theory]
    [InlineData("Übung α", "uebung-alpha")]
    [InlineData("Größe ß", "groesse-ss")]
    [InlineData("café crème", "cafe-creme")]
    [InlineData("Łódź, Dvořák", "lodz-dvorak")]
    [InlineData("Ærø Åland þorn", "aeroe-aaland-thorn")]
    [InlineData("U\u0308bung e\u0301", "uebung-e")]
    [InlineData("Αντλία νερού", "antlia-nerou")]
    [InlineData("Εύβοια αυτός γάγγραινα", "evvoia-aftos-gangraina")]
    [InlineData("Δt ψ µA", "deltat-psi-mua")]
    [InlineData("Насос щётки", "nasos-shhyotki")]
    [InlineData("Київ Ґрунт", "kiyiv-grunt")]
    [InlineData("m² × 3", "m2-3")]
    [InlineData("漢字", "2")]
    [InlineData("pump 2b", "pump-2b")]
    public void NamesLostTheirLettersInFileNames(string name, string slug) => Assert.Equal([slug], FileSlugs.Of([name]));

    [Fact]
    public void Of_NamesThatBecomeOne_StayApart() =>
        Assert.Equal(["uebung", "uebung-2", "uebung-3", "2", "3"], FileSlugs.Of(["Übung", "Uebung", "übung!", "漢", "字"]));

    [Fact]
    public void Of_AnyNames_AreOfPlainLettersAndDifferent() =>
        Gen.String[Gen.OneOf(Gen.Char[" aZ9-_"], Gen.Char['\u00A0', '\u0500'], Gen.Char['\u1E00', '\u1EFF'])].Array[1, 6].Sample(
            names =>
            {
                IReadOnlyList<string> slugs = FileSlugs.Of(names);
                Assert.Equal(slugs.Count, slugs.Distinct(StringComparer.Ordinal).Count());
                Assert.All(slugs, s => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", s));
            },
            iter: 500);

    [Fact]
    public void Of_PlainNames_AreAsTheyWere() =>
        Gen.String[Gen.Char["abcxyz0189"], 1, 12].Sample(name => Assert.Equal([name], FileSlugs.Of([name])), iter: 200);
}
