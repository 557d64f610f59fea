using System.Collections.Immutable;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Funnels;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Stratified;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>Whether, and by how much, levels differ as a whole.</summary>
internal sealed class LevelTests
{
    /// <summary>Below this expected count a chi-square is not to be trusted.</summary>
    private const double FewestExpected = 5;

    private const long MostSteps = 4_000;
    private readonly ImmutableArray<ComparisonTestRow>.Builder rows = ImmutableArray.CreateBuilder<ComparisonTestRow>();
    private readonly Func<string, ComparisonTestRow> row;

    public LevelTests(ComparedStrata strata, PooledEffect effect, Funnel funnel, LevelModel model, double confidence, Func<string, ComparisonTestRow> row)
    {
        this.row = row;
        GroupCount[] groups = [.. strata.Levels.Select(level => new GroupCount(level.Events, level.Trials))];
        Within = GeneralAssociation.Test(
            [.. strata.Levels.SelectMany((level, index) => level.Strata.Select(at => new StratumGroup(at.Stratum, index, at.Events, at.Trials)))], effect.Value);
        var chi = HomogeneityTest.ChiSquare(groups);
        var few = chi.SmallestExpected < FewestExpected;
        Add("association-within-strata", MethodNames.AssociationWithinStrata, Within.Statistic, Within.Reason, Within.DegreesOfFreedom, Within.PValue,
            remark: Within.SmallestExpected < FewestExpected ? "fewer than 5 events expected of some: rough" : "");
        Add("chi-square", MethodNames.ChiSquare, chi.Statistic, chi.Reason, chi.DegreesOfFreedom, chi.PValue, remark: few ? "fewer than 5 expected of some: read the exact test" : "as if all runs were independent");
        Add("chi-square-widened", MethodNames.ChiSquareWidened, chi.Statistic / effect.Value, chi.Reason, chi.DegreesOfFreedom,
            chi.Statistic is { } statistic ? TailProbability.ChiSquare(statistic / effect.Value, chi.DegreesOfFreedom!.Value) : null, remark: few ? "fewer than 5 expected of some: rough" : "");
        if (few || chi.Reason is not null) Exact(groups);
        Between(strata, groups, effect.Value, confidence);
        Add("overdispersion", MethodNames.FunnelOverdispersion, funnel.WinsorisedOverdispersion, funnel.Reason, Math.Max(0, strata.Levels.Count - 1), funnel.PValue, remark: "once adjusted");
        rows.Add(row("deviation-of-intercepts") with { Method = MethodNames.RandomIntercept, Statistic = model.Deviation.Estimate, Lower = model.Deviation.Lower, Upper = model.Deviation.Upper, Undefined = model.Deviation.EstimateUndefined, Remark = "standard deviation on the logit scale, once adjusted" });
        rows.Add(row("prediction-adjusted") with { Method = MethodNames.Prediction, Statistic = model.Spread.Estimate, Lower = model.Spread.Lower, Upper = model.Spread.Upper, Undefined = model.Spread.EstimateUndefined, Remark = "rate of another one at the program's mix" });
        foreach (var (name, value) in new[] { ("scatter-of-persons", effect.Persons), ("scatter-of-site-weeks", effect.SiteWeeks), ("scatter-of-sites", effect.Sites) })
        {
            if (name == "scatter-of-sites" && value is null) continue;
            rows.Add(row(name) with { Method = MethodNames.QuasiScale, Statistic = value, Undefined = value is null ? "too few to tell" : null, Remark = value is not null && value == effect.Value && effect.Of is not null ? "the design effect that is allowed for" : "" });
        }
    }

    /// <summary>The test to read: within strata, clusters allowed for.</summary>
    public GeneralAssociationResult Within { get; }

    public ImmutableArray<ComparisonTestRow> Rows => rows.ToImmutable();

    private void Add(string test, string method, double? statistic, UndefinedReason? reason, int? degrees, double? p, string remark) =>
        rows.Add(row(test) with { Method = method, Statistic = statistic, Undefined = statistic is null ? (reason ?? UndefinedReason.NotConverged).Describe() : null, DegreesOfFreedom = statistic is null ? null : degrees, P = p, Remark = statistic is null ? "" : remark });

    private void Exact(GroupCount[] groups)
    {
        // Each table drawn takes as many steps as there are events and levels; with thousands of events the chi-square holds well enough.
        var steps = groups.Sum(group => group.Events) + groups.Length;
        if (steps > MostSteps)
        {
            rows.Add(row("exact") with { Method = MethodNames.ExactHomogeneity, Undefined = "there are too many events to draw tables of; see the chi-square" });
            return;
        }

        var exact = ExactHomogeneity.Test(groups, new ExactHomogeneityOptions { Replicates = (int)Math.Clamp(4_000_000 / Math.Max(1, steps), 999, 9_999), MostPartialTables = groups.Length <= 20 && steps <= 500 ? 20_000 : 0 });
        rows.Add(row("exact") with
        {
            Method = MethodNames.ExactHomogeneity,
            P = exact.PValue,
            Undefined = exact.PValue is null ? (exact.Reason ?? UndefinedReason.NotConverged).Describe() : null,
            Remark = exact.Method == ExactHomogeneityMethod.MonteCarlo
                ? $"{exact.Replicates.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture)} tables drawn from the seed 1; as if all runs were independent"
                : exact.PValue is null ? "" : "as if all runs were independent",
        });
    }

    private void Between(ComparedStrata strata, GroupCount[] groups, double designEffect, double confidence)
    {
        EffectEstimate[] logits = [.. groups.Select(EffectEstimate.Logit).Select(logit => new EffectEstimate(logit.Value, logit.Variance * designEffect))];
        foreach (var (name, method) in new[]
        {
            ("between-variance-dersimonian-laird", BetweenVarianceMethod.DerSimonianLaird), ("between-variance-paule-mandel", BetweenVarianceMethod.PauleMandel),
            ("between-variance-reml", BetweenVarianceMethod.RestrictedMaximumLikelihood),
        })
        {
            var result = RandomEffects.Of(logits, method, confidence);
            rows.Add(row(name) with
            {
                Method = MethodNames.BetweenVariance, Statistic = result.BetweenVariance, Lower = result.BetweenVarianceLimits?.Lower, Upper = result.BetweenVarianceLimits?.Upper,
                DegreesOfFreedom = result.DegreesOfFreedom, P = result.PValue, Undefined = result.Reason?.Describe(), Remark = "as counted; p: Cochran's Q",
            });
            if (method != BetweenVarianceMethod.RestrictedMaximumLikelihood) continue;
            rows.Add(row("i-squared") with { Method = MethodNames.BetweenVariance, Statistic = result.ISquared, Undefined = result.Reason?.Describe(), Remark = "as counted: share of all variation that lies between them" });
            var prediction = result.Prediction;
            rows.Add(row("prediction") with
            {
                Method = MethodNames.Prediction, Statistic = Fraction(prediction.Value), Lower = Fraction(prediction.Lower), Upper = Fraction(prediction.Upper), Undefined = prediction.Reason?.Describe(),
                Remark = "as counted: rate of another one",
            });
        }
    }

    private static double? Fraction(double? logit) => logit is { } value ? 1 / (1 + Math.Exp(-value)) : null;
}
