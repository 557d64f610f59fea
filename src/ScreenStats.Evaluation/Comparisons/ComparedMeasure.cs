using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>One measure and basis: everything that is said of its levels.</summary>
internal sealed class ComparedMeasure
{
    public ComparedMeasure(ComparedCells cells, ComparisonMeasure measure, ComparisonBasis basis, bool leads, PersonSums people, double confidence)
    {
        var strata = ComparedStrata.Of(cells, measure, basis);
        var key = $"{ComparisonNames.Of(measure)}|{ComparisonNames.Of(basis)}";
        var soon = EstimateFinding.Undefined("not computed yet");
        Rows = [.. strata.Levels.Select(level => new ComparisonRow(
            $"{key}|{level.Name}", measure, basis, cells.By, level.Name,
            ClusteredProportion.Of(level.Events, level.Trials, confidence, (ClusterLevel.Sites, level.Sites), (ClusterLevel.SiteWeeks, level.SiteWeeks)),
            null, soon, soon, soon, null, new ComparisonPlace(level.Trials, null, ComparisonStanding.NotPlaced, null, ComparisonStanding.NotPlaced, null, null, false)))];
        Tests = [];
        Pairs = [];
        Model = [];
        Funnel = [];
        Summary = new ComparisonSummary(
            key, measure, basis, leads, strata.Levels.Count, strata.Trials, strata.Events, strata.Trials == 0 ? null : strata.Rate, null, strata.AdjustedFor, strata.NotAdjustedFor,
            strata.Strata.Count, 1, null, null, false, soon, null, false, [], null, null, null, strata.LeftOutRuns);
    }

    public ComparisonSummary Summary { get; }

    public ImmutableArray<ComparisonRow> Rows { get; }

    public ImmutableArray<ComparisonTestRow> Tests { get; }

    public ImmutableArray<ComparisonPairRow> Pairs { get; }

    public ImmutableArray<ComparisonModelRow> Model { get; }

    public ImmutableArray<ComparisonFunnelRow> Funnel { get; }
}
