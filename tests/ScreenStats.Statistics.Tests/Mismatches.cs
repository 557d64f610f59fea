namespace ScreenStats.Statistics.Tests;

/// <summary>Compares every row of a reference table and reports all that differ at once.</summary>
internal static class Mismatches
{
    public static void ShouldBeNone(IReadOnlyList<ReferenceRow> rows, Func<ReferenceRow, IEnumerable<string?>> compare)
    {
        rows.Should().NotBeEmpty();
        rows.SelectMany(compare).Where(message => message is not null).Should().BeEmpty();
    }
}
