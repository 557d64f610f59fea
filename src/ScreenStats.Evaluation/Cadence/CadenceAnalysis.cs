using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;

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
        var outcomes = new OutcomeDraws(options, known, draws, settings.Report.Confidence);
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
            Assumptions = AssumptionRows.Of(known, draws, outcomes.Incidence),
            Options = options.Findings(null),
            Outcomes = outcomes.Rows,
            Steps = [],
            Choices = [],
            Swings = [],
            Adherence = [],
            Missing = [],
            Inputs = known.Inputs(draws, outcomes.Incidence),
            Sentences = [],
        };
        return findings with { Sentences = CadenceSentences.Of(findings) };
    }
}
