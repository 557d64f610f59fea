using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Methods;

/// <summary>The methods that a report may use: what each does, its formula and its source.</summary>
public static class MethodCatalogue
{
    /// <summary>Every method, in the order in which a report lists them.</summary>
    public static ImmutableArray<MethodNote> All { get; } =
        [.. ProportionNotes.All, .. AccuracyNotes.All, .. ComparisonNotes.All, .. SideBySideNotes.All, .. MonitoringNotes.All, .. StrataNotes.All, .. AlarmNotes.All, .. TrendNotes.All, .. CadenceNotes.All, .. WorthNotes.All, .. WhatIfNotes.All];

    /// <summary>Finds a method.</summary>
    /// <param name="name">Its name in tables.</param>
    /// <returns>The note; null where the catalogue has none of that name.</returns>
    public static MethodNote? Find(string name) => All.FirstOrDefault(note => note.Name == name);

    /// <summary>The methods that made a number of some tables.</summary>
    /// <param name="tables">The tables.</param>
    /// <returns>Each method once, in the order of the catalogue, with the tables that it stands in, in their order.</returns>
    public static ImmutableArray<(MethodNote Note, ImmutableArray<ITable> Tables)> UsedIn(IEnumerable<ITable> tables)
    {
        var used = tables.Select(table => (Table: table, Names: TableMethods.Of(table))).ToList();
        return
        [
            .. All.Select(note => (note, used.Where(entry => entry.Names.Contains(note.Name)).Select(entry => entry.Table).ToImmutableArray()))
                .Where(entry => !entry.Item2.IsEmpty),
        ];
    }
}
