using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting;

namespace ScreenStats;

/// <summary>From counts to answers, written as a step of the road.</summary>
public static class TallyEvaluation
{
    /// <summary>Evaluates a tally.</summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings, as <see cref="Evaluator.Evaluate"/> gives them.</returns>
    public static Findings Evaluate(this Tally tally, ProgramSettings settings) => Evaluator.Evaluate(tally, settings);

    /// <summary>Evaluates a tally and hides small counts as the program file's <c>suppressBelow</c> says.</summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="earlierRelease">Folder of an earlier report of the same program, so that the difference between the two gives no small count away; null for none.</param>
    /// <returns>The findings, as <see cref="DisclosureControl.Apply"/> gives them.</returns>
    /// <exception cref="NotOurFolderException">The folder holds no report of ours.</exception>
    public static Findings EvaluateForRelease(this Tally tally, ProgramSettings settings, string? earlierRelease = null) =>
        DisclosureControl.Apply(Evaluator.Evaluate(tally, settings), earlierRelease is null ? null : Report.ReadRelease(earlierRelease));
}
