using System.Buffers;
using System.Text;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Understanding;

/// <summary>
/// Tells the line of totals that spreadsheets and reports put at their end. It is asked only for rows that are set aside
/// anyway: a row with person, site, date and result is never taken for one, whatever it is called.
/// </summary>
internal static class TotalsLine
{
    private const int LongestCell = 200;
    private static readonly SearchValues<char> Figures = SearchValues.Create("0123456789:=");

    // English, German, French, Spanish; folded.
    private static readonly string[] Words =
        ["total", "totals", "grandtotal", "subtotal", "sum", "overall", "summe", "gesamt", "gesamtsumme", "insgesamt", "gesamtergebnis", "zwischensumme",
         "totaux", "totalgeneral", "soustotal", "somme", "ensemble", "totales", "suma", "sumatotal"];

    /// <summary>True where the first cell with a value begins with a word for a total.</summary>
    public static bool Is(RecordSplitter row)
    {
        for (var f = 0; f < row.FieldCount; f++)
        {
            var text = row.Field(f).Trim(" \t\r\n"u8);
            if (!text.IsEmpty) return Begins(text);
        }

        return false;
    }

    /// <summary>True for a word for a total, alone or before a figure, a colon or a bracket.</summary>
    public static bool Begins(ReadOnlySpan<byte> text)
    {
        if (text.Length > LongestCell) return false;
        var words = HeadingText.WithoutBrackets(Encoding.UTF8.GetString(text));
        var figures = words.AsSpan().IndexOfAny(Figures);
        if (figures > 0) words = words[..figures];
        return Array.IndexOf(Words, TextFold.Fold(words)) >= 0;
    }
}
