using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>A brief worked out for people.</summary>
internal static class WorkedOut
{
    /// <summary>Works a file out, settled where anything in it is "auto"; where it is refused, with lengths as its person reads them.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="brief">What was read from it.</param>
    /// <param name="request">How a search is made where one is needed.</param>
    /// <param name="beside">Gives the bytes of another file, for the font.</param>
    /// <exception cref="DesignRefusedException">It cannot be built: every reason.</exception>
    public static WorkedFile Of(byte[] bytes, Brief brief, SearchRequest request, Func<string, byte[]?>? beside)
    {
        try
        {
            return Explained(bytes, brief, request, beside);
        }
        catch (DesignRefusedException refused) when (brief.DrawingUnit == DrawingUnit.Inch)
        {
            ReadersUnit unit = ReadersUnit.Of(brief);
            throw new DesignRefusedException([.. refused.Reasons.Select(r => r with { Message = unit.Words(r.Message) })]);
        }
    }

    // Where it cannot be built at all, and something of it was left to the program, with the wishes that contradict each other.
    private static WorkedFile Explained(byte[] bytes, Brief brief, SearchRequest request, Func<string, byte[]?>? beside)
    {
        try
        {
            return SettledFile.Of(bytes, brief, request, beside) is SettledFile settled ? new(settled.Design, settled.Bytes) : new(Design.Of(brief, request.Attend), null);
        }
        catch (DesignRefusedException refused) when (request.AlwaysExplains || brief.Wheel.SearchesRingOrder || SettingOut.IsNeeded(brief))
        {
            if (SettingOut.Contradictions(brief, request) is Finding contradiction)
            {
                throw new DesignRefusedException([.. refused.Reasons, contradiction]);
            }

            throw;
        }
    }
}

/// <summary>A file worked out.</summary>
/// <param name="Design">Its design.</param>
/// <param name="Settled">The file with every "auto" replaced; null where there was none.</param>
internal sealed record WorkedFile(Design Design, byte[]? Settled);
