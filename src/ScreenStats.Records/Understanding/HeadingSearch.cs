using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Understanding;

/// <summary>Finds the record of a file that holds its headings: lines of text may stand before it.</summary>
internal sealed class HeadingSearch
{
    /// <summary>Records that are looked at.</summary>
    public const int Farthest = 100;

    /// <summary>Headings that mean something in a row that tries to be the headings.</summary>
    public const int FewestRecognised = 2;

    private static readonly string[] Dates =
        [CanonicalColumns.CollectedAt, CanonicalColumns.ReportedAt, CanonicalColumns.ReadAt, CanonicalColumns.LotExpiry, CanonicalColumns.RunAt, CanonicalColumns.Date];

    private readonly ExportKind export;
    private readonly ExportSettings settings;
    private readonly HashSet<string> known = new(StringComparer.Ordinal);
    private readonly bool named;
    private readonly HashSet<string> namedDates = new(StringComparer.Ordinal);

    public HeadingSearch(ExportKind export, ExportSettings settings)
    {
        this.export = export;
        this.settings = settings;
        foreach (var column in CanonicalColumns.Of(export))
        {
            known.Add(TextFold.Fold(column.Name));
            foreach (var heading in column.Headings) known.Add(TextFold.Fold(heading));
        }

        foreach (var mapped in settings.Columns.Values) known.Add(TextFold.Fold(mapped));
    }

    /// <summary>Looks for headings that are named one by one, instead of those of an export.</summary>
    /// <param name="headings">The names; the headings hold all of them.</param>
    /// <param name="dates">Those of them that are columns of dates, besides those whose headings say so in any export.</param>
    public HeadingSearch(IEnumerable<string> headings, IEnumerable<string> dates)
    {
        settings = new ExportSettings();
        named = true;
        foreach (var heading in headings) known.Add(TextFold.Fold(heading));
        foreach (var heading in dates) namedDates.Add(TextFold.Fold(heading));
    }

    private int Fewest => named ? 1 : FewestRecognised;

    /// <summary>Number of headings that mean something: evidence for a delimiter.</summary>
    public int Recognised(IReadOnlyList<string> headings)
    {
        var count = 0;
        for (var h = 0; h < headings.Count && h < 1000; h++)
        {
            if (headings[h].Length is > 0 and <= 200 && (known.Contains(TextFold.Fold(headings[h])) || known.Contains(TextFold.Fold(HeadingText.WithoutBrackets(headings[h]))))) count++;
        }

        return count;
    }

    /// <summary>True where every required column has a heading.</summary>
    public bool Fits(IReadOnlyList<string> headings) =>
        Recognised(headings) >= Fewest && Complete(headings);

    /// <summary>
    /// The position of the headings among the first records: the first record in which every required column has its
    /// heading; else, where some record clearly tries to be it, the one with most headings that mean something (so that
    /// messages speak of it); else the first. Records with no value are passed over.
    /// </summary>
    public int Find(IReadOnlyList<IReadOnlyList<string>> records)
    {
        if (records.Count == 0) return 0;
        var best = 0;
        var most = Recognised(records[0]);
        for (var r = 0; r < records.Count; r++)
        {
            var recognised = r == 0 ? most : Recognised(records[r]);
            if (recognised >= Fewest && Complete(records[r])) return r;
            if (recognised <= most || recognised < Fewest + 1) continue;
            most = recognised;
            best = r;
        }

        return best;
    }

    private bool Complete(IReadOnlyList<string> headings) => named
        ? known.IsSubsetOf(headings.Take(HeadingMatcher.MostHeadings).Where(heading => heading.Length <= 200).Select(TextFold.Fold))
        : HeadingMatcher.Complete(export, headings, settings);

    /// <summary>Which fields hold dates.</summary>
    public bool[] DateFields(IReadOnlyList<string> headings)
    {
        var fields = new bool[headings.Count];
        foreach (var kind in named ? Enum.GetValues<ExportKind>() : [export])
        {
            var columns = CanonicalColumns.Of(kind);
            var matches = HeadingMatcher.Match(kind, "", headings, settings, 1, []);
            for (var c = 0; c < columns.Count; c++)
            {
                if (matches[c].Field >= 0 && Dates.Contains(columns[c].Name)) fields[matches[c].Field] = true;
            }
        }

        for (var f = 0; f < fields.Length && namedDates.Count > 0; f++) fields[f] |= namedDates.Contains(TextFold.Fold(headings[f]));
        return fields;
    }
}
