using WheelDraft.Cli;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class FileSetTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("wheeldraft-test-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Commit_NewAndOldFiles_ReplacesAllAndLeavesNothingElse()
    {
        Write("report.json", "old");
        using FileSet set = Set();
        set.Add("report.json", [1]);
        set.Add("cut/wheel.dxf", [2]);
        set.Commit([]);
        Assert.Equal(["cut/wheel.dxf", "report.json"], Present());
        Assert.Equal([1], File.ReadAllBytes(Path.Combine(Target, "report.json")));
    }

    [Fact]
    public void Commit_StaleFiles_DeletesThoseThatAreThere()
    {
        Write("cut/wheel.dxf", "old");
        Write("notes.txt", "the person's own");
        using FileSet set = Set();
        set.Add("report.json", [1]);
        IReadOnlyList<string> deleted = set.Commit(["cut/wheel.dxf", "cut/sheet.dxf", "report.json"]);
        Assert.Equal(["cut/wheel.dxf"], deleted);
        Assert.Equal(["notes.txt", "report.json"], Present());
    }

    [Fact]
    public void Commit_FolderInTheWay_LeavesTheOldSet()
    {
        Write("a.txt", "old");
        Directory.CreateDirectory(Path.Combine(Target, "b.txt"));
        using (FileSet set = Set())
        {
            set.Add("a.txt", [1]);
            set.Add("b.txt", [2]);
            Assert.Throws<FileTroubleException>(() => set.Commit(["a.txt"]));
        }

        Assert.Equal(["a.txt"], Present());
        Assert.Equal("old", File.ReadAllText(Path.Combine(Target, "a.txt")));
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
            Assert.Throws<OperationCanceledException>(() => set.Commit(["a.txt"]));
        }

        Assert.Equal(["a.txt"], Present());
        Assert.Equal("old", File.ReadAllText(Path.Combine(Target, "a.txt")));
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
