using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>Looks at the dates of an export, and at nothing else, for what they say about the order of day and month.</summary>
internal sealed class DateEvidenceReader : RowReader
{
    private static readonly string[] Names =
        [CanonicalColumns.CollectedAt, CanonicalColumns.ReportedAt, CanonicalColumns.ReadAt, CanonicalColumns.LotExpiry, CanonicalColumns.RunAt, CanonicalColumns.Date,
            CanonicalColumns.Week];

    private readonly DateEvidence[] evidence;

    public DateEvidenceReader(ExportKind export)
        : base(export, new TimeScale(null), keepText: false)
    {
        evidence = [.. Columns.Select(column => new DateEvidence(Names.Contains(column.Name)))];
    }

    /// <summary>By column of the export.</summary>
    public IReadOnlyList<DateEvidence> Evidence => evidence;

    public override void EndBlock(uint firstRecord)
    {
    }

    public override IEnumerable<(int Column, TextCodes Codes, Words Words)> WordsMet() => [];

    protected override Finding? Understand(RecordSplitter row, uint record, out int column)
    {
        column = 0;
        for (var c = 0; c < evidence.Length; c++)
        {
            if (evidence[c].IsDate && Fields[c] >= 0) evidence[c].Look(Text(row, c), Here, TwoDigitYears);
        }

        return null;
    }
}
