using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Interruptions;

/// <summary>What one dated change did.</summary>
/// <param name="Change">The change.</param>
/// <param name="LevelRatio">Odds or rate right after the change over what they would have been then; null where no jump was asked for.</param>
/// <param name="SlopeBefore">The growth per unit of time before the change; null where the series has none.</param>
/// <param name="SlopeAfter">The growth after it, until the next one; null where neither series nor changes have any.</param>
/// <param name="SlopeChange">After less before; null where no change of growth was asked for.</param>
/// <param name="LevelPValue">The probability of a jump as large were there none; null without jump or limits.</param>
/// <param name="SlopePValue">The same for the growth; null without.</param>
/// <param name="Reason">Why the change cannot be judged; null where it can.</param>
public sealed record InterruptionEstimate(
    Interruption Change, OpenEstimate? LevelRatio, OpenEstimate? SlopeBefore, OpenEstimate? SlopeAfter, OpenEstimate? SlopeChange, double? LevelPValue, double? SlopePValue,
    UndefinedReason? Reason);
