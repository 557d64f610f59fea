using ScreenStats.Statistics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Cli.Results;

/// <summary>A proportion with its counts and limits.</summary>
internal sealed record ShareItem(long Successes, long Trials, Figure Estimate, Figure Lower, Figure Upper, string Method)
{
    public static ShareItem Of(ProportionEstimate share)
    {
        var reason = share.Reason?.Describe();
        return new(share.Successes, share.Trials, Figure.Of(share.Estimate, reason), Figure.Of(share.Lower, reason), Figure.Of(share.Upper, reason), share.Method.Name());
    }
}
