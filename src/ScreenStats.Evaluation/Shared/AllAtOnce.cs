namespace ScreenStats.Evaluation.Shared;

/// <summary>
/// Rows that do not need each other, made on all processors; each has its place, so that nothing depends on who was first.
/// A parallel query does the same with some forty generic types for each row type: more to compile at the start of every run than
/// the work itself takes, and more than a compiler ahead of time can bear.
/// </summary>
internal static class AllAtOnce
{
    /// <summary>One row of each item, in the order of the items.</summary>
    public static TRow[] Of<TItem, TRow>(IReadOnlyList<TItem> items, Func<TItem, TRow> row) => Of(items.Count, index => row(items[index]));

    /// <summary>One row of each place from 0 on, in order.</summary>
    public static TRow[] Of<TRow>(int count, Func<int, TRow> row)
    {
        var rows = new TRow[count];
        Parallel.For(0, count, index => rows[index] = row(index));
        return rows;
    }
}
