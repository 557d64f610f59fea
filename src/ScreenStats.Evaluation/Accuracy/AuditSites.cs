using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>The runs of an accuracy by site: what its variance over sites needs.</summary>
internal static class AuditSites
{
    /// <summary>Adds up each site's runs in the cells of the statistics.</summary>
    /// <param name="cells">The cubes.</param>
    /// <param name="settings">What the program file says of the audits' strata.</param>
    /// <param name="counts">The counts whose cells they are.</param>
    /// <param name="place">The number of each stratum's label among those of the counts.</param>
    /// <param name="pooled">Whether all audits stand together.</param>
    /// <param name="everyPositive">Whether the counts hold the positive runs of every stratum.</param>
    /// <param name="stated">For each stratum whether its number of negative runs is stated, so that no site has them.</param>
    /// <returns>The products over sites; null where the sites do not add up to the counts, which then hold runs that nothing places.</returns>
    /// <remarks>Negative runs of a stratum with a stated number are at no site: each counts for itself.</remarks>
    public static PersonProducts? Of(
        TallyCells cells, AuditSettings settings, StratifiedCounts counts, IReadOnlyDictionary<string, int> place, bool pooled, bool everyPositive, IReadOnlyList<bool> stated)
    {
        var all = counts.Cells;
        var strata = AuditStrata.Of(
            cells.Audits.Select(cell => cell.Stratum), cells.Screens.Select(cell => cell.Site), cells.Screens.Select(cell => cell.Lot), settings);
        var sites = new Dictionary<string, long[]>(StringComparer.Ordinal);
        foreach (var cell in cells.Screens)
        {
            if (cell.Outcome is not (Outcome.Positive or Outcome.Negative)) continue;
            var stratum = Stratum(cell);
            if (cell.Outcome == Outcome.Positive)
            {
                if (everyPositive || stratum >= 0) Site(cell.Site)[Place(cell.FollowUp)] += cell.Runs;
            }
            else if (stratum >= 0 && !IsStated(stratum))
            {
                Site(cell.Site)[5 + (3 * stratum)] += cell.Runs;
            }
        }

        foreach (var cell in cells.Audits)
        {
            if (cell.Result is not (FollowUp.Missed or FollowUp.Agreed)) continue;
            var stratum = pooled ? 0 : place.GetValueOrDefault(cell.Stratum, -1);
            if (stratum < 0) return null;
            var at = 3 + (3 * stratum);
            Site(cell.Site)[cell.Result == FollowUp.Missed ? at : at + 1] += cell.Runs;
            if (!IsStated(stratum)) Site(cell.Site)[at + 2] -= cell.Runs;
        }

        var free = Enumerable.Range(0, all.Length).Where(at => at > 2 && at % 3 == 2 && IsStated((at - 5) / 3)).ToHashSet();
        if (sites.Values.Any(site => site.Any(runs => runs < 0))) return null;
        if (Enumerable.Range(0, all.Length).Any(at => !free.Contains(at) && sites.Values.Sum(site => site[at]) != all[at])) return null;
        var products = PersonProducts.From(sites.Values);
        return free.Count == 0 ? products : PersonProducts.Of(products.People, [.. Enumerable.Range(0, all.Length * all.Length).Select(Sum)]);

        double Sum(int at)
        {
            var (i, j) = (at / all.Length, at % all.Length);
            return i == j && free.Contains(i) ? all[i] : products.Sum(i, j);
        }

        static int Place(FollowUp followUp) => followUp switch { FollowUp.Confirmed => 0, FollowUp.Refuted => 1, _ => 2 };

        int Stratum(ScreenCell cell)
        {
            if (pooled) return 0;
            var number = strata.OfRun(cell.Site, cell.Lot, cell.Collection).First;
            return number < 0 ? -1 : place.GetValueOrDefault(strata.Names[number], -1);
        }

        bool IsStated(int stratum) => stated.Count > stratum && stated[stratum];

        long[] Site(string name)
        {
            if (sites.TryGetValue(name, out var runs)) return runs;
            return sites[name] = new long[all.Length];
        }
    }
}
