using ScreenStats.Statistics;

namespace ScreenStats.Cli.Results;

/// <summary>A figure with its limits.</summary>
internal sealed record EstimateItem(Figure Estimate, Figure Lower, Figure Upper)
{
    public static EstimateItem Of(Estimate estimate)
    {
        var reason = estimate.Reason?.Describe();
        return new(Figure.Of(estimate.Value, reason), Figure.Of(estimate.Lower, reason), Figure.Of(estimate.Upper, reason));
    }
}
