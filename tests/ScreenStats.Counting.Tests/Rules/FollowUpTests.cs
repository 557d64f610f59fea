using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using static ScreenStats.Counting.Tests.Rules.When;

namespace ScreenStats.Counting.Tests.Rules;

public class FollowUpTests
{
    private static readonly FollowUpWindow Window = FollowUpWindow.OfFollowUp(new PolicySettings());

    [Theory]
    [InlineData("03-04 08:00", "03-04 06:00", true)]
    [InlineData("03-04 08:00", "03-04 05:59:59", false)]
    [InlineData("03-04 08:00", "03-07 08:00", true)]
    [InlineData("03-04 08:00", "03-07 08:00:01", false)]
    [InlineData("03-04", "03-03 00:00", true)]
    [InlineData("03-04", "03-02 23:59", false)]
    [InlineData("03-04 08:00", "03-07", true)]
    [InlineData("03-04 08:00", "03-08", false)]
    [InlineData("03-04", "03-07", true)]
    public void Both_ends_of_the_window_belong_to_it(string run, string specimen, bool holds)
    {
        Window.Holds(At(run), At(specimen)).Should().Be(holds);
        FollowUpRule.Settling(At(run), Window, [Positive(specimen)]).Should().Be(holds ? 0 : -1);
    }

    [Fact]
    public void Whole_days_are_local_days()
    {
        var run = At("03-04", offsetHours: -10);
        Window.Holds(run, At("03-07 23:59", offsetHours: 14)).Should().BeTrue();
        Window.Holds(run, At("03-08 00:01", offsetHours: 14)).Should().BeFalse();
    }

    [Theory]
    [InlineData(-1, 72)]
    [InlineData(2, double.NaN)]
    [InlineData(2, double.PositiveInfinity)]
    public void Hours_must_be_possible(double before, double within)
    {
        var act = () => new FollowUpWindow(before, within);
        act.Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void The_first_conclusive_specimen_settles_a_run()
    {
        FollowUpRule.Settling(At("03-02 08:00"), Window, [Indeterminate("03-02 09:00"), Negative("03-02 10:00"), Positive("03-02 11:00")]).Should().Be(1);
        FollowUpRule.Settling(At("03-02 08:00"), Window, [Indeterminate("03-02 09:00"), Indeterminate("03-02 10:00")]).Should().Be(0);
        FollowUpRule.Settling(At("03-02 08:00"), Window, []).Should().Be(-1);
    }

    [Fact]
    public void Of_two_at_the_same_time_the_positive_counts()
    {
        FollowUpRule.Settling(At("03-02 08:00"), Window, [Negative("03-02 10:00"), Positive("03-02 10:00")]).Should().Be(1);
        FollowUpRule.Settling(At("03-02 08:00"), Window, [Positive("03-02 10:00"), Negative("03-02 10:00")]).Should().Be(0);
        FollowUpRule.Settling(At("03-02"), Window, [Negative("03-02"), Positive("03-02")]).Should().Be(1);
    }

    [Fact]
    public void Where_one_has_only_a_date_the_same_day_is_the_same_time() =>
        FollowUpRule.Settling(At("03-02 08:00"), Window, [Negative("03-02"), Positive("03-02 16:00")]).Should().Be(1);

    [Fact]
    public void A_run_stays_pending_until_its_window_and_the_reporting_lag_are_over()
    {
        FollowUp Of(string run, string asOf) => FollowUpRule.Status(At(run), Window, null, At(asOf).Instant, 48 * 3600);
        Of("03-02 08:00", "03-07 07:59:59").Should().Be(FollowUp.Pending);
        Of("03-02 08:00", "03-07 08:00").Should().Be(FollowUp.Unverified);
        Of("03-02", "03-07 23:59").Should().Be(FollowUp.Pending);
        Of("03-02", "03-07 23:59:59").Should().Be(FollowUp.Unverified);
        FollowUpRule.Status(At("03-02"), Window, null, null, 48 * 3600).Should().Be(FollowUp.Unverified);
    }

    [Fact]
    public void The_specimen_says_what_became_of_the_run()
    {
        FollowUpRule.Status(At("03-02"), Window, Positive("03-02"), null, 0).Should().Be(FollowUp.Confirmed);
        FollowUpRule.Status(At("03-02"), Window, Negative("03-02"), null, 0).Should().Be(FollowUp.Refuted);
        FollowUpRule.Status(At("03-02"), Window, Indeterminate("03-02"), null, 0).Should().Be(FollowUp.Unresolved);
        AuditRule.Status(ConfirmatoryResult.Positive).Should().Be(FollowUp.Missed);
        AuditRule.Status(ConfirmatoryResult.Negative).Should().Be(FollowUp.Agreed);
        AuditRule.Status(ConfirmatoryResult.Rejected).Should().Be(FollowUp.Unresolved);
    }
}
