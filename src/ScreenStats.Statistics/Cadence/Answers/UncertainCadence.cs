using System.Collections.Immutable;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>Ways of screening side by side, with limits that carry the uncertainty of accuracy and incidence (see <see cref="UncertainFigures"/>).</summary>
public static class UncertainCadence
{
    /// <summary>Intervals between screens in closed form.</summary>
    /// <param name="question">What is known; its shares are replaced by those of <paramref name="known"/>.</param>
    /// <param name="known">How well the shares are known.</param>
    /// <param name="everyDays">Days between screens.</param>
    /// <returns>One option for each, with limits where a share is uncertain.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<CadenceOption> Of(CadenceQuestion question, CadenceUncertainty known, IReadOnlyCollection<double> everyDays)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(known);
        var options = CadenceComparison.Of(question with { Sensitivity = known.Sensitivity?.Value, Specificity = known.Specificity?.Value, Incidence = known.Incidence?.Value }, everyDays);
        if (!known.Any) return options;
        var limits = Limits(known, shares => Flat(CadenceComparison.Of(question with { Sensitivity = shares[0], Specificity = shares[1], Incidence = shares[2] }, everyDays).SelectMany(OptionFigures.Values)));
        return [.. options.Select((option, place) => OptionFigures.With(option, limits, place * OptionFigures.Count, known.Confidence))];
    }

    /// <summary>Schedules against a course of infection.</summary>
    /// <param name="question">What is known; its shares are replaced by those of <paramref name="known"/>.</param>
    /// <param name="known">How well the shares are known.</param>
    /// <param name="schedules">The schedules; each has screens.</param>
    /// <returns>One answer for each, with limits where a share is uncertain.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or a schedule without screens.</exception>
    public static ImmutableArray<CourseAnswer> Of(CourseQuestion question, CadenceUncertainty known, IReadOnlyCollection<ScreeningSchedule> schedules)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(known);
        var answers = CourseComparison.Of(With(question, [known.Sensitivity?.Value, known.Specificity?.Value, known.Incidence?.Value]), schedules);
        if (!known.Any) return answers;
        var drawn = question with { Model = Interpolated(question.Model, known) };
        var limits = Limits(known, shares => Flat(CourseComparison.Of(With(drawn, shares), schedules)
            .SelectMany(answer => OptionFigures.Values(answer.Figures).Concat(answer.Spread?.Values ?? []))));
        var each = OptionFigures.Count + (question.Spread is null ? 0 : SpreadAnswer.Count);
        return
        [
            .. answers.Select((answer, place) => new CourseAnswer(
                answer.Schedule, OptionFigures.With(answer.Figures, limits, place * each, known.Confidence), answer.Outcome,
                answer.Spread?.With(limits, (place * each) + OptionFigures.Count, known.Confidence))),
        ];
    }

    /// <summary>How it spreads where nobody is screened.</summary>
    /// <param name="question">What is known; its shares are replaced by those of <paramref name="known"/>.</param>
    /// <param name="known">How well the shares are known.</param>
    /// <returns>The answer, with limits where the incidence is uncertain; null where the spread is not asked.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static SpreadAnswer? WithoutScreening(CourseQuestion question, CadenceUncertainty known)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(known);
        if (CourseComparison.WithoutScreening(With(question, [known.Sensitivity?.Value, null, known.Incidence?.Value])) is not { } answer) return null;
        if (!CadenceUncertainty.Uncertain(known.Incidence)) return answer;
        var drawn = question with { Model = Interpolated(question.Model, known with { Sensitivity = null }) };
        var limits = Limits(known with { Sensitivity = null, Specificity = null }, shares => Flat(CourseComparison.WithoutScreening(With(drawn, shares))!.Values));
        return answer.With(limits, 0, known.Confidence);
    }

    private static CourseQuestion With(CourseQuestion question, ImmutableArray<double?> shares) =>
        question with { Sensitivity = shares[0], Specificity = shares[1], Incidence = shares[2] };

    private static ImmutableArray<double?> Flat(IEnumerable<double?> values) => [.. values];

    private static ImmutableArray<Interval?> Limits(CadenceUncertainty known, Func<ImmutableArray<double?>, ImmutableArray<double?>> figures) =>
        UncertainFigures.Limits([known.Sensitivity, known.Specificity, known.Incidence], known.Draws, known.Seed, known.Confidence, figures);

    /// <summary>The model over the range of the draws; at one point where the sensitivity is exact or not known.</summary>
    private static CourseModel Interpolated(CourseModel model, CadenceUncertainty known)
    {
        if (known.Sensitivity is not { } sensitivity) return new RememberedModel(model);
        if ((sensitivity.Matched ?? sensitivity.Posterior(new BetaDistribution(0.5, 0.5))) is not { } beta) return new RememberedModel(model);
        var range = beta.EqualTailed(1 - (1.0 / known.Draws)).Including(sensitivity.Value);
        return new SmoothModel(model, range.Lower, range.Upper);
    }
}
