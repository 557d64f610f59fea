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
    /// <param name="counts">Trials and events by level and stratum.</param>
    public static IReadOnlyDictionary<string, LevelComparison> Of(LevelCounts counts)
    {
        var strata = new Dictionary<string, LevelCounts.Sums>(StringComparer.Ordinal);
        var anyEvent = false;
        var levels = new List<Tested>();
        foreach (var (_, stratum, cell) in counts.Cells)
        {
            if (!strata.TryGetValue(stratum, out var sums)) strata.Add(stratum, sums = new LevelCounts.Sums());
            sums.Trials += cell.Trials;
            sums.Events += cell.Events;
            anyEvent |= cell.Events > 0;
        }

        var own = new List<LotStratum>();
        string? name = null;
        foreach (var (level, stratum, cell) in counts.Cells)
        {
            if (name is not null && level != name) Test();
            name = level;
            own.Add(new LotStratum(cell.Events, cell.Trials, strata[stratum].Events, strata[stratum].Trials));
        }

        if (name is not null) Test();
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

        void Test()
        {
            levels.Add(new Tested(name!, StratifiedExactTest.Hypergeometric(own)));
            own.Clear();
        }
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

    private sealed record Tested(string Name, StratifiedTest Test);
}
