using System.Globalization;
using System.Text;
using CsCheck;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Tests.Understanding;

public class DateParserTests
{
    [Theory]
    [InlineData("2026-01-05", "2026-01-05 00:00:00", true, null)]
    [InlineData("20260105", "2026-01-05 00:00:00", true, null)]
    [InlineData("2026-01-05T08:30", "2026-01-05 08:30:00", false, null)]
    [InlineData("2026-01-05 08:30:15", "2026-01-05 08:30:15", false, null)]
    [InlineData("2026-01-05t08:30:15.123456", "2026-01-05 08:30:15", false, null)]
    [InlineData("2026-01-05T08:30:15,5Z", "2026-01-05 08:30:15", false, 0)]
    [InlineData("2026-01-05T08:30z", "2026-01-05 08:30:00", false, 0)]
    [InlineData("2026-01-05T08:30+01:00", "2026-01-05 08:30:00", false, 60)]
    [InlineData("2026-01-05T08:30:00-0530", "2026-01-05 08:30:00", false, -330)]
    [InlineData("2026-01-05 08:30:00 +02", "2026-01-05 08:30:00", false, 120)]
    [InlineData("20260105T0830", "2026-01-05 08:30:00", false, null)]
    [InlineData("20260105T083015Z", "2026-01-05 08:30:15", false, 0)]
    [InlineData("2026-01-05T24:00", "2026-01-06 00:00:00", false, null)]
    [InlineData("2024-02-29", "2024-02-29 00:00:00", true, null)]
    [InlineData("2000-12-31", "2000-12-31 00:00:00", true, null)]
    public void ISO_8601_is_read_with_and_without_time_and_offset(string text, string local, bool dateOnly, int? offset)
    {
        DateParser.Read(Encoding.UTF8.GetBytes(text), null, out var moment).Should().Be(DateReading.Read);
        Local(moment).Should().Be(local);
        moment.DateOnly.Should().Be(dateOnly);
        moment.HasOffset.Should().Be(offset is not null);
        moment.OffsetMinutes.Should().Be((short)(offset ?? 0));
    }

    [Theory]
    [InlineData("")]
    [InlineData("yesterday")]
    [InlineData("2026-13-01")]
    [InlineData("2026-02-30")]
    [InlineData("2026-00-10")]
    [InlineData("2026-01-00")]
    [InlineData("2025-02-29")]
    [InlineData("1900-02-29")]
    [InlineData("2026-1-5")]
    [InlineData("2026-01-05T25:00")]
    [InlineData("2026-01-05T08:60")]
    [InlineData("2026-01-05T08")]
    [InlineData("2026-01-05X08:30")]
    [InlineData("2026-01-05T08:30+")]
    [InlineData("2026-01-05T08:30+1:00")]
    [InlineData("2026-01-05T08:30 CET")]
    [InlineData("2026-01-05T24:30")]
    [InlineData("46027")]
    [InlineData("32/01/2026")]
    [InlineData("13/13/2026")]
    public void What_is_no_date_is_not_read(string text) =>
        DateParser.Read(Encoding.UTF8.GetBytes(text), null, out _).Should().Be(DateReading.Unreadable);

    [Theory]
    [InlineData("5.1.26", "2026-01-05 00:00:00")]
    [InlineData("05/01/00 08:30", "2000-01-05 08:30:00")]
    [InlineData("31-12-99", "2099-12-31 00:00:00")]
    public void A_year_of_two_figures_is_read_only_where_that_is_stated(string text, string expected)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        DateParser.Read(bytes, DateOrder.DayFirst, out _).Should().Be(DateReading.TwoDigitYear);
        DateParser.Read(bytes, DateOrder.DayFirst, out var moment, twoDigitYears: true).Should().Be(DateReading.Read);
        new DateTime(2000, 1, 1).AddDays(moment.Day).AddSeconds(moment.Second).ToString("yyyy-MM-dd HH:mm:ss", System.Globalization.CultureInfo.InvariantCulture)
            .Should().Be(expected);
    }

    [Theory]
    [InlineData("05/01/2026", DateOrder.DayFirst, "2026-01-05 00:00:00")]
    [InlineData("05/01/2026", DateOrder.MonthFirst, "2026-05-01 00:00:00")]
    [InlineData("5.1.2026 14:30", DateOrder.DayFirst, "2026-01-05 14:30:00")]
    [InlineData("1/5/2026 2:30 PM", DateOrder.MonthFirst, "2026-01-05 14:30:00")]
    [InlineData("1/5/2026 12:05:09 am", DateOrder.MonthFirst, "2026-01-05 00:05:09")]
    [InlineData("1/5/2026 12:05 PM", DateOrder.MonthFirst, "2026-01-05 12:05:00")]
    [InlineData("31-12-2025", DateOrder.DayFirst, "2025-12-31 00:00:00")]
    [InlineData("2026-01-05", DateOrder.DayFirst, "2026-01-05 00:00:00")]
    public void A_settled_order_reads_dates_in_figures(string text, DateOrder order, string local)
    {
        DateParser.Read(Encoding.UTF8.GetBytes(text), order, out var moment).Should().Be(DateReading.Read);
        Local(moment).Should().Be(local);
    }

    [Theory]
    [InlineData("05/01/2026", null, DateReading.OrderUnknown)]
    [InlineData("31/01/2026", null, DateReading.OrderUnknown)]
    [InlineData("05/05/2026", null, DateReading.Read)]
    [InlineData("05/01/2026", DateOrder.Iso, DateReading.Unreadable)]
    [InlineData("31/01/2026", DateOrder.MonthFirst, DateReading.Unreadable)]
    [InlineData("01/31/2026", DateOrder.DayFirst, DateReading.Unreadable)]
    [InlineData("05/01-2026", DateOrder.DayFirst, DateReading.Unreadable)]
    public void Without_a_settled_order_figures_are_never_guessed(string text, DateOrder? order, object expected) =>
        DateParser.Read(Encoding.UTF8.GetBytes(text), order, out _).Should().Be((DateReading)expected);

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void Every_day_and_second_is_read_as_the_framework_writes_it(string culture)
    {
        // The framework's calendar is the reference: an independent implementation.
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Gen.DateTime[new DateTime(1900, 1, 1), new DateTime(2199, 12, 31)].Sample(time =>
            {
                var text = time.ToString("yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture);
                return DateParser.Read(Encoding.UTF8.GetBytes(text), null, out var moment) == DateReading.Read
                    && Local(moment) == time.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
            });
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Any_bytes_are_read_or_not_but_never_throw() =>
        Gen.Byte[0x20, 0x7E].Array[0, 30].Sample(bytes =>
        {
            foreach (DateOrder? order in new DateOrder?[] { null, DateOrder.DayFirst, DateOrder.MonthFirst, DateOrder.Iso })
            {
                DateParser.Read(bytes, order, out _).Should().BeOneOf(DateReading.Read, DateReading.Unreadable, DateReading.OrderUnknown);
            }
        });

    private static string Local(WrittenMoment moment) =>
        new DateTime(2000, 1, 1).AddDays(moment.Day).AddSeconds(moment.Second).ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
}
