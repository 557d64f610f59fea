using ScreenStats.Statistics.Prevalence;

namespace ScreenStats.Cli.Results;

/// <summary>What is known of a sensitivity or specificity after the tests too.</summary>
internal sealed record PosteriorResult(
    double Mean, double Median, double StandardDeviation, double Lower, double Upper, double ShortestLower, double ShortestUpper)
{
    public static PosteriorResult? Of(PosteriorSummary? summary) => summary is null ? null : new(
        summary.Mean, summary.Median, summary.StandardDeviation, summary.EqualTailed.Lower, summary.EqualTailed.Upper,
        summary.Shortest.Lower, summary.Shortest.Upper);
}
