using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>Understands the rows of a controls export and counts them.</summary>
internal sealed class ControlsReader : RowReader
{
    private readonly int site, runAt, control, result, controlLine, testLine, lot, kit, operatorColumn;
    private readonly TextCodes results, controlLines, testLines, controls, operators;
    private readonly List<string> operatorTexts = [Levels.None];
    private readonly Dictionary<ControlCell, long> cells = [];

    public ControlsReader(ExportSettings settings, TimeScale scale, bool keepText)
        : base(ExportKind.Controls, scale, keepText)
    {
        site = ColumnOf(CanonicalColumns.Site);
        runAt = ColumnOf(CanonicalColumns.RunAt);
        control = ColumnOf(CanonicalColumns.Control);
        result = ColumnOf(CanonicalColumns.Result);
        controlLine = ColumnOf(CanonicalColumns.ControlLine);
        testLine = ColumnOf(CanonicalColumns.TestLine);
        lot = ColumnOf(CanonicalColumns.Lot);
        kit = ColumnOf(CanonicalColumns.Kit);
        operatorColumn = ColumnOf(CanonicalColumns.Operator);
        results = new TextCodes(Words.Outcome.Reader(settings.Words), 4096);
        controlLines = new TextCodes(Words.YesNo.Reader(settings.Words), 4096);
        testLines = new TextCodes(Words.YesNo.Reader(settings.Words), 4096);
        controls = new TextCodes(Words.Control.Reader(settings.Words), 4096);
        operators = new TextCodes(text =>
        {
            CheckIdentity(text, operatorColumn);
            operatorTexts.Add(text);
            return operatorTexts.Count - 1;
        });
    }

    public IEnumerable<ControlCell> Cells => cells.Select(cell => cell.Key with { Runs = cell.Value });

    public override void EndBlock(uint firstRecord)
    {
    }

    public override IEnumerable<(int Column, TextCodes Codes, Words Words)> WordsMet() =>
        [(result, results, Words.Outcome), (controlLine, controlLines, Words.YesNo), (testLine, testLines, Words.YesNo), (control, controls, Words.Control)];

    protected override Finding? Understand(RecordSplitter row, uint record, out int column)
    {
        var place = Text(row, site);
        var when = Text(row, runAt);
        var expected = Word(row, control, controls, out _);
        var columns = new OutcomeColumns(Word(row, result, results, out _), Word(row, controlLine, controlLines, out _), Word(row, testLine, testLines, out _));
        var observed = columns.Read(Fields[controlLine] >= 0 && Fields[testLine] >= 0, out var why, out var at);
        var lotText = Named(row, lot);
        var kitText = Named(row, kit);
        var operatorText = operatorTexts[Level(row, operatorColumn, operators, out _)];
        if (!place.IsEmpty) Recorded[site]++;
        var reading = when.IsEmpty ? DateReading.Unreadable : Moment(when, runAt, out _, out _, out _);
        column = place.IsEmpty || place.Length > LongestName ? site : when.IsEmpty || reading != DateReading.Read ? runAt : expected is not (0 or 1) ? control : at == 0 ? result : at == 1 ? controlLine : testLine;
        if (place.IsEmpty || when.IsEmpty) return Finding.MissingValue;
        if (place.Length > LongestName) return Finding.NameTooLong;
        if (reading != DateReading.Read) return NotRead(reading);
        if (expected is not (0 or 1)) return expected == Words.Blank ? Finding.MissingValue : Finding.UnknownResult;
        if (observed is not { } outcome) return why;
        DateParser.Read(when, Order(runAt), out var moment, TwoDigitYears);
        var key = new ControlCell(
            System.Text.Encoding.UTF8.GetString(place), lotText, kitText, new DateOnly(2000, 1, 1).AddDays(moment.Day),
            moment.DateOnly ? null : new TimeOnly(moment.Second / 3600, moment.Second / 60 % 60), operatorText, (ControlExpectation)expected, outcome, 0);
        cells[key] = cells.GetValueOrDefault(key) + 1;
        return null;
    }

    private string Named(RecordSplitter row, int column)
    {
        if (Fields[column] < 0) return Levels.None;
        var text = Text(row, column);
        if (text.IsEmpty) return Levels.None;
        if (text.Length > LongestName)
        {
            Findings.Add(Finding.NameTooLong, column, Here);
            return Levels.None;
        }

        Recorded[column]++;
        return System.Text.Encoding.UTF8.GetString(text);
    }
}
