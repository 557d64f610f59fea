using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using static ScreenStats.Counting.Tests.Rules.When;

namespace ScreenStats.Counting.Tests.Rules;

public class SimpleRuleTests
{
    [Theory]
    [InlineData(true, false, Outcome.Negative)]
    [InlineData(true, true, Outcome.Positive)]
    [InlineData(false, true, Outcome.Inconclusive)]
    [InlineData(false, false, Outcome.Invalid)]
    public void The_lines_seen_make_the_outcome(bool control, bool test, Outcome outcome) => OutcomeRule.FromLines(control, test).Should().Be(outcome);

    [Fact]
    public void Valid_tests_and_unusable_runs_are_all_runs()
    {
        foreach (var outcome in Enum.GetValues<Outcome>()) outcome.IsValidTest().Should().Be(!outcome.IsUnusable());
        Outcome.Positive.IsValidTest().Should().BeTrue();
        Outcome.Inconclusive.IsUnusable().Should().BeTrue();
    }

    [Fact]
    public void Follow_up_is_due_by_policy_and_never_for_negative_and_invalid_runs()
    {
        var all = new PolicySettings { FollowUp = [Outcome.Positive, Outcome.Inconclusive, Outcome.Negative, Outcome.Invalid] };
        Enum.GetValues<Outcome>().Where(outcome => FollowUpRule.IsDue(outcome, all)).Should().Equal(Outcome.Positive, Outcome.Inconclusive);
        Enum.GetValues<Outcome>().Where(outcome => FollowUpRule.IsDue(outcome, new() { FollowUp = [Outcome.Positive] })).Should().Equal(Outcome.Positive);
    }

    [Theory]
    [InlineData(ControlExpectation.Positive, true, true, LedgerEntry.ControlRun)]
    [InlineData(null, true, true, LedgerEntry.KeptOutSymptomatic)]
    [InlineData(null, false, true, LedgerEntry.KeptOutExposed)]
    [InlineData(null, false, false, LedgerEntry.Counted)]
    public void The_first_entry_that_applies_counts(ControlExpectation? control, bool symptomatic, bool exposed, LedgerEntry entry) =>
        LedgerRule.Entry(control, symptomatic, exposed).Should().Be(entry);

    [Fact]
    public void Without_screen_id_and_time_of_day_equal_rows_are_no_proof_of_a_duplicate()
    {
        DuplicateRule.IsProof(hasScreenId: false, hasTimeOfDay: false).Should().BeFalse();
        DuplicateRule.IsProof(hasScreenId: true, hasTimeOfDay: false).Should().BeTrue();
        DuplicateRule.IsProof(hasScreenId: false, hasTimeOfDay: true).Should().BeTrue();
    }

    [Theory]
    [InlineData("A1", "A*", true)]
    [InlineData("A", "A*", true)]
    [InlineData("a1", "A*", false)]
    [InlineData("A12", "A?", false)]
    [InlineData("A12", "A?2", true)]
    [InlineData("abcbcd", "a*bcd", true)]
    [InlineData("abcbce", "a*bcd", false)]
    [InlineData("", "*", true)]
    [InlineData("", "?", false)]
    public void A_pattern_fits_the_whole_text(string text, string pattern, bool fits) => DeviceRule.Fits(text, pattern).Should().Be(fits);

    [Fact]
    public void A_lot_belongs_to_the_first_device_that_claims_it_else_to_the_one_without_patterns()
    {
        System.Collections.Immutable.ImmutableArray<ScreenSettings> screens = [
            new() { Name = "rest" }, new() { Name = "first", Lots = ["A*"] }, new() { Name = "second", Lots = ["A1", "B?"] }];
        DeviceRule.Of("A1", screens)!.Name.Should().Be("first");
        DeviceRule.Of("B2", screens)!.Name.Should().Be("second");
        DeviceRule.Of("C", screens)!.Name.Should().Be("rest");
        DeviceRule.Of(Levels.None, screens)!.Name.Should().Be("rest");
        DeviceRule.Of("C", screens.RemoveAt(0)).Should().BeNull();
        DeviceRule.Of(Levels.None, [new() { Lots = ["*"] }]).Should().BeNull();
    }

    [Fact]
    public void A_lot_may_be_used_on_its_last_day()
    {
        var last = new DateOnly(2026, 3, 2);
        ConductRule.IsExpired(last, last).Should().BeFalse();
        ConductRule.IsExpired(last.AddDays(1), last).Should().BeTrue();
        ConductRule.IsExpired(last, null).Should().BeFalse();
    }

    [Theory]
    [InlineData(9, true)]
    [InlineData(10, false)]
    [InlineData(20, false)]
    [InlineData(21, true)]
    [InlineData(null, false)]
    public void Both_ends_of_the_reading_window_are_allowed(int? minutes, bool outside)
    {
        ConductRule.IsReadOutside(minutes, 10, 20).Should().Be(outside);
        ConductRule.IsReadOutside(minutes, null, null).Should().BeFalse();
    }

    [Fact]
    public void Only_runs_beyond_what_a_kit_holds_are_too_many()
    {
        ConductRule.BeyondKit(43, 40).Should().Be(3);
        ConductRule.BeyondKit(40, 40).Should().Be(0);
        ConductRule.BeyondKit(1, 40).Should().Be(0);
        ConductRule.BeyondKit(43, null).Should().Be(0);
    }

    [Theory]
    [InlineData("03-02 08:00", "03-02 08:00", false)]
    [InlineData("03-02 08:00:01", "03-02 08:00", true)]
    [InlineData("03-04 08:00", "03-02 08:00", true)]
    [InlineData("03-04 08:00:01", "03-02 08:00", false)]
    [InlineData("03-02", "03-02 08:00", false)]
    [InlineData("03-03", "03-02 08:00", true)]
    [InlineData("03-04 23:00", "03-02", true)]
    [InlineData("03-05 00:00", "03-02", false)]
    public void Isolation_runs_from_the_specimen_for_two_days(string run, string positive, bool within)
    {
        ConductRule.IsWithinIsolation(At(run), At(positive), 2).Should().Be(within);
        ConductRule.IsWithinIsolation(At(run), [At("01-01 08:00"), At(positive), At("09-01 08:00")], 2).Should().Be(within);
    }

    [Fact]
    public void The_lag_is_the_value_at_rank_95_of_100()
    {
        ReportingLag.NearestRank([.. Enumerable.Range(1, 100).Select(value => (long)value).Reverse()]).Should().Be(95);
        ReportingLag.NearestRank([.. Enumerable.Range(1, 20).Select(value => (long)value)]).Should().Be(19);
        ReportingLag.NearestRank([.. Enumerable.Range(1, 21).Select(value => (long)value)]).Should().Be(20);
        ReportingLag.NearestRank([7]).Should().Be(7);
        ReportingLag.NearestRank([]).Should().BeNull();
        ReportingLag.Seconds(At("03-02 08:00"), At("03-02 20:00")).Should().Be(12 * 3600);
        ReportingLag.Seconds(At("03-02 23:00"), At("03-03")).Should().Be(86_400);
    }

    [Fact]
    public void A_moment_knows_its_local_day()
    {
        At("03-02 23:30", offsetHours: -5).Day.Should().Be(new DateOnly(2026, 3, 2));
        At("03-02 00:30", offsetHours: 14).Day.Should().Be(new DateOnly(2026, 3, 2));
        Moment.At(new DateTime(1999, 12, 31, 23, 59, 59)).DayNumber.Should().Be(-1);
        At("03-02 08:00").Local.Should().Be(new DateTime(2026, 3, 2, 8, 0, 0));
        new Moment(At("03-02").EndOfDay, 0, false).Local.Should().Be(new DateTime(2026, 3, 2, 23, 59, 59));
        At("03-02 08:00").MinutesTo(At("03-02 07:59:30")).Should().Be(-1);
        At("03-02 08:00").MinutesTo(At("03-04")).Should().Be(2880);
    }

    [Fact]
    public void With_times_of_day_a_run_is_repeated_by_a_later_one_of_the_day()
    {
        var done = new bool[3];
        RepeatRule.DueAndDone([Run("03-02 08:00", Outcome.Invalid), Run("03-02 08:10", Outcome.Inconclusive), Run("03-02 08:20", Outcome.Negative)], done).Should().Be(2);
        done.Should().Equal(true, true, false);
        RepeatRule.DueAndDone([Run("03-02 08:00", Outcome.Negative), Run("03-02 08:10", Outcome.Invalid)], done).Should().Be(1);
        done[..2].Should().Equal(false, false);
        RepeatRule.DueAndDone([Run("03-02 08:00", Outcome.Invalid), Run("03-02 08:10", Outcome.Invalid)], done).Should().Be(2);
        done[..2].Should().Equal(true, false);
    }

    [Fact]
    public void Without_times_of_day_an_unusable_and_a_usable_run_are_one_repeat_done()
    {
        var done = new bool[3];
        RepeatRule.DueAndDone([Run("03-02", Outcome.Negative), Run("03-02", Outcome.Invalid), Run("03-02", Outcome.Invalid)], done).Should().Be(2);
        done.Should().Equal(false, true, false);
        RepeatRule.DueAndDone([Run("03-02", Outcome.Invalid), Run("03-02", Outcome.Inconclusive)], done).Should().Be(2);
        done[..2].Should().Equal(false, false);
        RepeatRule.DueAndDone([Run("03-02", Outcome.Invalid), Run("03-02 08:00", Outcome.Negative)], done).Should().Be(1);
        done[..2].Should().Equal(true, false);
        RepeatRule.DueAndDone([Run("03-02", Outcome.Negative)], done).Should().Be(0);
    }
}
