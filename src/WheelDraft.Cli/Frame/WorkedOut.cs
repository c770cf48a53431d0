using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>A brief worked out for people.</summary>
internal static class WorkedOut
{
    /// <summary>Works a brief out; where it is refused, with lengths as its person reads them.</summary>
    /// <exception cref="DesignRefusedException">It cannot be built: every reason.</exception>
    public static Design Of(Brief brief, LongWork? attend = null)
    {
        try
        {
            return Design.Of(brief, attend);
        }
        catch (DesignRefusedException refused) when (brief.DrawingUnit == DrawingUnit.Inch)
        {
            ReadersUnit unit = ReadersUnit.Of(brief);
            throw new DesignRefusedException([.. refused.Reasons.Select(r => r with { Message = unit.Words(r.Message) })]);
        }
    }
}
