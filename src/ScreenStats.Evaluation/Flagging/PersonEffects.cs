using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Flagging;

/// <summary>By how much runs of the same people make the events of lots and sites vary more than independent runs would.</summary>
/// <remarks>
/// Some people give a false positive, or a run without a valid result, again and again; then a few people make a lot look bad. Of each lot or site
/// the larger of two design effects over its people: its own (Rao and Scott's), and that of all together, Σ Σ(x - n r)² / Σ n r (1 - r) with each
/// level's own rate r. The own one sees a lot whose events are a few people's, the common one is steady where a lot has few events. At least 1.
/// </remarks>
internal sealed class PersonEffects
{
    private readonly Dictionary<(PersonScope Scope, PersonMeasure Measure, string Level), double> effects = [];

    public PersonEffects(PersonSums sums, IReadOnlyCollection<LotSiteCounts> counts)
    {
        foreach (var measure in (PersonMeasure[])[PersonMeasure.Refuted, PersonMeasure.InvalidRuns])
        {
            Add(sums, PersonScope.Lot, measure, counts.Select(entry => entry.Lot).Where(lot => lot != Levels.None));
            Add(sums, PersonScope.Site, measure, counts.Select(entry => entry.Site));
        }
    }

    /// <summary>The design effect of a level; 1 where nothing is known of its people.</summary>
    public double Of(PersonScope scope, PersonMeasure measure, string level) => effects.GetValueOrDefault((scope, measure, level), 1);

    private void Add(PersonSums sums, PersonScope scope, PersonMeasure measure, IEnumerable<string> levels)
    {
        double squares = 0, variance = 0;
        var own = new List<(string Level, double Effect)>();
        foreach (var level in levels.Distinct(StringComparer.Ordinal).Order(Levels.Order))
        {
            if (sums.Sums(scope, measure, level) is not { } people || people.Events == 0 || people.Events == people.Trials) continue;
            var rate = (double)people.Events / people.Trials;
            squares += (double)people.EventsSquared - (2 * rate * (double)people.TrialsTimesEvents) + (rate * rate * (double)people.TrialsSquared);
            variance += people.Trials * rate * (1 - rate);
            own.Add((level, DesignEffect.Of(people).Value));
        }

        foreach (var (level, effect) in own) effects[(scope, measure, level)] = Math.Max(1, Math.Max(effect, squares / variance));
    }
}
