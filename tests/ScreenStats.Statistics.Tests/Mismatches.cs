namespace ScreenStats.Statistics.Tests;

/// <summary>Compares every row of a reference table and reports all that differ at once.</summary>
internal static class Mismatches
{
    public static void ShouldBeNone(IReadOnlyList<ReferenceRow> rows, Func<ReferenceRow, IEnumerable<string?>> compare)
    {
        rows.Should().NotBeEmpty();
        var differing = rows.SelectMany(compare).Where(message => message is not null).ToList();
        differing.Should().BeEmpty($"of {rows.Count} rows these differ:\n{string.Join('\n', differing.Take(20))}\n");
    }
}
