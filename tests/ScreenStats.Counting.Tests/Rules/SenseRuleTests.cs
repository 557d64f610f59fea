using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Counting.Tests.Rules;

public class SenseRuleTests
{
    [Theory]
    [InlineData("A10", "a1O", true)]
    [InlineData("A10", " A 1 0\t", true)]
    [InlineData("A-10", "A10", false)]
    [InlineData("1-23", "12-3", false)]
    [InlineData("Ａ10", "A10", true)]
    [InlineData("lot", "LOT", true)]
    [InlineData("i1", "I1", true)]
    public void Names_are_alike_but_for_case_blanks_and_the_letter_O(string one, string other, bool alike) =>
        (SpellingRule.Fold(one) == SpellingRule.Fold(other)).Should().Be(alike);

    [Fact]
    public void Groups_of_names_do_not_depend_on_their_order()
    {
        string[] names = ["B0", "a1", "BO", "A1", "C", "b 0"];
        foreach (var shuffled in (string[][])[names, [.. names.Reverse()]])
        {
            SpellingRule.Alike(shuffled).Select(group => string.Join("|", group)).Should().Equal("A1|a1", "B0|BO|b 0");
        }
    }

    [Theory]
    [InlineData("0:100", 0, 0)]
    [InlineData("0:99,61:1", 0, 0)] // one of a hundred, 61 days later
    [InlineData("0:99,60:1", 0, 60)]
    [InlineData("0:98,61:2", 0, 61)]
    [InlineData("0:1,61:99", 61, 61)]
    [InlineData("0:1,301:9", 301, 301)] // a year mistyped in January
    [InlineData("0:1,300:9", 0, 300)]
    [InlineData("0:1,731:2", 731, 731)] // a clock that was not set
    [InlineData("0:1,731:1", 0, 731)] // nothing says which half is wrong
    [InlineData("-10957:1,0:50,100:50,13149:1", 0, 100)] // both ends; a pause in between stays
    [InlineData("0:1,62:1,130:200", 130, 130)]
    public void A_few_rows_far_from_all_others_are_outside_the_program(string days, int first, int last) =>
        ProgramSpanRule.Of([.. days.Split(',').Select(day => day.Split(':')).Select(day => (int.Parse(day[0], null), long.Parse(day[1], null)))]).Should().Be((first, last));

    [Fact]
    public void At_least_half_of_the_rows_are_inside_the_program() =>
        Gen.Select(Gen.Int[0, 3000], Gen.Long[1, 50]).List[1, 20].Sample(drawn =>
        {
            var days = drawn.GroupBy(day => day.Item1).Select(day => (Day: day.Key, Rows: day.Sum(one => one.Item2))).OrderBy(day => day.Day).ToList();
            var (first, last) = ProgramSpanRule.Of(days);
            first.Should().BeLessThanOrEqualTo(last);
            // Half may go at one end, and what is modest of the rest at the other.
            days.Where(day => day.Day >= first && day.Day <= last).Sum(day => day.Rows).Should().BePositive();
            ProgramSpanRule.Of([.. days.Select(day => (-day.Day, day.Rows)).Reverse()]).First.Should().BeLessThanOrEqualTo(-first);
        });

    [Fact]
    public void Clocks_that_agree_are_never_shifted() => Gen.Int[-30, 4320].Array[0, 60].Sample(minutes => ShiftedClockRule.Hours(minutes, 4320).Should().BeNull());

    [Fact]
    public void A_whole_clock_that_is_behind_is_found_with_its_fewest_hours() =>
        Gen.Select(Gen.Int[0, 50].Array[10, 60], Gen.Int[2, 14]).Sample((delays, hours) =>
        {
            var behind = delays.Select(minutes => minutes - (60 * hours)).ToArray();
            ShiftedClockRule.Hours(behind, 4320).Should().BeInRange(hours - 1, hours).And.BePositive();
            var ahead = delays.Select(minutes => 4320 - minutes + (60 * hours)).ToArray();
            ShiftedClockRule.Hours(ahead, 4320).Should().BeInRange(-hours, -hours + 1).And.BeNegative();
            ShiftedClockRule.Hours(behind.AsSpan(0, 9), 4320).Should().BeNull();
        });

    [Fact]
    public void Specimens_here_and_there_are_no_shifted_clock() => ShiftedClockRule.Hours([-800, -700, -60, -500, 4400, 4900, 5000, 100, 200, 300, -90, -790, 5100], 4320).Should().BeNull();

    [Fact]
    public void A_minute_of_the_hour_is_suspicious_with_more_than_half_of_sixty_times()
    {
        var times = new long[60];
        (times[15], times[30]) = (30, 30);
        SuspiciousShareRule.MinuteOfHour(times).Should().BeNull();
        (times[15], times[30]) = (31, 29);
        SuspiciousShareRule.MinuteOfHour(times).Should().Be(15);
        (times[15], times[30]) = (31, 28);
        SuspiciousShareRule.MinuteOfHour(times).Should().BeNull();
        FluentActions.Invoking(() => SuspiciousShareRule.MinuteOfHour(new long[59])).Should().Throw<ArgumentOutOfRangeException>();
    }

    // What the rules state of false alarms, summed from the binomial itself.
    [Fact]
    public void False_alarms_are_as_rare_as_is_stated()
    {
        (4 * Above(30, SuspiciousShareRule.FewestTimes, 0.25)).Should().BeInRange(3e-5, 4e-5);
        (60 * Above(30, SuspiciousShareRule.FewestTimes, 1 / 60.0)).Should().BeLessThan(1e-36);
        (3 * Above(94, SuspiciousShareRule.FewestRunsOfOperators, 1 / 3.0)).Should().BeLessThan(2e-38);
        Above(5, ShiftedClockRule.FewestPairs, 0.1).Should().BeApproximately(1.5e-4, 0.5e-5);
        Above(15, 30, 0.1).Should().BeApproximately(4e-9, 0.5e-9);
        Math.Pow(0.2, SuspiciousShareRule.FewestRunsOfDay).Should().BeApproximately(1e-7, 0.1e-7);
        Math.Pow(0.2, SuspiciousShareRule.FewestRunsOfSite).Should().BeApproximately(3.2e-4, 1e-6);
    }

    [Theory]
    [InlineData(3, 95, 100, true)]
    [InlineData(3, 94, 100, false)]
    [InlineData(2, 100, 100, false)]
    [InlineData(3, 99, 99, false)]
    public void One_operator_of_several_is_suspicious_with_nearly_every_run(int operators, long most, long runs, bool suspicious) =>
        SuspiciousShareRule.IsOneOperator(operators, most, runs).Should().Be(suspicious);

    [Theory]
    [InlineData(0, 299, Outcome.Positive, true)]
    [InlineData(0, 300, Outcome.Positive, false)]
    [InlineData(0, 0, Outcome.Negative, true)]
    [InlineData(0, 60, Outcome.Invalid, false)]
    [InlineData(0, 60, Outcome.Inconclusive, false)]
    public void Two_results_within_minutes_are_those_no_device_can_give(int first, int second, Outcome outcome, bool within)
    {
        RunEvent Run(long instant, Outcome result, bool dateOnly = false) => new(new(instant, 0, dateOnly), result);
        ConductRule.IsWithinMinutes(Run(first, outcome), Run(second, Outcome.Negative)).Should().Be(within);
        ConductRule.IsWithinMinutes(Run(first, outcome, dateOnly: true), Run(second, Outcome.Negative)).Should().BeFalse();
    }

    private static double Above(int most, int trials, double chance)
    {
        var (sum, term) = (0.0, Math.Pow(1 - chance, trials));
        for (var i = 0; i <= trials; i++)
        {
            if (i > most) sum += term;
            term *= chance / (1 - chance) * (trials - i) / (i + 1);
        }

        return sum;
    }
}
