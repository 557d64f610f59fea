using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>Understands confirmatory rows and keeps them.</summary>
internal sealed class ConfirmatoryReader : RowReader
{
    private readonly int person, collectedAt, result, reportedAt, method, reason, stratum;
    private readonly TextCodes results, reasons, strata;
    private int firstOfBlock;

    public ConfirmatoryReader(ExportSettings settings, Vocabularies vocabularies, TimeScale scale, bool keepText)
        : base(ExportKind.Confirmatory, scale, keepText)
    {
        person = ColumnOf(CanonicalColumns.Person);
        collectedAt = ColumnOf(CanonicalColumns.CollectedAt);
        result = ColumnOf(CanonicalColumns.Result);
        reportedAt = ColumnOf(CanonicalColumns.ReportedAt);
        method = ColumnOf(CanonicalColumns.Method);
        reason = ColumnOf(CanonicalColumns.Reason);
        stratum = ColumnOf(CanonicalColumns.SamplingStratum);
        results = new TextCodes(Words.Confirmation.Reader(settings.Words), 4096);
        reasons = new TextCodes(Words.Reason.Reader(settings.Words), 4096);
        strata = new TextCodes(vocabularies.Strata.Code);
    }

    /// <summary>The rows understood, by block.</summary>
    public List<SpecimenRow> Specimens { get; private set; } = [];

    /// <summary>Hands the valid rows over; the reader has none then.</summary>
    public List<SpecimenRow> TakeSpecimens()
    {
        var taken = Specimens;
        Specimens = [];
        return taken;
    }

    public override byte[] TakeMeaning(RecordSplitter row)
    {
        if (Specimens.Count == 0) return [];
        var specimen = Specimens[^1];
        Specimens.Clear();
        return Written(
            [specimen.Instant, specimen.OffsetMinutes, specimen.DateOnly ? 1 : 0, (int)specimen.Result, (int)specimen.Reason,
                specimen.Reported is null ? 0 : 1, specimen.Reported ?? 0, specimen.ReportedDateOnly ? 1 : 0, specimen.Stratum],
            Text(row, person).ToArray(), Text(row, method));
    }

    public override void EndBlock(uint firstRecord)
    {
        var all = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(Specimens);
        for (var i = firstOfBlock; i < all.Length; i++) all[i].Record += firstRecord;
        firstOfBlock = all.Length;
    }

    public override IEnumerable<(int Column, TextCodes Codes, Words Words)> WordsMet() =>
        [(result, results, Words.Confirmation), (reason, reasons, Words.Reason)];

    protected override Finding? Understand(RecordSplitter row, uint record, out int column)
    {
        Finding? why = null;
        column = 0;
        var specimen = new SpecimenRow { Record = record };
        var who = Text(row, person);
        if (who.IsEmpty) Fail(Finding.MissingValue, person, ref why, ref column);
        else
        {
            Recorded[person]++;
            specimen.Person = Math.Max(1, TextCodes.Hash(who));
            CheckIdentity(who, specimen.Person, person);
        }

        var when = Text(row, collectedAt);
        if (when.IsEmpty) Fail(Finding.MissingValue, collectedAt, ref why, ref column);
        else if (Moment(when, collectedAt, out var written, out specimen.Instant, out specimen.OffsetMinutes) is var reading and not DateReading.Read) Fail(NotRead(reading), collectedAt, ref why, ref column);
        else specimen.DateOnly = written.DateOnly;

        var word = Word(row, result, results, out _);
        if (word >= 0) specimen.Result = (ConfirmatoryResult)word;
        else Fail(word == Words.Blank ? Finding.MissingValue : Finding.UnknownResult, result, ref why, ref column);

        var reported = Text(row, reportedAt);
        if (!reported.IsEmpty)
        {
            if (Moment(reported, reportedAt, out var written, out var instant, out _) == DateReading.Read)
            {
                specimen.Reported = instant;
                specimen.ReportedDateOnly = written.DateOnly;
            }
            else Findings.Add(Finding.UnreadableValue, reportedAt, Here);
        }

        var reasonWord = OptionalWord(row, reason, reasons);
        specimen.Reason = reasonWord < 0 ? SpecimenReason.NotRecorded : (SpecimenReason)(reasonWord + 1);
        specimen.Stratum = Level(row, stratum, strata, out var stratumHash);
        var how = Text(row, method);
        if (!how.IsEmpty) Recorded[method]++;
        if (why is not null) return why;

        var meaning = Mix(specimen.Person, (ulong)specimen.Instant ^ ((ulong)(ushort)specimen.OffsetMinutes << 48));
        meaning = Mix(meaning, ((ulong)specimen.Result << 8) | ((ulong)specimen.Reason << 4) | (specimen.DateOnly ? 2u : 0u) | (specimen.ReportedDateOnly ? 1u : 0u));
        meaning = Mix(meaning, (ulong)(specimen.Reported ?? long.MinValue));
        meaning = Mix(meaning, stratumHash);
        specimen.Meaning = Mix(meaning, how.IsEmpty ? 0 : TextCodes.Hash(how));
        Specimens.Add(specimen);
        return null;
    }

    private static void Fail(Finding finding, int at, ref Finding? why, ref int column)
    {
        if (why is not null) return;
        why = finding;
        column = at;
    }
}
