using System.Text;

namespace ScreenStats.Cli.Terminal;

/// <summary>Text without characters that would steer a terminal: a site or a heading comes from a file that anybody may have written.</summary>
internal static class Printable
{
    private const char Replacement = '\uFFFD';

    /// <summary>The text with control characters and marks of direction replaced.</summary>
    /// <param name="text">The text; line ends and tabs stay.</param>
    public static string Of(string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange(' ', '~')) return text;
        var clean = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            var steers = char.IsControl(c) ? c is not ('\n' or '\r' or '\t') : c is (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
            clean.Append(steers ? Replacement : c);
        }

        return clean.ToString();
    }
}
