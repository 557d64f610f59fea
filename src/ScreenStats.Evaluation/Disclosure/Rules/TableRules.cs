using System.Collections.Frozen;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>
/// The tables that a release with hidden counts may hold, and what their columns stand for. A table that is not here is left out of such a
/// release: a new one is safe before it is useful. How to add one stands in DEVELOPERS.md.
/// </summary>
internal static class TableRules
{
    private static readonly TableRule[] Every =
        [.. RunRules.All(), .. StrataRules.All(), .. ComparisonRules.All(), .. SpecimenRules.All(), .. DeviceRules.All(), .. RecordRules.All(), .. PeopleRules.All(), .. ConductRules.All(), .. TimeRules.All(), .. WhatIfRules.All(), .. ChangeRules.All()];

    private static readonly FrozenDictionary<string, TableRule> ById = Every.ToFrozenDictionary(rule => rule.Id, StringComparer.Ordinal);

    /// <summary>The rule of a table; null where it is left out.</summary>
    public static TableRule? Of(string id) => ById.GetValueOrDefault(id);

    /// <summary>Every table with a rule, in the order in which counts are taken from them.</summary>
    public static IEnumerable<TableRule> Ordered => Every;
}
