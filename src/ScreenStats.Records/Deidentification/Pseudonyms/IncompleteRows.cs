using System.Buffers;
using System.Collections.Immutable;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>
/// Tells a line of totals from a row, as the reader does: a row that an export could count is none, whatever it is called. Which columns a
/// row needs is known where the headings are those of an export; else it needs what names people, and a date in each column of dates.
/// </summary>
internal sealed class IncompleteRows
{
    private static readonly string[] Dates = [CanonicalColumns.CollectedAt, CanonicalColumns.RunAt];

    // Every word for a total begins with one of these.
    private static readonly SearchValues<byte> Beginnings = SearchValues.Create("egiostzEGIOSTZ"u8);

    private readonly List<(int[] Filled, int[] Dates)> complete = [];

    public IncompleteRows(IReadOnlyList<string> headings, IReadOnlyList<string> people, ReadOnlySpan<ColumnTreatment> treatments)
    {
        // An own heading for people is stated in the program file later, as it is stated here.
        var mapped = people.Count == 0 ? new ExportSettings() : new ExportSettings { Columns = ImmutableSortedDictionary<string, string>.Empty.Add(CanonicalColumns.Person, people[0]) };
        var dates = new HashSet<int>();
        foreach (var export in new[] { ExportKind.Screening, ExportKind.Confirmatory, ExportKind.Controls })
        {
            var settings = export == ExportKind.Controls ? new ExportSettings() : mapped;
            var columns = CanonicalColumns.Of(export);
            var matches = HeadingMatcher.Match(export, "", headings, settings, 1, []);
            var own = Enumerable.Range(0, columns.Count).Where(c => matches[c].Field >= 0).ToList();
            int[] dated = [.. own.Where(c => Dates.Contains(columns[c].Name)).Select(c => matches[c].Field)];
            dates.UnionWith(dated);
            if (HeadingMatcher.Complete(export, headings, settings)) complete.Add(([.. own.Where(c => columns[c].Required).Select(c => matches[c].Field)], dated));
        }

        if (complete.Count > 0) return;
        var named = new List<int>();
        for (var f = 0; f < treatments.Length; f++)
        {
            if (treatments[f] is ColumnTreatment.Pseudonymized or ColumnTreatment.OperatorPseudonymized) named.Add(f);
        }

        complete.Add(([.. named], [.. dates]));
        NamesTotals = [.. named];
    }

    private int[] NamesTotals { get; } = [];

    /// <summary>True for a line of totals.</summary>
    public bool IsTotals(RecordSplitter row)
    {
        if (!MayBe(row) || !TotalsLine.Is(row)) return false;
        foreach (var field in NamesTotals)
        {
            if (TotalsLine.Begins(Text(row, field))) return true;
        }

        foreach (var (filled, dates) in complete)
        {
            var whole = true;
            foreach (var field in filled) whole &= !Text(row, field).IsEmpty;
            foreach (var field in dates)
            {
                var reading = DateParser.Read(Text(row, field), null, out _, twoDigitYears: true);
                whole &= reading is DateReading.Read or DateReading.OrderUnknown;
            }

            if (whole) return false;
        }

        return true;
    }

    /// <summary>False for a row that is surely none; asked of every row, so it must cost nothing.</summary>
    private static bool MayBe(RecordSplitter row)
    {
        for (var f = 0; f < row.FieldCount; f++)
        {
            var text = Text(row, f);
            if (!text.IsEmpty) return !char.IsAsciiLetterOrDigit((char)text[0]) || Beginnings.Contains(text[0]);
        }

        return false;
    }

    private static ReadOnlySpan<byte> Text(RecordSplitter row, int field) => row.Field(field).Trim(" \t\r\n"u8);
}
