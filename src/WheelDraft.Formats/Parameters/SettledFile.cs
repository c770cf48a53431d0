using System.Security.Cryptography;
using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>A parameter file with every "auto" replaced by what was chosen or solved, and the design that it has.</summary>
/// <remarks>The design is worked out from the new text, so that what is made of the file and of the settled file is the same, byte for byte.</remarks>
/// <param name="Bytes">The new file: comments and layout as they were; a key that had to be added stands before the "auto" that it belongs to, a strip that the file did not name at its end.</param>
/// <param name="Design">Its design; places are those of the file as it was.</param>
internal sealed record SettledFile(byte[] Bytes, Design Design)
{
    /// <summary>The settled file of a file; null where nothing in it is "auto".</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="brief">What was read from it.</param>
    /// <param name="request">How a search is made where one is needed.</param>
    /// <param name="beside">Gives the bytes of another file, for the font.</param>
    /// <exception cref="DesignRefusedException">It cannot be built, or a value does not stand where it can be replaced.</exception>
    public static SettledFile? Of(ReadOnlySpan<byte> bytes, Brief brief, SearchRequest request, Func<string, byte[]?>? beside)
    {
        string text = Encoding.UTF8.GetString(bytes);
        AutoTexts autos = AutoTexts.In(text);
        if (autos.IsEmpty && !SettingOut.IsNeeded(brief))
        {
            return null;
        }

        SettledBrief settled = SettingOut.IsNeeded(brief) ? SettingOut.Of(brief, request) : new(brief, []);
        Design design = Chosen(settled.Brief);
        byte[] made = Encoding.UTF8.GetBytes(new SettledText(text, autos, brief, design).Write());
        ParameterResult read = ParameterReader.Read(made, beside);
        Brief again = read.Brief ?? throw new DesignRefusedException([.. read.Diagnostics.Select(d => Finding.Error("settle.file", $"in the settled file {d.Message}", d.Place))]);
        Design final = Design.Of(again with
        {
            InputSha256 = brief.InputSha256,
            SettledSha256 = Convert.ToHexStringLower(SHA256.HashData(made)),
            Places = brief.Places,
            Spacing = again.Spacing with { VoltagesUnderFaults = brief.Spacing.VoltagesUnderFaults },
        }, request.Attend);
        Finding? contradiction = !final.Meets && (request.AlwaysExplains || SettingOut.IsNeeded(brief)) ? SettingOut.Contradictions(brief, request) : null;
        return new(made, final with { Findings = [.. contradiction is null ? [] : new[] { contradiction }, .. settled.Told, .. design.Findings.Where(f => f.Code is "wheel.order-found" && !settled.Told.Contains(f)), .. final.Findings] });
    }

    // As far as it is judged: what is read and reported is the design of the new text. A refusal is told in full.
    private static Design Chosen(Brief brief)
    {
        try
        {
            return Design.Judged(brief);
        }
        catch (DesignRefusedException)
        {
            return Design.Of(brief);
        }
    }
}
