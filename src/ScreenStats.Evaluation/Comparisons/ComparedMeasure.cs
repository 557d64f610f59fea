using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Comparisons.Fitting;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>One measure and basis: everything that is said of its levels.</summary>
internal sealed class ComparedMeasure
{
    private static readonly EstimateFinding Unknown = EstimateFinding.Undefined("nothing was counted");

    public ComparedMeasure(ComparedCells cells, ComparisonMeasure measure, ComparisonBasis basis, bool leads, PersonSums people, double confidence)
    {
        var strata = ComparedStrata.Of(cells, measure, basis);
        var (by, key) = (cells.By, $"{ComparisonNames.Of(measure)}|{ComparisonNames.Of(basis)}");
        var effect = PooledEffect.From(strata, people, by == "site", measure);
        LevelStandards[] standards = [.. strata.Levels.Select(level => LevelStandards.Of(level, strata, effect.Value, confidence))];
        var funnel = new LevelFunnel(strata, [.. standards.Select(one => one.Expected)], effect.Value, confidence);
        var model = new LevelModel(strata, effect.Value, confidence);
        var tests = new LevelTests(strata, effect, funnel.Fair, model, confidence, test => new ComparisonTestRow($"{key}|{test}", measure, basis, by, test, null, null, null, null, null, null, "", ""));
        Rows =
        [
            .. strata.Levels.Select((level, i) => new ComparisonRow(
                $"{key}|{level.Name}", measure, basis, by, level.Name, Share(level, people, by, measure, confidence), standards[i].Expected, standards[i].Ratio, standards[i].Standardised,
                model.Adjusted[i], model.Ranks[i], funnel.Places[i])),
        ];
        Tests = strata.Levels.Count == 0 ? [] : tests.Rows;
        Pairs = LevelPairs.Of(strata, effect.Value, confidence, (first, second) => new ComparisonPairRow($"{key}|{first}|{second}", measure, basis, by, first, second, Unknown, null, null, null, null, Unknown, null, null, false));
        Model = [.. model.Terms.Select(term => new ComparisonModelRow($"{key}|{term.Term}|{term.Level}", measure, basis, by, term.Term == "level" ? by : term.Term, term.Level, term.Odds, term.P, term.Remark))];
        Funnel = [.. funnel.Limits().Select(at => new ComparisonFunnelRow($"{key}|{at.Model}|{at.Trials.ToString(System.Globalization.CultureInfo.InvariantCulture)}", measure, basis, by, at.Trials, at.Centre, at.Lower95, at.Upper95, at.Lower998, at.Upper998, at.Model))];
        Summary = new ComparisonSummary(
            key, measure, basis, leads, strata.Levels.Count, strata.Trials, strata.Events, strata.Trials == 0 ? null : strata.Rate, Reason(strata), strata.AdjustedFor,
            [.. strata.NotAdjustedFor, .. model.LeftOut], strata.Strata.Count, effect.Value, effect.Of, tests.Within.PValue, tests.Within.PValue < 1 - confidence, model.Spread, funnel.Model,
            funnel.Fair.Overdispersed,
            [.. Rows.Where(row => row.Place.StandsOut).OrderBy(row => row.Place.P).ThenBy(row => row.Level, Levels.Order).Select(row => row.Level)],
            Highest(row => row.Share.Estimate), Highest(row => row.Adjusted.Estimate), Pairs.IsEmpty ? null : Pairs.Count(pair => pair.ToldApart), strata.LeftOutRuns);
    }

    public ComparisonSummary Summary { get; }

    public ImmutableArray<ComparisonRow> Rows { get; }

    public ImmutableArray<ComparisonTestRow> Tests { get; }

    public ImmutableArray<ComparisonPairRow> Pairs { get; }

    public ImmutableArray<ComparisonModelRow> Model { get; }

    public ImmutableArray<ComparisonFunnelRow> Funnel { get; }

    private string? Highest(Func<ComparisonRow, double?> rate) => Rows.Where(row => rate(row) > 0).MaxBy(rate)?.Level;

    private static string? Reason(ComparedStrata strata) =>
        strata.Levels.Count == 0 ? "nothing was counted" : strata.Levels.Count == 1 ? "there is one only" : strata.Events == 0 ? "there is no event" : strata.Events == strata.Trials ? "there is nothing but events" : null;

    private static ProportionFinding Share(ComparedLevel level, PersonSums people, string by, ComparisonMeasure measure, double confidence)
    {
        List<(ClusterLevel, ClusterSums)> clusterings = [(ClusterLevel.Sites, level.Sites), (ClusterLevel.SiteWeeks, level.SiteWeeks)];
        // Sums over people are kept by site, and without leaving lots out: their design effect stands for those of the basis.
        if ((by == "site" ? people.Sums(PersonScope.Site, PooledEffect.MeasureOf(measure), level.Name) : people.Sums(PersonScope.Program, PooledEffect.MeasureOf(measure))) is { } persons)
            clusterings.Insert(0, (ClusterLevel.Persons, persons));
        return ClusteredProportion.Of(level.Events, level.Trials, confidence, clusterings);
    }
}
