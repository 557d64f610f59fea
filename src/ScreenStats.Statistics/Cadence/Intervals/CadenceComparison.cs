using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>Intervals between screens side by side, in closed form: gain, burden, and what a positive is worth.</summary>
/// <remarks>
/// <para>Per infection: detection probability G(w), infectious days removed and their share (<see cref="ScreeningYield"/>). Per person and
/// year: 365/T screens, (365/T)(1 - Sp) false positives, 1 - Sp^(365/T) for one or more (<see cref="FalseAlarm"/>). For N people: true positives
/// 365 N lambda G(w), an infection counted once, at its first positive screen; false positives N (365/T)(1 - Sp); predictive value
/// lambda G(w)/(lambda G(w) + (1 - Sp)/T).</para>
/// <para>All person-time counts as uninfected for false positives, and as at risk for infection: right where few are infected at a time, and
/// few in a year. The incidence is one and the same whatever the interval: infections averted inside are not in these figures.</para>
/// <para>Source: derived in closed form; checked against enumeration in exact rational arithmetic.</para>
/// </remarks>
public static class CadenceComparison
{
    /// <summary>Works the options out.</summary>
    /// <param name="question">What is known.</param>
    /// <param name="everyDays">Days from one screen to the next for each option, from a millionth to a billion.</param>
    /// <returns>One option for each interval, in the order given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<CadenceOption> Of(CadenceQuestion question, IEnumerable<double> everyDays)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(everyDays);
        question.Check();
        return [.. everyDays.Select(days => Option(question, days))];
    }

    private static CadenceOption Option(CadenceQuestion question, double days)
    {
        var screens = FalseAlarm.ScreensPerPersonYear(days);
        var routine = question.Sensitivity is { } sensitivity ? new ScreeningRoutine(days, sensitivity) : null;
        double? found = routine is null ? null : ScreeningYield.DetectionProbability(routine, question.Windows);
        double? alarms = question.Specificity is { } specificity ? FalseAlarm.PerPersonYear(days, specificity) : null;
        var infections = FalseAlarm.DaysPerYear * question.Incidence;
        return new CadenceOption(days)
        {
            DetectionProbability = Point(found, UndefinedReason.SensitivityUnknown),
            InfectiousDaysRemoved = question.Infectious is null
                ? Estimate.Undefined(UndefinedReason.InfectiousTimeUnknown)
                : Point(routine is null ? null : ScreeningYield.InfectiousDaysRemoved(routine, question.Windows, question.DelayDays), UndefinedReason.SensitivityUnknown),
            FractionRemoved = Fraction(question, routine),
            ScreensPerPersonYear = screens,
            FalsePositivesPerPersonYear = Point(alarms, UndefinedReason.SpecificityUnknown),
            AnyFalsePositivePerYear = Point(
                question.Specificity is { } sure ? FalseAlarm.ChanceOfAny(screens, sure) : null, UndefinedReason.SpecificityUnknown),
            TruePositivesPerYear = question.People is not { } people
                ? Estimate.Undefined(UndefinedReason.PeopleUnknown)
                : Point(people * infections * found, found is null ? UndefinedReason.SensitivityUnknown : UndefinedReason.IncidenceUnknown),
            FalsePositivesPerYear = question.People is null
                ? Estimate.Undefined(UndefinedReason.PeopleUnknown)
                : Point(question.People * alarms, UndefinedReason.SpecificityUnknown),
            PositivePredictiveValue = Predictive(infections, found, alarms),
        };
    }

    private static Estimate Fraction(CadenceQuestion question, ScreeningRoutine? routine) =>
        question.Infectious is null ? Estimate.Undefined(UndefinedReason.InfectiousTimeUnknown)
        : routine is null ? Estimate.Undefined(UndefinedReason.SensitivityUnknown)
        : ScreeningYield.FractionRemoved(routine, question.Windows, question.DelayDays);

    private static Estimate Predictive(double? infections, double? found, double? alarms)
    {
        if (found is null) return Estimate.Undefined(UndefinedReason.SensitivityUnknown);
        if (alarms is null) return Estimate.Undefined(UndefinedReason.SpecificityUnknown);
        if (infections is not { } incoming) return Estimate.Undefined(UndefinedReason.IncidenceUnknown);
        var real = incoming * found.Value;
        return real + alarms > 0
            ? Estimate.Point(real / (real + alarms.Value), ScreeningYield.Method)
            : Estimate.Undefined(UndefinedReason.NoPositiveResultPossible);
    }

    private static Estimate Point(double? value, UndefinedReason reason) =>
        value is { } known ? Estimate.Point(known, ScreeningYield.Method) : Estimate.Undefined(reason);
}
