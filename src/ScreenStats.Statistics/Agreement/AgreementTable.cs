using System.Collections.Immutable;
using ScreenStats.Statistics.Comparison.Paired;

namespace ScreenStats.Statistics.Agreement;

/// <summary>How two readings of the same people (or specimens) fall into the same k categories: rows for the first, columns for the second.</summary>
public sealed class AgreementTable
{
    private AgreementTable(ImmutableArray<ImmutableArray<long>> rows, long total)
    {
        Rows = rows;
        Total = total;
    }

    /// <summary>The counts by rows: what the first reading said, then what the second said.</summary>
    public ImmutableArray<ImmutableArray<long>> Rows { get; }

    /// <summary>The number of categories, 2 or more.</summary>
    public int Categories => Rows.Length;

    /// <summary>Everything counted.</summary>
    public long Total { get; }

    /// <summary>Pairs in which both readings gave the same category.</summary>
    public long Agreeing => Enumerable.Range(0, Categories).Sum(i => Rows[i][i]);

    /// <summary>Makes a table from its rows.</summary>
    /// <param name="rows">As many rows as columns, at least 2, counts of 0 or more.</param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentException">The table is not square or has fewer than 2 categories.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or more than can be counted.</exception>
    public static AgreementTable Of(IReadOnlyList<IReadOnlyList<long>> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count < 2 || rows.Any(row => row is null || row.Count != rows.Count))
            throw new ArgumentException("A table of agreement has as many columns as rows, and at least 2.", nameof(rows));
        Int128 total = 0;
        foreach (var count in rows.SelectMany(row => row))
        {
            if (count < 0) throw new ArgumentOutOfRangeException(nameof(rows), count, "A count must be 0 or more.");
            total += count;
        }

        if (total > long.MaxValue) throw new ArgumentOutOfRangeException(nameof(rows), "The counts must add up to no more than a 64-bit whole number.");
        return new AgreementTable([.. rows.Select(row => row.ToImmutableArray())], (long)total);
    }

    /// <summary>Makes a table of two categories, positive first.</summary>
    /// <param name="counts">The four counts.</param>
    /// <returns>The table.</returns>
    public static AgreementTable Of(PairedCounts counts) =>
        Of([[counts.Both, counts.FirstOnly], [counts.SecondOnly, counts.Neither]]);

    /// <summary>The four counts of a table of two categories, the first of which is positive; null for more categories.</summary>
    public PairedCounts? Pairs => Categories == 2 ? new PairedCounts(Rows[0][0], Rows[0][1], Rows[1][0], Rows[1][1]) : null;

    /// <summary>How often the first reading gave a category.</summary>
    /// <param name="category">The category, from 0.</param>
    /// <returns>The sum of its row.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such category.</exception>
    public long First(int category)
    {
        Check(category);
        return Rows[category].Sum();
    }

    /// <summary>How often the second reading gave a category.</summary>
    /// <param name="category">The category, from 0.</param>
    /// <returns>The sum of its column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such category.</exception>
    public long Second(int category)
    {
        Check(category);
        return Rows.Sum(row => row[category]);
    }

    private void Check(int category)
    {
        if (category < 0 || category >= Categories)
            throw new ArgumentOutOfRangeException(nameof(category), category, "The category must lie between 0 and the number of categories less 1.");
    }
}
