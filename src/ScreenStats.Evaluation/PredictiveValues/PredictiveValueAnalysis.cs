using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Prevalence;

namespace ScreenStats.Evaluation.PredictiveValues;

/// <summary>What a positive run was worth in this program.</summary>
internal static class PredictiveValueAnalysis
{
    private const string NothingVerified = "no positive run was confirmed or refuted";

    /// <summary>Computes the observed positive predictive value with its bounds, for the program and its parts.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="people">Sums over people.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="flaggedLots">Lots flagged for refuted positives.</param>
    /// <param name="expected">The expected values, which share the table.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Observed: confirmed / (confirmed + refuted) over positive runs, Wilson's limits and the same widened for clusters. Bounds: all
    /// runs without a conclusion refuted, and all confirmed; they hold whatever the missing results would have been, but have no
    /// sampling error in them. Corrected: Rogan-Gladen by the confirmatory test's stated accuracy.
    /// </remarks>
    public static PredictiveValueFindings Of(
        Tally tally, PersonSums people, ProgramSettings settings, IReadOnlyCollection<string> flaggedLots, ExpectedFindings expected)
    {
        var screens = tally.Cells.Screens;
        var confidence = settings.Report.Confidence;
        var flagged = flaggedLots.Distinct(StringComparer.Ordinal).Order(Levels.Order).ToImmutableArray();
        var program = Of(people, Grouping.Program, PersonScope.Program, "", PredictiveValueBasis.Observed, screens, confidence);
        var without = flagged.IsEmpty
            ? program with { Basis = PredictiveValueBasis.ObservedWithoutFlaggedLots }
            : Of(people, Grouping.Program, null, "", PredictiveValueBasis.ObservedWithoutFlaggedLots, screens.Where(cell => !flagged.Contains(cell.Lot)), confidence);
        var groups = ImmutableArray.CreateBuilder<ObservedPredictiveValue>();
        foreach (var site in screens.GroupBy(cell => cell.Site, StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            groups.Add(Of(people, Grouping.Site, PersonScope.Site, site.Key, PredictiveValueBasis.Observed, site, confidence));
            if (site.Any(cell => flagged.Contains(cell.Lot)))
            {
                groups.Add(Of(people, Grouping.Site, null, site.Key, PredictiveValueBasis.ObservedWithoutFlaggedLots, site.Where(cell => !flagged.Contains(cell.Lot)), confidence));
            }
        }

        foreach (var lot in screens.GroupBy(cell => cell.Lot, StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            groups.Add(Of(people, Grouping.Lot, PersonScope.Lot, lot.Key, PredictiveValueBasis.Observed, lot, confidence));
        }

        var all = groups.ToImmutable();
        var (inconclusive, inconclusiveBounds) = Share(screens, Outcome.Inconclusive, null, "no inconclusive run was confirmed or refuted", confidence);
        var corrected = Corrected(program.Value, settings);
        var findings = new PredictiveValueFindings(
            program.Value, program.Bounds, flagged, without.Value, without.Bounds, corrected, inconclusive, inconclusiveBounds, all,
            PredictiveValueTables.Table([program, without, .. all], expected), []);
        return findings with { Sentences = PredictiveValueSentences.Of(findings) };
    }

    private static ObservedPredictiveValue Of(
        PersonSums people, Grouping by, PersonScope? scope, string level, PredictiveValueBasis basis, IEnumerable<ScreenCell> cells, double confidence)
    {
        var persons = scope is { } some ? people.Sums(some, PersonMeasure.PredictiveValue, level) : null;
        var (value, bounds) = Share(cells, Outcome.Positive, persons, NothingVerified, confidence);
        var key = by == Grouping.Program ? LevelNames.Of(basis) : $"{LevelNames.Of(by)}|{level}|{LevelNames.Of(basis)}";
        return new ObservedPredictiveValue(key, by, level, basis, value, bounds);
    }

    private static (ProportionFinding Value, PredictiveValueBounds Bounds) Share(
        IEnumerable<ScreenCell> cells, Outcome outcome, Statistics.Clusters.ClusterSums? persons, string undefined, double confidence)
    {
        var some = cells.Where(cell => cell.Outcome == outcome).ToList();
        var value = Proportions.Of(
            some, (_, followUp) => followUp is FollowUp.Confirmed or FollowUp.Refuted, (_, followUp) => followUp == FollowUp.Confirmed,
            persons, undefined, confidence);
        var runs = some.Sum(cell => cell.Runs);
        return (value, new PredictiveValueBounds(value.Events, value.Trials - value.Events, runs - value.Trials));
    }

    private static EstimateFinding Corrected(ProportionFinding observed, ProgramSettings settings)
    {
        if (settings.ConfirmatoryTest is not { Sensitivity: { } sensitivity, Specificity: { } specificity })
        {
            return EstimateFinding.Undefined("the program file does not state both sensitivity and specificity of the confirmatory test");
        }

        if (observed.Trials == 0) return EstimateFinding.Undefined(NothingVerified);
        return EstimateFinding.Of(RoganGladen.PositivePredictiveValue(
            observed.Events, observed.Trials, sensitivity.Statement(), specificity.Statement(), observed.Confidence, VarianceFactor.Of(observed, observed.Confidence)).ToEstimate());
    }
}
