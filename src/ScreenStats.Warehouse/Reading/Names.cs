using System.Collections.Immutable;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.Understanding;
using ScreenStats.Warehouse.Engines;

namespace ScreenStats.Warehouse.Reading;

/// <summary>Codes of the names that come from a view, and what stands for people.</summary>
internal sealed class Names(string view, Vocabularies vocabularies)
{
    private readonly Dictionary<string, int> sites = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> lots = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> kits = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> operators = new(StringComparer.Ordinal);

    /// <summary>The operators met.</summary>
    public IEnumerable<string> Operators => operators.Keys;

    public int Site(string text) => Code(sites, vocabularies.Sites, "site", text);

    public int Lot(string? text) => Code(lots, vocabularies.Lots, "lot", text);

    public int Kit(string? text) => Code(kits, vocabularies.Kits, "kit", text);

    public int Operator(string? text) => Code(operators, vocabularies.Operators, "operator", text);

    /// <summary>What stands for a person in the log; 0 for nobody.</summary>
    public static ulong Person(string? text) => text is null ? 0 : Math.Max(1, Hash(text));

    public static ulong Hash(string text)
    {
        var bytes = Encoding.UTF8.GetByteCount(text);
        Span<byte> buffer = bytes <= 256 ? stackalloc byte[bytes] : new byte[bytes];
        Encoding.UTF8.GetBytes(text, buffer);
        return TextCodes.Hash(buffer);
    }

    /// <summary>The place of a word among the agreed ones; -1 for none.</summary>
    public static int Word(ImmutableArray<string> words, string? text) => text is null ? -1 : words.IndexOf(text);

    private int Code(Dictionary<string, int> known, Vocabulary vocabulary, string column, string? text)
    {
        if (text is null) return 0;
        if (known.TryGetValue(text, out var code)) return code;
        // Two spellings that only differ in blanks would be two levels where sums are made, and one where names are shown.
        if (char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1]))
        {
            throw new WarehouseException(WarehouseDiagnostics.WrongView, $"The column {column} of the view {view} has values with blanks before or behind them. Write trim({column}) in the view.");
        }

        if (column != "site" && Encoding.UTF8.GetByteCount(text) > RowReader.LongestName)
        {
            throw new WarehouseException(WarehouseDiagnostics.WrongView, $"The column {column} of the view {view} has values of more than {RowReader.LongestName} bytes, as no name has. Look whether another column was taken for it.");
        }

        return known[text] = vocabulary.Code(text);
    }
}
