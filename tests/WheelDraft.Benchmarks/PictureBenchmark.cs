using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Benchmarks;

/// <summary>Pictures of the bench demo: one SVG, drawn and written, is promised in 20 ms; the whole picture set (SVG, PNG, PDF) in 1.0 s.</summary>
internal static class PictureBenchmark
{
    private const int Rounds = 9;

    // The run-time compiles what is hot a second time after some thirty calls.
    private const int WarmUps = 40;

    /// <summary>Runs it; yields a line a figure.</summary>
    public static IEnumerable<string> Run()
    {
        byte[] file = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "parameters", "propagation-bench.toml"));
        Design design = Design.Of(ParameterReader.Read(file).Brief!);
        (string Name, Func<Sheet> Draw)[] sheets =
        [
            ("wheel", () => WheelSheet.Of(design)),
            ("strip", () => StripSheet.Of(design, 0)),
            ("assembly", () => AssemblySheet.Of(design)),
            ("timing", () => TimingSheet.Of(design)),
            ("circuit", () => CircuitSheet.Of(design)),
            ("spacing", () => SpacingSheet.Of(design)),
            ("run", () => RunSheet.Of(design, 0)),
            ("moment", () => MomentSheet.Of(design, design.Circuit.At(1))),
        ];
        foreach ((string name, Func<Sheet> draw) in sheets)
        {
            double ms = Median(() => SvgWriter.Bytes(draw()));
            yield return FormattableString.Invariant($"picture {name}.svg, drawn and written: {ms:0.0} ms (promised 20 ms)");
        }

        foreach ((string words, OutputKind[] kinds) in ((string, OutputKind[])[])[("SVG", [OutputKind.Draw]), ("PNG", [OutputKind.Png]), ("PDF", [OutputKind.Pdf]), ("SVG, PNG and PDF", [OutputKind.Draw, OutputKind.Png, OutputKind.Pdf])])
        {
            double ms = Median(() => OutputFiles.Of(design, new() { Kinds = kinds }).Sum(f => f.Bytes.Length));
            int bytes = OutputFiles.Of(design, new() { Kinds = kinds }).Sum(f => f.Bytes.Length);
            yield return FormattableString.Invariant($"picture set, {words}: {ms:0} ms, {bytes / 1024} KiB (all three promised in 1000 ms)");
        }
    }

    private static double Median<T>(Func<T> work) => Clock.MedianMs(work, WarmUps, Rounds);
}
