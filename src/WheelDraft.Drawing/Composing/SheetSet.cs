namespace WheelDraft.Drawing;

/// <summary>A drawing of a set that is not drawn yet.</summary>
/// <param name="Name">What it is called where it is left out.</param>
/// <param name="Draw">Draws it.</param>
internal readonly record struct UndrawnSheet(string Name, Func<Sheet> Draw);

/// <summary>Drawings that know nothing of each other, drawn side by side in the order of their list.</summary>
internal static class SheetSet
{
    /// <summary>What a figure is called.</summary>
    public const string Figure = "Figure";

    /// <summary>Draws them.</summary>
    /// <param name="kind">What one is called: Sheet, or <see cref="Figure"/>.</param>
    /// <param name="sheets">The drawings.</param>
    /// <param name="leaveOut">Told, in their order, which cannot be drawn, why and what helps; the others are drawn all the same. Null for the first such one to end
    /// the drawing with its exception.</param>
    /// <exception cref="NoRoomException">A drawing has no room for its picture, and nobody wants to be told.</exception>
    public static IReadOnlyList<Sheet> Drawn(string kind, IReadOnlyList<UndrawnSheet> sheets, Action<string>? leaveOut)
    {
        Sheet?[] drawn = new Sheet?[sheets.Count];
        string?[] left = new string?[sheets.Count];
        Parallel.For(0, sheets.Count, i =>
        {
            try
            {
                drawn[i] = sheets[i].Draw();
            }
            catch (Exception trouble) when (leaveOut is not null && trouble is not OutOfMemoryException)
            {
                left[i] = $"{kind} '{sheets[i].Name}' is left out: {WhyOf(kind, trouble)} Everything else is made all the same.";
            }
        });
        foreach (string told in left.OfType<string>())
        {
            leaveOut!(told);
        }

        return [.. drawn.OfType<Sheet>()];
    }

    private static string WhyOf(string kind, Exception trouble) => trouble is NoRoomException
        ? string.Equals(kind, Figure, StringComparison.Ordinal) ? $"{trouble.Message.TrimEnd('.')}. A larger width helps, or shorter names." : $"its labels and tables leave no room for the picture ({trouble.Message.TrimEnd('.')}). Shorter names help, or --callouts numbers."
        : $"this is a fault of the program, not of your file ({trouble.GetType().Name}: {trouble.Message.TrimEnd('.')}); please report it.";
}
