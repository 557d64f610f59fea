using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Cadence.Courses;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Outcomes;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Statistics.Cadence.Windows;

namespace ScreenStats.Evaluation.Cadence;

/// <summary>How often to screen.</summary>
internal static class CadenceAnalysis
{
    /// <summary>Works out what each way of screening gives and costs.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="flaggedLots">Lots flagged for refuted positives: their false alarms are a fault to mend, not the price of screening, and are left out.</param>
    /// <param name="accuracy">How accurate the screen was.</param>
    /// <returns>The findings.</returns>
    public static CadenceFindings Of(Tally tally, ProgramSettings settings, IReadOnlyCollection<string> flaggedLots, AccuracyFindings accuracy)
    {
        var cadence = settings.Cadence;
        var known = new KnownFigures(tally, settings, flaggedLots, accuracy);
        var draws = new ParameterDraws(known.Figures, cadence.Draws, cadence.Seed, settings.Report.Confidence);
        var options = OptionList.Of(cadence, known);
        var outcomes = Outcomes(known, options, draws);
        var choice = new Choice(options, outcomes, cadence.Worthwhile);
        var leading = options.Leading(choice.Chosen);
        var turns = new IncidenceRanges(outcomes, choice, known, draws);
        var growth = known.Knows(Parameter.Reproduction) || outcomes.Reproduction.Estimate is null ? null
            : new CadenceGrowth(outcomes.Reproduction, outcomes.Growing, outcomes.LeadingBasis != CadenceBasis.AsStated);
        var refuted = known.Data.FalseAlarms;
        var findings = new CadenceFindings
        {
            Days = cadence.Days,
            People = known.People,
            Draws = cadence.Draws,
            Seed = cadence.Seed,
            Confidence = settings.Report.Confidence,
            Worthwhile = cadence.Worthwhile,
            WorthwhileUndefined = cadence.Worthwhile is null ? "the program file does not state how much a step must add" : null,
            LeadingBasis = outcomes.LeadingBasis,
            Assumptions = AssumptionRows.Of(known, draws, outcomes.Incidence, turns.Recent, growth),
            Options = options.Findings(choice.Chosen),
            Outcomes = outcomes.Rows,
            Steps = StepRows.Of(options, outcomes),
            Choices = choice.Rows,
            Swings = SwingRows.Of(options, outcomes, draws, choice, leading),
            Adherence = AdherenceRows.Of(known, options, outcomes, draws),
            NotFollowedUp = known.Data.Settled.Trials - known.Data.Settled.Events,
            Ranges = turns.Ranges,
            Recent = turns.Recent,
            Growth = growth,
            FalseAlarmsFound = known.LeavesOutFalseAlarms && refuted.OfFlaggedLots > 0 ? new CadenceFalseAlarmsFound(refuted.All, refuted.OfFlaggedLots, known.Data.Recent.SpanDays) : null,
            Audits = known.SensitivityFromAudits ? new CadenceAudits(accuracy.Missed, accuracy.Audited) : null,
            Missing = MissingFigures.Of(known),
            Inputs = known.Inputs(draws, outcomes.Incidence),
            Work = new CadenceWork(known, draws, options, outcomes),
            Sentences = [],
        };
        return findings with { Sentences = CadenceSentences.Of(findings) };
    }

    private static OutcomeDraws Outcomes(KnownFigures known, OptionList options, ParameterDraws draws)
    {
        var kind = known.Settings.Course?.Kind;
        var acts = known.Settings.IsolateOn == IsolateOn.Screen || known.Knows(Parameter.ConfirmatoryDelay);
        ICourseModel? exact = !acts || options.Options.IsEmpty ? null : kind switch
        {
            CourseKind.Windows when known.Knows(Parameter.Sensitivity) => new ExactCourses(known, options.Computed),
            CourseKind.ByDay => new ExactCourses(known, options.Computed),
            CourseKind.ViralLoad => new LoadCourses(known, options, draws),
            _ => null,
        };
        var slots = new OutcomeSlots(options, known, exact is not null, exact?.KnowsInfectious ?? false);
        var quick = exact;
        if (exact is not null && kind == CourseKind.Windows)
        {
            var longest = Enumerable.Range(0, draws.Count).Max(index => CourseParts.Windows(draws.At(index)).DetectableDays);
            if (longest <= ScreenCounts.LongestDays) quick = new QuickCourses(known, options, longest);
        }

        return new OutcomeDraws(new OutcomeModel(options, known, slots, exact), new OutcomeModel(options, known, slots, quick), draws, known);
    }
}
