namespace WheelDraft.Formats.Explaining;

// The folder "Explaining": what every code of a finding or refusal means. The texts are Markdown, one file a family in "Codes", and part of the program;
// here they are read, found and laid out. What is found in a design, and when, is the business of those who give the codes.

/// <summary>What one code means and how to cure it.</summary>
/// <param name="Code">The code, as it stands in brackets behind a finding.</param>
/// <param name="Title">It in a line.</param>
/// <param name="Meaning">What was found: paragraphs.</param>
/// <param name="Notes">Why it matters and how to cure it.</param>
/// <param name="Example">A small example of the cure, or of how to ask.</param>
internal sealed record Explanation(string Code, string Title, IReadOnlyList<string> Meaning, ExplanationNotes Notes, ExplanationExample Example);

/// <summary>The lines of an explanation that have names.</summary>
/// <param name="Why">Which rule or physics makes it matter.</param>
/// <param name="Source">Where that stands; "common practice, no source" or "from memory" in so many words.</param>
/// <param name="Cure">What to change, and in which direction.</param>
/// <param name="Keys">The keys to change: <c>wheel.web</c>, or a table.</param>
/// <param name="See">Other codes to look at.</param>
/// <param name="Picture">Name of the picture that shows it; null for none.</param>
internal sealed record ExplanationNotes(string Why, string Source, string Cure, IReadOnlyList<string> Keys, IReadOnlyList<string> See, string? Picture);

/// <summary>An example.</summary>
/// <param name="Language"><c>toml</c> for a part of a parameter file, <c>sh</c> for commands, <c>text</c> for anything else.</param>
/// <param name="Lines">Its lines.</param>
internal sealed record ExplanationExample(string Language, IReadOnlyList<string> Lines);

/// <summary>Codes that belong together.</summary>
/// <param name="Name">The family's file, without its end: <c>spacing</c>.</param>
/// <param name="Title">What they are about.</param>
/// <param name="Words">That in a sentence.</param>
/// <param name="Codes">The explanations, in the order of the file.</param>
internal sealed record ExplanationFamily(string Name, string Title, string Words, IReadOnlyList<Explanation> Codes);
