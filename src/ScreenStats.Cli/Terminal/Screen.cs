namespace ScreenStats.Cli.Terminal;

/// <summary>Writes results for people.</summary>
internal sealed class Screen(TextWriter output, RunnerEnvironment environment)
{
    /// <summary>One line, or several; those that are too long for the screen flow as one paragraph.</summary>
    public void Line(string text = "")
    {
        if (Wrapped.Fits(text, environment.ProseWidth)) Verbatim(text);
        else Text(text.Replace('\n', ' '));
    }

    /// <summary>Text that is never broken: a path, or lines to be saved as a file.</summary>
    public void Verbatim(string text) => output.Write(Printable.Of(text) + "\n");

    /// <summary>A title line, bold on a terminal.</summary>
    public void Title(string text)
    {
        var shown = Printable.Of(text);
        output.Write(PlainLayout.Title(shown, environment.ProseWidth, environment.ColorAllowed) ?? DrawnLayout.Title(shown, environment.ProseWidth, environment.ColorAllowed));
    }

    /// <summary>A line that deserves attention; its words must say so without the colour.</summary>
    public void Attention(string text) => output.Write(DrawnLayout.Attention(Printable.Of(text), environment.ProseWidth, environment.ColorAllowed));

    /// <summary>A paragraph, broken between words where the screen ends.</summary>
    public void Text(string text)
    {
        var shown = Printable.Of(text);
        output.Write(PlainLayout.Paragraph(shown, environment.ProseWidth) ?? DrawnLayout.Paragraph(shown, environment.ProseWidth, environment.ColorAllowed));
    }

    /// <summary>A paragraph under another line.</summary>
    public void Indented(string text) => output.Write(DrawnLayout.Indented(Printable.Of(text), environment.ProseWidth, environment.ColorAllowed));

    /// <summary>A table without borders; numbers stand to the right. A heading may be broken by a line feed.</summary>
    public void Table(IReadOnlyList<TableColumnPlan> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        var cells = new List<IReadOnlyList<string>>();
        foreach (var row in rows)
        {
            var shown = new string[row.Count];
            for (var column = 0; column < shown.Length; column++) shown[column] = Printable.Of(row[column]);
            cells.Add(shown);
        }

        output.Write(PlainLayout.Table(columns, cells, environment.Width, environment.ColorAllowed) ?? DrawnLayout.Table(columns, cells, environment.Width, environment.ColorAllowed));
    }

    /// <summary>The cautions, after an empty line.</summary>
    public void Caution()
    {
        Line();
        Line(Cautions.Screening);
    }
}
