using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Controls;

namespace ScreenStats.Evaluation.Tests.Controls;

public class ControlStartsTests
{
    private static readonly DateOnly Monday = new(2026, 1, 5);

    private static readonly ImmutableArray<ScreenCell> Screens =
        [Screen("North", "L-1", 0, 5), Screen("North", "L-1", 1, 6), Screen("North", "L-2", 3, 7), Screen("South", "L-1", 2, 8), Screen("South", Levels.None, 3, 9)];

    private static readonly ImmutableArray<OperatorCell> Operators = [Operated("op-1", "North", 0, 5), Operated("op-1", "South", 0, 2), Operated("op-2", "South", 2, 8), Operated(Levels.None, "South", 3, 9)];

    [Fact]
    public void A_lot_starts_at_each_site_with_a_control_of_that_site_and_lot_on_or_before_its_first_day()
    {
        var found = ControlStarts.Of(ControlTrigger.NewLot, [Control("North", "L-1", 0), Control("North", "L-2", 4), Control("North", "L-1", 2)], Screens, Operators);

        found.Select(start => (start.Level, start.Site, start.FirstDay, start.FirstControlDay, start.RunsWithoutControl, start.IsMissed, start.IsOpen)).Should().Equal(
            ("L-1", "North", Monday, Monday, 0, false, false),
            ("L-1", "South", Monday.AddDays(2), null, 8, true, true),
            ("L-2", "North", Monday.AddDays(3), Monday.AddDays(4), 7, true, false));
    }

    [Fact]
    public void A_failed_control_starts_nothing() =>
        ControlStarts.Of(ControlTrigger.NewSite, [Control("North", "L-1", 0) with { Observed = Outcome.Negative }, Control("South", "L-9", 1)], Screens, Operators)
            .Select(start => (start.Level, start.IsMissed, start.RunsWithoutControl)).Should().Equal(("North", true, 18), ("South", false, 0));

    [Fact]
    public void An_operator_starts_with_a_control_of_their_own_wherever_it_was_run() =>
        ControlStarts.Of(ControlTrigger.NewOperator, [Control("North", "L-1", 0, "op-2"), Control("South", "L-1", 1, "op-1")], Screens, Operators)
            .Select(start => (start.Level, start.Site, start.FirstDay, start.IsMissed, start.RunsWithoutControl)).Should().Equal(
                ("op-1", "North", Monday, true, 7), ("op-2", "South", Monday.AddDays(2), false, 0));

    [Fact]
    public void Daily_asks_for_a_control_on_every_day_on_which_a_site_screens() =>
        ControlStarts.Of(ControlTrigger.Daily, [Control("North", "L-9", 1), Control("South", "L-1", 3), Control("South", "L-1", 4)], Screens, Operators)
            .Select(start => (start.Level, start.FirstDay, start.IsMissed, start.RunsWithoutControl)).Should().Equal(
                ("North", Monday, true, 5), ("North", Monday.AddDays(1), false, 0), ("North", Monday.AddDays(3), true, 7),
                ("South", Monday.AddDays(2), true, 8), ("South", Monday.AddDays(3), false, 0));

    [Fact]
    public void Without_control_swabs_or_their_operators_and_lots_it_cannot_be_told()
    {
        ControlStarts.Unknown(ControlTrigger.Daily, []).Should().Be("no run of a control swab is recorded");
        ControlStarts.Unknown(ControlTrigger.NewOperator, [Control("North", "L-1", 0)]).Should().Be("no operator is recorded with control swabs");
        ControlStarts.Unknown(ControlTrigger.NewLot, [Control("North", Levels.None, 0)]).Should().Be("no lot is recorded with control swabs");
        ControlStarts.Unknown(ControlTrigger.NewSite, [Control("North", Levels.None, 0)]).Should().BeNull();
    }

    private static ControlCell Control(string site, string lot, int day, string by = Levels.None) =>
        new(site, lot, Levels.None, Monday.AddDays(day), null, by, ControlExpectation.Positive, Outcome.Positive, 1);

    private static ScreenCell Screen(string site, string lot, int day, long runs) =>
        new(site, lot, Monday.AddDays(day), Specimen.NotRecorded, CollectedBy.NotRecorded, Outcome.Negative, FollowUp.None, runs);

    private static OperatorCell Operated(string by, string site, int day, long runs) => new(by, site, Monday.AddDays(day), Outcome.Negative, FollowUp.None, runs);
}
