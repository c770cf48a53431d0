using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Page;

/// <summary>Markup under construction: every number in it is written the same on every machine.</summary>
internal sealed class Markup
{
    private readonly StringBuilder _text = new();

    /// <summary>Adds what is markup already.</summary>
    public Markup Add(string markup)
    {
        _text.Append(markup);
        return this;
    }

    /// <summary>Adds markup with figures and words in it; words are escaped by the caller.</summary>
    public Markup Put(FormattableString markup)
    {
        _text.Append(markup.ToString(CultureInfo.InvariantCulture));
        return this;
    }

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();
}
