using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Statistics.Tests.Accuracy;

public sealed class SerialTestingTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("serial-testing"), row =>
        {
            var screens = row.Text("screens").Split(';').Select(pair => pair.Split('|')).Select(pair => Screen(pair[0], pair[1])).ToList();
            var rule = Enum.Parse<PositiveRule>(row.Text("rule"));
            var times = (int)row.Count("times");
            var together = times > 1 ? SerialTesting.Repeated(screens[0], times, rule) : SerialTesting.InARow(screens, rule);
            var positive = PredictiveValue.Positive(together.Sensitivity, together.Specificity, row.Number("prevalence"), row.Number("confidence"));
            var negative = PredictiveValue.Negative(together.Sensitivity, together.Specificity, row.Number("prevalence"), row.Number("confidence"));
            return
            [
                row.Mismatch("sensitivity", together.Sensitivity.Value), row.Mismatch("specificity", together.Specificity.Value),
                row.Mismatch("positive", positive.Value), row.Mismatch("positive_lower", positive.Lower), row.Mismatch("positive_upper", positive.Upper),
                row.Mismatch("negative", negative.Value), row.Mismatch("negative_lower", negative.Lower), row.Mismatch("negative_upper", negative.Upper),
            ];
        });

    /// <summary>What people without symptoms showed from the first day on, beside what independence would give: misses repeat.</summary>
    [Fact]
    public void Independence_promises_more_than_was_seen_in_the_serial_antigen_table()
    {
        var table = ReferenceTable.Load("serial-antigen-tests").ToDictionary(row => row.Id);
        Mismatches.ShouldBeNone([.. table.Values], row => new[] { "one", "two", "three" }.Select(tests =>
            row.Mismatch(tests, (double)row.Count("positives_" + tests) / row.Count("infected_" + tests))));
        var days = new[] { 0, 2, 4 }.Select(day => table[$"without-symptoms-{day}"]).ToList();
        var screens = days.Select(row => Screen($"{row.Count("positives_one")}/{row.Count("infected_one")}", "1")).ToList();
        SerialTesting.InARow(screens.Take(2).ToList(), PositiveRule.Any).Sensitivity.Value.Should().BeApproximately(0.546, 5e-4).And.BeGreaterThan(days[0].Number("two") + 0.15);
        SerialTesting.InARow(screens, PositiveRule.Any).Sensitivity.Value.Should().BeApproximately(0.892, 5e-4).And.BeGreaterThan(days[0].Number("three") + 0.32);
    }

    [Fact]
    public void Both_rules_mirror_each_other() => Gen.Select(Gen.Long[1, 300], Gen.Double[0, 1], Gen.Long[1, 300], Gen.Double[0, 1], Gen.Int[2, 5]).Sample((n1, se, n0, sp, times) =>
    {
        var screen = new ScreenAccuracy(AccuracyStatement.FromCounts((long)(n1 * se), n1), AccuracyStatement.FromCounts((long)(n0 * sp), n0));
        var swapped = new ScreenAccuracy(screen.Specificity, screen.Sensitivity);
        var all = SerialTesting.Repeated(screen, times, PositiveRule.All);
        var any = SerialTesting.Repeated(swapped, times, PositiveRule.Any);
        return Math.Abs(all.Sensitivity.Value - any.Specificity.Value) < 1e-12 && Math.Abs(all.Specificity.Value - any.Sensitivity.Value) < 1e-12
            && all.Sensitivity.Value <= screen.Sensitivity.Value + 1e-12 && all.Specificity.Value >= screen.Specificity.Value - 1e-12
            && all.Sensitivity.IntervalAt(0.95).Contains(all.Sensitivity.Value) && all.Specificity.IntervalAt(0.95).Contains(all.Specificity.Value);
    });

    [Fact]
    public void Exact_tests_stay_exact_and_one_time_changes_nothing()
    {
        var screen = new ScreenAccuracy(AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(1));
        SerialTesting.Repeated(screen, 1, PositiveRule.Any).Should().Be(screen);
        var twice = SerialTesting.Repeated(screen, 2, PositiveRule.All);
        twice.Specificity.Value.Should().Be(1);
        PredictiveValue.Positive(twice.Sensitivity, twice.Specificity, 0.01).Interval.Should().BeNull();
    }

    [Fact]
    public void What_cannot_be_taken_together_is_refused()
    {
        var screen = new ScreenAccuracy(AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.9));
        FluentActions.Invoking(() => SerialTesting.Repeated(screen, 0, PositiveRule.All)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => SerialTesting.Repeated(screen, 2, (PositiveRule)7)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => SerialTesting.InARow([], PositiveRule.All)).Should().Throw<ArgumentException>();
    }

    private static ScreenAccuracy Screen(string sensitivity, string specificity) => new(Statements.Read(sensitivity), Statements.Read(specificity));
}
