using Spectre.Console;
using Spectre.Console.Rendering;

namespace ScreenStats.Cli.Terminal;

/// <summary>Writes results for people. Data goes into plain text objects, never into markup.</summary>
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
    public void Title(string text) => Prose(new Text(Printable.Of(text), new Style(decoration: Decoration.Bold)));

    /// <summary>A line that deserves attention; its words must say so without the colour.</summary>
    public void Attention(string text) => Prose(new Text(Printable.Of(text), new Style(foreground: Color.Yellow, decoration: Decoration.Bold)));

    /// <summary>A paragraph, broken between words where the screen ends.</summary>
    public void Text(string text) => Prose(new Text(Printable.Of(text)));

    /// <summary>A paragraph under another line.</summary>
    public void Indented(string text) => Prose(new Padder(new Text(Printable.Of(text)), new Padding(2, 0, 0, 0)));

    /// <summary>A table without borders; numbers stand to the right. A heading may be broken by a line feed.</summary>
    public void Table(IReadOnlyList<TableColumnPlan> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        var table = new Table { Border = TableBorder.None, ShowHeaders = columns.Any(column => column.Heading.Length > 0) };
        foreach (var plan in columns)
        {
            table.AddColumn(new TableColumn(new Text(plan.Heading, new Style(decoration: Decoration.Underline)))
            {
                Alignment = plan.Right ? Justify.Right : Justify.Left,
                Padding = new Padding(0, 0, 2, 0),
            });
        }

        foreach (var row in rows) table.AddRow(row.Select(cell => new Text(Printable.Of(cell))));
        Render(table, environment.Width);
    }

    /// <summary>The cautions, after an empty line.</summary>
    public void Caution()
    {
        Line();
        Line(Cautions.Screening);
    }

    private void Prose(IRenderable what) => Render(what, environment.ProseWidth);

    private void Render(IRenderable what, int width)
    {
        using var written = new StringWriter { NewLine = "\n" };
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = environment.ColorAllowed ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = environment.ColorAllowed ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(written),
            Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
        });
        console.Profile.Width = width;
        console.Write(what);
        foreach (var line in written.ToString().Replace("\r\n", "\n", StringComparison.Ordinal).TrimEnd('\n').Split('\n')) output.Write(line.TrimEnd() + "\n");
    }
}
