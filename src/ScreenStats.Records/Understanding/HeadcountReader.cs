using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>
/// Understands the rows of a headcount export. Rows of one site and day (or week) are added up; of several days of a week
/// the largest counts, since the same people stand in each.
/// </summary>
internal sealed class HeadcountReader : RowReader
{
    private readonly int site, week, date, eligible;
    private readonly Dictionary<(string Site, DateOnly Day), long> cells = [];

    public HeadcountReader(TimeScale scale, bool keepText)
        : base(ExportKind.Headcount, scale, keepText)
    {
        site = ColumnOf(CanonicalColumns.Site);
        week = ColumnOf(CanonicalColumns.Week);
        date = ColumnOf(CanonicalColumns.Date);
        eligible = ColumnOf(CanonicalColumns.Eligible);
    }

    public IEnumerable<HeadcountCell> Cells => cells
        .GroupBy(cell => (cell.Key.Site, Week: Monday(cell.Key.Day)))
        .Select(week => new HeadcountCell(week.Key.Site, week.Key.Week, week.Max(cell => cell.Value)));

    public override void EndBlock(uint firstRecord)
    {
    }

    public override IEnumerable<(int Column, TextCodes Codes, Words Words)> WordsMet() => [];

    protected override Finding? Understand(RecordSplitter row, uint record, out int column)
    {
        var place = Text(row, site);
        column = site;
        if (place.IsEmpty) return Finding.MissingValue;
        if (place.Length > LongestName) return Finding.NameTooLong;
        Recorded[site]++;
        column = week;
        var when = Fields[week] < 0 ? default : Text(row, week);
        DateOnly? day = null;
        if (!when.IsEmpty) day = IsoWeek(when);
        if (day is not null) Recorded[week]++;
        else
        {
            if (when.IsEmpty || Fields[date] >= 0)
            {
                when = Fields[date] < 0 ? default : Text(row, date);
                column = date;
            }

            if (when.IsEmpty)
            {
                column = Fields[week] < 0 ? date : week;
                return Finding.MissingValue;
            }

            if (Moment(when, column, out var moment, out _, out _) is var reading and not DateReading.Read) return NotRead(reading);
            day = new DateOnly(2000, 1, 1).AddDays(moment.Day);
        }

        column = eligible;
        var number = Text(row, eligible);
        if (number.IsEmpty) return Finding.MissingValue;
        if (!long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var people) || people > 1_000_000_000) return Finding.UnreadableNumber;
        Recorded[eligible]++;
        var key = (System.Text.Encoding.UTF8.GetString(place), day.Value);
        cells[key] = cells.GetValueOrDefault(key) + people;
        return null;
    }

    private static DateOnly Monday(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));

    /// <summary>Monday of a week written as 2026-W05 or 2026W05; null where it is none.</summary>
    internal static DateOnly? IsoWeek(ReadOnlySpan<byte> text)
    {
        if (text.Length is not (7 or 8) || !int.TryParse(text[..4], NumberStyles.None, CultureInfo.InvariantCulture, out var year)) return null;
        var rest = text[4..];
        if (rest[0] == (byte)'-') rest = rest[1..];
        if (rest.Length != 3 || (rest[0] | 0x20) != 'w' || !int.TryParse(rest[1..], NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return null;
        if (year is < 1970 or > 2099 || number < 1 || number > ISOWeek.GetWeeksInYear(year)) return null;
        return DateOnly.FromDateTime(ISOWeek.ToDateTime(year, number, DayOfWeek.Monday));
    }
}
