namespace ScreenStats.Statistics.Trends.SlopeChanges;

/// <summary>How many changes of slope the counts show, and the line with that many.</summary>
/// <param name="Fit">The line with the number chosen; with its reason where there is none.</param>
/// <param name="Fits">The lines with 0 to the most changes that could be fitted, in that order.</param>
/// <param name="Scores">The criteria of those lines, in that order.</param>
/// <param name="Tests">The permutation tests, in the order made; empty where a criterion chose.</param>
/// <param name="Selection">How the number was chosen.</param>
/// <param name="Permutations">Permutations of each test; 0 without tests.</param>
/// <param name="Seed">What they started from; null without tests.</param>
public sealed record BrokenLineChoice(
    BrokenLineFit Fit, IReadOnlyList<BrokenLineFit> Fits, IReadOnlyList<ChangeNumberScore> Scores, IReadOnlyList<ChangeNumberTest> Tests, SlopeChangeSelection Selection,
    int Permutations, ulong? Seed)
{
    /// <summary>The number of changes chosen; null without a fit.</summary>
    public int? Number => Fit.Reason is null ? Fit.Number : null;
}
