using System.Collections.Immutable;

namespace ScreenStats.Evaluation.WhatIf.Grids;

/// <summary>One figure that a grid is laid out over.</summary>
/// <param name="Id">What it is: lower case, words joined by hyphens.</param>
/// <param name="Scale">On what scale places between nodes are measured.</param>
/// <param name="Nodes">Its values, ascending; at least one.</param>
public sealed record GridAxis(string Id, GridScale Scale, ImmutableArray<double> Nodes)
{
    /// <summary>Where a value lies on the scale of the axis.</summary>
    /// <param name="value">The value, where the scale is a logarithm above 0, or below 1 for that of the rest.</param>
    /// <returns>A number without unit.</returns>
    internal double Place(double value) => Scale switch
    {
        GridScale.Logarithm => Math.Log(value),
        GridScale.LogarithmOfRest => Math.Log(1 - value),
        _ => value,
    };
}
