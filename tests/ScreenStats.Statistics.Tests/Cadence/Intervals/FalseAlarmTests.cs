using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Tests.Cadence.Intervals;

public sealed class FalseAlarmTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("false-alarms"), row => new[]
    {
        row.Has("any") ? row.Mismatch("any", FalseAlarm.ChanceOfAny(row.Number("screens"), row.Number("specificity"))) : null,
        row.Has("per_year") ? row.Mismatch("per_year", FalseAlarm.PerPersonYear(row.Number("every"), row.Number("specificity"))) : null,
    });

    [Fact]
    public void Every_row_of_the_break_even_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("break-even-prevalence"), row => new[]
    {
        row.Mismatch("prevalence", FalseAlarm.BreakEvenPrevalence(
            row.Number("cost"), row.Number("sensitivity"), row.Number("specificity"), row.Number("false_positive"), row.Number("benefit")).Value),
    });

    [Fact]
    public void More_screens_or_less_specificity_never_make_a_false_alarm_less_likely() =>
        Gen.Select(Gen.Double[0, 1e6], Gen.Double[0, 1e3], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((screens, more, specificity, share) =>
            FalseAlarm.ChanceOfAny(screens, specificity) is >= 0 and <= 1
            && FalseAlarm.ChanceOfAny(screens + more, specificity) >= FalseAlarm.ChanceOfAny(screens, specificity)
            && FalseAlarm.ChanceOfAny(screens, specificity * share) >= FalseAlarm.ChanceOfAny(screens, specificity) - 1e-15);

    [Fact]
    public void Reasons_stand_where_no_prevalence_pays()
    {
        FalseAlarm.BreakEvenPrevalence(5, 0.6, 0.99, 100, 2).Reason.Should().Be(UndefinedReason.NoPrevalencePays);
        FalseAlarm.BreakEvenPrevalence(0, 0, 1, 0, 10).Reason.Should().Be(UndefinedReason.NothingAtStake);
        FalseAlarm.BreakEvenPrevalence(0, 0.5, 1, 0, 10).Value.Should().Be(0);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => FalseAlarm.ScreensPerPersonYear(0), "everyDays"), (() => FalseAlarm.PerPersonYear(1, 1.1), "specificity"),
            (() => FalseAlarm.ChanceOfAny(-1, 0.9), "screens"), (() => FalseAlarm.BreakEvenPrevalence(-1, 0.5, 0.5, 1, 1), "costOfTest"),
            (() => FalseAlarm.BreakEvenPrevalence(1, 0.5, 0.5, 1, -1), "benefitOfTruePositive"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }
}
