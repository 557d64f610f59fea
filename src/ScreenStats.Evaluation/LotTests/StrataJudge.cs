using ScreenStats.Statistics.Monitoring.Lots;
using ScreenStats.Statistics.Multiplicity;

namespace ScreenStats.Evaluation.LotTests;

/// <summary>Which places have more, or fewer, events than the others of the same strata.</summary>
/// <remarks>
/// Step down as the flags do: the place with the smallest p is found where its p, adjusted for the number compared (Holm), is below the error rate; it keeps that
/// round's figures, leaves the strata with its runs, and the rest are tested afresh. The variance between strata is that of the places left at the end.
/// Of very many places all that are below the error rate leave in one round: without the others that have too many, each would have still more than what is beside it.
/// </remarks>
internal static class StrataJudge
{
    /// <summary>The chance of finding any place wrongly.</summary>
    public const double ErrorRate = Flagging.StepDown.Threshold;

    /// <summary>Of more places than this all that are found in a round leave together: a round with a thousand takes seconds.</summary>
    internal const int MostOneByOne = 100;

    /// <summary>What was found.</summary>
    /// <param name="Places">Each place with its tests, by name.</param>
    /// <param name="Dispersion">The variance factor that was used, at least 1.</param>
    /// <param name="FromPersons">True where it is that of people, false where that of strata.</param>
    internal sealed record Judgement(IReadOnlyDictionary<string, Judged> Places, double Dispersion, bool FromPersons)
    {
        /// <summary>How many places could be compared.</summary>
        public int Compared => Places.Values.Count(place => place.PHolm is not null);
    }

    /// <summary>One place.</summary>
    /// <param name="Test">The exact test.</param>
    /// <param name="Ratio">The ratio to the others, with limits that hold the variance between strata.</param>
    /// <param name="PHolm">The adjusted p; null where there was nothing to compare.</param>
    /// <param name="Found">Whether it was found and set apart.</param>
    internal sealed record Judged(StratifiedTest Test, LotRatioEstimate Ratio, double? PHolm, bool Found);

    /// <summary>Judges the places.</summary>
    /// <param name="parts">Every place in every stratum.</param>
    /// <param name="strata">Number of strata.</param>
    /// <param name="measure">What is compared.</param>
    /// <param name="confidence">Confidence of the limits.</param>
    /// <param name="persons">The variance factor of people for the places given; null where there is none.</param>
    public static Judgement Judge(
        IReadOnlyList<StratumPart> parts, int strata, TestMeasure measure, double confidence, Func<IReadOnlyCollection<string>, double?> persons)
    {
        var judged = new SortedDictionary<string, (StrataPool Pool, StratifiedTest Test, double? PHolm, bool Found)>(StringComparer.Ordinal);
        StrataPool pool;
        while (true)
        {
            pool = new StrataPool([.. parts.Where(part => !judged.ContainsKey(part.Place))], strata, measure.Weighted);
            var tests = new StratifiedTest[pool.Places.Count];
            var now = pool;
            Parallel.For(0, tests.Length, index => tests[index] = now.Test(now.Places[index]));
            double Tail(int index) => measure.Upper ? tests[index].AtLeastAsMany : tests[index].AtMostAsMany;
            int[] compared = [.. Enumerable.Range(0, tests.Length).Where(index => tests[index].Reason is null)];
            double[] adjusted = [.. MultipleComparisons.Holm([.. compared.Select(Tail)])];
            var smallest = compared.Length == 0 ? -1 : compared.MinBy(Tail);
            if (compared.Length > MostOneByOne && adjusted.Any(p => p < ErrorRate))
            {
                foreach (var (index, p) in compared.Zip(adjusted).Where(one => one.Second < ErrorRate)) judged.Add(pool.Places[index], (pool, tests[index], p, true));
                continue;
            }

            if (smallest >= 0 && adjusted[Array.IndexOf(compared, smallest)] < ErrorRate)
            {
                judged.Add(pool.Places[smallest], (pool, tests[smallest], adjusted[Array.IndexOf(compared, smallest)], true));
                continue;
            }

            for (var index = 0; index < tests.Length; index++)
            {
                var at = Array.IndexOf(compared, index);
                judged.Add(pool.Places[index], (pool, tests[index], at < 0 ? null : adjusted[at], false));
            }

            break;
        }

        var (between, ofPersons) = (pool.Dispersion() ?? 1, persons(pool.Places) ?? 1);
        var dispersion = Math.Max(1, Math.Max(between, ofPersons));
        var options = new LotRatioOptions { Confidence = confidence, Overdispersion = dispersion };
        var entries = judged.ToArray();
        var ratios = new LotRatioEstimate[entries.Length];
        Parallel.For(0, entries.Length, index => ratios[index] = entries[index].Value.Pool.Ratio(entries[index].Key, options));
        return new Judgement(
            entries.Select((entry, index) => (entry.Key, new Judged(entry.Value.Test, ratios[index], entry.Value.PHolm, entry.Value.Found)))
                .ToDictionary(pair => pair.Key, pair => pair.Item2, StringComparer.Ordinal),
            dispersion, ofPersons > between && ofPersons > 1);
    }
}
