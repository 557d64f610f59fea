using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Controls;

namespace ScreenStats.Evaluation.Tests.Controls;

public class ControlBracketsTests
{
    private static readonly DateOnly Monday = new(2026, 1, 5);

    [Fact]
    public void A_failed_control_brackets_the_runs_of_its_site_and_lot_from_the_last_passed_day_to_the_next()
    {
        var found = ControlBrackets.Of(
            [Control(0, 6, Outcome.Positive), Control(2, 6, Outcome.Positive), Control(3, 6, Outcome.Negative), Control(5, 6, Outcome.Positive), Control(7, 6, Outcome.Positive)],
            [
                Screen(1, Outcome.Negative, 10), Screen(2, Outcome.Negative, 20), Screen(3, Outcome.Positive, 3), Screen(4, Outcome.Invalid, 4), Screen(5, Outcome.Negative, 5),
                Screen(6, Outcome.Negative, 60), Screen(3, Outcome.Negative, 100, lot: "L-2"), Screen(3, Outcome.Negative, 100, site: "South"),
            ]).Single();

        (found.Day, found.LastPassedDay, found.NextPassedDay).Should().Be((Monday.AddDays(3), Monday.AddDays(2), Monday.AddDays(5)));
        (found.Runs, found.Positives, found.Negatives, found.IsOpen).Should().Be((32, 3, 25, false));
        (found.Expected, found.Observed, found.Key).Should().Be(("positive", "negative", "North|L-1|2026-01-08T06:00|k-1|op-1|positive|negative"));
    }

    [Fact]
    public void A_passed_negative_control_says_nothing_of_a_failed_positive_one()
    {
        var found = ControlBrackets.Of(
            [Control(1, 6, Outcome.Negative), Control(2, 6, Outcome.Negative, ControlExpectation.Negative)], [Screen(0, Outcome.Negative, 7), Screen(9, Outcome.Negative, 2)]).Single();

        (found.LastPassedDay, found.NextPassedDay, found.IsOpen, found.Runs).Should().Be((null, null, true, 9));
    }

    [Fact]
    public void Of_two_controls_of_a_day_without_times_neither_is_the_first()
    {
        ImmutableArray<ControlCell> dated = [Control(1, null, Outcome.Negative), Control(1, null, Outcome.Positive), Control(1, 7, Outcome.Positive)];
        ControlBrackets.Of(dated, []).Single().Should().Match<ControlBracket>(one => one.LastPassedDay == null && one.NextPassedDay == null && one.IsOpen);

        ImmutableArray<ControlCell> timed = [Control(1, 6, Outcome.Positive), Control(1, 7, Outcome.Negative), Control(1, 8, Outcome.Positive), Control(1, 9, Outcome.Positive)];
        ControlBrackets.Of(timed, []).Single().Should().Match<ControlBracket>(one => one.LastPassedTime == new TimeOnly(6, 0) && one.NextPassedTime == new TimeOnly(8, 0));
    }

    [Fact]
    public void An_invalid_control_is_a_failed_one_whichever_it_should_have_been() =>
        ControlBrackets.Of([Control(1, 6, Outcome.Invalid, ControlExpectation.Negative), Control(1, 7, Outcome.Inconclusive)], [])
            .Select(one => (one.Expected, one.Observed)).Should().Equal(("negative", "invalid"), ("positive", "inconclusive"));

    [Fact]
    public void Without_a_failed_control_there_is_no_bracket() => ControlBrackets.Of([Control(1, 6, Outcome.Positive)], [Screen(1, Outcome.Negative, 1)]).Should().BeEmpty();

    private static ControlCell Control(int day, int? hour, Outcome observed, ControlExpectation expected = ControlExpectation.Positive) =>
        new("North", "L-1", "k-1", Monday.AddDays(day), hour is { } at ? new TimeOnly(at, 0) : null, "op-1", expected, observed, 1);

    private static ScreenCell Screen(int day, Outcome outcome, long runs, string site = "North", string lot = "L-1") =>
        new(site, lot, Monday.AddDays(day), Specimen.NotRecorded, CollectedBy.NotRecorded, outcome, FollowUp.None, runs);
}
