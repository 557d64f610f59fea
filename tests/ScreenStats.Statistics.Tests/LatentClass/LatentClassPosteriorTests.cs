using ScreenStats.Statistics.LatentClass;

namespace ScreenStats.Statistics.Tests.LatentClass;

public sealed class LatentClassPosteriorTests
{
    private static readonly string[] Columns = ["prevalence", "first_sensitivity", "first_specificity", "second_sensitivity", "second_specificity"];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("latent-posteriors"), row =>
        {
            var posterior = Of(row);
            PosteriorSummary[] figures = [posterior.Prevalence!.Value, .. posterior.Tests.SelectMany(test => new[] { test.Sensitivity, test.Specificity })];
            var messages = figures.SelectMany((figure, i) => new[]
            {
                row.Mismatch(Columns[i] + "_mean", figure.Mean), row.Mismatch(Columns[i] + "_lower", figure.Lower),
                row.Mismatch(Columns[i] + "_median", figure.Median), row.Mismatch(Columns[i] + "_upper", figure.Upper),
            }).ToList();
            messages.AddRange(row.Numbers("infected_means").Select((mean, cell) =>
                Math.Abs(posterior.InfectedByCell[cell].Mean - mean) < 6e-6 ? null : $"{row.Id}: cell {cell} should hold {mean}, holds {posterior.InfectedByCell[cell].Mean}"));
            return messages;
        });

    [Fact]
    public void At_least_fifty_independent_rows_hold_one_test_and_fifty_two_tests()
    {
        var rows = ReferenceTable.Load("latent-posteriors").Where(row => row.Kind == "independent").ToList();
        rows.Count(row => row.Numbers("counts").Count == 2).Should().BeGreaterThanOrEqualTo(50);
        rows.Count(row => row.Numbers("counts").Count == 4).Should().BeGreaterThanOrEqualTo(50);
    }

    /// <summary>Limits of the infected in each cell of the Strongyloides example (sum over all latent counts, python 3; see the table).</summary>
    [Fact]
    public void Infected_of_each_cell_have_the_quantiles_computed_elsewhere()
    {
        var cells = Of(ReferenceTable.Load("latent-posteriors").Single(row => row.Id == "strongyloides-two-tests")).InfectedByCell;
        cells.Select(cell => (cell.Lower, cell.Median, cell.Upper)).Should().Equal((34, 38, 38), (43, 77, 87), (0, 2, 2), (2, 10, 26));
    }

    [Fact]
    public void Without_counts_the_posterior_is_the_prior()
    {
        var posterior = LatentClassPosterior.TwoTests(default, new BetaPrior(2, 5), Test(9, 2, 30, 1), Test(4, 4, 8, 3));
        posterior.Prevalence!.Value.Mean.Should().BeApproximately(2.0 / 7, 1e-12);
        posterior.Tests[0].Sensitivity.Mean.Should().BeApproximately(9.0 / 11, 1e-12);
        posterior.Tests[0].Specificity.Upper.Should().BeApproximately(Math.Pow(0.975, 1.0 / 30), 1e-10, "Beta(30, 1) has the quantile p^(1/30)");
        posterior.Tests[1].Specificity.Mean.Should().BeApproximately(8.0 / 11, 1e-12);
    }

    [Fact]
    public void Neither_the_order_of_the_tests_nor_the_names_of_the_results_matter() => Gen.Select(Gen.Long[0, 9].Array[4], Gen.Double[0.5, 20].Array[10]).Sample((n, q) =>
    {
        var prevalence = new BetaPrior(q[0], q[1]);
        var (one, two) = (Test(q[2], q[3], q[4], q[5]), Test(q[6], q[7], q[8], q[9]));
        var straight = LatentClassPosterior.TwoTests(new TwoTestCounts(n[0], n[1], n[2], n[3]), prevalence, one, two);
        var swapped = LatentClassPosterior.TwoTests(new TwoTestCounts(n[0], n[2], n[1], n[3]), prevalence, two, one);
        // Infected and uninfected exchanged, positive and negative exchanged: the same question.
        var turned = LatentClassPosterior.TwoTests(new TwoTestCounts(n[3], n[2], n[1], n[0]), new BetaPrior(q[1], q[0]), Turn(one), Turn(two));
        return Same(straight.Prevalence!.Value, swapped.Prevalence!.Value) && Same(straight.Tests[0].Sensitivity, swapped.Tests[1].Sensitivity)
            && Same(straight.Tests[1].Specificity, swapped.Tests[0].Specificity)
            && Same(straight.Tests[0].Sensitivity, turned.Tests[0].Specificity) && Same(straight.Tests[1].Specificity, turned.Tests[1].Sensitivity)
            && Math.Abs(straight.Prevalence.Value.Mean + turned.Prevalence!.Value.Mean - 1) < 1e-9;
    });

    [Fact]
    public void A_second_test_that_says_nothing_leaves_the_first_as_it_was() => Gen.Select(Gen.Long[0, 20], Gen.Long[0, 20]).Sample((positive, negative) =>
    {
        // As good as a coin, and known to be: its results are all negative for a test that is never positive.
        var prevalence = new BetaPrior(2, 3);
        var one = LatentClassPosterior.OneTest(positive, positive + negative, prevalence, Test(8, 3, 20, 2));
        var two = LatentClassPosterior.TwoTests(new TwoTestCounts(0, positive, 0, negative), prevalence, Test(8, 3, 20, 2), Test(1e-3, 1e6, 1e6, 1e-3));
        return Math.Abs(one.Prevalence!.Value.Mean - two.Prevalence!.Value.Mean) < 1e-4 && Math.Abs(one.Tests[0].Sensitivity.Median - two.Tests[0].Sensitivity.Median) < 1e-4;
    }, iter: 20);

    [Fact]
    public void Wider_limits_hold_narrower_ones_and_all_lie_in_order() => Gen.Select(Gen.Long[0, 12].Array[4], Gen.Double[0.5, 0.98]).Sample((n, confidence) =>
    {
        var counts = new TwoTestCounts(n[0], n[1], n[2], n[3]);
        var narrow = LatentClassPosterior.TwoTests(counts, BetaPrior.Uniform, Test(8, 3, 20, 2), Test(5, 5, 40, 1), confidence);
        var wide = LatentClassPosterior.TwoTests(counts, BetaPrior.Uniform, Test(8, 3, 20, 2), Test(5, 5, 40, 1), 0.99);
        return Nested(narrow.Prevalence!.Value, wide.Prevalence!.Value) && Nested(narrow.Tests[1].Sensitivity, wide.Tests[1].Sensitivity)
            && Nested(narrow.Tests[1].Specificity, wide.Tests[1].Specificity);
    });

    [Fact]
    public void Sixty_thousand_tests_are_answered_and_what_is_too_much_is_refused()
    {
        var posterior = LatentClassPosterior.OneTest(264, 60_000, BetaPrior.Uniform, Test(61, 36, 2391, 9));
        posterior.IsDefined.Should().BeTrue();
        posterior.Divisions.Should().Be(265.0 * 59_737);
        posterior.Prevalence!.Value.Mean.Should().BeInRange(0, 0.01);
        LatentClassPosterior.OneTest(2640, 600_000, BetaPrior.Uniform, Test(61, 36, 2391, 9)).Reason.Should().Be(UndefinedReason.TooManyDivisions);
        LatentClassPosterior.TwoTests(new TwoTestCounts(900, 200, 200, 9000), BetaPrior.Uniform, Test(2, 1, 2, 1), Test(2, 1, 2, 1)).Reason.Should().Be(UndefinedReason.TooManyDivisions);
        LatentClassPosterior.TwoTests(new TwoTestCounts(0, 0, 0, 100_000_000), BetaPrior.Uniform, Test(2, 1, 2, 1), Test(2, 1, 2, 1)).Reason.Should().Be(UndefinedReason.TooManyDivisions);
    }

    [Fact]
    public void Priors_that_cannot_be_are_refused()
    {
        FluentActions.Invoking(() => new BetaPrior(0, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new BetaPrior(1, double.NaN)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => LatentClassPosterior.OneTest(1, 2, default, Test(1, 1, 1, 1))).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => LatentClassPosterior.OneTest(3, 2, BetaPrior.Uniform, Test(1, 1, 1, 1))).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => LatentClassPosterior.OneTest(1, 2, BetaPrior.Uniform, Test(1, 1, 1, 1), 1)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static LatentPosterior Of(ReferenceRow row)
    {
        var counts = row.Numbers("counts").Select(value => (long)value).ToArray();
        var priors = row.Numbers("priors").Chunk(2).Select(pair => new BetaPrior(pair[0], pair[1])).ToArray();
        return counts.Length == 2
            ? LatentClassPosterior.OneTest(counts[0], counts[0] + counts[1], priors[0], new TestPriors(priors[1], priors[2]))
            : LatentClassPosterior.TwoTests(new TwoTestCounts(counts[0], counts[1], counts[2], counts[3]), priors[0], new TestPriors(priors[1], priors[2]), new TestPriors(priors[3], priors[4]));
    }

    private static TestPriors Test(double a, double b, double c, double d) => new(new BetaPrior(a, b), new BetaPrior(c, d));

    private static TestPriors Turn(TestPriors test) => new(test.Specificity, test.Sensitivity);

    private static bool Same(PosteriorSummary left, PosteriorSummary right) =>
        Math.Abs(left.Mean - right.Mean) < 1e-9 && Math.Abs(left.Lower - right.Lower) < 1e-8 && Math.Abs(left.Upper - right.Upper) < 1e-8;

    private static bool Nested(PosteriorSummary narrow, PosteriorSummary wide) =>
        0 <= wide.Lower && wide.Lower <= narrow.Lower && narrow.Lower <= narrow.Median && narrow.Median <= narrow.Upper && narrow.Upper <= wide.Upper && wide.Upper <= 1;
}
