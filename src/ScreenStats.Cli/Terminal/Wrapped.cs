using System.Text;

namespace ScreenStats.Cli.Terminal;

/// <summary>Text broken between words where a line ends. A word longer than a line, such as a path, stands alone and whole, so that it can be copied.</summary>
internal static class Wrapped
{
    private const string Hanging = "  ";

    /// <summary>The text in lines of at most so many columns; each line of the text that is broken goes on under its beginning, indented by two more.</summary>
    /// <param name="text">The text, perhaps of several lines.</param>
    /// <param name="width">Columns of a line.</param>
    public static string Of(string text, int width) => Fits(text, width) ? text : string.Join('\n', text.Split('\n').Select(line => Line(line, width)));

    /// <summary>Whether no line of the text is longer.</summary>
    public static bool Fits(string text, int width) => Array.TrueForAll(text.Split('\n'), line => Columns(line) <= width);

    /// <summary>Columns that a text takes on a screen: some letters take two, some none.</summary>
    public static int Columns(string text) => text.AsSpan().ContainsAnyExceptInRange(' ', '~') ? DrawnLayout.Columns(text) : text.Length;

    private static string Line(string line, int width)
    {
        if (Columns(line) <= width) return line;
        var indent = line[..(line.Length - line.TrimStart(' ').Length)];
        var lines = new StringBuilder(indent);
        var used = indent.Length;
        var first = true;
        foreach (var word in line[indent.Length..].Split(' '))
        {
            var columns = Columns(word);
            if (first) first = false;
            else if (used + 1 + columns > width)
            {
                lines.Append('\n').Append(indent).Append(Hanging);
                used = indent.Length + Hanging.Length;
            }
            else
            {
                lines.Append(' ');
                used++;
            }

            lines.Append(word);
            used += columns;
        }

        return lines.ToString();
    }
}
