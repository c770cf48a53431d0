using WheelDraft.Cli;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class FileSetTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("wheeldraft-test-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Commit_NewAndOldFiles_ReplacesAllAndLeavesOnlyTheManifestBesides()
    {
        Make(Claim, ("report.json", 0), ("draw/wheel.svg", 0));
        FolderOutcome outcome = Make(Claim, ("report.json", 1), ("draw/wheel.svg", 0), ("cut/wheel.dxf", 2));
        Assert.Equal(["cut/wheel.dxf", "draw/wheel.svg", FolderRecord.FileName, "report.json"], Present());
        Assert.Equal([1], File.ReadAllBytes(Path.Combine(Target, "report.json")));
        Assert.Empty(outcome.Deleted);
        Assert.Empty(outcome.Foreign);
        Assert.True(FolderRecord.Read(Target)!.IsComplete);
    }

    // Once `--only report` left the cutting files of a good run beside a report that misses.
    [Fact]
    public void Commit_AnotherDesign_DeletesEveryOwnFileThatIsNotMadeAnew()
    {
        Make(Claim, ("report.json", 0), ("cut/wheel.dxf", 1), ("cut/strip-old-name.dxf", 2));
        FolderOutcome outcome = Make(Claim with { InputSha256 = "b" }, ("report.json", 3));
        Assert.Equal(["cut/strip-old-name.dxf", "cut/wheel.dxf"], outcome.Deleted);
        Assert.Equal([FolderRecord.FileName, "report.json"], Present());
    }

    [Fact]
    public void Commit_SameDesignWithOtherSettings_DeletesWhatTheOtherSettingsMade()
    {
        Make(Claim, ("report.json", 0), ("cut/wheel.dxf", 1));
        Assert.Equal(["cut/wheel.dxf"], Make(Claim with { Settings = "under faults" }, ("report.json", 0)).Deleted);
    }

    [Fact]
    public void Commit_SameDesign_KeepsOtherKindsAndDropsWhatIsReplaced()
    {
        Make(Claim, ("cut/wheel.dxf", 1), ("draw/wheel.svg", 2), ("draw/moment.svg", 3));
        FolderOutcome outcome = Make(Claim with { Replaces = n => n.StartsWith("draw/", StringComparison.Ordinal) }, ("draw/wheel.svg", 2));
        Assert.Equal(["draw/moment.svg"], outcome.Deleted);
        Assert.Equal(["cut/wheel.dxf", "draw/wheel.svg", FolderRecord.FileName], Present());
    }

    // Once a file that a person had put there was deleted without a word.
    [Fact]
    public void Commit_FilesOfThePerson_AreNamedAndNeverTouched()
    {
        Make(Claim, ("cut/wheel.dxf", 1));
        Write("cut/strip-mine.dxf", "the person's own");
        Write("frames/frame-0001.png", "the person's own");
        Write("notes.txt", "the person's own");
        FolderOutcome outcome = Make(Claim with { InputSha256 = "b" }, ("report.json", 1));
        Assert.Equal(["cut/wheel.dxf"], outcome.Deleted);
        Assert.Equal(["cut/strip-mine.dxf", "frames/frame-0001.png"], outcome.Foreign);
        Assert.Equal("the person's own", File.ReadAllText(Path.Combine(Target, "cut/strip-mine.dxf")));
    }

    [Fact]
    public void Commit_OwnFileChangedByHand_IsForeignFromThenOn()
    {
        Make(Claim, ("report.json", 0), ("cut/wheel.dxf", 1));
        Write("cut/wheel.dxf", "edited");
        FolderOutcome outcome = Make(Claim with { InputSha256 = "b" }, ("report.json", 1));
        Assert.Empty(outcome.Deleted);
        Assert.Equal(["cut/wheel.dxf"], outcome.Foreign);
    }

    [Fact]
    public void Commit_ForeignFileInTheWay_RefusesUnlessAsked()
    {
        Write("cut/wheel.dxf", "the person's own");
        using (FileSet set = Set())
        {
            set.Add("cut/wheel.dxf", [1]);
            Assert.Contains("cut/wheel.dxf", Assert.Throws<FileTroubleException>(() => set.Commit(Claim)).Message, StringComparison.Ordinal);
        }

        Assert.Equal(["cut/wheel.dxf"], Present());
        Assert.Equal("the person's own", File.ReadAllText(Path.Combine(Target, "cut/wheel.dxf")));
        Make(Claim with { TakesOver = true }, ("cut/wheel.dxf", 1));
        Assert.Equal([1], File.ReadAllBytes(Path.Combine(Target, "cut/wheel.dxf")));
    }

    [Fact]
    public void Commit_FolderOfAnotherFile_RefusesUnlessAsked()
    {
        Make(Claim, ("cut/wheel.dxf", 1), ("report.json", 1));
        FolderClaim other = new("other.toml", "c", "");
        using (FileSet set = Set())
        {
            set.Add("report.json", [2]);
            Assert.Contains("made from 'a.toml'", Assert.Throws<FileTroubleException>(() => set.Commit(other)).Message, StringComparison.Ordinal);
        }

        Assert.Equal([1], File.ReadAllBytes(Path.Combine(Target, "report.json")));
        Assert.Equal(["cut/wheel.dxf"], Make(other with { TakesOver = true }, ("report.json", 2)).Deleted);
    }

    [Fact]
    public void Commit_AfterARunThatWasKilledBetweenItsRenames_NoticesAndMends()
    {
        Make(Claim, ("report.json", 0), ("cut/wheel.dxf", 1), ("draw/wheel.svg", 1));
        FolderRecord before = FolderRecord.Read(Target)!;

        // As a killed run leaves it: the record of both runs, one file renamed, the other not yet.
        Dictionary<string, IReadOnlyList<string>> both = before.Files.ToDictionary(f => f.Key, f => (IReadOnlyList<string>)[.. f.Value, FolderRecord.HashOf([7])], StringComparer.Ordinal);
        Write(FolderRecord.FileName, System.Text.Encoding.UTF8.GetString((before with { InputSha256 = "b", IsComplete = false, Files = both }).Bytes()));
        File.WriteAllBytes(Path.Combine(Target, "report.json"), [7]);
        FolderOutcome outcome = Make(Claim with { InputSha256 = "b" }, ("report.json", 7));
        Assert.True(outcome.WasCutOff);
        Assert.Equal(["cut/wheel.dxf", "draw/wheel.svg"], outcome.Deleted);
        Assert.Empty(outcome.Foreign);
        Assert.True(FolderRecord.Read(Target)!.IsComplete);
    }

    [Fact]
    public void Commit_TemporaryFileOfARunThatIsGone_IsSweptAway()
    {
        Make(Claim, ("cut/wheel.dxf", 1));
        Write("cut/.wheel.dxf.2147483646.part", "half of a file");
        Make(Claim, ("cut/wheel.dxf", 1));
        Assert.Equal(["cut/wheel.dxf", FolderRecord.FileName], Present());
    }

    // Once leftovers stayed where a process of another kind had got the number since, in a container every time.
    [Fact]
    public void Add_TemporaryFileOfANumberThatAYoungerProcessHas_IsSweptAway()
    {
        Make(Claim, ("cut/wheel.dxf", 1));
        using System.Diagnostics.Process other = System.Diagnostics.Process.Start("sleep", ["60"]);
        try
        {
            string left = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"cut/.wheel.dxf.{other.Id}.part");
            string mine = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"cut/.gone.dxf.{Environment.ProcessId}.part");
            Write(left, "of a process that is at work");
            Write(mine, "of an earlier process of this number");
            Make(Claim, ("cut/wheel.dxf", 1));
            Assert.Equal([left, "cut/wheel.dxf", FolderRecord.FileName], Present());
            File.SetLastWriteTimeUtc(Path.Combine(Target, left), other.StartTime.ToUniversalTime().AddHours(-1));
            Make(Claim, ("cut/wheel.dxf", 1));
            Assert.Equal(["cut/wheel.dxf", FolderRecord.FileName], Present());
        }
        finally
        {
            other.Kill();
        }
    }

    // A full disk may be full of leftovers: they go before anything is written.
    [Fact]
    public void Add_LeftoversOfAKilledRun_GoFirst()
    {
        Write("cut/.wheel.dxf.2147483646.part", "half of a file");
        using FileSet set = Set();
        set.Add("report.json", [1]);
        Assert.False(File.Exists(Path.Combine(Target, "cut/.wheel.dxf.2147483646.part")));
    }

    // Once the stale files were gone and the manifest said "cut off" when a rename failed half-way.
    [Theory]
    [InlineData("b.txt")]
    [InlineData("z/last.txt")]
    public void Commit_ChangeThatFailsHalfWay_TakesBackAllBeforeIt(string vanishing)
    {
        Make(Claim, ("a.txt", 0), ("b.txt", 0), ("cut/stale.dxf", 0), ("z/last.txt", 0));
        string before = File.ReadAllText(Path.Combine(Target, FolderRecord.FileName));
        using (FileSet set = Set())
        {
            set.Add("a.txt", [1]);
            set.Add("b.txt", [1]);
            set.Add("new.txt", [1]);
            set.Add("z/last.txt", [1]);
            File.Delete(TemporaryFiles.NameFor(Path.Combine(Target, vanishing)));
            Assert.Contains("all is as it was before", Assert.Throws<FileTroubleException>(() => set.Commit(Claim with { InputSha256 = "b" })).Message, StringComparison.Ordinal);
        }

        Assert.Equal(["a.txt", "b.txt", "cut/stale.dxf", FolderRecord.FileName, "z/last.txt"], Present());
        Assert.All(["a.txt", "b.txt", "cut/stale.dxf", "z/last.txt"], n => Assert.Equal([0], File.ReadAllBytes(Path.Combine(Target, n))));
        Assert.Equal(before, File.ReadAllText(Path.Combine(Target, FolderRecord.FileName)));
    }

    // Once a manifest.json of another program was replaced without a word.
    [Fact]
    public void Commit_ManifestOfAnotherProgram_RefusesUnlessAsked()
    {
        Write(FolderRecord.FileName, "{ \"name\": \"the person's own\" }");
        using (FileSet set = Set())
        {
            set.Add("a.txt", [1]);
            Assert.Contains(FolderRecord.FileName, Assert.Throws<FileTroubleException>(() => set.Commit(Claim)).Message, StringComparison.Ordinal);
        }

        Assert.Equal([FolderRecord.FileName], Present());
        Make(Claim with { TakesOver = true }, ("a.txt", 1));
        Assert.True(FolderRecord.Read(Target)!.IsComplete);
    }

    [Fact]
    public void Leftover_FolderWithTemporaryFiles_NamesThemAndNoOthers()
    {
        Make(Claim, ("cut/wheel.dxf", 1));
        Write("cut/.wheel.dxf.2147483646.part", "half of a file");
        Write("draw/mine.part", "the person's own");
        Assert.Equal(["cut/.wheel.dxf.2147483646.part"], FolderLook.Leftover(Target));
        Assert.Equal(["draw/mine.part"], FolderLook.Unknown(Target, FolderRecord.Read(Target)!));
    }

    [Fact]
    public void Add_SymbolicLinkOfTheTemporaryName_IsNotWrittenThrough()
    {
        string precious = Path.Combine(_folder, "precious");
        File.WriteAllText(precious, "kept");
        Directory.CreateDirectory(Target);
        File.CreateSymbolicLink(Path.Combine(Target, string.Create(System.Globalization.CultureInfo.InvariantCulture, $".a.txt.{Environment.ProcessId}.part")), precious);
        Make(Claim, ("a.txt", 1));
        Assert.Equal("kept", File.ReadAllText(precious));
        Assert.Equal([1], File.ReadAllBytes(Path.Combine(Target, "a.txt")));
    }

    [Fact]
    public void Commit_FolderInTheWay_LeavesTheOldSet()
    {
        Make(Claim, ("a.txt", 0));
        Directory.CreateDirectory(Path.Combine(Target, "b.txt"));
        using (FileSet set = Set())
        {
            set.Add("a.txt", [1]);
            set.Add("b.txt", [2]);
            Assert.Throws<FileTroubleException>(() => set.Commit(Claim));
        }

        Assert.Equal(["a.txt", FolderRecord.FileName], Present());
        Assert.Equal([0], File.ReadAllBytes(Path.Combine(Target, "a.txt")));
    }

    [Fact]
    public void Commit_FileWhereTheFolderShouldBe_LeavesTheOldSet()
    {
        Write("a.txt", "old");
        Write("cut", "a file of that name");
        using (FileSet set = Set())
        {
            set.Add("a.txt", [1]);
            Assert.Throws<FileTroubleException>(() => set.Add("cut/wheel.dxf", [2]));
        }

        Assert.Equal(["a.txt", "cut"], Present());
        Assert.Equal("old", File.ReadAllText(Path.Combine(Target, "a.txt")));
    }

    [Fact]
    public void Commit_Stopped_LeavesTheOldSet()
    {
        Write("a.txt", "old");
        using CancellationTokenSource stop = new();
        using (FileSet set = new(Target, stop.Token))
        {
            set.Add("a.txt", [1]);
            stop.Cancel();
            Assert.Throws<OperationCanceledException>(() => set.Add("b.txt", [2]));
            Assert.Throws<OperationCanceledException>(() => set.Commit(Claim));
        }

        Assert.Equal(["a.txt"], Present());
        Assert.Equal("old", File.ReadAllText(Path.Combine(Target, "a.txt")));
    }

    [Fact]
    public void Read_BrokenManifest_MakesNothingThePrograms()
    {
        Write(FolderRecord.FileName, "{ \"format\": 1");
        Assert.Null(FolderRecord.Read(Target));
        Write(FolderRecord.FileName, "{ \"format\": 2 }");
        Assert.Null(FolderRecord.Read(Target));
    }

    [Theory]
    [InlineData("../a")]
    [InlineData("/a")]
    [InlineData("a//b")]
    [InlineData("a\\b")]
    [InlineData("")]
    public void Add_NameThatLeavesTheFolder_Throws(string name)
    {
        using FileSet set = Set();
        Assert.Throws<ArgumentException>(() => set.Add(name, []));
    }

    [Fact]
    public void Dispose_WithoutCommit_LeavesTheOldSetAndNoTemporaryFile()
    {
        Write("a.txt", "old");
        using (FileSet set = Set())
        {
            set.Add("a.txt", [1]);
            Assert.Equal(2, Directory.GetFiles(Target).Length);
        }

        Assert.Equal(["a.txt"], Present());
        Assert.Equal("old", File.ReadAllText(Path.Combine(Target, "a.txt")));
    }

    [Fact]
    public void Add_SameNameTwice_Throws()
    {
        using FileSet set = Set();
        set.Add("a", []);
        Assert.Throws<ArgumentException>(() => set.Add("a", []));
    }

    [Fact]
    public void WriteNew_FileIsThere_RefusesAndKeepsIt()
    {
        string path = Path.Combine(_folder, "a.toml");
        FileSet.WriteNew(path, [1]);
        Assert.Throws<FileTroubleException>(() => FileSet.WriteNew(path, [2]));
        Assert.Equal([1], File.ReadAllBytes(path));
        Assert.Single(Directory.GetFiles(_folder));
    }

    private static FolderClaim Claim { get; } = new("a.toml", "a", "");

    private FolderOutcome Make(FolderClaim claim, params (string Name, byte Content)[] files)
    {
        using FileSet set = Set();
        foreach ((string name, byte content) in files)
        {
            set.Add(name, [content]);
        }

        return set.Commit(claim);
    }

    private FileSet Set() => new(Target, TestContext.Current.CancellationToken);

    private string Target => Path.Combine(_folder, "out");

    private void Write(string name, string text)
    {
        string path = Path.Combine(Target, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    private string[] Present() =>
        [.. Directory.GetFiles(Target, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Target, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];
}
