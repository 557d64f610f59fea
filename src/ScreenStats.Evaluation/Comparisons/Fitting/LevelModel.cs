using System.Collections.Immutable;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression;
using ScreenStats.Statistics.Regression.Intercepts;
using ScreenStats.Statistics.Regression.Ranks;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>Rates of levels at the program's mix, by a logistic model of counts that are divided by the design effect.</summary>
internal sealed class LevelModel
{
    /// <summary>Above so many levels the effect of each is integrated by Laplace's approximation.</summary>
    private const int MostQuadrature = 60;

    private readonly ComparedStrata strata;
    private readonly double designEffect;
    private readonly double confidence;
    private readonly EstimateFinding[] adjusted;
    private readonly (double Mean, double Deviation)?[] effects;
    private readonly List<(string Term, string Level, EstimateFinding Odds, double? P, string Remark)> terms = [];
    private readonly List<string> leftOut = [];

    public LevelModel(ComparedStrata strata, double designEffect, double confidence)
    {
        (this.strata, this.designEffect, this.confidence) = (strata, designEffect, confidence);
        adjusted = new EstimateFinding[strata.Levels.Count];
        effects = new (double, double)?[strata.Levels.Count];
        Spread = EstimateFinding.Undefined("there are fewer than five, too few to know how much such ones differ");
        Deviation = Spread;
        if (strata.Levels.Count >= WidenedInterval.FewestGroups) Random();
        else Fixed();
        Ranks = Rank();
    }

    /// <summary>The adjusted rate of each level, in the order of levels.</summary>
    public IReadOnlyList<EstimateFinding> Adjusted => adjusted;

    /// <summary>The place of each level by its adjusted rate; null where it has none.</summary>
    public IReadOnlyList<ComparisonRank?> Ranks { get; }

    /// <summary>Where the rate of another level would lie at the program's mix.</summary>
    public EstimateFinding Spread { get; private set; }

    /// <summary>The standard deviation between levels on the logit scale.</summary>
    public EstimateFinding Deviation { get; private set; }

    /// <summary>Whether no variance between levels is more likely than none.</summary>
    public bool IsAlike { get; private set; }

    /// <summary>The terms of period and what else is adjusted for; of levels too, where these are few.</summary>
    public IReadOnlyList<(string Term, string Level, EstimateFinding Odds, double? P, string Remark)> Terms => terms;

    /// <summary>What the model leaves out although it is adjusted for elsewhere, with the reason.</summary>
    public ImmutableArray<string> LeftOut => [.. leftOut];

    private void Random()
    {
        var options = new RandomInterceptOptions { Nodes = strata.Levels.Count > MostQuadrature ? 1 : 25, Confidence = confidence };
        var (model, fit) = Settled(used => RandomInterceptLogistic.Fit(Rows(used, level => level), options), found => found.Reason);
        var alike = fit.Reason == UndefinedReason.GroupsAllAlike;
        if (fit.Reason is { } reason)
        {
            Array.Fill(adjusted, EstimateFinding.Undefined(reason.Describe()));
            (Spread, Deviation) = (EstimateFinding.Undefined(reason.Describe()), EstimateFinding.Undefined(reason.Describe()));
            if (!alike) return;
        }

        AddTerms(model, fit.Coefficients, fit.StandardErrors, skip: 1);
        if (alike)
        {
            IsAlike = true;
            double[] eta = [.. Enumerable.Range(0, strata.Strata.Count).Select(s => fit.Coefficients[0] + model.Of(s).Select((x, j) => x * fit.Coefficients[1 + j]).Sum())];
            var (_, drawn) = new AlikeLevels(strata, eta, designEffect).Fit();
            for (var i = 0; i < drawn.Length; i++) (adjusted[i], effects[i]) = (AlikeLevels.Rate(strata, eta, drawn[i], designEffect, confidence), drawn[i]);
            return;
        }

        foreach (var effect in fit.Effects)
        {
            var rate = EstimateFinding.Of(effect.Rate);
            adjusted[effect.Group] = rate with { Method = rate.Method is null ? null : MethodNames.RandomIntercept };
            if (effect is { Mean: { } mean, StandardDeviation: { } deviation }) effects[effect.Group] = (mean, deviation);
        }

        var sigma = Math.Sqrt(fit.Variance ?? 0);
        var far = Quantile.Student(confidence, strata.Levels.Count - 2) * sigma;
        Spread = new EstimateFinding(AtMix(model, fit.Coefficients, 0), null, AtMix(model, fit.Coefficients, -far), AtMix(model, fit.Coefficients, far), MethodNames.Prediction, confidence);
        Deviation = EstimateFinding.Of(fit.StandardDeviation) with { Method = MethodNames.RandomIntercept };
    }

    /// <summary>A term for each level: those without an event, or with nothing else, have none.</summary>
    private void Fixed()
    {
        var bounded = Enumerable.Range(0, strata.Levels.Count).Where(i => strata.Levels[i].Events > 0 && strata.Levels[i].Events < strata.Levels[i].Trials).ToList();
        for (var i = 0; i < adjusted.Length; i++)
        {
            adjusted[i] = EstimateFinding.Undefined(
                bounded.Contains(i) ? "there is no other with events to compare it with"
                : strata.Levels[i].Events == 0 ? "it has no event, so that its term in the model has no bound" : "all its trials are events, so that its term in the model has no bound");
        }

        if (bounded.Count < 2) return;
        var reference = bounded.MaxBy(i => strata.Levels[i].Trials);
        int[] own = [.. bounded.Where(i => i != reference)];
        var (model, fit) = Settled(
            used => LogisticRegression.Fit([.. Rows(used, level => level).Where(row => bounded.Contains(row.Group)).Select(row => With(row, own))], new LogisticOptions { Confidence = confidence }),
            found => found.Reason);
        if (fit.Reason is { } reason)
        {
            foreach (var i in bounded) adjusted[i] = EstimateFinding.Undefined(reason.Describe());
            return;
        }

        foreach (var i in bounded) Marginal(i, Array.IndexOf(own, i), model, fit);
        var word = "level";
        for (var k = 0; k < own.Length; k++) AddTerm(word, strata.Levels[own[k]].Name, fit.Coefficients[1 + k], fit.StandardErrors[1 + k], "reference: " + strata.Levels[reference].Name);
        foreach (var i in Enumerable.Range(0, adjusted.Length).Except(bounded))
        {
            terms.Add((word, strata.Levels[i].Name, EstimateFinding.Undefined(strata.Levels[i].Events == 0 ? "it has no event: the odds ratio is 0 and the model sets no limit" : "all its trials are events: the odds ratio has no bound"), null,
                "left out of the model: it separates the events from the others"));
        }

        AddTerms(model, fit.Coefficients, fit.StandardErrors, skip: 1 + own.Length);
    }

    /// <summary>The rate at the program's mix of one level that has a term, with limits on its logit.</summary>
    private void Marginal(int level, int term, ModelTerms model, LogisticFit fit)
    {
        double rate = 0, others = 0;
        var slopes = new double[fit.Coefficients.Count];
        var skip = slopes.Length - model.Names.Count;
        for (var s = 0; s < strata.Strata.Count; s++)
        {
            var weight = (double)strata.Strata[s].Trials / strata.Trials;
            double[] x = [1, .. Enumerable.Range(1, skip - 1).Select(k => k - 1 == term ? 1.0 : 0.0), .. model.Of(s)];
            var eta = x.Select((value, j) => value * fit.Coefficients[j]).Sum();
            var (p, q) = (1 / (1 + Math.Exp(-eta)), 1 / (1 + Math.Exp(eta)));
            rate += weight * p;
            others += weight * q;
            for (var j = 0; j < x.Length; j++) slopes[j] += weight * p * q * x[j];
        }

        double variance = 0;
        for (var j = 0; j < slopes.Length; j++)
        {
            for (var k = 0; k < slopes.Length; k++) variance += slopes[j] * slopes[k] * fit.Covariance[j][k];
        }

        var (logit, deviation) = (Math.Log(rate / others), Math.Sqrt(variance) / (rate * others));
        var half = Quantile.Normal(confidence) * deviation;
        adjusted[level] = new EstimateFinding(rate, null, 1 / (1 + Math.Exp(half - logit)), 1 / (1 + Math.Exp(-half - logit)), MethodNames.FixedTerms, confidence);
        effects[level] = (logit, deviation);
    }

    /// <summary>The fit with as much of what is adjusted for as it can bear: what cannot be told apart, or separates, is left out from the last on.</summary>
    private (ModelTerms Terms, TFit Fit) Settled<TFit>(Func<ModelTerms, TFit> fit, Func<TFit, UndefinedReason?> reasonOf)
    {
        var without = new List<string>();
        while (true)
        {
            var model = new ModelTerms(strata, without);
            var found = fit(model);
            if (reasonOf(found) is not (UndefinedReason.CollinearTerms or UndefinedReason.Separation) || model.Names.Count == 0) return (model, found);
            var last = model.Names[^1].Term;
            without.Add(last);
            leftOut.Add($"{last} in the model: {reasonOf(found)!.Value.Describe()}");
        }
    }

    private IEnumerable<BinomialRow> AllRows(ModelTerms model, Func<int, int> group) => strata.Levels.SelectMany((level, index) =>
        level.Strata.Select(at => new BinomialRow(at.Events / designEffect, at.Trials / designEffect, model.Of(at.Stratum), group(index))));

    private BinomialRow[] Rows(ModelTerms model, Func<int, int> group) => [.. AllRows(model, group)];

    private static BinomialRow With(BinomialRow row, int[] own) => new(row.Events, row.Trials, [.. own.Select(level => level == row.Group ? 1.0 : 0.0), .. row.Terms], row.Group);

    private double AtMix(ModelTerms model, IReadOnlyList<double> coefficients, double effect)
    {
        double rate = 0;
        for (var s = 0; s < strata.Strata.Count; s++)
        {
            var eta = coefficients[0] + effect;
            var x = model.Of(s);
            for (var j = 0; j < x.Length; j++) eta += x[j] * coefficients[1 + j];
            rate += (double)strata.Strata[s].Trials / strata.Trials / (1 + Math.Exp(-eta));
        }

        return rate;
    }

    private void AddTerms(ModelTerms model, IReadOnlyList<double> coefficients, IReadOnlyList<double> errors, int skip)
    {
        for (var j = 0; j < model.Names.Count; j++) AddTerm(model.Names[j].Term, model.Names[j].Level, coefficients[skip + j], errors[skip + j], "reference: " + model.Names[j].Reference);
    }

    private void AddTerm(string term, string level, double coefficient, double error, string remark)
    {
        var half = Quantile.Normal(confidence) * error;
        terms.Add((term, level, new EstimateFinding(Math.Exp(coefficient), null, Math.Exp(coefficient - half), Math.Exp(coefficient + half), MethodNames.LogisticTerms, confidence),
            error > 0 ? TailProbability.Normal(coefficient / error) : null, remark));
    }

    private ComparisonRank?[] Rank()
    {
        var known = Enumerable.Range(0, effects.Length).Where(i => effects[i] is not null).ToArray();
        var ranks = new ComparisonRank?[effects.Length];
        if (known.Length is < 2 or > 2000) return ranks;
        var drawn = Ranking.OfEffects([.. known.Select(i => effects[i]!.Value)], new RankOptions { Replicates = known.Length > 200 ? 1000 : 4000, Confidence = confidence });
        var places = known.OrderByDescending(i => adjusted[i].Estimate).ThenBy(i => i).Select((i, place) => (i, place)).ToDictionary(pair => pair.i, pair => pair.place + 1);
        for (var k = 0; k < known.Length; k++) ranks[known[k]] = new ComparisonRank(places[known[k]], drawn[k].Lowest, drawn[k].Highest, drawn[k].ChanceHighest);
        return ranks;
    }
}
