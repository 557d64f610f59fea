using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>The audits of a program as the statistics take them: counts by stratum, and products over people.</summary>
/// <param name="Basis">What the figures stand on; none without a conclusive audit.</param>
/// <param name="Counts">Counts by stratum; one stratum where there are no weights.</param>
/// <param name="Products">Products over people in the order of the counts' cells.</param>
/// <param name="Sites">The same over sites; null where it is not known which runs of a site the counts hold.</param>
/// <param name="Strata">The strata as they are shown.</param>
/// <param name="NegativesOutside">Negative runs of which the counts do not speak.</param>
internal sealed record AuditWeights(
    AccuracyBasis Basis, StratifiedCounts Counts, PersonProducts Products, PersonProducts? Sites, ImmutableArray<StratumFinding> Strata, long NegativesOutside)
{
    /// <summary>
    /// Strata without an audited run are left out with their positives, for nothing is known of their negatives. A stated number of negatives
    /// has no positives of its own: then every positive run belongs to the figures, and unaudited runs of that stratum count as independent.
    /// </summary>
    public static AuditWeights? Of(TallyCells cells, long negatives, AuditSettings settings)
    {
        var totals = Totals(cells);
        long Total(string stratum, AuditTotal total) => totals.GetValueOrDefault((stratum, total));
        var all = cells.AuditStrata;
        var shown = Shown(cells, Total);
        if (all.Sum(stratum => Total(stratum.Stratum, AuditTotal.Missed) + Total(stratum.Stratum, AuditTotal.Agreed)) == 0) return null;

        var tooSmall = all.Any(stratum => Total(stratum.Stratum, AuditTotal.Missed) + Total(stratum.Stratum, AuditTotal.Agreed) > stratum.Negatives);
        var pooled = tooSmall || all[0].Origin is StratumOrigin.Unexplained or StratumOrigin.WholeProgram;
        var used = pooled ? [] : all.Where(stratum => Total(stratum.Stratum, AuditTotal.Missed) + Total(stratum.Stratum, AuditTotal.Agreed) > 0).ToImmutableArray();
        var everyPositive = pooled || used.Any(stratum => stratum.Origin == StratumOrigin.StatedNumber);
        var place = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var stratum in used) place.Add(stratum.Stratum, place.Count);
        if (pooled)
        {
            foreach (var name in all.Select(stratum => stratum.Stratum).Append("")) place.Add(name, 0);
        }

        ImmutableArray<AuditStratum> strata = pooled
            ? [new AuditStratum("", negatives, Sum(AuditTotal.Missed), Sum(AuditTotal.Agreed))]
            : [.. used.Select(stratum => new AuditStratum(
                stratum.Stratum, stratum.Negatives, Total(stratum.Stratum, AuditTotal.Missed), Total(stratum.Stratum, AuditTotal.Agreed)))];
        var counts = new StratifiedCounts(Positives(AuditTotal.Positives), Positives(AuditTotal.Confirmed), Positives(AuditTotal.Refuted), strata);
        var stated = used.Select(stratum => stratum.Origin == StratumOrigin.StatedNumber).ToList();
        var products = ProductsOf(cells, counts, Cells);
        var basis = all[0].Origin == StratumOrigin.WholeProgram && !tooSmall ? AccuracyBasis.OneDraw : pooled ? AccuracyBasis.Unweighted : AccuracyBasis.Reweighted;
        return new AuditWeights(basis, counts, products, AuditSites.Of(cells, settings, counts, place, pooled, everyPositive, stated), shown, Math.Max(0, negatives - counts.Overall.Negatives));

        long Sum(AuditTotal total) => totals.Where(pair => pair.Key.Total == total).Sum(pair => pair.Value);

        long Positives(AuditTotal total) =>
            totals.Where(pair => pair.Key.Total == total && (everyPositive || place.ContainsKey(pair.Key.Stratum))).Sum(pair => pair.Value);

        // The cells of the statistics to which a total of the tally adds, and with which sign.
        IEnumerable<(int Cell, int Sign)> Cells(string stratum, AuditTotal total)
        {
            if (total is AuditTotal.Positives or AuditTotal.Confirmed or AuditTotal.Refuted)
            {
                if (!everyPositive && !place.ContainsKey(stratum)) return [];
                return total switch { AuditTotal.Positives => [(2, 1)], AuditTotal.Confirmed => [(0, 1), (2, -1)], _ => [(1, 1), (2, -1)] };
            }

            if (total == AuditTotal.Persons || !place.TryGetValue(stratum, out var at)) return [];
            var first = 3 + (3 * at);
            var audited = total == AuditTotal.Missed ? first : first + 1;
            if (total == AuditTotal.Negatives) return [(first + 2, 1)];
            return stated.Count > at && stated[at] ? [(audited, 1)] : [(audited, 1), (first + 2, -1)];
        }
    }

    private static Dictionary<(string Stratum, AuditTotal Total), long> Totals(TallyCells cells) => cells.AuditProducts
        .Where(cell => cell.Total == AuditTotal.Persons && cell.OtherTotal != AuditTotal.Persons)
        .ToDictionary(cell => (cell.OtherStratum, cell.OtherTotal), cell => cell.Products);

    // Labels that nothing explains are shown one by one, without a number of negative runs.
    private static ImmutableArray<StratumFinding> Shown(TallyCells cells, Func<string, AuditTotal, long> total) =>
        cells.AuditStrata[0].Origin == StratumOrigin.Unexplained
            ? [.. cells.Audits.GroupBy(cell => cell.Stratum, StringComparer.Ordinal).OrderBy(label => label.Key, Levels.Order).Select(label => new StratumFinding(
                label.Key, StratumOrigin.Unexplained, null, label.Where(cell => cell.Result == FollowUp.Missed).Sum(cell => cell.Runs),
                label.Where(cell => cell.Result == FollowUp.Agreed).Sum(cell => cell.Runs)))]
            : [.. cells.AuditStrata.Select(stratum => new StratumFinding(
                stratum.Stratum, stratum.Origin, stratum.Negatives, total(stratum.Stratum, AuditTotal.Missed), total(stratum.Stratum, AuditTotal.Agreed)))];

    private static PersonProducts ProductsOf(TallyCells cells, StratifiedCounts counts, Func<string, AuditTotal, IEnumerable<(int Cell, int Sign)>> map)
    {
        var size = 3 + (3 * counts.Strata.Length);
        var sums = new double[size * size];
        long people = 0;
        foreach (var cell in cells.AuditProducts)
        {
            if (cell is { Total: AuditTotal.Persons, OtherTotal: AuditTotal.Persons }) people = cell.Products;
            var twice = cell.Stratum != cell.OtherStratum || cell.Total != cell.OtherTotal;
            foreach (var (i, sign) in map(cell.Stratum, cell.Total))
            {
                foreach (var (j, otherSign) in map(cell.OtherStratum, cell.OtherTotal))
                {
                    var product = (double)sign * otherSign * cell.Products;
                    sums[(i * size) + j] += product;
                    if (twice) sums[(j * size) + i] += product;
                }
            }
        }

        for (var h = 0; h < counts.Strata.Length; h++)
        {
            // Nobody's runs are known to be in a stratum with a stated number: each counts for itself.
            var at = 5 + (3 * h);
            if (sums[(at * size) + at] == 0) sums[(at * size) + at] = counts.Strata[h].Unaudited;
        }

        return PersonProducts.Of(people, sums);
    }
}
