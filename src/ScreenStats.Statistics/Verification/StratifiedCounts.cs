using System.Collections.Immutable;

namespace ScreenStats.Statistics.Verification;

/// <summary>A partly verified screen whose audited negatives were sampled by stratum, each stratum with a share of its own.</summary>
/// <remarks>
/// The runs fall into 3 + 3H cells for H strata, always in this order (see <see cref="Cells"/>): confirmed positives, refuted positives,
/// unverified positives; then for each stratum, in the order given, its missed, agreed and unaudited negatives.
/// </remarks>
public sealed record StratifiedCounts
{
    /// <summary>Makes the counts.</summary>
    /// <param name="positives">All positive runs, verified or not.</param>
    /// <param name="confirmed">Positive runs the confirmatory test confirmed.</param>
    /// <param name="refuted">Positive runs the confirmatory test refuted.</param>
    /// <param name="strata">The strata of the negative runs; together they hold every negative run once.</param>
    /// <exception cref="ArgumentNullException">No strata.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or more verified than counted.</exception>
    public StratifiedCounts(long positives, long confirmed, long refuted, IEnumerable<AuditStratum> strata)
    {
        ArgumentNullException.ThrowIfNull(strata);
        Strata = [.. strata];
        Overall = new VerificationCounts(
            positives, confirmed, refuted, Strata.Sum(one => one.Negatives), Strata.Sum(one => one.Missed), Strata.Sum(one => one.Agreed));
    }

    /// <summary>The counts of a screen whose negatives form one stratum.</summary>
    /// <param name="counts">The counts.</param>
    /// <returns>The same with one stratum without a name.</returns>
    public static StratifiedCounts Of(VerificationCounts counts) =>
        new(counts.Positives, counts.Confirmed, counts.Refuted, [new AuditStratum("", counts.Negatives, counts.Missed, counts.Agreed)]);

    /// <summary>The counts added up over the strata.</summary>
    public VerificationCounts Overall { get; }

    /// <summary>The strata of the negative runs, in the order given.</summary>
    public ImmutableArray<AuditStratum> Strata { get; }

    /// <summary>The number of runs in each of the 3 + 3H cells, in the order of the type's remarks.</summary>
    public ImmutableArray<long> Cells
    {
        get
        {
            var cells = ImmutableArray.CreateBuilder<long>(3 + (3 * Strata.Length));
            cells.Add(Overall.Confirmed);
            cells.Add(Overall.Refuted);
            cells.Add(Overall.Positives - Overall.VerifiedPositives);
            foreach (var stratum in Strata)
            {
                cells.Add(stratum.Missed);
                cells.Add(stratum.Agreed);
                cells.Add(stratum.Unaudited);
            }

            return cells.MoveToImmutable();
        }
    }
}
