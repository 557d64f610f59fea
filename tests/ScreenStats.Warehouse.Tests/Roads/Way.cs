using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Reporting.Files;
using ScreenStats.Warehouse.Tests.Programs;

namespace ScreenStats.Warehouse.Tests.Roads;

/// <summary>What comes out at the end of a road.</summary>
internal static class Way
{
    /// <summary>Sends a program down a road; the tables of its report, by name, and the tally.</summary>
    public static (TallyCells Cells, ImmutableSortedDictionary<string, string> Tables) Through(IRoad road, SmallProgram program)
    {
        var folder = Directory.CreateTempSubdirectory("screenstats-road-").FullName;
        try
        {
            road.Lay(program, folder);
            var opened = ScreeningProgram.Open(folder);
            // The title would name the folder, which is another each time.
            var settings = opened.Settings with { Title = program.Name };
            var tally = opened.With(settings).Read().Tally;
            return (tally.Cells, tally.Evaluate(settings).Tables.ToImmutableSortedDictionary(table => table.Id, CsvText.Of, StringComparer.Ordinal));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The tables that differ, each with its first line that does; empty where every byte is the same.</summary>
    public static IReadOnlyList<string> Differences(ImmutableSortedDictionary<string, string> expected, ImmutableSortedDictionary<string, string> actual)
    {
        var all = new List<string>();
        foreach (var name in expected.Keys.Union(actual.Keys).Order(StringComparer.Ordinal))
        {
            var (left, right) = (expected.GetValueOrDefault(name), actual.GetValueOrDefault(name));
            if (left == right) continue;
            if (left is null || right is null)
            {
                all.Add($"{name}: only {(left is null ? "there" : "in the table of files")}");
                continue;
            }

            var (lines, others) = (left.Split('\n'), right.Split('\n'));
            var at = Enumerable.Range(0, Math.Max(lines.Length, others.Length)).First(line => lines.ElementAtOrDefault(line) != others.ElementAtOrDefault(line));
            all.Add($"{name}, line {at + 1}: files \"{lines.ElementAtOrDefault(at)}\", here \"{others.ElementAtOrDefault(at)}\" (headings {lines[0]})");
        }

        return all;
    }
}
