using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Standardisation;

/// <summary>Direct standardisation: the site's own rates, weighted as in a standard population.</summary>
public static class DirectStandardisation
{
    /// <summary>The standardised rate with its limits.</summary>
    /// <param name="strata">The strata of one site, in any order; those of size 0 in the standard population are left out.</param>
    /// <param name="method">How the limits are computed.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>
    /// The rate; undefined where the standard population is empty or has a stratum in which the site counted nobody (nothing is known of its rate
    /// there); without an event the gamma limits stand and the others are undefined.
    /// </returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An unknown method or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// With w = S / (ΣS n): y = Σ w x, v = Σ w² x. Fay and Feuer: gamma quantiles with shape y² / v, scale v / y, and above with shape (y + w)² / (v + w²), scale
    /// (v + w²) / (y + w), w the largest weight; Tiwari: Σw / k and Σw² / k in their place. Dobson: y + √(v / x) (limit of x - x). The variances are those of
    /// Poisson counts: with rates that are not small the limits are a little wide. Source: Fay MP, Feuer EJ, Stat Med 1997;16:791-801; Tiwari RC, Clegg
    /// LX, Zou Z, Stat Methods Med Res 2006;15:547-569; Dobson AJ et al., Stat Med 1991;10:457-462 (from memory).
    /// </remarks>
    public static DirectRate Of(IReadOnlyList<StandardStratum> strata, DirectMethod method = DirectMethod.FayFeuer, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(strata);
        Guard.Confidence(confidence);
        if (!Enum.IsDefined(method)) throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows.");
        StandardStratum[] used = [.. strata.Where(stratum => stratum.Standard > 0).OrderBy(stratum => stratum.Standard).ThenBy(stratum => stratum.Population).ThenBy(stratum => stratum.Events)];
        var events = used.Sum(stratum => stratum.Events);
        var population = used.Sum(stratum => stratum.Population);
        double? crude = population > 0 ? events / population : null;
        DirectRate Without(UndefinedReason reason) => new(events, population, crude, Estimate.Undefined(reason), null, null, method, events < 10);
        if (used.Length == 0) return Without(UndefinedReason.NoStandardPopulation);
        if (population == 0) return Without(UndefinedReason.NoTrials);
        if (used.Any(stratum => stratum.Population == 0)) return Without(UndefinedReason.StratumWithoutTrials);
        var standard = used.Sum(stratum => stratum.Standard);
        double rate = 0, variance = 0, largest = 0, sum = 0, squares = 0;
        foreach (var stratum in used)
        {
            var w = stratum.Standard / standard / stratum.Population;
            rate += w * stratum.Events;
            variance += w * w * stratum.Events;
            largest = Math.Max(largest, w);
            sum += w;
            squares += w * w;
        }

        var limits = method switch
        {
            DirectMethod.FayFeuer => Gamma(rate, variance, largest, largest * largest, confidence),
            DirectMethod.Tiwari => Gamma(rate, variance, sum / used.Length, squares / used.Length, confidence),
            _ when events == 0 => (Interval?)null,
            DirectMethod.DobsonExact => Dobson(rate, variance, events, PoissonInterval.Exact(events, confidence)),
            DirectMethod.DobsonByar => Dobson(rate, variance, events, PoissonInterval.Byar(events, confidence)),
            _ => Normal(rate, variance, confidence),
        };
        if (limits is not { } interval) return Without(UndefinedReason.NoEvents);
        return new DirectRate(events, population, crude, Estimate.Of(rate, interval.Including(rate), Name(method), confidence), variance, largest, method, events < 10);
    }

    private static string Name(DirectMethod method) => method switch
    {
        DirectMethod.FayFeuer => "directly standardised, Fay-Feuer",
        DirectMethod.Tiwari => "directly standardised, Fay-Feuer modified by Tiwari",
        DirectMethod.DobsonExact => "directly standardised, Dobson, exact Poisson",
        DirectMethod.DobsonByar => "directly standardised, Dobson, Byar",
        _ => "directly standardised, normal",
    };

    private static Interval Gamma(double rate, double variance, double weight, double square, double confidence)
    {
        var tail = (1 - confidence) / 2;
        var lower = rate == 0 ? 0 : variance / rate * GammaTail.Quantile(rate / variance * rate, tail, upperTail: false);
        var (y, v) = (rate + weight, variance + square);
        return new Interval(lower, v / y * GammaTail.Quantile(y / v * y, tail, upperTail: true));
    }

    private static Interval Dobson(double rate, double variance, long events, Interval count)
    {
        var unit = Math.Sqrt(variance / events);
        return new Interval(Math.Max(0, rate + (unit * (count.Lower - events))), rate + (unit * (count.Upper - events)));
    }

    private static Interval Normal(double rate, double variance, double confidence)
    {
        var half = Quantile.Normal(confidence) * Math.Sqrt(variance);
        return new Interval(Math.Max(0, rate - half), rate + half);
    }
}
