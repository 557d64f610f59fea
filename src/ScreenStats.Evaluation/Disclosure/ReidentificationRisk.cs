using System.Text.Json.Serialization;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Disclosure;

/// <summary>How well rows hide among others that agree in what a stranger may know of them.</summary>
/// <remarks>
/// A group (equivalence class) is the rows that agree in all of it. Source: L. Sweeney, 2002, k-anonymity, International Journal of
/// Uncertainty, Fuzziness and Knowledge-Based Systems 10:557. A group of one person's rows counts as many, so the risk to people is at
/// least this.
/// </remarks>
/// <param name="Rows">Number of rows N.</param>
/// <param name="Groups">Number of groups J.</param>
/// <param name="SmallestGroup">Rows of the smallest group, k; null without rows.</param>
/// <param name="SingleRows">Groups of one row.</param>
public sealed record ReidentificationRisk(long Rows, long Groups, long? SmallestGroup, [property: JsonIgnore] long SingleRows)
{
    /// <summary>The largest risk of finding a row by what is known of it, 1 / k; null without rows.</summary>
    public double? LargestRisk => SmallestGroup is { } smallest ? 1.0 / smallest : null;

    /// <summary>The mean risk over rows, J / N; null without rows.</summary>
    public double? MeanRisk => Rows == 0 ? null : (double)Groups / Rows;

    /// <summary>The risk of groups of these sizes.</summary>
    /// <param name="sizes">Rows of each group; empty groups are left out.</param>
    /// <returns>The risk.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A size is negative.</exception>
    public static ReidentificationRisk Of(IEnumerable<long> sizes)
    {
        ArgumentNullException.ThrowIfNull(sizes);
        long rows = 0, groups = 0, single = 0;
        long? smallest = null;
        foreach (var size in sizes)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(size, nameof(sizes));
            if (size == 0) continue;
            rows += size;
            groups++;
            if (size == 1) single++;
            smallest = Math.Min(smallest ?? size, size);
        }

        return new ReidentificationRisk(rows, groups, smallest, single);
    }

    /// <summary>Whether the smallest group is below the threshold of a release, and its size therefore not given: that one is known by name to whoever finds it.</summary>
    public bool SmallestGroupHidden { get; private init; }

    /// <summary>The same as a release may state it: of a group below the threshold only that there is one.</summary>
    /// <param name="threshold">Counts from 1 to one less are hidden.</param>
    /// <returns>The risk without a group size below the threshold; a mean risk that would give the number of fewer groups than that is left out too.</returns>
    internal ReidentificationRisk Below(long threshold) => SmallestGroup < threshold ? this with { SmallestGroup = null, SmallestGroupHidden = true } : this;

    /// <summary>The risk of the counted rows of the screening export, grouped by site, period of the report and lot.</summary>
    /// <param name="tally">The tally.</param>
    /// <returns>The risk.</returns>
    public static ReidentificationRisk Of(Tally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        return Of(tally.Cells.Screens.GroupBy(cell => (cell.Site, cell.Lot, tally.Cells.Period.Start(cell.Day))).Select(group => group.Sum(cell => cell.Runs)));
    }
}
