namespace WheelDraft.Engineering;

/// <summary>A place in a text, both counted from 1.</summary>
public readonly record struct TextPlace(int Line, int Column);
