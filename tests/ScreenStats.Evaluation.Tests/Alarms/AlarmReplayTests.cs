using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Alarms;

public sealed class AlarmReplayTests
{
    private static readonly DateOnly Day = ProgramSketch.FirstDay;

    [Fact]
    public void One_invalid_run_of_ten_raises_no_alarm_wherever_and_whenever_it_is()
    {
        for (var day = 0; day < 60; day += 10)
        {
            var sketch = new ProgramSketch().Runs(Outcome.Negative, 500, site: "South", lot: "B2").Runs(Outcome.Invalid, 5, site: "South", lot: "B2")
                .Runs(Outcome.Negative, 100, site: "South", lot: "B2", day: 59).Runs(Outcome.Negative, 9, day: day).Runs(Outcome.Invalid, 1, day: day);

            AlarmReplay.Over(sketch.Tally(), new ProgramSettings()).SelectMany(found => found.Alarms).Should().BeEmpty();
        }
    }

    [Fact]
    public void A_rate_far_above_the_limit_raises_one_for_the_site_and_not_for_the_lot_that_it_uses()
    {
        var sketch = new ProgramSketch();
        for (var day = 0; day < 40; day++)
            sketch.Runs(Outcome.Negative, 60, day: day).Runs(Outcome.Negative, 80, site: "South", day: day).Runs(Outcome.Invalid, day >= 30 ? 20 : 0, site: "South", day: day).Runs(Outcome.Invalid, day % 3 == 0 ? 1 : 0, day: day);

        var alarms = AlarmReplay.Over(sketch.Tally(), new ProgramSettings()).SelectMany(found => found.Alarms).ToList();

        alarms.Select(alarm => alarm.Level).Distinct().Should().Equal("South");
        alarms.Where(alarm => alarm.Rule == AlarmRule.InvalidEvidence).Min(alarm => alarm.Since).Should().BeOnOrAfter(Day.AddDays(30)).And.BeOnOrBefore(Day.AddDays(36));
    }

    [Fact]
    public void An_acknowledged_alarm_calls_for_no_action_until_its_last_day()
    {
        var sketch = new ProgramSketch();
        for (var day = 0; day < 10; day++) sketch.Runs(Outcome.Negative, 80, day: day).Runs(Outcome.Invalid, 20, day: day);
        var settings = new ProgramSettings { Alarms = new AlarmSettings { Acknowledged = [new AcknowledgedAlarm("invalid-evidence", "North", Day.AddDays(5))] } };

        AlarmStatus Status(int day) => AlarmReplay.At(sketch.Tally(), settings, Day.AddDays(day))!.Alarms.Single(alarm => alarm.By == "site").Status;

        (Status(4), Status(5), Status(6)).Should().Be((AlarmStatus.Acknowledged, AlarmStatus.Acknowledged, AlarmStatus.Standing));
        AlarmReplay.At(sketch.Tally(), settings, Day.AddDays(30))!.Alarms.Should().OnlyContain(alarm => alarm.Status == AlarmStatus.OutOfUse && !alarm.NeedsAction);
    }

    [Fact]
    public void A_failed_control_stands_until_one_of_its_kind_passes_at_the_same_site_with_the_same_lot()
    {
        var tally = new ProgramSketch().Runs(Outcome.Negative, 20).Runs(Outcome.Negative, 20, day: 5).Tally();
        ControlCell Control(int day, int? hour, ControlExpectation expected, Outcome observed, string lot = "A1") =>
            new("North", lot, "k1", Day.AddDays(day), hour is { } some ? new TimeOnly(some, 0) : null, "op-1", expected, observed, 1);
        int Count(params ControlCell[] controls) => AlarmReplay.At(Tally.FromCells(tally.Cells with { Controls = [.. controls] }), new ProgramSettings(), Day.AddDays(5))!.Alarms
            .Count(alarm => alarm.Rule == AlarmRule.ControlFailed && alarm.NeedsAction);

        var failed = Control(1, 9, ControlExpectation.Positive, Outcome.Negative);
        Count(failed).Should().Be(1);
        Count(failed, Control(2, 9, ControlExpectation.Negative, Outcome.Negative)).Should().Be(1, "a strip that shows nothing passes every negative control");
        Count(failed, Control(2, 9, ControlExpectation.Positive, Outcome.Positive, "A2")).Should().Be(1);
        Count(failed, Control(1, 8, ControlExpectation.Positive, Outcome.Positive)).Should().Be(1, "it passed before");
        Count(failed, Control(1, null, ControlExpectation.Positive, Outcome.Positive)).Should().Be(1, "nobody knows which came first");
        Count(failed, Control(1, 10, ControlExpectation.Positive, Outcome.Positive)).Should().Be(0);
        Count(failed, Control(2, null, ControlExpectation.Positive, Outcome.Positive)).Should().Be(0);
    }

    [Fact]
    public void Controls_that_the_program_asks_for_are_missed_only_where_controls_are_recorded_at_all()
    {
        var tally = new ProgramSketch().Runs(Outcome.Negative, 20, person: "op-1").Runs(Outcome.Negative, 20, day: 5, lot: "A2", person: "op-2").Tally();
        var settings = new ProgramSettings { Policy = new PolicySettings { ControlsRequired = [.. Enum.GetValues<ControlTrigger>()] } };
        var control = new ControlCell("North", "A1", "k1", Day, null, "op-1", ControlExpectation.Positive, Outcome.Positive, 1);

        var without = AlarmReplay.At(tally, settings, Day.AddDays(5))!;
        var with = AlarmReplay.At(Tally.FromCells(tally.Cells with { Controls = [control] }), settings, Day.AddDays(5))!;

        without.Alarms.Should().BeEmpty();
        without.Notes.Should().Contain(note => note.Contains("No run of a control swab is recorded", StringComparison.Ordinal));
        with.Alarms.Select(alarm => (alarm.By, alarm.Level)).Should().BeEquivalentTo([("operator", "op-2"), ("site", "North"), ("site-and-lot", "North, A2")]);
        AlarmReplay.At(Tally.FromCells(tally.Cells with { Controls = [control] }), settings, Day)!.Alarms.Should().BeEmpty();
    }

    [Fact]
    public void Nothing_counted_is_no_day_to_look_at_and_a_day_before_the_first_says_so()
    {
        AlarmReplay.At(new ProgramSketch().Tally(), new ProgramSettings()).Should().BeNull();
        AlarmReplay.Over(new ProgramSketch().Tally(), new ProgramSettings()).Should().BeEmpty();
        AlarmReplay.At(new ProgramSketch().Runs(Outcome.Negative, 5).Tally(), new ProgramSettings(), Day.AddDays(-1))!.Notes.Should().Equal("No run was counted by then.");
    }

    [Fact]
    public void Without_the_days_of_reports_lots_are_not_judged_and_it_is_said() =>
        AlarmReplay.At(new ProgramSketch().Runs(Outcome.Negative, 50).Runs(Outcome.Positive, 3, FollowUp.Refuted).Tally(), new ProgramSettings())!.Notes
            .Should().Contain(note => note.Contains("not known when confirmatory results were reported", StringComparison.Ordinal));

    [Fact]
    public void The_answer_for_a_day_is_the_replays_entry_for_it()
    {
        var sketch = new ProgramSketch();
        for (var day = 0; day < 45; day++) sketch.Runs(Outcome.Negative, 90, day: day).Runs(Outcome.Invalid, day > 35 ? 15 : 1, day: day);
        var settings = new ProgramSettings();
        foreach (var found in AlarmReplay.Over(sketch.Tally(), settings))
            JsonSerializer.Serialize(AlarmReplay.At(sketch.Tally(), settings, found.AsOf)).Should().Be(JsonSerializer.Serialize(found));
    }
}
