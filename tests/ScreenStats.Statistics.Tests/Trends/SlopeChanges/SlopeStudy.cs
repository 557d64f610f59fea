using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Ranks;
using ScreenStats.Statistics.Trends;

namespace ScreenStats.Statistics.Tests.Trends.SlopeChanges;

/// <summary>Series drawn around known lines.</summary>
internal static class SlopeStudy
{
    /// <summary>Binomial counts around expected ones; with extra variation the logit of each period moves by a normal amount, which makes the variance more than binomial.</summary>
    public static TimedCount[] Draw(ulong seed, int replicate, TimedCount[] expected, double extra)
    {
        var random = new RandomDraw(new ReplicateStream(seed, replicate));
        return [.. expected.Select(count =>
        {
            var logit = Math.Log(count.Events / (count.Trials - count.Events)) + (extra * random.Normal());
            var p = 1 / (1 + Math.Exp(-logit));
            long events = 0;
            for (var i = 0; i < count.Trials; i++)
            {
                if (random.Uniform() < p) events++;
            }

            return new TimedCount(count.Time, events, count.Trials);
        })];
    }
}
