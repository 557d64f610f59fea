using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts.Flow;

/// <summary>A box of a flow diagram with the boxes that lead off from it to the right.</summary>
/// <param name="Box">The box.</param>
/// <param name="From">Where it stands, and what leads to it.</param>
/// <param name="Side">Boxes to the right of it, from top to bottom.</param>
internal sealed record FlowBand(FlowBox Box, FlowBand.FlowStep From, ImmutableArray<FlowBox> Side)
{
    /// <summary>What leads to a box.</summary>
    public enum FlowStep
    {
        /// <summary>Nothing: something begins.</summary>
        Start = 0,

        /// <summary>The box above.</summary>
        Next = 1,

        /// <summary>The last box that was no branch: this is one of several that it divides into.</summary>
        Branch = 2,
    }
}
