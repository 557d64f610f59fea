using System.Collections.Immutable;

namespace ScreenStats.Statistics.Verification;

/// <summary>
/// What a variance needs that takes the runs of one person as belonging together: for each pair of cells, the sum over people of
/// the product of the person's counts in the two.
/// </summary>
/// <remarks>
/// The cells and their order are those of <see cref="StratifiedCounts.Cells"/>. With x(p) the vector of a person's counts, the matrix
/// is the sum over people of x(p) x(p)ᵀ. Where nobody has more than one run it is the diagonal matrix of the cells.
/// </remarks>
public sealed class PersonProducts
{
    private readonly ImmutableArray<double> _sums;

    private PersonProducts(long people, int cells, ImmutableArray<double> sums)
    {
        People = people;
        Cells = cells;
        _sums = sums;
    }

    /// <summary>People with at least one run.</summary>
    public long People { get; }

    /// <summary>The number of cells, 3 + 3 times the number of strata.</summary>
    public int Cells { get; }

    /// <summary>The sum over people of the product of their counts in two cells.</summary>
    /// <param name="first">Index of a cell.</param>
    /// <param name="second">Index of a cell.</param>
    /// <returns>The sum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such cell.</exception>
    public double Sum(int first, int second)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfNegative(second);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(first, Cells);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(second, Cells);
        return _sums[(first * Cells) + second];
    }

    /// <summary>Takes sums that were added up elsewhere.</summary>
    /// <param name="people">People with at least one run.</param>
    /// <param name="sums">The symmetric matrix row after row; its length is the square of the number of cells.</param>
    /// <returns>The products.</returns>
    /// <exception cref="ArgumentNullException">No sums.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A sum that is negative, not finite or not symmetric; a length that is no square of 3 + 3H.</exception>
    public static PersonProducts Of(long people, IReadOnlyList<double> sums)
    {
        ArgumentNullException.ThrowIfNull(sums);
        Guard.NotNegative(people);
        var cells = (int)Math.Round(Math.Sqrt(sums.Count));
        if (cells * cells != sums.Count || cells < 6 || cells % 3 != 0)
            throw new ArgumentOutOfRangeException(nameof(sums), sums.Count, "The number of sums must be the square of 3 + 3 times the number of strata.");
        for (var i = 0; i < cells; i++)
        {
            for (var j = 0; j < cells; j++)
            {
                var sum = sums[(i * cells) + j];
                if (!(sum >= 0) || !double.IsFinite(sum))
                    throw new ArgumentOutOfRangeException(nameof(sums), sum, "A sum of products of counts is finite and 0 or more.");
                if (sum != sums[(j * cells) + i])
                    throw new ArgumentOutOfRangeException(nameof(sums), sum, "The matrix of sums of products must be symmetric.");
            }
        }

        return new PersonProducts(people, cells, [.. sums]);
    }

    /// <summary>Adds up the products over people.</summary>
    /// <param name="people">For each person the counts of the cells, all of one length; a person without runs is left out.</param>
    /// <returns>The products.</returns>
    /// <exception cref="ArgumentNullException">No people.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Nobody, a count below 0, or counts of different lengths.</exception>
    public static PersonProducts From(IEnumerable<IReadOnlyList<long>> people)
    {
        ArgumentNullException.ThrowIfNull(people);
        double[] sums = [];
        var cells = 0;
        long counted = 0;
        foreach (var counts in people)
        {
            if (cells == 0)
            {
                cells = counts.Count;
                sums = new double[cells * cells];
            }

            if (counts.Count != cells) throw new ArgumentOutOfRangeException(nameof(people), counts.Count, "Every person has a count for each cell.");
            if (counts.Any(count => count < 0)) throw new ArgumentOutOfRangeException(nameof(people), "A count must be 0 or more.");
            if (counts.All(count => count == 0)) continue;
            counted++;
            for (var i = 0; i < cells; i++)
            {
                for (var j = 0; j < cells; j++) sums[(i * cells) + j] += (double)counts[i] * counts[j];
            }
        }

        return Of(counted, sums);
    }
}
