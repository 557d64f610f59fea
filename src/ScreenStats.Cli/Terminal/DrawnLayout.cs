using Spectre.Console;
using Spectre.Console.Rendering;

namespace ScreenStats.Cli.Terminal;

/// <summary>What the drawing library makes of paragraphs and tables: any letters, tables that are wider than the screen. Data goes into plain text objects, never into markup.</summary>
internal static class DrawnLayout
{
    /// <summary>A paragraph, broken between words.</summary>
    public static string Paragraph(string text, int width, bool color) => Lines(new Text(text), width, color);

    /// <summary>A paragraph in bold.</summary>
    public static string Title(string text, int width, bool color) => Lines(new Text(text, new Style(decoration: Decoration.Bold)), width, color);

    /// <summary>A paragraph that deserves attention.</summary>
    public static string Attention(string text, int width, bool color) => Lines(new Text(text, new Style(foreground: Color.Yellow, decoration: Decoration.Bold)), width, color);

    /// <summary>A paragraph under another line.</summary>
    public static string Indented(string text, int width, bool color) => Lines(new Padder(new Text(text), new Padding(2, 0, 0, 0)), width, color);

    /// <summary>A table without borders.</summary>
    public static string Table(IReadOnlyList<TableColumnPlan> columns, IEnumerable<IReadOnlyList<string>> rows, int width, bool color)
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

        foreach (var row in rows) table.AddRow(row.Select(cell => new Text(cell)));
        return Lines(table, width, color);
    }

    /// <summary>Columns that a text takes on a screen.</summary>
    public static int Columns(string text) => new Segment(text).CellCount();

    private static string Lines(IRenderable what, int width, bool color)
    {
        using var written = new StringWriter { NewLine = "\n" };
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = color ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = color ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(written),
            Enrichment = new ProfileEnrichment { UseDefaultEnrichers = false },
        });
        console.Profile.Width = width;
        console.Write(what);
        return string.Concat(written.ToString().Replace("\r\n", "\n", StringComparison.Ordinal).TrimEnd('\n').Split('\n').Select(line => line.TrimEnd() + "\n"));
    }
}
