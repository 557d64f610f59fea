using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using static ScreenStats.Counting.Tests.Rules.When;

namespace ScreenStats.Counting.Tests.Rules;

public class PersonLinkageTests
{
    private static PersonLinkage Link(RunEvent[] runs, SpecimenEvent[] specimens, PolicySettings? policy = null)
    {
        var linkage = new PersonLinkage(policy ?? new(), At("12-31 00:00").Instant, 48 * 3600);
        linkage.Link(runs, specimens);
        return linkage;
    }

    [Fact]
    public void An_audit_verifies_the_latest_negative_run_in_its_window_only()
    {
        var runs = new[] { Run("03-02 08:00", Outcome.Negative), Run("03-02 20:00", Outcome.Negative), Run("03-03 07:00", Outcome.Invalid) };
        Link(runs, [Positive("03-03 08:00", SpecimenReason.Audit)]).FollowUps.ToArray().Should().Equal(FollowUp.None, FollowUp.Missed, FollowUp.None);
        Link(runs, [Negative("03-02 19:00", SpecimenReason.Audit)]).FollowUps.ToArray().Should().Equal(FollowUp.None, FollowUp.Agreed, FollowUp.None);
        Link(runs, [Negative("03-03 20:00", SpecimenReason.Audit)]).FollowUps.ToArray().Should().Equal(FollowUp.None, FollowUp.Agreed, FollowUp.None);
        var late = Link(runs, [Negative("03-03 20:00:01", SpecimenReason.Audit)]);
        late.FollowUps.ToArray().Should().OnlyContain(followUp => followUp == FollowUp.None);
        late.AuditsWithRun.Should().Be(0);
    }

    [Fact]
    public void A_specimen_that_several_runs_rest_on_counts_once_and_one_that_settles_none_not_at_all()
    {
        var runs = new[] { Run("03-02 08:00"), Run("03-02 20:00"), Run("03-09 08:00", Outcome.Negative) };
        Link(runs, [Positive("03-03 08:00"), Negative("03-09 10:00", SpecimenReason.Audit), Negative("03-20 10:00")]).SettlingSpecimens.Should().Be(2);
        Link(runs, [Negative("03-20 10:00")]).SettlingSpecimens.Should().Be(0);
        Link(runs, []).SettlingSpecimens.Should().Be(0);
    }

    [Fact]
    public void A_specimen_for_another_reason_never_verifies_a_negative_run()
    {
        var linkage = Link([Run("03-02 08:00", Outcome.Negative)], [Positive("03-02 09:00", SpecimenReason.Other)]);
        linkage.FollowUps.ToArray().Should().Equal(FollowUp.None);
        linkage.IntervalCases.ToArray().Should().Equal(new FoundIntervalCase(0, 0));
    }

    [Fact]
    public void A_positive_specimen_after_a_negative_run_is_an_interval_case_by_days()
    {
        Link([Run("03-02 08:00", Outcome.Negative), Run("03-05 20:00", Outcome.Negative)], [Positive("03-05 09:00")])
            .IntervalCases.ToArray().Should().Equal(new FoundIntervalCase(0, 3));
        Link([Run("03-02", Outcome.Negative), Run("03-05", Outcome.Negative)], [Positive("03-05")])
            .IntervalCases.ToArray().Should().Equal(new FoundIntervalCase(1, 0));
    }

    [Fact]
    public void No_interval_case_where_the_latest_run_was_not_negative_or_there_was_none()
    {
        Link([Run("03-02 08:00", Outcome.Negative), Run("03-02 09:00", Outcome.Invalid)], [Positive("03-05 09:00")]).IntervalCases.ToArray().Should().BeEmpty();
        Link([Run("03-05 10:00", Outcome.Negative)], [Positive("03-05 09:00")]).IntervalCases.ToArray().Should().BeEmpty();
    }

    [Fact]
    public void A_specimen_that_settles_a_run_shortly_after_it_is_no_interval_case()
    {
        var linkage = Link([Run("03-02 08:00", Outcome.Negative), Run("03-05 10:00")], [Positive("03-05 09:00")]);
        linkage.IntervalCases.ToArray().Should().BeEmpty();
        linkage.Cases.ToArray().Should().Equal(false, true);
    }

    [Fact]
    public void One_infection_is_one_interval_case() =>
        Link([Run("03-02 08:00", Outcome.Negative), Run("03-06 08:00", Outcome.Negative)], [Positive("03-04 09:00"), Positive("03-08 09:00")])
            .IntervalCases.ToArray().Should().Equal(new FoundIntervalCase(0, 2));

    [Fact]
    public void Two_confirmed_runs_of_one_follow_up_are_one_case() =>
        Link([Run("03-02 08:00", Outcome.Inconclusive), Run("03-02 08:20"), Run("03-03 08:00")], [Positive("03-03 10:00")])
            .Cases.ToArray().Should().Equal(true, false, false);

    [Fact]
    public void Specimens_collected_shortly_before_a_run_are_its_own_follow_up() =>
        Link([Run("03-02 08:00")], [Positive("03-02 06:30"), Positive("03-02 07:00")]).Cases.ToArray().Should().Equal(true);

    [Theory]
    [InlineData("01-01 09:00", "04-01 08:00", false)]
    [InlineData("01-01 09:00", "04-02 08:00", true)]
    public void A_positive_of_90_days_before_belongs_to_the_same_episode(string earlier, string run, bool isCase) =>
        Link([Run(run)], [Positive(earlier, SpecimenReason.Other), Positive("04-02 09:00")]).Cases.ToArray().Should().Equal(isCase);

    [Fact]
    public void A_second_infection_after_the_episode_is_a_second_case() =>
        Link([Run("01-01 08:00"), Run("01-10 08:00"), Run("06-01 08:00")], [Positive("01-01 09:00"), Positive("01-10 09:00"), Positive("06-01 09:00")])
            .Cases.ToArray().Should().Equal(true, false, true);

    [Fact]
    public void A_refuted_run_is_no_case() =>
        Link([Run("03-02 08:00"), Run("03-06 08:00")], [Negative("03-02 09:00"), Positive("03-06 09:00")]).Cases.ToArray().Should().Equal(false, true);

    [Fact]
    public void Isolation_is_judged_only_where_its_length_is_stated()
    {
        RunEvent[] runs = [Run("03-02 08:00"), Run("03-05 08:00", Outcome.Negative)];
        SpecimenEvent[] specimens = [Positive("03-02 09:00")];
        Link(runs, specimens).Isolated.ToArray().Should().Equal(false, false);
        Link(runs, specimens, new() { IsolationDays = 5 }).Isolated.ToArray().Should().Equal(false, true);
    }

    [Fact]
    public void Nothing_of_one_person_is_left_for_the_next()
    {
        var linkage = Link([Run("03-02 08:00"), Run("03-03 08:00", Outcome.Negative)], [Positive("03-02 09:00"), Negative("03-03 09:00", SpecimenReason.Audit)]);
        linkage.Link([Run("03-02 08:00", Outcome.Negative)], []);
        linkage.FollowUps.ToArray().Should().Equal(FollowUp.None);
        linkage.Settling.ToArray().Should().Equal(-1);
        linkage.Cases.ToArray().Should().Equal(false);
        linkage.AuditsWithRun.Should().Be(0);
    }
}
