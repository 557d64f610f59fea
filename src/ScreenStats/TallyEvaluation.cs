using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;

namespace ScreenStats;

/// <summary>From counts to answers, written as a step of the road.</summary>
public static class TallyEvaluation
{
    /// <summary>Evaluates a tally.</summary>
    /// <param name="tally">What was counted.</param>
    /// <param name="settings">What the program file says.</param>
    /// <returns>The findings, as <see cref="Evaluator.Evaluate"/> gives them.</returns>
    public static Findings Evaluate(this Tally tally, ProgramSettings settings) => Evaluator.Evaluate(tally, settings);
}
