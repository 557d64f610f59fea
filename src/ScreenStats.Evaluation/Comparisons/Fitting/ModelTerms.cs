using ScreenStats.Evaluation.Comparisons.Strata;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>The terms of a model for period and what else is adjusted for: one for each category but the largest, which is the reference.</summary>
internal sealed class ModelTerms
{
    private readonly List<(string Term, string Level, string Reference)> names = [];
    private readonly double[][] terms;

    /// <summary>The terms.</summary>
    /// <param name="strata">What is compared.</param>
    /// <param name="leaveOut">What is left out of the model, by its word.</param>
    public ModelTerms(ComparedStrata strata, IReadOnlyCollection<string> leaveOut)
    {
        terms = new double[strata.Strata.Count][];
        for (var s = 0; s < terms.Length; s++) terms[s] = [];
        foreach (var (word, categories, of) in new (string, IReadOnlyList<string>, Func<Stratum, int>)[]
        {
            ("period", strata.Periods, stratum => stratum.Period), (strata.First.Name, strata.First.Names, stratum => stratum.First), (strata.Second.Name, strata.Second.Names, stratum => stratum.Second),
        })
        {
            if (categories.Count < 2 || leaveOut.Contains(word)) continue;
            var trials = new long[categories.Count];
            foreach (var stratum in strata.Strata) trials[of(stratum)] += stratum.Trials;
            var reference = Array.IndexOf(trials, trials.Max());
            int[] own = [.. Enumerable.Range(0, categories.Count).Where(category => category != reference)];
            names.AddRange(own.Select(category => (word, categories[category], categories[reference])));
            for (var s = 0; s < terms.Length; s++)
            {
                var category = of(strata.Strata[s]);
                terms[s] = [.. terms[s], .. own.Select(one => one == category ? 1.0 : 0.0)];
            }
        }
    }

    /// <summary>What each term is of, its category, and the category of reference.</summary>
    public IReadOnlyList<(string Term, string Level, string Reference)> Names => names;

    /// <summary>The terms of a stratum.</summary>
    public double[] Of(int stratum) => terms[stratum];
}
