using ScreenStats.Statistics.LatentClass;

namespace ScreenStats.Statistics.Tests.LatentClass;

public sealed class HuiWalterTests
{
    private static readonly TwoTestCounts[] Tuberculin = [new(14, 4, 9, 528), new(887, 31, 37, 367)];

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("hui-walter"), row =>
        {
            var fit = HuiWalter.Fit(row.Numbers("counts").Chunk(4).Select(n => new TwoTestCounts((long)n[0], (long)n[1], (long)n[2], (long)n[3])));
            List<string?> messages = [fit.IsDefined ? null : $"{row.Id}: {fit.Reason}"];
            if (!fit.IsDefined) return messages;
            var prevalences = row.Numbers("prevalences");
            for (var k = 0; k < prevalences.Count; k++)
                if (!row.Within(prevalences[k], fit.Prevalences[k].Value)) messages.Add($"{row.Id}: prevalence {k} should be {prevalences[k]}, is {fit.Prevalences[k].Value}");
            var errors = row.Numbers("prevalence_errors");
            for (var k = 0; k < errors.Count; k++)
                if (!row.Within(errors[k], fit.Prevalences[k].StandardError ?? double.NaN)) messages.Add($"{row.Id}: error {k} should be {errors[k]}, is {fit.Prevalences[k].StandardError}");
            var size = fit.Populations.Length;
            foreach (var (figure, column) in new[] { (fit.FirstSensitivity, "first_sensitivity"), (fit.FirstSpecificity, "first_specificity"), (fit.SecondSensitivity, "second_sensitivity"), (fit.SecondSpecificity, "second_specificity") })
            {
                messages.Add(row.Mismatch(column, figure?.Value));
                messages.Add(row.Mismatch(column + "_error", figure?.StandardError));
            }

            messages.Add(row.Mismatch("cov_sensitivities", fit.Covariance(size, size + 2)));
            messages.Add(row.Mismatch("cov_first", fit.Covariance(size, size + 1)));
            messages.Add(row.Mismatch("log_likelihood", fit.LogLikelihood));
            messages.Add(row.Mismatch("deviance", fit.Fit?.Deviance));
            messages.Add(row.Mismatch("p_value", fit.Fit?.PValue));
            return messages;
        });

    [Fact]
    public void At_least_fifty_independent_fits_are_inside_and_some_lie_on_an_edge_or_have_more_populations()
    {
        var rows = ReferenceTable.Load("hui-walter").Where(row => row.Kind == "independent").ToList();
        rows.Count.Should().BeGreaterThanOrEqualTo(50);
        rows.Should().Contain(row => row.Id.StartsWith("edge", StringComparison.Ordinal));
        rows.Count(row => row.Numbers("counts").Count > 8).Should().BeGreaterThan(10);
    }

    /// <summary>The covariances as computed beside the worked example (scipy 1.10.1), times a million; false rates there, true rates here.</summary>
    [Fact]
    public void Covariances_of_the_tuberculin_tests_are_those_computed_elsewhere()
    {
        var fit = HuiWalter.Fit(Tuberculin);
        double Millionths(int i, int j) => 1e6 * fit.Covariance(i, j)!.Value;
        Millionths(3, 4).Should().BeApproximately(-6.67867, 5e-6);
        Millionths(5, 2).Should().BeApproximately(-13.71633, 5e-6);
        Millionths(1, 2).Should().BeApproximately(-10.00559, 5e-6);
        Millionths(1, 5).Should().BeApproximately(9.61297, 5e-6);
        Millionths(1, 3).Should().BeApproximately(4.43132, 5e-6);
        Millionths(1, 4).Should().BeApproximately(-4.98629, 5e-6);
        Millionths(0, 1).Should().BeApproximately(1.56093, 5e-6);
    }

    [Fact]
    public void Six_figures_on_six_free_counts_cannot_be_tested_for_fit()
    {
        var fit = HuiWalter.Fit(Tuberculin).Fit!;
        fit.DegreesOfFreedom.Should().Be(0);
        fit.PValue.Should().BeNull();
        fit.Reason.Should().Be(UndefinedReason.SaturatedModel);
        HuiWalter.Fit([.. Tuberculin, new(200, 12, 13, 300)]).Fit!.DegreesOfFreedom.Should().Be(2);
    }

    [Fact]
    public void The_mirrored_solution_is_refused() => Accuracies.Sample(figures =>
    {
        var (p, a) = figures;
        var fit = HuiWalter.Fit(Expected(p, a));
        return fit.IsDefined && fit.FirstSensitivity!.Value + fit.FirstSpecificity!.Value > 1 && fit.SecondSensitivity!.Value + fit.SecondSpecificity!.Value > 1;
    });

    [Fact]
    public void Counts_as_expected_give_back_the_figures_they_were_made_from() => Accuracies.Sample(figures =>
    {
        var (p, a) = figures;
        var fit = HuiWalter.Fit(Expected(p, a));
        return Near(fit.Prevalences[0], p[0]) && Near(fit.Prevalences[1], p[1]) && Near(fit.FirstSensitivity!, a[0]) && Near(fit.FirstSpecificity!, a[1])
            && Near(fit.SecondSensitivity!, a[2]) && Near(fit.SecondSpecificity!, a[3]);
    });

    [Fact]
    public void Neither_the_order_of_the_populations_nor_of_the_tests_matters() => Accuracies.Sample(figures =>
    {
        var (p, a) = figures;
        var counts = Expected(p, a);
        var straight = HuiWalter.Fit(counts);
        var turned = HuiWalter.Fit(counts.Reverse().Select(n => new TwoTestCounts(n.BothPositive, n.SecondOnly, n.FirstOnly, n.BothNegative)));
        return Near(turned.SecondSensitivity!, straight.FirstSensitivity!.Value, 1e-9) && Near(turned.FirstSpecificity!, straight.SecondSpecificity!.Value, 1e-9)
            && Near(turned.Prevalences[1], straight.Prevalences[0].Value, 1e-9)
            && Math.Abs(turned.SecondSensitivity!.StandardError!.Value - straight.FirstSensitivity!.StandardError!.Value) < 1e-9;
    });

    [Fact]
    public void What_cannot_be_estimated_is_undefined_and_says_why()
    {
        HuiWalter.Fit([new(14, 4, 9, 528), new(28, 8, 18, 1056)]).Reason.Should().Be(UndefinedReason.PopulationsAlike);
        HuiWalter.Fit([new(14, 4, 9, 528), new(0, 0, 0, 0)]).Reason.Should().Be(UndefinedReason.NoTrials);
        // The second test is positive less often where the first is positive more often.
        HuiWalter.Fit([new(5, 5, 300, 90), new(5, 300, 5, 90)]).Reason.Should().Be(UndefinedReason.TestNoBetterThanChance);
        FluentActions.Invoking(() => HuiWalter.Fit([Tuberculin[0]])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => HuiWalter.Fit(Tuberculin, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new TwoTestCounts(1, -1, 0, 0)).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void A_solution_on_the_edge_has_no_standard_errors_and_says_so()
    {
        // No false positive of either test is needed to explain the first population.
        var fit = HuiWalter.Fit([new(3, 2, 0, 995), new(300, 40, 30, 630)]);
        fit.IsDefined.Should().BeTrue();
        fit.OnBoundary.Should().BeTrue();
        fit.FirstSensitivity!.StandardError.Should().BeNull();
        fit.FirstSensitivity.StandardErrorReason.Should().Be(UndefinedReason.BoundarySolution);
        fit.Covariance(0, 0).Should().BeNull();
    }

    [Fact]
    public void A_solution_that_rounding_keeps_just_off_the_edge_is_on_it()
    {
        // Both populations have the second test positive in 6 of 7 of those positive by the first (30 of 35, 120 of 140): the specificity of the
        // first is 1, and that sensitivity 6/7. scipy 1.10.1, Nelder-Mead on the logits: 0.19416 0.77664 0.90132 1 0.85714 0.95833.
        var fit = HuiWalter.Fit([new(30, 5, 10, 155), new(120, 20, 15, 45)]);

        fit.OnBoundary.Should().BeTrue();
        fit.FirstSpecificity!.Value.Should().Be(1);
        fit.FirstSpecificity.StandardErrorReason.Should().Be(UndefinedReason.BoundarySolution);
        fit.SecondSensitivity!.Value.Should().BeApproximately(6 / 7.0, 1e-9);
        fit.Prevalences[1].Value.Should().BeApproximately(0.77664, 5e-6);
    }

    [Fact]
    public void A_rate_of_false_positives_that_is_only_small_is_not_moved_to_0()
    {
        // Counts expected at sensitivities of 0.9, specificities of 1 - 1e-7, prevalences of 0.001 and 0.5, of 1e9 people each.
        var fit = HuiWalter.Fit([new(810_000, 90_100, 90_100, 999_009_800), new(405_000_000, 45_000_050, 45_000_050, 504_999_900)]);
        var none = HuiWalter.Fit([new(810_000, 90_000, 90_000, 999_010_000), new(405_000_000, 45_000_000, 45_000_000, 505_000_000)]);

        (fit.OnBoundary, none.OnBoundary).Should().Be((false, true));
        (1 - fit.FirstSpecificity!.Value).Should().BeApproximately(1e-7, 1e-9);
    }

    private static Gen<(double[], double[])> Accuracies { get; } = Gen.Select(
        Gen.Select(Gen.Double[0.05, 0.4], Gen.Double[0.5, 0.9], (low, high) => new[] { low, high }), Gen.Double[0.65, 0.97].Array[4]);

    private static TwoTestCounts[] Expected(double[] prevalences, double[] a) =>
    [
        .. prevalences.Select(p =>
        {
            const double People = 1e12;
            long Cell(bool first, bool second) => (long)Math.Round(People * ((p * (first ? a[0] : 1 - a[0]) * (second ? a[2] : 1 - a[2]))
                + ((1 - p) * (first ? 1 - a[1] : a[1]) * (second ? 1 - a[3] : a[3]))));
            return new TwoTestCounts(Cell(true, true), Cell(true, false), Cell(false, true), Cell(false, false));
        }),
    ];

    private static bool Near(LatentFigure figure, double value, double width = 1e-7) => Math.Abs(figure.Value - value) < width;
}
