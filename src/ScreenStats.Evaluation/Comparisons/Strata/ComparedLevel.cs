using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Comparisons.Strata;

/// <summary>One level of a comparison by one measure and basis.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Trials">Its trials.</param>
/// <param name="Events">Its events.</param>
/// <param name="Strata">Trials and events in each stratum in which it has trials, in the order of strata.</param>
/// <param name="Sites">Sums over its sites.</param>
/// <param name="SiteWeeks">Sums over its site-weeks.</param>
internal sealed record ComparedLevel(string Name, long Trials, long Events, IReadOnlyList<StratumCount> Strata, ClusterSums Sites, ClusterSums SiteWeeks);
