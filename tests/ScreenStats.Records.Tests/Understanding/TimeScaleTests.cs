using System.Text;
using CsCheck;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Tests.Understanding;

public class TimeScaleTests
{
    private static readonly TimeScale Vienna = new(TimeZoneInfo.FindSystemTimeZoneById("Europe/Vienna"));

    [Theory]
    // Central European Time is UTC+1; summer time in 2026 from 29 March 01:00 UTC to 25 October 01:00 UTC
    // (Directive 2000/84/EC, articles 2 and 3: last Sundays of March and October).
    [InlineData("2026-01-05T08:30", 60)]
    [InlineData("2026-07-05T08:30", 120)]
    [InlineData("2026-03-29T01:59", 60)]
    [InlineData("2026-03-29T03:00", 120)]
    [InlineData("2026-10-25T01:59", 120)]
    [InlineData("2026-10-25T03:00", 60)]
    // Stated rules: a skipped time has the offset before the change; a time shown twice is the first of the two.
    [InlineData("2026-03-29T02:30", 60)]
    [InlineData("2026-10-25T02:30", 120)]
    // A written offset goes before the zone's.
    [InlineData("2026-01-05T08:30-05:00", -300)]
    [InlineData("2026-01-05T08:30Z", 0)]
    public void The_zone_gives_the_offset_unless_one_is_written(string text, int minutes)
    {
        DateParser.Read(Encoding.UTF8.GetBytes(text), null, out var moment);
        var instant = Vienna.Instant(moment, out var offset);
        offset.Should().Be((short)minutes);
        (instant + (offset * 60L)).Should().Be((moment.Day * 86_400L) + moment.Second);
    }

    [Fact]
    public void Without_a_zone_the_scale_is_local_time()
    {
        DateParser.Read("2000-01-02T00:00:05"u8, null, out var moment);
        new TimeScale(null).Instant(moment, out var offset).Should().Be(86_405);
        offset.Should().Be(0);
    }

    [Theory]
    [InlineData("America/St_Johns")]
    [InlineData("Australia/Lord_Howe")]
    [InlineData("Asia/Kathmandu")]
    [InlineData("Africa/Casablanca")]
    public void Every_valid_unambiguous_time_has_the_offset_that_the_framework_gives(string name)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(name);
        var scale = new TimeScale(zone);
        Gen.Select(Gen.Int[-3000, 15000], Gen.Int[0, 86_399]).Sample((day, second) =>
        {
            var local = new DateTime(2000, 1, 1).AddDays(day).AddSeconds(second);
            if (zone.IsInvalidTime(local) || zone.IsAmbiguousTime(local)) return;
            scale.Instant(new WrittenMoment { Day = day, Second = second }, out var offset);
            offset.Should().Be((short)Math.Round(zone.GetUtcOffset(local).TotalMinutes));
        });
    }
}
