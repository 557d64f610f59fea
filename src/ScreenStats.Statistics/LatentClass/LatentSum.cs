using System.Collections.Immutable;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>The sums over all divisions of the counts into infected and uninfected.</summary>
internal static class LatentSum
{
    /// <summary>A term this far below the greatest logarithm is left out.</summary>
    private const double Negligible = 60;

    public static LatentPosterior OneTest(long n1, long n0, BetaPrior prevalence, TestPriors test, double confidence, double divisions)
    {
        var weights = new TestWeights(test, n1, n0);
        var choices = GammaLogarithm.Choices(n1);
        var others = GammaLogarithm.Choices(n0);
        var total = TotalWeights(prevalence, n1 + n0, weights);
        double Log(long y1, long y0) => choices[y1] + others[y0] + weights.Found[y1] + weights.Lost[y0] + total[y1 + y0];
        var greatest = Greatest([n1, n0], y => Log(y[0], y[1]));

        while (true)
        {
            var pairs = new double[(n1 + 1) * (n0 + 1)];
            var cells = new[] { new double[n1 + 1], new double[n0 + 1] };
            var infected = new double[n1 + n0 + 1];
            var highest = greatest;
            for (long y1 = 0; y1 <= n1; y1++)
            {
                for (long y0 = 0; y0 <= n0; y0++)
                {
                    var log = Log(y1, y0);
                    if (log < greatest - Negligible) continue;
                    highest = Math.Max(highest, log);
                    var weight = Math.Exp(log - greatest);
                    pairs[(y1 * (n0 + 1)) + y0] = weight;
                    cells[0][y1] += weight;
                    cells[1][y0] += weight;
                    infected[y1 + y0] += weight;
                }
            }

            if (highest <= greatest + Negligible)
                return new LatentPosterior(confidence, divisions, OfPrevalence(prevalence, infected, confidence), [OfTest(test, pairs, n1, n0, confidence)], OfCells(cells, confidence));
            greatest = highest;
        }
    }

    public static LatentPosterior TwoTests(TwoTestCounts counts, BetaPrior prevalence, TestPriors first, TestPriors second, double confidence, double divisions)
    {
        var (n11, n10, n01, n00) = (counts.BothPositive, counts.FirstOnly, counts.SecondOnly, counts.BothNegative);
        var one = new TestWeights(first, n11 + n10, n01 + n00);
        var two = new TestWeights(second, n11 + n01, n10 + n00);
        var (c11, c10, c01, c00) = (GammaLogarithm.Choices(n11), GammaLogarithm.Choices(n10), GammaLogarithm.Choices(n01), GammaLogarithm.Choices(n00));
        var total = TotalWeights(prevalence, counts.Total, one, two);
        double Log(long[] y) => c11[y[0]] + c10[y[1]] + c01[y[2]] + c00[y[3]] + one.Found[y[0] + y[1]] + one.Lost[y[2] + y[3]]
            + two.Found[y[0] + y[2]] + two.Lost[y[1] + y[3]] + total[y.Sum()];
        var greatest = Greatest([n11, n10, n01, n00], Log);

        while (true)
        {
            var firstPairs = new double[(n11 + n10 + 1) * (n01 + n00 + 1)];
            var secondPairs = new double[(n11 + n01 + 1) * (n10 + n00 + 1)];
            var cells = new[] { new double[n11 + 1], new double[n10 + 1], new double[n01 + 1], new double[n00 + 1] };
            var infected = new double[counts.Total + 1];
            var highest = greatest;
            for (long y11 = 0; y11 <= n11; y11++)
            {
                for (long y10 = 0; y10 <= n10; y10++)
                {
                    for (long y01 = 0; y01 <= n01; y01++)
                    {
                        var outer = c11[y11] + c10[y10] + c01[y01] + one.Found[y11 + y10] + two.Found[y11 + y01] - greatest;
                        var here = y11 + y10 + y01;
                        var firstRow = firstPairs.AsSpan((int)(((y11 + y10) * (n01 + n00 + 1)) + y01));
                        var secondRow = secondPairs.AsSpan((int)(((y11 + y01) * (n10 + n00 + 1)) + y10));
                        var lost = one.Lost.AsSpan((int)y01);
                        var secondLost = two.Lost.AsSpan((int)y10);
                        var all = total.AsSpan((int)here);
                        double sum = 0;
                        for (var y00 = 0; y00 < c00.Length; y00++)
                        {
                            var log = outer + c00[y00] + lost[y00] + secondLost[y00] + all[y00];
                            if (log < -Negligible) continue;
                            highest = Math.Max(highest, log + greatest);
                            var weight = Math.Exp(log);
                            firstRow[y00] += weight;
                            secondRow[y00] += weight;
                            infected[here + y00] += weight;
                            cells[3][y00] += weight;
                            sum += weight;
                        }

                        cells[0][y11] += sum;
                        cells[1][y10] += sum;
                        cells[2][y01] += sum;
                    }
                }
            }

            if (highest <= greatest + Negligible)
            {
                return new LatentPosterior(
                    confidence, divisions, OfPrevalence(prevalence, infected, confidence),
                    [
                        OfTest(first, firstPairs, n11 + n10, n01 + n00, confidence),
                        OfTest(second, secondPairs, n11 + n01, n10 + n00, confidence),
                    ],
                    OfCells(cells, confidence));
            }

            greatest = highest;
        }
    }

    /// <summary>What depends on the number of infected alone: the prevalence's beta function and the tests' denominators.</summary>
    private static double[] TotalWeights(BetaPrior prevalence, long people, params TestWeights[] tests)
    {
        var with = GammaLogarithm.Rising(prevalence.First, people);
        var without = GammaLogarithm.Rising(prevalence.Second, people);
        var total = new double[people + 1];
        for (long y = 0; y <= people; y++) total[y] = with[y] + without[people - y];
        foreach (var test in tests)
        {
            var infected = GammaLogarithm.Rising(test.Priors.Sensitivity.First + test.Priors.Sensitivity.Second, people);
            var free = GammaLogarithm.Rising(test.Priors.Specificity.First + test.Priors.Specificity.Second, people);
            for (long y = 0; y <= people; y++) total[y] -= infected[y] + free[people - y];
        }

        return total;
    }

    private static PosteriorSummary OfPrevalence(BetaPrior prior, double[] infected, double confidence) =>
        BetaMixture.OfTotals(prior, infected).Summary(confidence);

    private static TestPosterior OfTest(TestPriors priors, double[] pairs, long positives, long negatives, double confidence)
    {
        // Rows: infected among the test's positives; columns: infected among its negatives. The mixtures run along the columns.
        var lost = new BetaMixture(priors.Sensitivity.Second, priors.Sensitivity.First, pairs, positives + 1, negatives + 1, mirrored: false).Summary(confidence);
        var specificity = new BetaMixture(priors.Specificity.First, priors.Specificity.Second, pairs, positives + 1, negatives + 1, mirrored: true).Summary(confidence);
        return new TestPosterior(new PosteriorSummary(1 - lost.Mean, 1 - lost.Median, 1 - lost.Upper, 1 - lost.Lower), specificity);
    }

    private static ImmutableArray<PosteriorSummary> OfCells(double[][] cells, double confidence) =>
    [
        .. cells.Select(weights =>
        {
            var all = weights.Sum();
            var mean = weights.Select((weight, k) => weight * k).Sum() / all;
            return new PosteriorSummary(mean, Rank(weights, all, 0.5), Rank(weights, all, (1 - confidence) / 2), Rank(weights, all, (1 + confidence) / 2));
        }),
    ];

    private static double Rank(double[] weights, double all, double probability)
    {
        double sum = 0;
        for (var k = 0; k < weights.Length; k++)
        {
            sum += weights[k];
            if (sum >= probability * all) return k;
        }

        return weights.Length - 1;
    }

    /// <summary>The greatest logarithm a walk along the axes finds from the corners and the middle; a lower bound of the true one.</summary>
    private static double Greatest(long[] sizes, Func<long[], double> log)
    {
        var best = double.NegativeInfinity;
        for (var corner = 0; corner <= 1 << sizes.Length; corner++)
        {
            var at = sizes.Select((size, i) => corner == 1 << sizes.Length ? size / 2 : (corner >> i & 1) == 1 ? size : 0).ToArray();
            var value = log(at);
            for (var moved = true; moved;)
            {
                moved = false;
                for (var i = 0; i < sizes.Length; i++)
                {
                    for (var stride = Math.Max(1, sizes[i] / 4); stride > 0; stride /= 2)
                    {
                        foreach (var to in new[] { at[i] - stride, at[i] + stride })
                        {
                            if (to < 0 || to > sizes[i]) continue;
                            var here = at[i];
                            at[i] = to;
                            var next = log(at);
                            if (next > value) (value, moved) = (next, true);
                            else at[i] = here;
                        }
                    }
                }
            }

            best = Math.Max(best, value);
        }

        return best;
    }

    /// <summary>Logarithms of the gamma functions of one test: of the infected found and lost, with what is left of positives and negatives.</summary>
    private sealed class TestWeights
    {
        public TestWeights(TestPriors priors, long positives, long negatives)
        {
            Priors = priors;
            var found = GammaLogarithm.Rising(priors.Sensitivity.First, positives);
            var falsePositive = GammaLogarithm.Rising(priors.Specificity.Second, positives);
            var lost = GammaLogarithm.Rising(priors.Sensitivity.Second, negatives);
            var trueNegative = GammaLogarithm.Rising(priors.Specificity.First, negatives);
            Found = [.. found.Select((value, y) => value + falsePositive[positives - y])];
            Lost = [.. lost.Select((value, y) => value + trueNegative[negatives - y])];
        }

        public TestPriors Priors { get; }

        /// <summary>For y infected among the test's positives.</summary>
        public double[] Found { get; }

        /// <summary>For y infected among the test's negatives.</summary>
        public double[] Lost { get; }
    }
}
