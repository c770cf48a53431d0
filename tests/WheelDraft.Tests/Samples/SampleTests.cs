using SkiaSharp;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Samples;

/// <summary>output-samples/ is what the program makes of parameters/ today: text byte for byte, pictures by their pixels.</summary>
public sealed class SampleTests
{
    // Skia rasterises with code that depends on the processor: pixels may differ in the last step of a colour.
    private const int PixelStep = 3;

    // Set to 1 by hand, the samples are written anew before they are compared; look at what changed before committing it.
    private const string Renew = "WHEELDRAFT_RENEW_SAMPLES";

    public static TheoryData<string> Demos =>
        [.. Directory.EnumerateFiles(Path.Combine(Root, "parameters"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    private static string Root { get; } = FindRoot();

    [Theory]
    [MemberData(nameof(Demos))]
    public void Make_OfADemo_GivesItsSamples(string demo)
    {
        AssertIsWhatIsMade(demo, Make(demo, _ => new OutputRequest()));
    }

    [Fact]
    public void Make_OfAMoment_GivesItsSample()
    {
        // The same as: make parameters/propagation-bench.toml --only draw --frame "125 s" --closed lid --callouts numbers
        AssertIsWhatIsMade("propagation-bench-at-125-s", Make("propagation-bench", design => new OutputRequest
        {
            Kinds = [OutputKind.Draw],
            Sheets = new()
            {
                Callouts = CalloutMarks.Numbers,
                Moment = design.Circuit.At(design.Motion.RadFromSeconds(125), 1 << design.Circuit.Inputs.ToList().IndexOf("lid")),
            },
        }));
    }

    private static void AssertIsWhatIsMade(string sample, SortedDictionary<string, byte[]> made)
    {
        string folder = Path.Combine(Root, "output-samples", sample);
        if (Environment.GetEnvironmentVariable(Renew) is "1")
        {
            Write(folder, made);
        }

        string[] kept = [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];
        Assert.Equal(made.Keys.Order(StringComparer.Ordinal), kept, StringComparer.Ordinal);
        List<string> different = [.. made.Where(m => !Same(m.Key, File.ReadAllBytes(Path.Combine(folder, m.Key)), m.Value)).Select(m => m.Key)];
        Assert.True(different.Count == 0, $"output-samples/{sample} is not what is made today: {string.Join(", ", different)}. Look at the change, then run the tests once with WHEELDRAFT_RENEW_SAMPLES=1.");
    }

    private static bool Same(string name, byte[] kept, byte[] made) =>
        name.EndsWith(".png", StringComparison.Ordinal) ? SamePixels(kept, made) : kept.AsSpan().SequenceEqual(made);

    private static bool SamePixels(byte[] kept, byte[] made)
    {
        if (kept.AsSpan().SequenceEqual(made))
        {
            return true;
        }

        using SKBitmap one = SKBitmap.Decode(kept);
        using SKBitmap two = SKBitmap.Decode(made);
        return one.Width == two.Width && one.Height == two.Height
            && one.GetPixelSpan().Length == two.GetPixelSpan().Length
            && Greatest(one.GetPixelSpan(), two.GetPixelSpan()) <= PixelStep;
    }

    private static int Greatest(ReadOnlySpan<byte> one, ReadOnlySpan<byte> two)
    {
        int greatest = 0;
        for (int i = 0; i < one.Length; i++)
        {
            greatest = Math.Max(greatest, Math.Abs(one[i] - two[i]));
        }

        return greatest;
    }

    private static SortedDictionary<string, byte[]> Make(string demo, Func<Design, OutputRequest> request)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(Root, "parameters", demo + ".toml"));
        ParameterResult read = ParameterReader.Read(bytes);
        Assert.NotNull(read.Brief);
        SortedDictionary<string, byte[]> files = new(StringComparer.Ordinal);

        // As the program does: what is "auto" in the file is settled first.
        SettledFile? settled = SettledFile.Of(bytes, read.Brief, new SearchRequest(), beside: null);
        Design design = settled?.Design ?? Design.Of(read.Brief);
        if (settled is not null && request(design).Kinds.Contains(OutputKind.Report))
        {
            files.Add("settled.toml", settled.Bytes);
        }

        foreach (OutputFile file in OutputFiles.Of(design, request(design)))
        {
            files.Add(file.Name, file.Bytes);
        }

        return files;
    }

    private static void Write(string folder, SortedDictionary<string, byte[]> made)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        foreach ((string name, byte[] bytes) in made)
        {
            string path = Path.Combine(folder, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, bytes);
        }
    }

    /// <summary>The repository's folder: the nearest one above the test program that holds the solution.</summary>
    private static string FindRoot()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "WheelDraft.sln")))
        {
            at = at.Parent;
        }

        return at?.FullName ?? throw new DirectoryNotFoundException("The tests run from inside the repository.");
    }
}
