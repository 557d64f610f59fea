using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.Weekdays;

/// <summary>Whether positives (or unusable runs) are more frequent on some days of the week, with the weeks held.</summary>
public static class WeekdayComparison
{
    private const double MostAutomatic = 60;
    private const double MostConditional = 1000;
    private const string Method = "weekdays within weeks, logistic";

    /// <summary>The odds of each day against the mean of the days, and the test that no day differs.</summary>
    /// <param name="counts">The days, in any order; those without trials are left out, several rows of one day are one.</param>
    /// <param name="options">How weeks are held, errors and confidence; null for the defaults.</param>
    /// <returns>The days and the test; a reason where days cannot be compared within weeks.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">A conditional comparison of counts that are not whole, or of a week with too many events.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option outside its domain.</exception>
    /// <remarks>
    /// logit p = week + day. Given a week's events, the week's term drops out: what is left is how they spread over the days (noncentral hypergeometric, summed
    /// exactly). Where a week has many, its term at its most likely value gives the same to within their reciprocal. A day without events (or with nothing else)
    /// has no ratio, but counts in the test, at its limit. The test is the likelihood ratio over the variance factor: chi-square with days - 1 degrees, or,
    /// where the factor was estimated, that over its degrees against F. Limits: exp(effect ± critical value x error), Student's where the
    /// factor was estimated. With about 5 events a week over half a year, given the weeks' events, limits of 95 % covered in 93 to 97 % (a test). Source: Breslow NE, Day NE, Statistical Methods in
    /// Cancer Research, vol. 1, 1980, chapter 7; McCullagh P, Nelder JA, Generalized Linear Models, 1989, sections 4.5 and 7.3 (from memory).
    /// </remarks>
    public static WeekdayPattern Compare(IReadOnlyList<WeekdayCount> counts, WeekdayOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(counts);
        options ??= new WeekdayOptions();
        options.Check();
        WeekdayCount[] rows =
        [
            .. counts.Where(count => count.Trials > 0).GroupBy(count => (count.Week, Day: ((int)count.Weekday + 6) % 7)).OrderBy(group => group.Key.Week).ThenBy(group => group.Key.Day)
                .Select(group => new WeekdayCount(group.Key.Week, (DayOfWeek)((group.Key.Day + 1) % 7), group.Select(row => row.Events).Order().Sum(), group.Select(row => row.Trials).Order().Sum())),
        ];
        DayOfWeek[] days = [.. rows.Select(row => row.Weekday).Distinct().OrderBy(day => ((int)day + 6) % 7)];
        var (events, trials) = (rows.Sum(row => row.Events), rows.Sum(row => row.Trials));
        WeekdayPattern Without(UndefinedReason reason) => new(
            [.. days.Select(day => Effect(rows, day, Estimate.Undefined(reason), null))], 0, 0, null, null, null, null, null, null, options.Confidence, reason);
        if (rows.Length == 0) return Without(UndefinedReason.NoTrials);
        if (events == 0) return Without(UndefinedReason.NoEvents);
        if (events >= trials) return Without(UndefinedReason.OnlyEvents);

        var all = Strata(rows, days, days, options.Adjustment);
        var (bounded, reasons) = Bounded(rows, days);
        if (all.Count == 0) return Without(UndefinedReason.NoSharedStratum);
        var strata = bounded.Length < 2 ? [] : Strata([.. rows.Where(row => bounded.Contains(row.Weekday))], bounded, days, options.Adjustment, rows);
        var straight = all.Sum(stratum => stratum.At(new double[days.Length]).Log);
        double[] effects = [];
        double[,]? covariance = null;
        double best = 0;
        if (bounded.Length >= 2)
        {
            if (Newton(strata, bounded.Length) is not { } found) return Without(UndefinedReason.NoSharedStratum);
            (effects, covariance, best) = found;
        }

        var degrees = all.SelectMany(stratum => stratum.Days).Distinct().Count() - 1;
        var residual = strata.Sum(stratum => stratum.Days.Length - 1) - Math.Max(0, bounded.Length - 1);
        double? dispersion = residual > 0 ? strata.Sum(stratum => stratum.Pearson(effects)) / residual : null;
        if (options.Scale != DispersionScale.Binomial && dispersion is null) return Without(UndefinedReason.NoDegreesOfFreedom);
        var factor = options.Scale switch
        {
            DispersionScale.Binomial => options.DesignEffect,
            DispersionScale.Pearson => dispersion!.Value,
            _ => Math.Max(options.DesignEffect, dispersion!.Value),
        };
        var ratio = Math.Max(0, 2 * (best - straight));
        var scaled = ratio / factor;
        if (!double.IsFinite(scaled)) return Without(UndefinedReason.NoDegreesOfFreedom);
        var p = options.Scale == DispersionScale.Binomial
            ? GammaTail.ChiSquareUpper(degrees, scaled)
            : Binomial.BetaLower(residual / 2.0, degrees / 2.0, residual / (residual + scaled), scaled / (residual + scaled));
        var critical = options.Scale == DispersionScale.Binomial ? Quantile.Normal(options.Confidence) : Quantile.Student(options.Confidence, residual);

        // Where days tell events apart without exception, the likelihood and with it the test have a limit, the ratios do not.
        var separated = effects.Length > 0 && (covariance is null || Enumerable.Range(0, effects.Length).Any(d => Math.Abs(effects[d]) + (critical * Math.Sqrt(Math.Max(0, covariance[d, d] * factor))) > 300));
        var figures = days.Select(day =>
        {
            if (reasons.TryGetValue(day, out var reason)) return Effect(rows, day, Estimate.Undefined(reason), null);
            var place = Array.IndexOf(bounded, day);
            if (place < 0 || effects.Length == 0) return Effect(rows, day, Estimate.Undefined(UndefinedReason.NoSharedStratum), null);
            if (separated) return Effect(rows, day, Estimate.Undefined(UndefinedReason.Separation), null);
            var error = Math.Sqrt(Math.Max(0, covariance![place, place]) * factor);
            var half = critical * error;
            return Effect(rows, day, Estimate.Of(Math.Exp(effects[place]), new Interval(Math.Exp(effects[place] - half), Math.Exp(effects[place] + half)), Method, options.Confidence), error);
        });
        return new WeekdayPattern(
            [.. figures], all.Count, all.Count(stratum => stratum.IsConditional), ratio, degrees, residual, dispersion, factor, p, options.Confidence, null);
    }

    private static WeekdayEffect Effect(WeekdayCount[] rows, DayOfWeek day, Estimate ratio, double? error)
    {
        WeekdayCount[] own = [.. rows.Where(row => row.Weekday == day)];
        return new WeekdayEffect(day, own.Sum(row => row.Events), own.Sum(row => row.Trials), ratio, error);
    }

    /// <summary>The weeks that compare days: two days, an event, a trial without one.</summary>
    private static List<WeekStratum> Strata(WeekdayCount[] rows, DayOfWeek[] compared, DayOfWeek[] days, WeekAdjustment adjustment, WeekdayCount[]? whole = null)
    {
        // Whether a week is conditional is settled by all its days, so that likelihoods of fewer days can be held against each other.
        var kinds = (whole ?? rows).GroupBy(row => row.Week).ToDictionary(week => week.Key, week => IsConditional([.. week], adjustment));
        return
        [
            .. rows.GroupBy(row => row.Week).Where(Compares).Select(week => new WeekStratum(
                [.. week.Select(row => Array.IndexOf(compared, row.Weekday))], [.. week.Select(row => row.Events)], [.. week.Select(row => row.Trials)], kinds[week.Key])),
        ];
    }

    private static bool Compares(IGrouping<int, WeekdayCount> week) => week.Count() > 1 && week.Sum(row => row.Events) is > 0 and var events && events < week.Sum(row => row.Trials);

    private static bool IsConditional(WeekdayCount[] week, WeekAdjustment adjustment)
    {
        if (adjustment == WeekAdjustment.WeekTerms) return false;
        var (events, trials) = (week.Sum(row => row.Events), week.Sum(row => row.Trials));
        var fits = week.All(row => row.Events == Math.Floor(row.Events) && row.Trials == Math.Floor(row.Trials)) && Math.Min(events, trials - events) <= (adjustment == WeekAdjustment.Conditional ? MostConditional : MostAutomatic);
        if (!fits && adjustment == WeekAdjustment.Conditional)
            throw new ArgumentException("A conditional comparison takes whole counts, and weeks of at most 1,000 events or 1,000 trials without one.", nameof(week));
        return fits;
    }

    /// <summary>The days with a finite effect, and why the others that are compared have none; a day in no comparing week is in neither.</summary>
    private static (DayOfWeek[] Bounded, Dictionary<DayOfWeek, UndefinedReason> Reasons) Bounded(WeekdayCount[] rows, DayOfWeek[] days)
    {
        var reasons = new Dictionary<DayOfWeek, UndefinedReason>();
        while (true)
        {
            WeekdayCount[] left = [.. rows.Where(row => !reasons.ContainsKey(row.Weekday)).GroupBy(row => row.Week).Where(Compares).SelectMany(week => week)];
            DayOfWeek[] present = [.. days.Where(day => left.Any(row => row.Weekday == day))];
            var before = reasons.Count;
            foreach (var day in present)
            {
                WeekdayCount[] own = [.. left.Where(row => row.Weekday == day)];
                var events = own.Sum(row => row.Events);
                if (events == 0) reasons[day] = UndefinedReason.OddsRatioZero;
                else if (events >= own.Sum(row => row.Trials)) reasons[day] = UndefinedReason.OddsRatioUnbounded;
            }

            if (reasons.Count == before) return (present, reasons);
        }
    }

    /// <summary>The most likely effects, which add up to 0, their covariance (null where they have no bound) and the likelihood; null where weeks do not link the days.</summary>
    private static (double[] Effects, double[,]? Covariance, double Log)? Newton(List<WeekStratum> strata, int days)
    {
        var effects = new double[days];
        var (log, slope, information) = Sums(strata, effects, days);
        double[] most = [.. Enumerable.Range(0, days - 1).Select(j => information[j, j])];
        for (var step = 0; step < 100; step++)
        {
            // The effects of all days but the last are free; the last is 0 until the mean is taken out.
            // Where days tell events apart, an effect runs away and its information with it: what is left of both is rounding, and a step by it goes anywhere.
            var fades = Enumerable.Range(0, days - 1).Any(j => information[j, j] < 1e-12 * most[j]);
            if (fades || SymmetricMatrix.Factor(information, 1e-12, out _) is not { } factor)
                return effects.Any(effect => Math.Abs(effect) > 10) ? (effects, null, log) : null;
            var change = SymmetricMatrix.Solve(factor, slope);
            double promise = 0;
            for (var j = 0; j < change.Length; j++) promise += change[j] * slope[j];
            if (promise < 1e-17)
            {
                for (var j = 0; j < change.Length; j++) effects[j] += change[j];
                return Centred(effects, SymmetricMatrix.Inverse(factor), log + (promise / 2));
            }

            var size = 1.0;
            double[] next;
            (double Log, double[] Slope, double[,] Information) after;
            do
            {
                next = [.. effects.Select((effect, j) => j < change.Length ? effect + (size * change[j]) : 0)];
                after = Sums(strata, next, days);
                size /= 2;
            }
            while (!(after.Log >= log - (1e-12 * Math.Abs(log))) && size > 1e-10);
            if (!(after.Log >= log - (1e-12 * Math.Abs(log)))) return Centred(effects, SymmetricMatrix.Inverse(factor), log);
            (effects, log, slope, information) = (next, after.Log, after.Slope, after.Information);
        }

        return (effects, null, log);
    }

    private static (double[] Effects, double[,] Covariance, double Log) Centred(double[] effects, double[,] inverse, double log)
    {
        var days = effects.Length;
        var mean = effects.Sum() / days;
        var (rows, whole) = (new double[days], 0.0);
        for (var a = 0; a < days - 1; a++)
        {
            for (var b = 0; b < days - 1; b++) rows[a] += inverse[a, b] / days;
            whole += rows[a] / days;
        }

        var covariance = new double[days, days];
        for (var a = 0; a < days; a++)
        {
            for (var b = 0; b < days; b++) covariance[a, b] = (a < days - 1 && b < days - 1 ? inverse[a, b] : 0) - rows[a] - rows[b] + whole;
        }

        return ([.. effects.Select(effect => effect - mean)], covariance, log);
    }

    private static (double Log, double[] Slope, double[,] Information) Sums(List<WeekStratum> strata, double[] effects, int days)
    {
        double log = 0;
        var (slope, information) = (new double[days - 1], new double[days - 1, days - 1]);
        foreach (var stratum in strata)
        {
            var (part, rest, covariance) = stratum.At(effects);
            log += part;
            for (var a = 0; a < stratum.Days.Length; a++)
            {
                var i = stratum.Days[a];
                if (i == days - 1) continue;
                slope[i] += rest[a];
                for (var b = 0; b < stratum.Days.Length; b++)
                {
                    if (stratum.Days[b] < days - 1) information[i, stratum.Days[b]] += covariance[a, b];
                }
            }
        }

        return (log, slope, information);
    }
}
