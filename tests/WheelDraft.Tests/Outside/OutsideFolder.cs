namespace WheelDraft.Tests;

/// <summary>A folder for the files that an outside program reads and writes; gone afterwards.</summary>
internal sealed class OutsideFolder : IDisposable
{
    private readonly string _path = Directory.CreateTempSubdirectory("wheeldraft-test-").FullName;

    public void Dispose() => Directory.Delete(_path, recursive: true);

    internal string At(string name) => Path.Combine(_path, name);

    internal async Task<string> WriteAsync(string name, string text)
    {
        await File.WriteAllTextAsync(At(name), text);
        return At(name);
    }

    internal async Task<string> WriteAsync(string name, byte[] bytes)
    {
        await File.WriteAllBytesAsync(At(name), bytes);
        return At(name);
    }
}
