using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Names of methods that are made here, not in the statistics.</summary>
internal static class MethodNames
{
    public const string Share = "share";
    public const string Rate = "rate";
    public const string EarlierValue = "as-evaluated";
    public const string PairedSites = "linearised-over-sites";
    public const string ScaledEffect = "newcombe-scaled-effect";
    public const string DesignEffect = "design-effect";
    public const string NearestRank = "nearest-rank";
    public const string Hypergeometric = "hypergeometric";
    public const string StepDown = "step-down-holm";
    public const string WithinSites = "exact-within-sites";
    public const string Holm = "holm";
    public const string LotEvidence = "lot-evidence";
    public const string InvalidEvidence = "invalid-evidence";
    public const string InvalidRise = "bernoulli-cumulative-sum";
    public const string RefutedRise = "rate-rise";
    public const string Stated = "stated";
    public const string Grid = "chosen";
    public const string Bounds = "worst-and-best-case";
    public const string WeightedAccuracy = "weighted-accuracy";
    public const string WithinStrata = "exact-within-strata";
    public const string RatioWithinStrata = "ratio-within-strata";
    public const string VarianceWithinStrata = "variance-within-strata";
    public const string EmpiricalBayes = "empirical-bayes";
    public const string BurstScan = "burst-scan";
    public const string BurstSimulation = "burst-simulation";
    public const string FlagCurve = "flag-curve";
    public const string ExpectedAtProgramRates = "expected-at-program-rates";
    public const string DirectStandardisation = "standardised-to-program";
    public const string AdjustedRate = "adjusted-rate";
    public const string FixedTerms = "logistic-levels";
    public const string AlikeRates = "alike-rates";
    public const string RandomIntercept = "random-intercept";
    public const string Ranks = "drawn-ranks";
    public const string FunnelExact = "funnel-exact";
    public const string FunnelAdditive = "funnel-additive";
    public const string FunnelChance = "funnel-chance";
    public const string FunnelOverdispersion = "funnel-overdispersion";
    public const string ChiSquare = "chi-square";
    public const string ChiSquareWidened = "chi-square-widened";
    public const string ExactHomogeneity = "exact-homogeneity";
    public const string AssociationWithinStrata = "association-within-strata";
    public const string BetweenVariance = "between-variance";
    public const string Prediction = "prediction-for-another";
    public const string QuasiScale = "quasi-binomial-scale";
    public const string LogisticTerms = "logistic-terms";
    public const string FisherPairs = "fisher-exact";
    public const string Marascuilo = "marascuilo";
    public const string OddsWithinStrata = "odds-within-strata";
}
