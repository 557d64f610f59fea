using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>A count that is the sum of others, which every reader knows.</summary>
/// <param name="Total">The sum.</param>
/// <param name="Parts">What it is the sum of.</param>
/// <param name="Times">How often each part counts, in their order; empty where each counts once.</param>
internal sealed record AdditiveRelation(CountVariable Total, ImmutableArray<CountVariable> Parts, ImmutableArray<int> Times)
{
    /// <summary>Every member with its factor: the total once, the parts with a minus.</summary>
    public ImmutableArray<(CountVariable Variable, int Sign)> Members { get; } = [(Total, 1), .. Parts.Select((part, index) => (part, Times.IsEmpty ? -1 : -Times[index]))];
}
