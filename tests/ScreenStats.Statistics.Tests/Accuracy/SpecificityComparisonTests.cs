using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Statistics.Tests.Accuracy;

public sealed class SpecificityComparisonTests
{
    private static readonly Gen<(long Refuted, long Open, long Valid)> Counts =
        Gen.Select(Gen.Long[1, 20_000], Gen.Double[0, 0.05], Gen.Double[0, 0.05]).Select((n, a, b) => ((long)(n * a), (long)(n * b), n));

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("specificity-comparisons"), row =>
        {
            var finding = SpecificityComparison.Of(row.Count("refuted"), row.Count("open"), row.Count("valid"), Statements.Read(row.Text("specificity")));
            return
            [
                row.Mismatch("joint_lower", finding.JointDifference?.Lower), row.Mismatch("joint_upper", finding.JointDifference?.Upper),
                finding.Outcome.ToString() == row.Text("outcome") ? null : $"{row}: outcome {finding.Outcome}",
            ];
        });

    [Fact]
    public void More_missing_follow_up_never_turns_cannot_tell_into_an_answer() =>
        Gen.Select(Counts, Gen.Double[0.97, 1], Gen.Long[0, 200]).Sample((c, specificity, more) =>
        {
            var stated = AccuracyStatement.Exact(specificity);
            var extra = Math.Min(more, c.Valid - c.Refuted - c.Open);
            var before = SpecificityComparison.Of(c.Refuted, c.Open, c.Valid, stated);
            var after = SpecificityComparison.Of(c.Refuted, c.Open + extra, c.Valid, stated);
            return before.JointDifference!.Value.Upper <= after.JointDifference!.Value.Upper
                && !(before.Outcome == SpecificityOutcome.CannotTell && before.LowestDifference!.Value.Upper >= 0 && after.Outcome != SpecificityOutcome.CannotTell);
        });

    [Fact]
    public void Observed_wholly_inside_the_stated_interval_is_compatible() =>
        Gen.Select(Counts, Gen.Long[50, 5000], Gen.Double[0.95, 1]).Sample((c, n, specificity) =>
        {
            var finding = SpecificityComparison.Of(c.Refuted, c.Open, c.Valid, AccuracyStatement.FromCounts((long)(n * specificity), n));
            var inside = finding.Observed!.Value.Lower >= finding.StatedInterval.Lower && finding.Observed.Value.Upper <= finding.StatedInterval.Upper;
            return !inside || finding.Outcome == SpecificityOutcome.Compatible;
        });

    [Fact]
    public void A_larger_design_effect_contradicts_less() =>
        Gen.Select(Counts, Gen.Double[0.97, 1], Gen.Double[1, 10]).Sample((c, specificity, effect) =>
        {
            var plain = SpecificityComparison.Of(c.Refuted, c.Open, c.Valid, AccuracyStatement.Exact(specificity));
            var widened = SpecificityComparison.Of(c.Refuted, c.Open, c.Valid, effect, 40, AccuracyStatement.Exact(specificity));
            return widened.Outcome != SpecificityOutcome.NotCompatible || plain.Outcome == SpecificityOutcome.NotCompatible;
        });

    [Fact]
    public void Far_fewer_false_positives_than_stated_are_not_compatible_either_and_the_side_is_told()
    {
        var fewer = SpecificityComparison.Of(0, 0, 10_000, AccuracyStatement.FromCounts(980, 1000));
        fewer.Outcome.Should().Be(SpecificityOutcome.NotCompatible);
        fewer.MoreThanStated.Should().BeFalse();
        SpecificityComparison.Of(100, 20, 10_000, AccuracyStatement.FromCounts(2391, 2400)).MoreThanStated.Should().BeTrue();
    }

    [Fact]
    public void Without_valid_tests_it_cannot_tell_and_says_why()
    {
        var finding = SpecificityComparison.Of(0, 0, 0, AccuracyStatement.Exact(0.99));
        finding.Outcome.Should().Be(SpecificityOutcome.CannotTell);
        finding.Reason.Should().Be(UndefinedReason.NoTrials);
        finding.JointDifference.Should().BeNull();
    }

    /// <summary>Exact: the true rate equals the stated one, all positives followed up; the binomial is summed.</summary>
    [Theory]
    [InlineData(2000, 0.005)]
    [InlineData(10000, 0.002)]
    public void A_specificity_that_holds_is_rarely_found_not_compatible(int valid, double rate)
    {
        double wrong = 0;
        var log = valid * Math.Log(1 - rate);
        for (var x = 0; x <= 100; x++)
        {
            if (x > 0) log += Math.Log((valid - x + 1.0) / x * rate / (1 - rate));
            if (SpecificityComparison.Of(x, 0, valid, AccuracyStatement.Exact(1 - rate)).Outcome == SpecificityOutcome.NotCompatible) wrong += Math.Exp(log);
        }

        wrong.Should().BeInRange(0.01, 0.07);
    }

    [Fact]
    public void More_positives_than_valid_tests_are_refused()
    {
        var call = () => SpecificityComparison.Of(6, 5, 10, AccuracyStatement.Exact(0.99));
        call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName("validTests");
    }
}
