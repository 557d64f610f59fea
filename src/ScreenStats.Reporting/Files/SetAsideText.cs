using System.Text;

namespace ScreenStats.Reporting.Files;

/// <summary>The rows that are not counted, as comma-separated text; the rows' own text only where one was asked for.</summary>
internal static class SetAsideText
{
    /// <summary>The text, with a heading even where no row was set aside.</summary>
    public static string Of(IEnumerable<SetAsideLine> lines)
    {
        var rows = lines.ToArray();
        var withText = rows.Any(row => row.Text is not null);
        var text = new StringBuilder(withText ? "file,line,code,reason,first_line,text\n" : "file,line,code,reason,first_line\n");
        foreach (var row in rows)
        {
            if (withText) CsvText.Row(text, row.File, row.Line, row.Code, row.Reason, row.FirstLine, row.Text);
            else CsvText.Row(text, row.File, row.Line, row.Code, row.Reason, row.FirstLine);
        }

        return text.ToString();
    }
}
