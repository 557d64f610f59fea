using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.Formats;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>Understands screening rows.</summary>
internal sealed class ScreeningReader : RowReader
{
    private const int NoExpiry = int.MinValue;

    // A kit is used up within days: these are the kits of more sites than most programs have.
    private const int MostKits = 1 << 16;

    private readonly IRunSink? sink;
    private readonly int person, site, collectedAt, result, controlLine, testLine, lot, kit, lotExpiry, readAt;
    private readonly int operatorColumn, specimen, collection, symptomatic, exposed, outbreak, control, screenId;
    private readonly TextCodes sites, lots, kits, operators;
    private readonly TextCodes results, controlLines, testLines, specimens, collections, symptoms, exposures, outbreaks, controls;
    private readonly TextCodes expiryDays;
    private readonly Dictionary<int, IdentityKind> operatorIdentities = [];
    private RunRow[] rows = new RunRow[4096];
    private int count;
    private long? lastReadAt;
    private uint lastWords;

    public ScreeningReader(ExportSettings settings, Vocabularies vocabularies, TimeScale scale, IRunSink? sink, bool keepText)
        : base(ExportKind.Screening, scale, keepText)
    {
        this.sink = sink;
        person = ColumnOf(CanonicalColumns.Person);
        site = ColumnOf(CanonicalColumns.Site);
        collectedAt = ColumnOf(CanonicalColumns.CollectedAt);
        result = ColumnOf(CanonicalColumns.Result);
        controlLine = ColumnOf(CanonicalColumns.ControlLine);
        testLine = ColumnOf(CanonicalColumns.TestLine);
        lot = ColumnOf(CanonicalColumns.Lot);
        kit = ColumnOf(CanonicalColumns.Kit);
        lotExpiry = ColumnOf(CanonicalColumns.LotExpiry);
        readAt = ColumnOf(CanonicalColumns.ReadAt);
        operatorColumn = ColumnOf(CanonicalColumns.Operator);
        specimen = ColumnOf(CanonicalColumns.Specimen);
        collection = ColumnOf(CanonicalColumns.Collection);
        symptomatic = ColumnOf(CanonicalColumns.Symptomatic);
        exposed = ColumnOf(CanonicalColumns.Exposed);
        outbreak = ColumnOf(CanonicalColumns.Outbreak);
        control = ColumnOf(CanonicalColumns.Control);
        screenId = ColumnOf(CanonicalColumns.ScreenId);

        sites = new TextCodes(vocabularies.Sites.Code);
        lots = new TextCodes(vocabularies.Lots.Code);
        kits = new TextCodes((ReadOnlySpan<byte> text) => vocabularies.Kits.Code(text), MostKits);
        operators = new TextCodes(text =>
        {
            var kind = TakeIdentity(text, operatorColumn);
            var code = vocabularies.Operators.Code(text);
            if (kind != IdentityKind.None) operatorIdentities[code] = kind;
            return code;
        });
        var yesNo = Words.YesNo.Reader(settings.Words);
        results = Choice(Words.Outcome.Reader(settings.Words));
        controlLines = Choice(yesNo);
        testLines = Choice(yesNo);
        symptoms = Choice(yesNo);
        exposures = Choice(yesNo);
        outbreaks = Choice(yesNo);
        specimens = Choice(Words.Specimen.Reader(settings.Words));
        collections = Choice(Words.Collection.Reader(settings.Words));
        controls = Choice(Words.Control.Reader(settings.Words));
        expiryDays = new TextCodes(ExpiryDay, 4096);
    }

    /// <summary>The row understood last, without its place among all records.</summary>
    public ref readonly RunRow Last => ref rows[count - 1];

    public override void EndBlock(uint firstRecord)
    {
        for (var i = 0; i < count; i++) rows[i].Record += firstRecord;
        sink?.Take(rows.AsSpan(0, count));
        count = 0;
    }

    public override IEnumerable<(int Column, TextCodes Codes, Words Words)> WordsMet() =>
    [
        (result, results, Words.Outcome), (controlLine, controlLines, Words.YesNo), (testLine, testLines, Words.YesNo),
        (specimen, specimens, Words.Specimen), (collection, collections, Words.Collection),
        (symptomatic, symptoms, Words.YesNo), (exposed, exposures, Words.YesNo), (outbreak, outbreaks, Words.YesNo), (control, controls, Words.Control),
    ];

    public override IEnumerable<(int Column, TextCodes Codes)> LevelsMet() => [(site, sites), (lot, lots), (kit, kits)];

    public override byte[] TakeMeaning(RecordSplitter row)
    {
        if (count == 0) return [];
        var run = rows[count - 1];
        count = 0;
        return Written(
            [run.Instant, run.OffsetMinutes, lastWords, run.Site, run.Lot, run.Kit, run.Operator, run.LotExpiry?.DayNumber ?? -1,
                lastReadAt is null ? 0 : 1, lastReadAt ?? 0, run.HasScreenId ? 1 : 0],
            Text(row, person).ToArray(), Text(row, screenId));
    }

    /// <summary>The screen_id of the row understood last, which is not to be counted.</summary>
    public ReadOnlySpan<byte> TakeScreenId(RecordSplitter row)
    {
        count = 0;
        return Text(row, screenId);
    }

    /// <summary>Forgets rows that were understood but are not to be counted.</summary>
    public void Forget() => count = 0;

    protected override Finding? Understand(RecordSplitter row, uint record, out int column)
    {
        Finding? why = null;
        column = 0;
        if (count == rows.Length) Array.Resize(ref rows, rows.Length * 2);
        ref var run = ref rows[count];
        run = default;
        run.Record = record;

        var controlWord = OptionalWord(row, control, controls);
        if (controlWord is 0 or 1) run.Control = (ControlExpectation)controlWord;

        var who = Text(row, person);
        if (!who.IsEmpty)
        {
            Recorded[person]++;
            run.Person = Math.Max(1, TextCodes.Hash(who));
            CheckIdentity(who, run.Person, person);
        }
        else if (run.Control is null) Fail(Finding.MissingValue, person, ref why, ref column);

        var place = Text(row, site);
        ulong siteHash = 0;
        if (place.IsEmpty) Fail(Finding.MissingValue, site, ref why, ref column);
        else if (place.Length > LongestName) Fail(Finding.NameTooLong, site, ref why, ref column);
        else
        {
            Recorded[site]++;
            run.Site = sites.Code(place, out siteHash);
        }

        var when = Text(row, collectedAt);
        WrittenMoment written = default;
        if (when.IsEmpty) Fail(Finding.MissingValue, collectedAt, ref why, ref column);
        else if (Moment(when, collectedAt, out written, out run.Instant, out run.OffsetMinutes) is var reading and not DateReading.Read)
        {
            Fail(NotRead(reading), collectedAt, ref why, ref column);
        }

        run.DateOnly = written.DateOnly;
        ReadOutcome(row, ref run, ref why, ref column);

        run.Lot = Level(row, lot, lots, out var lotHash);
        run.Kit = Level(row, kit, kits, out var kitHash);
        run.Operator = Level(row, operatorColumn, operators, out var operatorHash);
        if (operatorIdentities.Count > 0 && operatorIdentities.TryGetValue(run.Operator, out var identity)) Findings.Add(LooksLike(identity), operatorColumn, Here);
        var specimenWord = OptionalWord(row, specimen, specimens);
        run.Specimen = specimenWord < 0 ? Specimen.NotRecorded : (Specimen)(specimenWord + 1);
        var collectionWord = OptionalWord(row, collection, collections);
        run.Collection = collectionWord < 0 ? CollectedBy.NotRecorded : (CollectedBy)(collectionWord + 1);
        var symptomaticWord = OptionalWord(row, symptomatic, symptoms);
        run.Symptomatic = symptomaticWord == 1;
        var exposedWord = OptionalWord(row, exposed, exposures);
        run.Exposed = exposedWord == 1;
        run.Outbreak = OptionalWord(row, outbreak, outbreaks) switch { 0 => OutbreakMark.No, 1 => OutbreakMark.Yes, _ => OutbreakMark.NotRecorded };
        run.LotExpiry = Fields[lotExpiry] < 0 ? null : ReadExpiry(row);
        lastReadAt = Fields[readAt] < 0 ? null : ReadReadingTime(row, written, ref run);

        var identifier = Fields[screenId] < 0 ? default : Text(row, screenId);
        if (!identifier.IsEmpty)
        {
            Recorded[screenId]++;
            run.HasScreenId = true;
            run.ScreenId = TextCodes.Hash(identifier);
        }

        if (why is not null) return why;
        lastWords = ((uint)run.Outbreak << 28) | ((uint)run.Outcome << 24) | ((uint)run.Specimen << 20) | ((uint)run.Collection << 16) | ((uint)(controlWord + 2) << 12)
            | ((uint)(symptomaticWord < 0 ? 2 : symptomaticWord) << 8) | ((uint)(exposedWord < 0 ? 2 : exposedWord) << 4) | (run.DateOnly ? 1u : 0u);
        var meaning = Mix(run.Person, run.ScreenId);
        meaning = Mix(meaning, (ulong)run.Instant ^ ((ulong)(ushort)run.OffsetMinutes << 48));
        meaning = Mix(meaning, siteHash);
        meaning = Mix(meaning, lotHash);
        meaning = Mix(meaning, kitHash);
        meaning = Mix(meaning, operatorHash);
        meaning = Mix(meaning, lastWords | ((ulong)(run.LotExpiry?.DayNumber ?? 0) << 32));
        run.Meaning = Mix(meaning, (ulong)(lastReadAt ?? long.MinValue));
        count++;
        return null;
    }

    private static void Fail(Finding finding, int at, ref Finding? why, ref int column)
    {
        if (why is not null) return;
        why = finding;
        column = at;
    }

    private static TextCodes Choice(Func<string, int> understand) => new(understand, 4096);

    private void ReadOutcome(RecordSplitter row, ref RunRow run, ref Finding? why, ref int column)
    {
        var word = Word(row, result, results, out _);
        if (word >= 0 && (Fields[controlLine] < 0 || Fields[testLine] < 0))
        {
            run.Outcome = (Outcome)word;
            return;
        }

        var lines = Fields[controlLine] >= 0 && Fields[testLine] >= 0;
        var columns = lines
            ? new OutcomeColumns(word, Word(row, controlLine, controlLines, out _), Word(row, testLine, testLines, out _))
            : new OutcomeColumns(word, Words.Blank, Words.Blank);
        if (columns.Read(lines, out var finding, out var at) is { } outcome) run.Outcome = outcome;
        else Fail(finding, at == 0 ? result : at == 1 ? controlLine : testLine, ref why, ref column);
        if (word >= 0 && columns.ByLines is { } seen && seen != run.Outcome) Findings.Add(Finding.ResultAgainstLines, result, Here);
    }

    private DateOnly? ReadExpiry(RecordSplitter row)
    {
        var text = Text(row, lotExpiry);
        if (text.IsEmpty) return null;
        var day = expiryDays.Code(text, out _);
        if (day == NoExpiry)
        {
            Findings.Add(Finding.UnreadableValue, lotExpiry, Here);
            return null;
        }

        Recorded[lotExpiry]++;
        if ((day & 3) != 0) Findings.Add((day & 3) == 1 ? Finding.WithOffset : Finding.WithoutOffset, lotExpiry, Here);
        return DateOnly.FromDayNumber(day >> 2);
    }

    /// <summary>The last day of a lot: a date, or the last day of a month written as 2026-08 or 08/2026. Its two lowest bits are 1 for a time with an offset, 2 for one that needs it.</summary>
    private int ExpiryDay(string text)
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes(text);
        var origin = new DateOnly(2000, 1, 1).DayNumber;
        var month = ExpiryMonth(bytes);
        if (month is { } last) return (origin + last) << 2;
        if (OnScale(bytes, lotExpiry, out var moment, out _, out _) != DateReading.Read) return NoExpiry;
        return ((origin + moment.Day) << 2) | (Scale.HasZone || moment.DateOnly ? 0 : moment.HasOffset ? 1 : 2);
    }

    private static int? ExpiryMonth(ReadOnlySpan<byte> text)
    {
        if (text.Length != 7) return null;
        int year, month;
        if (text[4] == (byte)'-')
        {
            if (!int.TryParse(text[..4], System.Globalization.NumberStyles.None, null, out year)
                || !int.TryParse(text[5..], System.Globalization.NumberStyles.None, null, out month)) return null;
        }
        else if (text[2] is (byte)'/' or (byte)'-' or (byte)'.')
        {
            if (!int.TryParse(text[..2], System.Globalization.NumberStyles.None, null, out month)
                || !int.TryParse(text[3..], System.Globalization.NumberStyles.None, null, out year)) return null;
        }
        else return null;
        if (year is < 1971 or > 2099 || month is < 1 or > 12) return null;
        return DateParser.DayNumber(year, month, DateTime.DaysInMonth(year, month));
    }

    private long? ReadReadingTime(RecordSplitter row, in WrittenMoment collected, ref RunRow run)
    {
        var text = Text(row, readAt);
        if (text.IsEmpty) return null;
        if (Moment(text, readAt, out var moment, out var instant, out _) != DateReading.Read)
        {
            Findings.Add(Finding.UnreadableValue, readAt, Here);
            return null;
        }

        if (!moment.DateOnly && !collected.DateOnly) run.MinutesToReading = (int)Math.Clamp(Math.Floor((instant - run.Instant) / 60.0), int.MinValue, int.MaxValue);
        return instant;
    }
}
