using BenchmarkDotNet.Attributes;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Agreement;
using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Comparison.Paired;
using ScreenStats.Statistics.Funnels;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.LatentClass;
using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.Lots;
using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Multiplicity;
using ScreenStats.Statistics.Planning;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Proportions;
using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Rates;
using ScreenStats.Statistics.Shrinkage;
using ScreenStats.Statistics.Standardisation;
using ScreenStats.Statistics.Stratified;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.SlopeChanges;
using ScreenStats.Statistics.Trends.Smooths.Splines;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Benchmarks.Parts;

/// <summary>Statistics, one of each question of the trade, on counts of the size that a program has.</summary>
[MemoryDiagnoser]
public class StatisticParts
{
    private static readonly AccuracyStatement Sensitivity = AccuracyStatement.FromCounts(103, 122);
    private static readonly AccuracyStatement Specificity = AccuracyStatement.FromCounts(399, 401);
    private static readonly VerificationCounts Verified = new(460, 231, 63, 58_113, 4, 1_480);
    private static readonly GroupCount[] Sites = [.. Enumerable.Range(0, 20).Select(site => new GroupCount(3 + (site * 7 % 11), 2_000 + (site * 131)))];
    private static readonly (long Trials, long Events)[] People = [.. Enumerable.Range(0, 1_000).Select(person => (20L + (person % 9), person % 40 == 0 ? 1L : 0L))];
    private static readonly TwoProportions[] Strata = [.. Enumerable.Range(0, 26).Select(week => new TwoProportions(2 + (week % 3), 900 + week, 1 + (week % 4), 1_100 - week))];
    private static readonly LotTally[] Lots = [.. Enumerable.Range(0, 30).Select(lot => new LotTally(1 + (lot * 5 % 7), 1_500 + (lot * 17)))];
    private static readonly LotStratum[] Weeks = [.. Enumerable.Range(0, 40).Select(week => new LotStratum(week % 3, 120, 2 + (week % 3), 700))];
    private static readonly Subgroup[] Days = [.. Enumerable.Range(0, 180).Select(day => new Subgroup(day * 13 % 5, 320 + (day % 40)))];
    private static readonly BinomialRow[] Rows = [.. Enumerable.Range(0, 500).Select(row => new BinomialRow(row * 3 % 4, 40 + (row % 11), [row % 2, row % 5, row % 26 / 26.0], row % 20))];
    private static readonly TimedCount[] Series = [.. Enumerable.Range(0, 52).Select(week => new TimedCount(week, 4 + Math.Abs(week - 26) / 4, 2_200))];
    private static readonly ObservedExpected[] Observed = [.. Enumerable.Range(0, 50).Select(site => new ObservedExpected(site % 9, 4.2 + (site % 5)))];
    private static readonly TwoTestCounts[] Populations = [new(210, 40, 15, 2_000), new(60, 30, 10, 2_400)];
    private static readonly double[] Chances = [.. Enumerable.Range(1, 200).Select(i => i / 2_000.0)];
    private static readonly InfectionCourse Course = InfectionCourse.ByDay([.. Enumerable.Range(0, 15).Select(age => new CourseDay(age, age is > 2 and < 11 ? 0.8 : 0.1, age is > 1 and < 9 ? 1 : 0))]);

    private static readonly Dictionary<string, Func<object>> All = new(StringComparer.Ordinal)
    {
        ["interval, Wilson"] = () => ProportionInterval.Wilson(81, 263),
        ["interval, Clopper-Pearson"] = () => ProportionInterval.ClopperPearson(81, 58_113),
        ["interval, mid-P"] = () => ProportionInterval.MidP(81, 58_113),
        ["interval, widened"] = () => WidenedInterval.Wilson(81, 58_113, 1.7, 24),
        ["design effect over 1,000 people"] = () => DesignEffect.Of(ClusterSums.From(People)),
        ["intraclass correlation, 1,000 people"] = () => IntraclassCorrelation.AnalysisOfVariance(People),
        ["Rao-Scott, 1,000 people"] = () => RaoScott.OwnDesignEffects(People[..500], People[500..]),
        ["predictive value"] = () => PredictiveValue.Positive(Sensitivity, Specificity, 0.004),
        ["likelihood ratio"] = () => LikelihoodRatio.Positive(Sensitivity, Specificity),
        ["specificity against its statement"] = () => SpecificityComparison.Of(120, 46, 58_113, Specificity),
        ["prevalence, Rogan-Gladen"] = () => RoganGladen.Estimate(460, 58_573, Sensitivity, Specificity),
        ["prevalence, Lang-Reiczigel"] = () => LangReiczigel.Estimate(460, 58_573, Sensitivity, Specificity),
        ["prevalence, posterior"] = () => BayesianPrevalence.Estimate(460, 58_573, Sensitivity, Specificity),
        ["verification, Begg-Greenes"] = () => BeggGreenes.Of(Verified),
        ["accuracy bounds"] = () => AccuracyBounds.Of(Verified),
        ["two tests without a gold standard"] = () => HuiWalter.Fit(Populations),
        ["difference, Newcombe"] = () => ProportionDifference.Newcombe(15, 2_000, 29, 2_100),
        ["ratio, Koopman"] = () => ProportionRatio.Koopman(15, 2_000, 29, 2_100),
        ["odds ratio, exact"] = () => OddsRatio.ConditionalExact(15, 2_000, 29, 2_100),
        ["Fisher's test"] = () => FisherExact.TwoSided(15, 2_000, 29, 2_100),
        ["paired difference"] = () => PairedDifference.Newcombe(210, 40, 15, 2_000),
        ["kappa"] = () => Kappa.Cohen(AgreementTable.Of([[210, 40], [15, 2_000]])),
        ["stratified exact test, 40 strata"] = () => StratifiedExactTest.Hypergeometric(Weeks),
        ["lot ratio, 40 strata"] = () => LotRatio.Hypergeometric(Weeks),
        ["beta-binomial, 30 lots"] = () => BetaBinomial.MaximumLikelihood(Lots),
        ["Holm, 200 chances"] = () => MultipleComparisons.Holm(Chances),
        ["Hommel, 200 chances"] = () => MultipleComparisons.Hommel(Chances),
        ["control chart, 180 days"] = () => ProportionChart.Exact(Days),
        ["scan statistic"] = () => ScanStatistic.Exact(7, 40, 0.05),
        ["funnel, 20 sites"] = () => FunnelPlot.Of(Sites),
        ["random effects, 20 sites"] = () => RandomEffects.OfRates(Sites),
        ["Mantel-Haenszel, 26 strata"] = () => MantelHaenszel.OddsRatio(Strata),
        ["Breslow-Day, 26 strata"] = () => BreslowDay.Test(Strata),
        ["standardised ratio"] = () => PoissonInterval.Exact(81),
        ["gamma-Poisson, 50 sites"] = () => GammaPoisson.MaximumLikelihood(Observed),
        ["logistic regression, 500 rows"] = () => LogisticRegression.Fit(Rows),
        ["log-binomial regression, 500 rows"] = () => LogBinomialRegression.Fit(Rows),
        ["broken line, 52 weeks"] = () => BrokenLine.Fit(Series, 1),
        ["spline, 52 weeks"] = () => PenalisedSpline.Binomial([.. Series.Select(point => new SplineCount(point.Time, point.Events, point.Trials))]),
        ["yield of a schedule"] = () => CourseYield.Of(Course, ScreeningSchedule.Every(7), new ScreeningRules()),
        ["sample size for a width"] = () => SampleSize.ForWidth(0.01, 0.004),
    };

    /// <summary>Names of the statistics.</summary>
    public static IEnumerable<string> Names => All.Keys;

    /// <summary>Which one.</summary>
    [ParamsSource(nameof(Names))]
    public string Statistic { get; set; } = "";

    [Benchmark]
    public object Compute() => All[Statistic]();
}
