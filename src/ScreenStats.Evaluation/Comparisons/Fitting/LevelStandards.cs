using ScreenStats.Evaluation.Comparisons.Strata;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Standardisation;

namespace ScreenStats.Evaluation.Comparisons.Fitting;

/// <summary>What a level would have at the program's rates, and what the program's mix would make of its own rates.</summary>
/// <param name="Expected">Events expected; null where nothing can be.</param>
/// <param name="Ratio">Observed over expected.</param>
/// <param name="Standardised">The directly standardised rate.</param>
internal sealed record LevelStandards(double? Expected, EstimateFinding Ratio, EstimateFinding Standardised)
{
    public static LevelStandards Of(ComparedLevel level, ComparedStrata strata, double designEffect, double confidence)
    {
        ReferenceStratum[] reference = [.. level.Strata.Select(at => new ReferenceStratum(at.Events, at.Trials, strata.Strata[at.Stratum].Events, strata.Strata[at.Stratum].Trials))];
        var indirect = IndirectStandardisation.Of(reference, IndirectMethod.Exact, confidence);
        var expected = indirect.Ratio.IsDefined ? indirect.Expected : null;
        var ratio = indirect.Ratio is { Value: { } observed, IsDefined: true }
            ? Finding(observed, Widening.Of(observed, confidence, designEffect, at => IndirectStandardisation.Of(reference, IndirectMethod.Exact, at).Ratio.Interval), MethodNames.ExpectedAtProgramRates, confidence)
            : EstimateFinding.Undefined((indirect.Ratio.Reason ?? UndefinedReason.NoTrials).Describe());
        return new LevelStandards(expected, ratio, Direct(level, strata, designEffect, confidence));
    }

    private static EstimateFinding Direct(ComparedLevel level, ComparedStrata strata, double designEffect, double confidence)
    {
        if (level.Strata.Count < strata.Strata.Count) return EstimateFinding.Undefined("it has no trials in some of the program's strata, so nothing is known of its rate there");
        StandardStratum[] own = [.. level.Strata.Select(at => new StandardStratum(at.Events, at.Trials, strata.Strata[at.Stratum].Trials))];
        var direct = DirectStandardisation.Of(own, DirectMethod.FayFeuer, confidence).Rate;
        if (direct is not { Value: { } rate, IsDefined: true }) return EstimateFinding.Undefined((direct.Reason ?? UndefinedReason.NoTrials).Describe());
        var limits = Widening.Of(rate, confidence, designEffect, at => DirectStandardisation.Of(own, DirectMethod.FayFeuer, at).Rate.Interval);
        return Finding(rate, limits is { } some ? new Interval(some.Lower, Math.Min(1, Math.Max(rate, some.Upper))) : null, MethodNames.DirectStandardisation, confidence);
    }

    private static EstimateFinding Finding(double value, Interval? limits, string method, double confidence) => new(value, null, limits?.Lower, limits?.Upper, method, confidence);
}
