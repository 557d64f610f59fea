using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Monitoring.Lots;
using ScreenStats.Statistics.Multiplicity;

namespace ScreenStats.Evaluation.Shared;

/// <summary>Compares each level of a breakdown with the others by an exact test within strata, adjusted for the number compared.</summary>
/// <remarks>
/// Levels that are not recorded are not in it. Only strata that hold a level and others tell anything; a level without one is not compared.
/// </remarks>
internal static class LevelComparisons
{
    /// <summary>Compares.</summary>
    /// <param name="counts">Trials and events by level and stratum; equal ones are added up, so that trials and events may come apart.</param>
    public static IReadOnlyDictionary<string, LevelComparison> Of(IEnumerable<(string Level, string Stratum, long Trials, long Events)> counts)
    {
        var cells = counts.Where(cell => cell.Level != Levels.None)
            .GroupBy(cell => (cell.Level, cell.Stratum))
            .Select(cell => (cell.Key.Level, cell.Key.Stratum, Trials: cell.Sum(one => one.Trials), Events: cell.Sum(one => one.Events)))
            .Where(cell => cell.Trials > 0).ToList();
        var strata = cells.GroupBy(cell => cell.Stratum, StringComparer.Ordinal)
            .ToDictionary(stratum => stratum.Key, stratum => (Trials: stratum.Sum(cell => cell.Trials), Events: stratum.Sum(cell => cell.Events)), StringComparer.Ordinal);
        var anyEvent = cells.Exists(cell => cell.Events > 0);
        var levels = cells.GroupBy(cell => cell.Level, StringComparer.Ordinal).OrderBy(level => level.Key, Levels.Order)
            .Select(level => (Name: level.Key, Test: StratifiedExactTest.Hypergeometric(
                [.. level.OrderBy(cell => cell.Stratum, StringComparer.Ordinal).Select(cell => new LotStratum(cell.Events, cell.Trials, strata[cell.Stratum].Events, strata[cell.Stratum].Trials))])))
            .ToList();
        var compared = levels.Where(level => level.Test.Reason is null).ToList();
        var adjusted = MultipleComparisons.Holm(compared.ConvertAll(level => level.Test.AtLeastAsMany));
        var found = new Dictionary<string, LevelComparison>(StringComparer.Ordinal);
        for (var index = 0; index < compared.Count; index++)
        {
            found.Add(compared[index].Name, new LevelComparison(compared[index].Test.Expected, compared[index].Test.AtLeastAsMany, adjusted[index], null, compared.Count));
        }

        var reason = anyEvent ? "nothing to compare it with: no other at the same place, or no event there" : "there is no event to compare";
        foreach (var level in levels.Where(level => level.Test.Reason is not null)) found.Add(level.Name, LevelComparison.None(reason));
        return found;
    }

    /// <summary>The comparison of a level.</summary>
    public static LevelComparison At(this IReadOnlyDictionary<string, LevelComparison> found, string level) =>
        found.TryGetValue(level, out var comparison) ? comparison
        : LevelComparison.None(level == Levels.None ? "what is not recorded is not compared" : "nothing was counted");

    /// <summary>The columns of a comparison, the same in every table.</summary>
    /// <param name="comparison">The comparison of a row; null where the row has none.</param>
    public static ImmutableArray<Column<TRow>> Columns<TRow>(Func<TRow, LevelComparison?> comparison) =>
    [
        new("expected_events", "Expected number", Unit.Ratio, "Events it would have if it were like the others: lots and operators like those of the same sites.", row => Number(comparison(row), comparison(row)?.Expected))
            { Method = Methods.MethodNames.WithinSites },
        new("p", "p", Unit.PValue, "Exact one-sided chance of at least its events if it were like the others.", row => Number(comparison(row), comparison(row)?.P)) { Method = Methods.MethodNames.WithinSites },
        new("p_holm", "p adjusted", Unit.PValue, "The same adjusted for the number compared (Holm).", row => Number(comparison(row), comparison(row)?.PHolm)) { Method = Methods.MethodNames.Holm },
        new("compared", "Compared", Unit.Count, "How many were compared with one another.", row => comparison(row) is { P: not null } some ? Cell.Count(some.Compared) : Cell.Empty),
    ];

    private static Cell Number(LevelComparison? comparison, double? value) =>
        comparison is null ? Cell.Empty : Cell.NumberOr(value, comparison.PUndefined ?? "not compared");
}
