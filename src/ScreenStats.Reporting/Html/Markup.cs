using System.Globalization;
using System.Text;

namespace ScreenStats.Reporting.Html;

/// <summary>
/// Writes a page as text that is HTML and well-formed XML at once. The one place where text becomes markup: everything that comes from
/// data or words goes through <see cref="Text"/> or an attribute, and is escaped there.
/// </summary>
internal sealed class Markup
{
    private readonly StringBuilder page = new();
    private readonly Stack<string> open = new();

    /// <summary>Text that cannot become markup: the five characters of XML as references; characters that no document may hold, and those that turn the direction of writing, as a replacement sign.</summary>
    public static string Escape(string text)
    {
        var safe = new StringBuilder(text.Length + 16);
        foreach (var rune in text.EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '"' => safe.Append("&quot;"),
                '\'' => safe.Append("&#39;"),
                '\t' or '\n' or '\r' => safe.Append(' '),
                _ when Rune.IsControl(rune) || (rune.Value & 0xFFFE) == 0xFFFE || rune.Value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => safe.Append('\uFFFD'),
                _ => safe.Append(rune.ToString()),
            };
        }

        return safe.ToString();
    }

    /// <summary>Opens an element on a line of its own.</summary>
    public Markup Open(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        Start(name, attributes);
        page.Append(">\n");
        open.Push(name);
        return this;
    }

    /// <summary>Closes the element opened last.</summary>
    public Markup Close()
    {
        page.Append("</").Append(open.Pop()).Append(">\n");
        return this;
    }

    /// <summary>An element that holds text only.</summary>
    public Markup Element(string name, string text, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        Start(name, attributes);
        page.Append('>').Append(Escape(text)).Append("</").Append(name).Append(">\n");
        return this;
    }

    /// <summary>An element without content, such as a column or a line break.</summary>
    public Markup Void(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        Start(name, attributes);
        page.Append(" />\n");
        return this;
    }

    /// <summary>Text within the element opened last.</summary>
    public Markup Text(string text)
    {
        page.Append(Escape(text));
        return this;
    }

    /// <summary>Markup of ours, written as it is: a finished picture, the style sheet.</summary>
    public Markup Trusted(string markup)
    {
        page.Append(markup);
        return this;
    }

    /// <summary>The page so far.</summary>
    /// <exception cref="InvalidOperationException">An element is still open.</exception>
    public override string ToString() => open.Count == 0
        ? page.ToString()
        : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{open.Count} elements are still open, the last a {open.Peek()}."));

    private void Start(string name, ReadOnlySpan<(string Name, string Value)> attributes)
    {
        page.Append('<').Append(name);
        foreach (var (key, value) in attributes) page.Append(' ').Append(key).Append("=\"").Append(Escape(value)).Append('"');
    }
}
