using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>A counted run of one person, as far as the rules look at it.</summary>
/// <param name="Time">When it was collected.</param>
/// <param name="Outcome">Its outcome.</param>
public readonly record struct RunEvent(Moment Time, Outcome Outcome);
