using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Understanding;

/// <summary>The outcome of a run by its result word and by the lines seen, as the codes of their words.</summary>
/// <param name="Result">Code of the result word.</param>
/// <param name="ControlLine">Code of the yes/no word of the control line.</param>
/// <param name="TestLine">Code of the yes/no word of the test line.</param>
internal readonly record struct OutcomeColumns(int Result, int ControlLine, int TestLine)
{
    /// <summary>The outcome that the two lines give, where both are recorded.</summary>
    public Outcome? ByLines => ControlLine < 0 || TestLine < 0 ? null
        : ControlLine == 1 ? TestLine == 1 ? Outcome.Positive : Outcome.Negative
        : TestLine == 1 ? Outcome.Inconclusive : Outcome.Invalid;

    /// <summary>The outcome: the word's, else that of the lines. Where there is none, why and in which of the three columns (0 to 2).</summary>
    public Outcome? Read(bool linesAreRead, out Finding why, out int column)
    {
        column = 0;
        why = Result == Words.Blank ? Finding.MissingValue : Finding.UnknownResult;
        if (Result >= 0) return (Outcome)Result;
        if (!linesAreRead || Result == Words.Unknown) return null;
        if (ByLines is { } outcome) return outcome;
        column = ControlLine < 0 ? 1 : 2;
        why = (ControlLine < 0 ? ControlLine : TestLine) == Words.Blank ? Finding.MissingValue : Finding.UnknownResult;
        return null;
    }
}
