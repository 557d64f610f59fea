using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Comparisons.Strata;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>Sites, or what else is compared, side by side.</summary>
internal static class ComparisonAnalysis
{
    /// <summary>Compares.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="people">Sums over people.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="refutedLots">Lots flagged for refuted positives: left out of positivity and refuted positives in the basis that leads.</param>
    /// <param name="invalidLots">Lots flagged for unusable runs: left out of these likewise.</param>
    public static ComparisonFindings Of(Tally tally, PersonSums people, ProgramSettings settings, IReadOnlyCollection<string> refutedLots, IReadOnlyCollection<string> invalidLots)
    {
        var cells = new ComparedCells(tally, settings, refutedLots, invalidLots);
        var compared = new List<ComparedMeasure>();
        foreach (var measure in Enum.GetValues<ComparisonMeasure>())
        {
            if (measure == ComparisonMeasure.Refuted && !tally.Cells.HasConfirmatory) continue;
            var bases = Bases(cells, measure);
            for (var i = 0; i < bases.Count; i++) compared.Add(new ComparedMeasure(cells, measure, bases[i], leads: i == 0, people, settings.Report.Confidence));
        }

        ImmutableArray<ComparisonRow> rows = [.. compared.SelectMany(one => one.Rows)];
        ImmutableArray<ComparisonTestRow> tests = [.. compared.SelectMany(one => one.Tests)];
        ImmutableArray<ComparisonPairRow> pairs = [.. compared.SelectMany(one => one.Pairs)];
        ImmutableArray<ComparisonModelRow> model = [.. compared.SelectMany(one => one.Model)];
        ImmutableArray<ComparisonFunnelRow> funnel = [.. compared.SelectMany(one => one.Funnel)];
        var left = compared.Any(one => one.Summary.Basis is ComparisonBasis.WithoutFlaggedLots or ComparisonBasis.RoutineWithoutFlaggedLots);
        var findings = new ComparisonFindings(
            cells.By, cells.Levels.Count, settings.Report.Confidence, left ? [.. refutedLots.Union(invalidLots, StringComparer.Ordinal).Order(Levels.Order)] : [], cells.OutbreakRuns, cells.NotRecorded,
            [.. compared.Select(one => one.Summary)], rows, tests, pairs, model, funnel,
            [ComparisonTables.Levels(rows), ComparisonTables.Tests(tests), ComparisonTables.Pairs(pairs), ComparisonTables.Model(model), ComparisonTables.Funnel(funnel)], []);
        return findings with { Sentences = ComparisonSentences.Of(findings) };
    }

    /// <summary>The basis that leads, then all runs where that is another.</summary>
    private static List<ComparisonBasis> Bases(ComparedCells cells, ComparisonMeasure measure)
    {
        var flagged = cells.All.Any(cell => cell.IsLeftOut(measure, ComparisonBasis.WithoutFlaggedLots));
        var outbreak = cells.OutbreakRuns > 0;
        return (flagged, outbreak) switch
        {
            (false, false) => [ComparisonBasis.All],
            (true, false) => [ComparisonBasis.WithoutFlaggedLots, ComparisonBasis.All],
            (false, true) => [ComparisonBasis.Routine, ComparisonBasis.All],
            _ => [ComparisonBasis.RoutineWithoutFlaggedLots, ComparisonBasis.All],
        };
    }
}
