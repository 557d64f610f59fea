using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Trends.SlopeChanges.Search;

namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>The logit of a rate as a continuous line over time that changes its slope a few times: where, by how much, and how often.</summary>
public static class BrokenLine
{
    internal const string Method = "broken line of the logit, maximum likelihood";

    /// <summary>The most likely line with a given number of changes.</summary>
    /// <param name="counts">The periods, in any order; those without trials say nothing.</param>
    /// <param name="changes">The number of changes, 0 to 4.</param>
    /// <param name="options">Fewest periods of a segment, errors and confidence; null for the defaults.</param>
    /// <returns>The line; a reason where there is none.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number of changes or an option outside its domain.</exception>
    /// <remarks>
    /// logit p(t) = a + b t + sum of d_k (t - c_k)+. Places: one change is fitted at every period and between every two; pairs, too, are all screened, at and between periods, by weighted
    /// least squares around the line with one change and, again, around the best found; with three and four the best sets of fewer get one more and each place in turn moves to where it explains most.
    /// The best are fitted by maximum likelihood and moved to the maximum between periods, where the lines of both sides cross (exact while a
    /// move crosses no period), or to a period, where the likelihood may have an edge. Each segment holds the fewest periods asked (one on a change counts
    /// to both sides) and, the periods on or next to a change left out, an event and a trial without one, so that no slope runs away. Errors: the information on coefficients and
    /// moves of the places, times the dispersion. Profile limits: -2 log likelihood ratio / dispersion up to the critical value, the other changes moved along. In a study of 15 to 40 positives a
    /// week profile limits of 95 % covered the place in 93 to 94 %, those by linearisation in 88 to 90 %; with a logit that itself moves from week to week 89 and 83 % (tests/reference/studies/slope-study.csv). Source: Hudson DJ, J Am Stat Assoc 1966;61:1097-1129;
    /// Muggeo VMR, Stat Med 2003;22:3055-3071; Kim HJ et al., Stat Med 2000;19:335-351 (all from memory).
    /// </remarks>
    public static BrokenLineFit Fit(IReadOnlyList<TimedCount> counts, int changes, SlopeChangeOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(counts);
        options ??= new SlopeChangeOptions();
        options.Check();
        if (changes is < 0 or > 4) throw new ArgumentOutOfRangeException(nameof(changes), changes, "The number of changes must lie between 0 and 4.");
        var data = LineData.Of(counts);
        if (ReasonOf(data, changes, options) is { } reason) return new BrokenLineFit(changes, data?.Times.Length ?? 0, options.Confidence, reason);
        var search = new KnotSearch(data!, options.LeastPeriods);
        var path = Path(search, changes);
        return path.Count > changes
            ? LineReport.Of(counts, data!, search, path[changes], options)
            : new BrokenLineFit(changes, data!.Times.Length, options.Confidence, path.Count == 0 ? UndefinedReason.Separation : UndefinedReason.NoRoomForChanges);
    }

    /// <summary>The number of changes that the counts show, and the line with that many.</summary>
    /// <param name="counts">The periods, in any order; those without trials say nothing.</param>
    /// <param name="options">The most changes, how the number is chosen, errors and confidence; null for the defaults.</param>
    /// <returns>The choice, with all lines and what was held against what; a fit with a reason where not even a straight line can be fitted.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// Permutation: fewer = 0 against the most; where rejected, fewer rises by one, else the most falls by one, until they meet. Each test at the
    /// significance / (most - fewer), so that the chance of finding more changes than there are is at most the significance. p = (1 + as large) / (1 + permutations);
    /// each permutation has a stream of its own from the seed. It holds for overdispersion that is a multiple of binomial variance, and needs periods that do
    /// not depend on each other. Criteria: deviance / dispersion + (2 + 2 or 3 changes) ln(periods); dispersion that of the line with most changes (1 for
    /// <see cref="DispersionScale.Binomial"/>). Source: Kim HJ et al., Stat Med 2000;19:335-351; Schwarz G, Ann Stat 1978;6:461-464; Zhang NR, Siegmund DO, Biometrics 2007;63:22-32 (all from memory).
    /// </remarks>
    public static BrokenLineChoice Choose(IReadOnlyList<TimedCount> counts, SlopeChangeOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(counts);
        options ??= new SlopeChangeOptions();
        options.Check();
        var data = LineData.Of(counts);
        BrokenLineChoice Without(UndefinedReason reason) => new(new BrokenLineFit(0, data?.Times.Length ?? 0, options.Confidence, reason), [], [], [], options.Selection, 0, null);
        if (ReasonOf(data, 0, options) is { } reason) return Without(reason);
        var most = options.MostChanges;
        while (most > 0 && ReasonOf(data, most, options) is not null) most--;
        var search = new KnotSearch(data!, options.LeastPeriods);
        var path = Path(search, most);
        if (path.Count == 0) return Without(UndefinedReason.Separation);
        List<BrokenLineFit> fits = [.. path.Select(solution => LineReport.Of(counts, data!, search, solution, options, false)).TakeWhile(fit => fit.Reason is null)];
        if (fits.Count == 0) return Without(UndefinedReason.CollinearTerms);
        most = fits.Count - 1;
        var scores = Scores(fits, options);
        List<ChangeNumberTest> tests = [];
        var chosen = 0;
        if (options.Selection == SlopeChangeSelection.Permutation)
        {
            var (fewer, more) = (0, most);
            while (fewer < more)
            {
                var level = options.Significance / (most - fewer);
                var (statistic, p) = ChangePermutation.Test(data!, search, path[fewer], more, level, options);
                tests.Add(new ChangeNumberTest(fewer, more, statistic, p, level, p <= level));
                if (p <= level) fewer++;
                else more--;
            }

            chosen = fewer;
        }
        else
        {
            var strict = options.Selection == SlopeChangeSelection.StrictInformationCriterion;
            chosen = scores.MinBy(score => strict ? score.StrictInformationCriterion : score.InformationCriterion)!.Number;
        }

        var permuted = options.Selection == SlopeChangeSelection.Permutation && tests.Count > 0;
        var fit = LineReport.Of(counts, data!, search, path[chosen], options);
        fits[chosen] = fit;
        return new BrokenLineChoice(fit, fits, scores, tests, options.Selection, permuted ? options.Permutations : 0, permuted ? options.Seed : null);
    }

    /// <summary>The lines with 0, 1, ... changes, as many as can be fitted.</summary>
    private static List<LineSolution> Path(KnotSearch search, int most)
    {
        List<LineSolution> path = [];
        if (search.Straight() is not { } straight) return path;
        path.Add(straight);
        while (path.Count <= most && search.WithOneMore(path[^1]) is { } next) path.Add(next);
        return path;
    }

    private static UndefinedReason? ReasonOf(LineData? data, int changes, SlopeChangeOptions options)
    {
        if (data is null) return UndefinedReason.NoTrials;
        var events = data.Events.Sum();
        if (events == 0) return UndefinedReason.NoEvents;
        if (events >= data.Trials.Sum()) return UndefinedReason.OnlyEvents;
        if (data.Places.Length < Math.Max(2, ((changes + 1) * options.LeastPeriods) - changes)) return UndefinedReason.TooFewPeriods;
        return data.Times.Length <= 2 + (2 * changes) && (changes > 0 || options.Scale != DispersionScale.Binomial) ? UndefinedReason.NoDegreesOfFreedom : null;
    }

    private static List<ChangeNumberScore> Scores(List<BrokenLineFit> fits, SlopeChangeOptions options)
    {
        var factor = fits[^1].VarianceFactor!.Value;
        var size = Math.Log(fits[0].Periods);
        var strict = options.Selection != SlopeChangeSelection.InformationCriterion;
        double Score(BrokenLineFit fit, int cost) => (fit.Deviance!.Value / factor) + ((2 + (cost * fit.Number)) * size);
        double[] scores = [.. fits.Select(fit => Score(fit, strict ? 3 : 2))];
        double[] weights = [.. scores.Select(score => Math.Exp((scores.Min() - score) / 2))];
        return [.. fits.Select((fit, i) => new ChangeNumberScore(fit.Number, fit.Deviance!.Value, Score(fit, 2), Score(fit, 3), weights[i] / weights.Sum()))];
    }
}
