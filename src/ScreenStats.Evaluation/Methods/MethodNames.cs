using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Names of methods that are made here, not in the statistics.</summary>
internal static class MethodNames
{
    public const string Share = "share";
    public const string Rate = "rate";
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
}
