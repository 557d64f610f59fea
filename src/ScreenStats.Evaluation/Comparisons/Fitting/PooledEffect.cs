using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>The design effect of a whole comparison: how many times the variance of independent trials counts have, within levels and strata.</summary>
/// <param name="Value">The largest of them, 1 or more.</param>
/// <param name="Of">What gave it: <c>persons</c>, <c>site-weeks</c> or <c>sites</c>; null where none is above 1.</param>
/// <param name="Persons">That of people; null where it cannot be told.</param>
/// <param name="SiteWeeks">That of site-weeks; null where it cannot be told.</param>
/// <param name="Sites">That of sites within levels; null where it cannot be told.</param>
internal sealed record PooledEffect(double Value, string? Of, double? Persons, double? SiteWeeks, double? Sites)
{
    /// <summary>The measure by which sums over people are kept; refuted and confirmed positives have one design effect.</summary>
    public static PersonMeasure MeasureOf(ComparisonMeasure measure) => measure switch
    {
        ComparisonMeasure.Positivity => PersonMeasure.Positivity,
        ComparisonMeasure.InvalidRuns => PersonMeasure.InvalidRuns,
        _ => PersonMeasure.PredictiveValue,
    };

    /// <summary>The design effect.</summary>
    /// <param name="strata">What is compared.</param>
    /// <param name="people">Sums over people: by site where sites are compared, else of the whole program.</param>
    /// <param name="bySite">Whether sites are compared.</param>
    /// <param name="measure">The measure.</param>
    public static PooledEffect From(ComparedStrata strata, PersonSums people, bool bySite, ComparisonMeasure measure)
    {
        var persons = bySite ? WithinSites(strata, people, MeasureOf(measure)) : people.Sums(PersonScope.Program, MeasureOf(measure)) is { } sums ? DesignEffect.Of(sums).Raw : null;
        var (value, of) = (1.0, (string?)null);
        foreach (var (effect, name) in new[] { (persons, "persons"), (strata.SiteWeekEffect, "site-weeks"), (strata.SiteEffect, "sites") })
        {
            if (effect > value) (value, of) = (effect.Value, name);
        }

        return new PooledEffect(value, of, persons, strata.SiteWeekEffect, strata.SiteEffect);
    }

    private static double? WithinSites(ComparedStrata strata, PersonSums people, PersonMeasure measure)
    {
        double seen = 0, chance = 0;
        foreach (var level in strata.Levels)
        {
            if (people.Cell(PersonScope.Site, measure, level.Name) is not { Trials: > 0, Persons: > 1 } cell) continue;
            var rate = (double)cell.Events / cell.Trials;
            seen += cell.EventsSquared - (2 * rate * cell.TrialsTimesEvents) + (rate * rate * cell.TrialsSquared);
            chance += cell.Trials * rate * (1 - rate);
        }

        return chance > 0 ? seen / chance : null;
    }
}
