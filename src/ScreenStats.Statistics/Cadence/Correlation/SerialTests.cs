using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>A table of serial tests: by group and day of the first test, how many had a positive among one, two, three … tests in a row.</summary>
public sealed record SerialTests
{
    /// <summary>Where <see cref="AntigenLetter2022"/> is from.</summary>
    public const string AntigenLetter2022Source =
        "US Food and Drug Administration, letter of 1 November 2022, table of serial antigen tests 48 hours apart by days since the first positive PCR (154 people; seen in an archived copy)";

    /// <summary>
    /// The correlation fitted to <see cref="AntigenLetter2022"/> where some recover between tests and leaving is estimated. An example to try, not a default:
    /// limits 0 to 0.99, and other assumptions give 0.14 to 0.99 (<see cref="SerialTestFit.Bounds"/>).
    /// </summary>
    public const double AntigenLetter2022Correlation = 0.47;

    private SerialTests(ImmutableArray<SerialCell> cells, int gapDays)
    {
        Cells = cells;
        GapDays = gapDays;
    }

    /// <summary>
    /// An example, for nothing else to start from: rapid antigen tests of one virus in 2021-22, without and with symptoms on the first day of testing.
    /// </summary>
    public static SerialTests AntigenLetter2022 { get; } = Of(
        [
            .. Row("without symptoms", 0, (9, 97), (35, 89), (44, 78)), .. Row("without symptoms", 2, (17, 34), (23, 34), (25, 32)),
            .. Row("without symptoms", 4, (16, 21), (15, 20), (13, 15)), .. Row("without symptoms", 6, (20, 28), (21, 27), (16, 18)),
            .. Row("without symptoms", 8, (13, 23), (13, 22), (4, 11)), .. Row("without symptoms", 10, (5, 9), (5, 8)),
            .. Row("with symptoms", 0, (34, 57), (47, 51), (44, 47)), .. Row("with symptoms", 2, (58, 62), (59, 60), (43, 43)),
            .. Row("with symptoms", 4, (55, 58), (53, 54), (39, 40)), .. Row("with symptoms", 6, (27, 34), (26, 33), (22, 27)),
            .. Row("with symptoms", 8, (12, 17), (12, 17), (7, 11)), .. Row("with symptoms", 10, (4, 9), (3, 7)),
        ],
        2);

    /// <summary>The cells, by group in the order first met, day and number of tests.</summary>
    public ImmutableArray<SerialCell> Cells { get; }

    /// <summary>Days from one test to the next.</summary>
    public int GapDays { get; }

    /// <summary>Checks and orders a table.</summary>
    /// <param name="cells">The cells: for each group and day from one test on without a hole, the infected never rising with the number of tests.</param>
    /// <param name="gapDays">Days from one test to the next, 1 to 100.</param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No cell, a cell twice, a hole, people who come back, or a gap outside its domain.</exception>
    public static SerialTests Of(ImmutableArray<SerialCell> cells, int gapDays)
    {
        if (cells.IsDefaultOrEmpty) throw new ArgumentOutOfRangeException(nameof(cells), "A table has at least one cell.");
        if (gapDays is < 1 or > 100) throw new ArgumentOutOfRangeException(nameof(gapDays), gapDays, "The days from one test to the next must lie between 1 and 100.");
        foreach (var row in cells.GroupBy(cell => (cell.Group, cell.Day)))
        {
            SerialCell[] columns = [.. row.OrderBy(cell => cell.Tests)];
            for (var k = 0; k < columns.Length; k++)
            {
                if (columns[k].Tests != k + 1)
                    throw new ArgumentOutOfRangeException(nameof(cells), row.Key.Day, "Each group and day must have one cell for one test, for two tests and so on.");
                if (k > 0 && columns[k].Infected > columns[k - 1].Infected)
                    throw new ArgumentOutOfRangeException(nameof(cells), row.Key.Day, "More people with more tests in a row: people can only leave.");
            }
        }

        List<string> groups = [.. cells.Select(cell => cell.Group).Distinct()];
        return new SerialTests([.. cells.OrderBy(cell => groups.IndexOf(cell.Group)).ThenBy(cell => cell.Day).ThenBy(cell => cell.Tests)], gapDays);
    }

    private static IEnumerable<SerialCell> Row(string group, int day, params (long Positives, long Infected)[] columns) =>
        columns.Select((column, k) => new SerialCell(group, day, k + 1, column.Positives, column.Infected));
}
