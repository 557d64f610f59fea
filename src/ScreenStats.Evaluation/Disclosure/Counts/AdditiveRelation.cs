using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>A count that is the sum of others, which every reader knows.</summary>
internal sealed record AdditiveRelation(CountVariable Total, ImmutableArray<CountVariable> Parts)
{
    /// <summary>Every member with its sign: the total once, the parts with a minus.</summary>
    public IEnumerable<(CountVariable Variable, int Sign)> Members => Parts.Select(part => (part, -1)).Prepend((Total, 1));
}
