using ScreenStats.Statistics.Monitoring.Sequential.CountSums;
using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Statistics.Tests.Monitoring.Sequential;

public class BernoulliLimitSearchTests
{
    [Theory]
    [InlineData(0.002)]
    [InlineData(0.0123)]
    [InlineData(0.15)]
    public void Limits_for_many_targets_are_those_found_one_by_one_in_whatever_order_they_are_asked_for(double rate)
    {
        var design = BernoulliCumulativeSum.Design(rate, 2 * rate);
        var search = new BernoulliLimitSearch(design);
        foreach (var runs in new[] { 50_000.0, 1, 2_000_000, 700, 60_000, 49_000, 2_000_000, 350_000 })
        {
            var target = FalseAlarmTarget.OnceInRuns(runs);

            search.StepsFor(target).Should().Be((long)Math.Round(BernoulliCumulativeSum.LimitFor(design, target).Limit!.Value * design.Denominator), "one in {0}", runs);
        }
    }
}
