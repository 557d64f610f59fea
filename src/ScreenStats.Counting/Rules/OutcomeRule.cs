using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>What a run shows, by the lines seen, and what follows from it.</summary>
public static class OutcomeRule
{
    /// <summary>The outcome by the lines seen on the device.</summary>
    /// <param name="controlLine">True where the control line was seen.</param>
    /// <param name="testLine">True where the test line was seen.</param>
    /// <returns>
    /// With a control line negative or positive; without one inconclusive where there is a test line (instructions for use often call
    /// it invalid too; kept apart because programs follow it up), else invalid.
    /// </returns>
    public static Outcome FromLines(bool controlLine, bool testLine) => (controlLine, testLine) switch
    {
        (true, false) => Outcome.Negative,
        (true, true) => Outcome.Positive,
        (false, true) => Outcome.Inconclusive,
        (false, false) => Outcome.Invalid,
    };

    /// <summary>True for a valid test: negative or positive.</summary>
    /// <param name="outcome">The outcome.</param>
    /// <returns>Whether it is in the denominator of positivity.</returns>
    public static bool IsValidTest(this Outcome outcome) => outcome is Outcome.Negative or Outcome.Positive;

    /// <summary>True for an outcome that cannot be used and calls for a repeat on the same day: inconclusive or invalid.</summary>
    /// <param name="outcome">The outcome.</param>
    /// <returns>Whether it is in the numerator of the invalid-run rate.</returns>
    public static bool IsUnusable(this Outcome outcome) => outcome is Outcome.Inconclusive or Outcome.Invalid;
}
