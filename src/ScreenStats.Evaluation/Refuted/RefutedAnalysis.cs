using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Refuted;

/// <summary>How often a valid test was positive and then refuted.</summary>
internal static class RefutedAnalysis
{
    /// <summary>Counts refuted positive runs per valid test, for the program, its sites and its lots.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="people">Sums over people.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings.</returns>
    public static RefutedFindings Of(Tally tally, PersonSums people, ProgramSettings settings)
    {
        var rows = ImmutableArray.CreateBuilder<RefutedFinding>();
        var screens = tally.Cells.Screens;
        rows.Add(Of(people, Grouping.Program, PersonScope.Program, "", screens, settings));
        foreach (var site in screens.GroupBy(cell => cell.Site, StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            rows.Add(Of(people, Grouping.Site, PersonScope.Site, site.Key, site, settings));
        }

        foreach (var lot in screens.GroupBy(cell => cell.Lot, StringComparer.Ordinal).OrderBy(group => group.Key, Levels.Order))
        {
            rows.Add(Of(people, Grouping.Lot, PersonScope.Lot, lot.Key, lot, settings));
        }

        var all = rows.ToImmutable();
        return new RefutedFindings(all[0], all[1..], RefutedTables.Table(all), Sentences(all[0]));
    }

    /// <summary>Refuted positive runs of valid tests.</summary>
    internal static ProportionFinding Rate(IEnumerable<ScreenCell> cells, Statistics.Clusters.ClusterSums? persons, double confidence) => Proportions.Of(
        cells,
        (outcome, _) => outcome is Outcome.Negative or Outcome.Positive,
        (outcome, followUp) => outcome == Outcome.Positive && followUp == FollowUp.Refuted,
        persons, "there are no valid tests", confidence);

    private static RefutedFinding Of(
        PersonSums people, Grouping by, PersonScope scope, string level, IEnumerable<ScreenCell> cells, ProgramSettings settings)
    {
        var counts = RunCounts.Of(cells);
        var rate = Rate(cells, people.Sums(scope, PersonMeasure.Refuted, level), settings.Report.Confidence);
        return new RefutedFinding(
            by == Grouping.Program ? "" : $"{LevelNames.Of(by)}|{level}", by, level, counts.ValidTests, counts.Refuted, counts.PositivesWithoutConclusion, rate);
    }

    private static ImmutableArray<Sentence> Sentences(RefutedFinding program)
    {
        if (program.ValidTests == 0) return [new Sentence("There are no valid tests, so there is no rate of refuted positives.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            "{0} of {1} valid tests were positive and then refuted: {2} per 1,000 ({3} interval {4} to {5})" + ShareWords.Few(program.Rate) + ".",
            Figure.Count("refuted.program.refutedRuns", program.RefutedRuns),
            Figure.Count("refuted.program.validTests", program.ValidTests),
            Say.PerThousand("refuted.program.perThousand", program.PerThousand),
            Say.Confidence("refuted.program.rate.confidence", program.Rate.Confidence),
            Say.PerThousand("refuted.program.perThousandLower", program.PerThousandLower),
            Say.PerThousand("refuted.program.perThousandUpper", program.PerThousandUpper)));
        sentences.Add(ShareWords.Widening("refuted.program.rate", program.Rate));
        if (program.WithoutConclusion > 0)
        {
            sentences.Add(new Sentence(
                "{0} more positive " + Figure.Plural(program.WithoutConclusion, "run has", "runs have")
                + " no conclusive confirmatory result; if all were refuted the rate would be {1} per 1,000.",
                Figure.Count("refuted.program.withoutConclusion", program.WithoutConclusion),
                Say.PerThousand("refuted.program.perThousandBound", program.PerThousandBound)));
        }

        return sentences.ToImmutable();
    }
}
