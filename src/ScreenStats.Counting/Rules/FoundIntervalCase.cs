namespace ScreenStats.Counting.Rules;

/// <summary>One interval case of a person.</summary>
/// <param name="Run">Position of the negative run before it.</param>
/// <param name="Days">Whole local calendar days from that run to the specimen.</param>
public readonly record struct FoundIntervalCase(int Run, int Days);
