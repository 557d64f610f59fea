using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;
using static ScreenStats.Counting.Tests.Rules.When;

namespace ScreenStats.Counting.Tests.Rules;

public class RetestRuleTests
{
    [Fact]
    public void The_first_positive_run_of_the_day_and_the_next_valid_one_are_a_pair()
    {
        Find([Run("03-02 08:00"), Run("03-02 08:20", Outcome.Negative)]).Should().Be((0, 1));
        Find([Run("03-02 07:00", Outcome.Negative), Run("03-02 08:00"), Run("03-02 08:20"), Run("03-02 08:40", Outcome.Negative)]).Should().Be((1, 2));
        Find([Run("03-02 08:00"), Run("03-02 08:20", Outcome.Invalid), Run("03-02 08:40", Outcome.Negative)]).Should().Be((0, 2));
    }

    [Fact]
    public void Where_no_later_run_is_valid_the_next_one_stands_for_the_retest() =>
        Find([Run("03-02 08:00"), Run("03-02 08:20", Outcome.Inconclusive), Run("03-02 08:40", Outcome.Invalid)]).Should().Be((0, 1));

    [Fact]
    public void Without_a_positive_run_or_a_later_one_there_is_no_pair()
    {
        Find([]).Should().BeNull();
        Find([Run("03-02 08:00")]).Should().BeNull();
        Find([Run("03-02 08:00", Outcome.Negative), Run("03-02 08:20")]).Should().BeNull();
        Find([Run("03-02 08:00", Outcome.Inconclusive), Run("03-02 08:20", Outcome.Negative)]).Should().BeNull();
    }

    [Fact]
    public void A_run_after_a_specimen_is_no_retest()
    {
        RunEvent[] day = [Run("03-02 08:00"), Run("03-02 08:20", Outcome.Negative)];
        Find(day, Positive("03-02 08:19")).Should().BeNull();
        Find(day, Negative("03-02 08:00")).Should().BeNull();
        Find(day, Positive("03-02 08:20")).Should().Be((0, 1), "the specimen was not before the retest");
        Find(day, Positive("03-02 07:59"), Negative("03-02 09:00")).Should().Be((0, 1), "the specimens came before the positive run and after the retest");
        Find([Run("03-02 08:00"), Run("03-02 08:20", Outcome.Invalid), Run("03-02 08:40")], Positive("03-02 08:30")).Should().Be((0, 1), "the valid one came after the specimen");
    }

    [Fact]
    public void What_has_only_a_date_is_in_no_known_order()
    {
        Find([Run("03-02"), Run("03-02", Outcome.Negative)]).Should().BeNull();
        Find([Run("03-02 08:00"), Run("03-02 08:20"), Run("03-02", Outcome.Negative)]).Should().BeNull();
        Find([Run("03-02 08:00"), Run("03-02 08:20")], Positive("03-02")).Should().Be((0, 1), "a specimen with only a date rules nothing out");
    }

    private static (int, int)? Find(RunEvent[] day, params SpecimenEvent[] specimens) =>
        RetestRule.Find(day, specimens, out var positive, out var retest) ? (positive, retest) : null;
}
