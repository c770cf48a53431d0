using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Page;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>A parameter file as it was at one saving: what is wrong with it, and the last design that could be worked out.</summary>
/// <remarks>Immutable. Files are made when they are first asked for, so that the page redraws at once.</remarks>
internal sealed class WatchedDesign
{
    private readonly Lazy<byte[]> _page;
    private readonly Lazy<IReadOnlyList<string>> _names;
    private readonly Lazy<IReadOnlyList<OutputFile>> _sheets;
    private readonly TaskCompletionSource _followed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private WatchedDesign(int version, Design design)
        : this(version, design, version, [])
    {
    }

    private WatchedDesign(int version, WatchedDesign? before, IReadOnlyList<Finding> faults)
        : this(version, before?.Design, before?.DrawnVersion ?? 0, faults)
    {
    }

    private WatchedDesign(int version, Design? design, int drawnVersion, IReadOnlyList<Finding> faults)
    {
        Version = version;
        Design = design;
        DrawnVersion = drawnVersion;
        Faults = faults;
        _page = new(() => design is null ? [] : ShowPage.Write(design));
        _sheets = new(() => design is null ? [] : [.. OutputFiles.Of(design, new OutputRequest { Kinds = [OutputKind.Draw] })]);
        _names = new(() => design is null ? [] : [.. OutputFiles.NamesOf(design, new OutputRequest())]);
    }

    /// <summary>Number of this saving, from 1.</summary>
    public int Version { get; }

    /// <summary>The design; the one before when this saving has faults; null when there never was one.</summary>
    public Design? Design { get; }

    /// <summary>The saving that the design is of: this one, or an earlier one when this has faults; 0 when there never was one.</summary>
    public int DrawnVersion { get; }

    /// <summary>Why this saving cannot be worked out; empty when it can.</summary>
    public IReadOnlyList<Finding> Faults { get; }

    /// <summary>The page of the design.</summary>
    public byte[] Page => _page.Value;

    /// <summary>The sheets as SVG, made sooner than all files.</summary>
    public IReadOnlyList<OutputFile> Sheets => _sheets.Value;

    /// <summary>The name of every file that <c>make</c> would write; none of them is made for it.</summary>
    public IReadOnlyList<string> FileNames => _names.Value;

    /// <summary>One file that <c>make</c> would write, made now; null when there is none of that name.</summary>
    public OutputFile? FileNamed(string name) => Design is { } design && FileNames.Contains(name, StringComparer.Ordinal)
        ? Sheets.FirstOrDefault(s => string.Equals(s.Name, name, StringComparison.Ordinal)) ?? OutputFiles.Named(name, design, new OutputRequest())
        : null;

    /// <summary>Done when a later saving has taken its place.</summary>
    public Task Followed => _followed.Task;

    /// <summary>Reads and works out a file.</summary>
    /// <param name="path">Its full path.</param>
    /// <param name="before">The saving before; null for the first.</param>
    public static WatchedDesign Read(string path, WatchedDesign? before)
    {
        int version = (before?.Version ?? 0) + 1;
        try
        {
            byte[] bytes = WholeFile.BytesSoon(path);
            Func<string, byte[]?> font = beside => WholeFile.BesideOrNull(path, beside, CancellationToken.None);
            ParameterResult result = ParameterReader.Read(bytes, font);
            return result.Brief is { } brief
                ? new(version, WorkedOut.Of(bytes, brief, new SearchRequest(), font).Design)
                : new(version, before, [.. result.Diagnostics.Select(d => Finding.Error("parameters", d.Message, d.Place))]);
        }
        catch (DesignRefusedException refused)
        {
            return new(version, before, refused.Reasons);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return new(version, before, [Finding.Error("file", $"The file cannot be read: {trouble.Message}")]);
        }
#pragma warning disable CA1031 // Whatever a saving brings about is shown on the page; watching goes on with the next one.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return new(version, before, [Finding.Error("program", $"A fault of the program itself ({fault.GetType().Name}: {fault.Message}); please report it with this file.")]);
        }
    }

    /// <summary>Lets those who wait know that a later saving is there.</summary>
    public void GiveWay() => _followed.TrySetResult();
}
