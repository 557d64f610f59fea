using System.Collections.Immutable;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Economics.Yield.Rules;

/// <summary>What a rule of frequency would have done with a program's history.</summary>
/// <remarks>
/// <para>The rule looks back: a period's yield decides on the next. Screening becomes more frequent after so many periods in a row above the band in force, to the lowest of the bands that they reached,
/// and less frequent after so many below it, to the highest of theirs. A period without screens decides nothing and breaks a row.</para>
/// <para>The history was seen under the frequency that there was: had the rule been in force, more or fewer infections would have been found, and the yield itself would have been another. Read it as
/// what the rule makes of such counts, not as what would have happened.</para>
/// <para>Source: definitions; rules of this kind stand in United States rules on nursing-home staff (2020) and on drug tests of drivers (49 CFR 382.305), both from memory.</para>
/// </remarks>
public static class FrequencyHistory
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "rule-replayed";

    /// <summary>Replays the rule.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="periods">The periods, in their order of time.</param>
    /// <param name="startsIn">The band in force in the first period, by its place.</param>
    /// <param name="confidence">The confidence of the limits of a yield, in (0, 1).</param>
    /// <returns>One decision for each period.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such band, or a confidence outside (0, 1).</exception>
    public static ImmutableArray<RuleDecision> Replay(FrequencyRule rule, IReadOnlyList<YieldPeriod> periods, int startsIn, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(periods);
        Guard.Confidence(confidence);
        if (startsIn < 0 || startsIn >= rule.Bands.Length) throw new ArgumentOutOfRangeException(nameof(startsIn), startsIn, "There is no band at this place.");
        var decisions = ImmutableArray.CreateBuilder<RuleDecision>(periods.Count);
        var (current, row, reached) = (startsIn, 0, startsIn);
        for (var period = 0; period < periods.Count; period++)
        {
            var counted = periods[period];
            var yield = ProportionInterval.Wilson(counted.Found, counted.Screens, confidence);
            int? band = yield.Estimate is { } share ? rule.BandOf(share) : null;
            var inForce = current;
            var side = band is { } own ? Math.Sign(own - current) : 0;
            if (side == 0)
            {
                row = 0;
            }
            else
            {
                // A row above counts upwards, one below downwards; a change of side begins it anew.
                var goesOn = Math.Sign(row) == side;
                row = goesOn ? row + side : side;
                reached = !goesOn ? band.GetValueOrDefault() : side > 0 ? Math.Min(reached, band.GetValueOrDefault()) : Math.Max(reached, band.GetValueOrDefault());
                if (Math.Abs(row) >= (side > 0 ? rule.PeriodsToRise : rule.PeriodsToFall)) (current, row) = (reached, 0);
            }

            var sure = yield.Interval is { } limits && rule.BandOf(limits.Lower) == rule.BandOf(limits.Upper);
            var screens = rule.Bands[inForce].EveryDays is { } days ? counted.Days / days : 0;
            decisions.Add(new RuleDecision(period, yield, inForce, band, current, sure, screens));
        }

        return decisions.MoveToImmutable();
    }
}
