using System.Collections.Immutable;
using ScreenStats.Evaluation.Disclosure.Counts;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>Levels of one breakdown that hold the same runs as levels of another: whoever knows which go together knows that they add up alike.</summary>
internal sealed record LevelOverlap(ImmutableArray<CountUnit> First, ImmutableArray<CountUnit> Second);
