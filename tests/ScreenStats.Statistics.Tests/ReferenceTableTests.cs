using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Multiplicity;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests;

/// <summary>The reference tables themselves: a number without a source proves nothing.</summary>
public sealed class ReferenceTableTests
{
    private static readonly string[] Kinds = ["published", "independent", "closed-form", "regression"];

    /// <summary>Every public function that returns a figure, and the table that checks it.</summary>
    private static readonly Dictionary<string, string> Methods = new()
    {
        ["ProportionInterval"] = "proportion-intervals",
        ["GeneralAssociation"] = "general-association",
        ["FunnelChance"] = "funnel-chances",
        ["TailProbability"] = "general-association",
        ["BrokenLine"] = "slope-changes",
        ["WeekdayComparison"] = "weekdays",
        ["MovingProportions"] = "moving-proportions",
        ["WidenedInterval"] = "design-effects",
        ["DesignEffect"] = "design-effects",
        ["SampleSize"] = "plans-width",
        ["AuditPlanning"] = "plans-audit",
        ["LotPower"] = "plans-lot-power",
        ["KornGraubardInterval"] = "clustered-intervals",
        ["ClusteredInterval"] = "clustered-intervals",
        ["IntraclassCorrelation"] = "intraclass-correlations",
        ["RaoScott"] = "clustered-tests",
        ["PairedClusters"] = "paired-clusters",
        ["PredictiveValue"] = "predictive-values",
        ["LikelihoodRatio"] = "likelihood-ratios",
        ["SpecificityComparison"] = "specificity-comparisons",
        ["RoganGladen"] = "corrected-prevalence",
        ["PredictiveCurve"] = "predictive-values",
        ["SerialTesting"] = "serial-testing",
        ["LangReiczigel"] = "lang-reiczigel",
        ["ExactPrevalence"] = "exact-prevalence",
        ["BayesianPrevalence"] = "prevalence-posteriors",
        ["BeggGreenes"] = "partial-verification",
        ["HuiWalter"] = "hui-walter",
        ["LatentClassPosterior"] = "latent-posteriors",
        ["AccuracyBounds"] = "accuracy-bounds",
        ["ImbensManski"] = "imbens-manski",
        ["SpecificityProof"] = "specificity-proofs",
        ["PersonRobustAccuracy"] = "person-robust-accuracy",
        ["OneSidedAccuracy"] = "one-sided-accuracy",
        ["Hypergeometric"] = "hypergeometric",
        ["StratifiedExactTest"] = "stratified-exact",
        ["LotRatio"] = "lot-ratios",
        ["BetaBinomial"] = "beta-binomial",
        ["EmpiricalBayes"] = "lot-posteriors",
        ["ScanStatistic"] = "scan-probabilities",
        ["LikelihoodRatioScore"] = "likelihood-ratio-scores",
        ["BurstScan"] = "bursts",
        ["OperatingCharacteristic"] = "acceptance",
        ["FlagCurve"] = "flag-curves",
        ["StratifiedDifference"] = "stratified-differences",
        ["AccuracyMixture"] = "accuracy-mixtures",
        ["MultipleComparisons"] = "adjusted-p-values",
        ["ProportionDifference"] = "two-proportions",
        ["ProportionRatio"] = "two-proportions",
        ["OddsRatio"] = "two-proportions",
        ["FisherExact"] = "fisher-exact",
        ["PairedDifference"] = "paired-proportions",
        ["PairedOddsRatio"] = "paired-proportions",
        ["McNemar"] = "paired-proportions",
        ["Kappa"] = "agreement",
        ["PercentAgreement"] = "agreement",
        ["AgreementIndex"] = "agreement",
        ["ProportionChart"] = "control-charts",
        ["OverdispersedChart"] = "control-charts",
        ["Overdispersion"] = "overdispersion",
        ["CountChart"] = "control-charts",
        ["MovingAverageChart"] = "control-charts",
        ["MovingAverageRunLength"] = "moving-average-run-lengths",
        ["ShewhartRunLength"] = "shewhart-run-lengths",
        ["RunRuleLength"] = "run-rule-lengths",
        ["RunsAndCrossings"] = "runs-and-crossings",
        ["GapChart"] = "rare-event-charts",
        ["TimeChart"] = "rare-event-charts",
        ["Quantile"] = "quantiles",
        ["Percentile"] = "percentiles",
        ["AnytimeAlarm"] = "anytime-evidence",
        ["RateRise"] = "rate-rises",
        ["EvidenceDiscovery"] = "evidence-discoveries",
        ["CumulativeSum"] = "cumulative-sum-paths",
        ["BernoulliCumulativeSum"] = "bernoulli-cumulative-sums",
        ["BinomialCumulativeSum"] = "binomial-cumulative-sums",
        ["NormalCumulativeSum"] = "normal-cumulative-sums",
        ["SequentialRatioTest"] = "sequential-ratio-tests",
        ["HomogeneityTest"] = "homogeneity",
        ["ExactHomogeneity"] = "homogeneity",
        ["ExactTable"] = "exact-tables",
        ["GammaPoisson"] = "gamma-poisson",
        ["MarshallShrinkage"] = "marshall-shrinkage",
        ["NormalShrinkage"] = "normal-shrinkage",
        ["PairwiseComparison"] = "marascuilo",
        ["RandomEffects"] = "random-effects",
        ["FunnelLimits"] = "funnel-limits",
        ["FunnelPlot"] = "funnels",
        ["MantelHaenszel"] = "stratified-odds-ratios",
        ["CochranMantelHaenszel"] = "stratified-odds-ratios",
        ["BreslowDay"] = "stratified-odds-ratios",
        ["CochranArmitage"] = "proportion-trends",
        ["PoissonInterval"] = "poisson-intervals",
        ["DirectStandardisation"] = "direct-rates",
        ["IndirectStandardisation"] = "indirect-ratios",
        ["LogisticRegression"] = "logistic",
        ["PoissonRegression"] = "poisson-rates",
        ["LogBinomialRegression"] = "log-binomial",
        ["LeastSquares"] = "newey-west",
        ["NeweyWest"] = "newey-west",
        ["Autocorrelation"] = "autocorrelations",
        ["GrowthRate"] = "growth",
        ["LevelCrossing"] = "level-crossings",
        ["InterruptedSeries"] = "interrupted-series",
        ["RandomInterceptLogistic"] = "random-intercepts",
        ["Ranking"] = "ranks",
        ["ScreeningYield"] = "screening-yields",
        ["CourseYield"] = "course-yields",
        ["ViralLoadYield"] = "viral-load-yields",
        ["BestInterval"] = "best-intervals",
        ["FalseAlarm"] = "false-alarms",
        ["CadenceComparison"] = "cadence-options",
        ["CourseComparison"] = "course-yields",
        ["UncertainFigures"] = "cadence-limits",
        ["UncertainCadence"] = "cadence-limits",
        ["ViralLoadExample"] = "viral-load-courses",
        ["ExponentialSojourn"] = "exponential-sojourn",
        ["RepeatedTest"] = "repeated-tests",
        ["PooledTesting"] = "pooled-testing",
        ["CompartmentModel"] = "compartment-models",
        ["SiteOutbreak"] = "site-outbreaks",
        ["RenewalSpread"] = "renewal-spread",
        ["WorkplaceIncidence"] = "incidence-exposures",
        ["ViralLoadExposure"] = "viral-load-exposures",
        ["CostEffectivenessFrontier"] = "frontiers",
        ["NetBenefit"] = "net-benefits",
        ["ParameterDraws"] = "uncertain-figures",
        ["PerfectInformation"] = "perfect-information",
        ["ShareInformation"] = "share-information",
        ["AcceptabilityCurve"] = "acceptability",
        ["DrawnRatio"] = "drawn-ratios",
        ["OneWayAnalysis"] = "one-way-swings",
        ["BreakEven"] = "break-even-values",
        ["TurningPoint"] = "turning-points",
        ["NumberNeeded"] = "numbers-needed",
        ["DecisionCurve"] = "decision-curves",
        ["CostYield"] = "cost-yields",
        ["MarginalCost"] = "marginal-costs",
        ["FrequencyHistory"] = "frequency-rules",
        ["SerialTestFit"] = "serial-fits",
        ["RiskAdjustedCumulativeSum"] = "risk-adjusted-run-lengths",
        ["GaussianLevel"] = "gaussian-levels",
        ["BinomialLevel"] = "binomial-levels",
        ["PenalisedSpline"] = "penalised-splines",
    };

    /// <summary>Static classes that return words or enumerations, not figures.</summary>
    private static readonly string[] NotFigures =
        ["AdjustmentMethods", "AgreementCautions", "ContrastMethods", "IntervalMethods", "IntervalNotes", "Levels", "RunRules", "UndefinedReasons"];

    [Fact]
    public void Ids_are_unique_over_each_pair_of_tables() =>
        ReferenceTable.All().SelectMany(table => table.Rows)
            .GroupBy(row => (row.Table.Replace("-generated", string.Empty, StringComparison.Ordinal), row.Id))
            .Where(group => group.Count() > 1).Select(group => group.Key).Should().BeEmpty();

    [Fact]
    public void Each_row_names_its_source_its_kind_and_its_tolerance()
    {
        foreach (var row in ReferenceTable.All().SelectMany(table => table.Rows))
        {
            row.Source.Trim().Length.Should().BeGreaterThan(8, row.ToString());
            Kinds.Should().Contain(row.Kind, row.ToString());
            row.Tolerance.Should().MatchRegex("^(exact|(relative|absolute):[0-9.]+(e-?[0-9]+)?)$", row.ToString());
        }
    }

    [Fact]
    public void A_generated_row_names_the_program_and_its_version() =>
        ReferenceTable.All().Where(table => table.Name.EndsWith("-generated", StringComparison.Ordinal)).SelectMany(table => table.Rows)
            .Should().OnlyContain(row => row.Source.Contains("R 4.", StringComparison.Ordinal) || row.Source.Contains("mpmath 1.", StringComparison.Ordinal) || row.Source.Contains("scipy 1.", StringComparison.Ordinal));

    [Fact]
    public void Each_public_function_has_rows_that_our_own_code_did_not_make()
    {
        var functions = typeof(Estimate).Assembly.GetExportedTypes().Where(type => type is { IsAbstract: true, IsSealed: true }).Select(type => type.Name);
        functions.Should().BeEquivalentTo(Methods.Keys.Concat(NotFigures));
        foreach (var table in Methods.Values.Distinct())
            ReferenceTable.Load(table).Should().Contain(row => row.Kind != "regression", table);
    }

    [Fact]
    public void Each_interval_method_has_at_least_fifty_independent_rows_from_one_in_ten_to_one_in_ten_million()
    {
        var rows = ReferenceTable.Load("proportion-intervals").Where(row => row.Kind == "independent").ToList();
        foreach (var method in IntervalMethods.All)
        {
            var own = rows.Where(row => row.Text("method") == method.Name()).ToList();
            own.Count.Should().BeGreaterThanOrEqualTo(50, method.Name());
            for (long trials = 10; trials <= 10_000_000; trials *= 10)
                own.Should().Contain(row => row.Count("successes") == 1 && row.Count("trials") == trials, method.Name());
        }
    }
}
