using System.Collections.Immutable;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.WhatIf.Grids;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Evaluation.WhatIf;

/// <summary>Grids over what a reader may ask "what if" of.</summary>
internal static class WhatIfAnalysis
{
    private const string Start = "start";
    private const string NoSensitivity = "the course of the infection holds it";
    private static readonly double[] SomePrevalences = [0.0001, 0.001, 0.01, 0.1];
    private static readonly double[] SomeSensitivities = [0.6, 0.9];
    private static readonly double[] SomeSpecificities = [0.98, 0.995, 0.999];
    private static readonly int[] SomeDays = [1, 2, 3, 4, 5, 7, 10, 14, 21, 28];

    /// <summary>The grids, where their controls start, and coarse tables for readers without a script.</summary>
    /// <param name="settings">What the program file says.</param>
    /// <param name="accuracy">How accurate the screen was.</param>
    /// <param name="cadence">How often to screen, with the course and the assumptions.</param>
    /// <param name="onlyStated">Whether nothing may be taken from the data, since their small counts are hidden.</param>
    /// <returns>The findings.</returns>
    public static WhatIfFindings Of(ProgramSettings settings, AccuracyFindings accuracy, CadenceFindings cadence, bool onlyStated)
    {
        var starts = WhatIfStarts.Of(settings, onlyStated ? null : accuracy, onlyStated ? null : cadence);
        double At(string measure) => starts.First(start => start.Measure == measure).At;
        var (prevalence, sensitivity, specificity) = (At(PositiveGrids.Prevalence), At(PositiveGrids.Sensitivity), At(PositiveGrids.Specificity));
        var first = Screened(Start, prevalence, sensitivity, specificity);
        ImmutableArray<ScreenedOutcome> some =
        [
            .. from p in SomePrevalences from s in SomeSensitivities from c in SomeSpecificities where (p, s, c) != (prevalence, sensitivity, specificity)
            select Screened(FormattableString.Invariant($"{p}|{s}|{c}"), p, s, c),
        ];
        return new WhatIfFindings(
            new WhatIfPositiveFindings(PositiveGrids.People, starts, first, [first, .. some], PositiveGrids.All),
            Interval(cadence, onlyStated, (int)At(IntervalGrids.Days), sensitivity, specificity)) { OnlyStated = onlyStated };
    }

    private static ScreenedOutcome Screened(string key, double prevalence, double sensitivity, double specificity)
    {
        var expected = new ExpectedResults(sensitivity, specificity, prevalence, PositiveGrids.People);
        return new ScreenedOutcome(
            key, prevalence, sensitivity, specificity, expected.TruePositives, expected.FalsePositives, expected.FalseNegatives,
            PredictiveValue.Positive(sensitivity, specificity, prevalence).Value!.Value, PredictiveValue.Negative(sensitivity, specificity, prevalence).Value!.Value);
    }

    private static WhatIfIntervalFindings Interval(CadenceFindings cadence, bool onlyStated, int days, double sensitivity, double specificity)
    {
        var (model, undefined) = cadence.Work is { } work ? IntervalModel.Of(work, onlyStated) : (null, "how often to screen was not evaluated");
        if (model is null)
        {
            return new WhatIfIntervalFindings(IntervalGrids.LongestDays, IntervalGrids.People, null, undefined, null, undefined, null, [], []);
        }

        double[] sensitivities = model.TakesSensitivity ? SomeSensitivities : [sensitivity];
        var first = One(model, Start, days, sensitivity, specificity);
        ImmutableArray<IntervalOutcome> some =
        [
            .. from day in SomeDays from s in sensitivities where (day, s) != (days, sensitivity)
            select One(model, model.TakesSensitivity ? FormattableString.Invariant($"{day}|{s}") : FormattableString.Invariant($"{day}"), day, s, specificity),
        ];
        var without = model.Outcome(days, sensitivity).FractionRemovedBySymptoms;
        return new WhatIfIntervalFindings(
            IntervalGrids.LongestDays, IntervalGrids.People, model.Participation, null, without.Value, Why(without), first, [first, .. some], IntervalGrids.Of(model, model.Participation));
    }

    private static IntervalOutcome One(IntervalModel model, string key, int days, double sensitivity, double specificity)
    {
        var outcome = model.Outcome(days, sensitivity);
        return new IntervalOutcome(
            key, days, model.TakesSensitivity ? sensitivity : null, model.TakesSensitivity ? null : NoSensitivity, specificity, outcome.DetectionProbability,
            outcome.FractionRemoved.Value, Why(outcome.FractionRemoved), outcome.CaughtBeforeInfectious.Value, Why(outcome.CaughtBeforeInfectious),
            IntervalGrids.Screens(days, model.Participation), IntervalGrids.FalseAlarms(days, specificity, model.Participation));
    }

    private static string? Why(Statistics.Estimate estimate) => estimate.Reason is { } reason ? Statistics.UndefinedReasons.Describe(reason) : null;
}
