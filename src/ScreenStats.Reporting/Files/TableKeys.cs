using System.Collections.Immutable;

namespace ScreenStats.Reporting.Files;

/// <summary>The keys of the tables that have one. A table whose rows differ only by their figures (a curve, a grid) has none.</summary>
internal static class TableKeys
{
    private static readonly ImmutableSortedDictionary<string, TableKey> Known = ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal,
    [
        Full("ledger", "export", "entry"), Full("flow", "box"), Full("completeness", "export", "column"),
        Sparse("positivity", "by", "level", "period_start"), Sparse("invalid-runs", "by", "level", "period_start"),
        Sparse("persons", "by", "level"), Full("participation", "measure", "value"), Sparse("coverage", "by", "level", "period_start"),
        Full("stand-outs", "by", "level", "measure"), Sparse("alarms", "rule", "by", "level", "since"), Full("lot-alarms", "lot"), Full("alarm-evidence", "lot", "day"),
        Full("lots", "lot"), Full("sites", "site"), Full("lot-tests", "lot", "measure", "direction"), Full("site-tests", "site", "measure", "direction"),
        Full("comparison", "measure", "basis", "level"), Full("comparison-tests", "measure", "basis", "test"), Full("comparison-pairs", "measure", "basis", "level", "other"),
        Full("comparison-model", "measure", "basis", "term", "level"), Sparse("lot-recording", "by", "level"),
        Full("control-charts", "chart"), Full("control-chart-points", "chart", "point"),
        Sparse("conduct", "finding", "by", "level"), Sparse("conduct-rates", "measure", "by", "level"), Full("conduct-contrasts", "by", "first", "second", "measure", "adjustment"),
        Sparse("repeats", "by", "level", "outcome"), Sparse("controls", "by", "level", "expected"), Sparse("control-duties", "trigger", "by", "level"), Full("control-starts", "trigger", "level", "site"),
        Sparse("follow-up", "by", "level", "outcome"), Sparse("delays", "kind", "by", "level"), Sparse("audits", "by", "level"),
        Sparse("accuracy", "by", "level", "measure", "basis"), Full("audit-strata", "stratum"), Sparse("proven-specificity", "device"), Full("interval-cases", "days_since_run"),
        Sparse("predictive-values", "by", "level", "basis", "measure"), Full("expected-against-observed", "device"), Full("predictive-value-curve", "device", "prevalence"),
        Sparse("refuted", "by", "level"), Full("yield", "measure"), Full("yield-by-site", "site"), Sparse("true-prevalence", "by", "level", "period_start", "method"),
        Full("kits", "device", "measure"), Full("kit-contrasts", "first", "second", "measure", "adjustment"), Full("specimens", "reason"),
        Sparse("trends", "measure", "basis", "by", "level", "period_start"), Full("trend-changes", "measure", "basis", "kind", "on"), Full("weekdays", "measure", "basis", "weekday"),
        Full("cadence", "option", "measure", "basis"), Full("cadence-choice", "option"), Full("cadence-incidence", "option"),
        Full("cadence-assumptions", "assumption"), Full("cadence-sensitivity", "assumption"), Full("cadence-adherence", "measure"),
        Full("worth-costs", "item"), Full("worth-figures", "measure", "basis"), Full("worth-options", "option", "confirmation"),
    ]);

    /// <summary>Every table that has a key.</summary>
    public static IEnumerable<string> Tables => Known.Keys;

    /// <summary>The key of a table; null where it has none.</summary>
    public static TableKey? Of(string table) => Known.GetValueOrDefault(table);

    private static KeyValuePair<string, TableKey> Full(string table, params ImmutableArray<string> columns) => new(table, new TableKey(columns, MayBeEmpty: false));

    private static KeyValuePair<string, TableKey> Sparse(string table, params ImmutableArray<string> columns) => new(table, new TableKey(columns, MayBeEmpty: true));
}
