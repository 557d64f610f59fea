using System.Collections.Immutable;
using System.Globalization;

namespace ScreenStats.Evaluation.WhatIf.Grids;

/// <summary>A figure of the library at every node of one, two or more axes, so that a page can look it up and interpolate, and need not compute it.</summary>
/// <param name="Id">What it is: lower case, words joined by hyphens.</param>
/// <param name="Axes">The axes.</param>
/// <param name="Values">Its values, the last axis running fastest, kept to seven significant digits.</param>
/// <remarks>
/// Between nodes: along each axis the four nodes around a place, or all where there are fewer, make a polynomial through them (Lagrange's formula) on the scale of the
/// axis, one axis after the other. At a node it gives the node's value. How far it is off between them is held by tests: below half of the last digit that is printed.
/// </remarks>
public sealed record Grid(string Id, ImmutableArray<GridAxis> Axes, ImmutableArray<double> Values)
{
    private const int Neighbours = 4;

    /// <summary>A grid filled by a function of the library.</summary>
    /// <param name="id">What it is.</param>
    /// <param name="axes">The axes.</param>
    /// <param name="value">The figure at one value of each axis.</param>
    /// <returns>The grid.</returns>
    internal static Grid Of(string id, ImmutableArray<GridAxis> axes, Func<ReadOnlyMemory<double>, double> value)
    {
        var values = new double[axes.Aggregate(1, (product, axis) => product * axis.Nodes.Length)];
        var at = new double[axes.Length];
        for (var index = 0; index < values.Length; index++)
        {
            var rest = index;
            for (var axis = axes.Length - 1; axis >= 0; axis--)
            {
                at[axis] = axes[axis].Nodes[rest % axes[axis].Nodes.Length];
                rest /= axes[axis].Nodes.Length;
            }

            values[index] = Kept(value(at));
        }

        return new Grid(id, axes, [.. values]);
    }

    /// <summary>The figure at any place within the axes, interpolated as the page does.</summary>
    /// <param name="at">One value for each axis, in their order; beyond its ends the polynomial of the nodes there goes on.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There are not as many values as axes.</exception>
    public double At(params ReadOnlySpan<double> at)
    {
        if (at.Length != Axes.Length) throw new ArgumentException("A place has one value for each axis.", nameof(at));
        return Sum(at, 0, 0);
    }

    private double Sum(ReadOnlySpan<double> at, int axis, int index)
    {
        if (axis == Axes.Length) return Values[index];
        var (nodes, place) = (Axes[axis].Nodes, Axes[axis].Place(at[axis]));
        var count = Math.Min(Neighbours, nodes.Length);
        var above = 0;
        while (above < nodes.Length && nodes[above] < at[axis]) above++;
        var first = Math.Clamp(above - 2, 0, nodes.Length - count);
        var sum = 0.0;
        for (var node = first; node < first + count; node++)
        {
            var (own, weight) = (Axes[axis].Place(nodes[node]), 1.0);
            for (var other = first; other < first + count; other++)
            {
                if (other != node) weight *= (place - Axes[axis].Place(nodes[other])) / (own - Axes[axis].Place(nodes[other]));
            }

            if (weight != 0) sum += weight * Sum(at, axis + 1, (index * nodes.Length) + node);
        }

        return sum;
    }

    /// <summary>A figure as grids keep it: seven significant digits.</summary>
    internal static double Kept(double value) => double.Parse(value.ToString("G7", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
