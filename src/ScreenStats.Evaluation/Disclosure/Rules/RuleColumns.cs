using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Tables;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>The parts that rules of tables are made of.</summary>
internal static class RuleColumns
{
    private static readonly HashSet<string> Breakdowns = new(StringComparer.Ordinal) { "program", "site", "lot", "specimen", "collection" };

    /// <summary>The whole span by one thing at a time, or the whole program by period: site by period and operators are too fine.</summary>
    public static bool Cut(Row row) => row["period_start"].Length == 0 ? Breakdowns.Contains(row["by"]) : row["by"] == "program";

    /// <summary>Every row.</summary>
    public static bool Every(Row row) => true;

    /// <summary>The part that a row speaks of, by its columns by, level and period_start.</summary>
    public static CountUnit Part(Row row) => new(row["by"], row["level"], row["period_start"]);

    /// <summary>The columns of every row.</summary>
    public static Func<Row, IReadOnlyDictionary<string, ColumnRule>> Always(params IEnumerable<(string Name, ColumnRule Rule)>[] columns)
    {
        var all = Together(columns);
        return _ => all;
    }

    /// <summary>Columns in one.</summary>
    public static Dictionary<string, ColumnRule> Together(params IEnumerable<(string Name, ColumnRule Rule)>[] columns) =>
        columns.SelectMany(some => some).ToDictionary(pair => pair.Name, pair => pair.Rule, StringComparer.Ordinal);

    /// <summary>Columns of one rule.</summary>
    public static IEnumerable<(string Name, ColumnRule Rule)> Names(ColumnRule rule, params string[] names) => names.Select(name => (name, rule));

    /// <summary>The columns that say which part a row speaks of.</summary>
    public static IEnumerable<(string Name, ColumnRule Rule)> Level => Names(ColumnRule.Free, "by", "level", "period_start");

    /// <summary>Columns that are counts: name of the column, and what is counted.</summary>
    public static IEnumerable<(string Name, ColumnRule Rule)> Columns(params (string Column, string Measure)[] counts) => counts.Select(pair => (pair.Column, ColumnRule.Count(pair.Measure)));

    /// <summary>The columns that every table of proportions ends with.</summary>
    public static IEnumerable<(string Name, ColumnRule Rule)> Share(Measure trials, Measure events) =>
    [
        .. Names(ColumnRule.Free, "method", "confidence", "widened_method"),
        .. Names(ColumnRule.Drawn(trials, events), "estimate", "lower", "upper", "events", "trials", "few_counts"),
        .. Names(ColumnRule.Widened(trials, events), "widened_lower", "widened_upper"),
        .. Names(ColumnRule.Finer, "design_effect", "clusters", "cluster_count", "remark"),
    ];
}
