using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Yield;

/// <summary>The sum of a program's cost items, as far as their prices are stated.</summary>
public sealed record ProgramCost
{
    private ProgramCost(ImmutableArray<CostItem> items)
    {
        Items = items;
        Missing = [.. items.Where(item => item.Cost is null).Select(item => item.Name)];
        foreach (var item in items)
        {
            if (item.Price is not { } price) continue;
            Value += item.Units.Value * price.Value;
            Lower += item.Units.Lower * price.Lower;
            Upper += item.Units.Upper * price.Upper;
        }
    }

    /// <summary>The items, in the order given.</summary>
    public ImmutableArray<CostItem> Items { get; }

    /// <summary>The names of items without a price.</summary>
    public ImmutableArray<string> Missing { get; }

    /// <summary>Whether every item has a price, so that the sum is the whole cost and not a part of it.</summary>
    public bool IsComplete => Missing.IsEmpty;

    /// <summary>The sum of the items that have a price.</summary>
    public double Value { get; }

    /// <summary>The same with every figure at its lower end: no sum can be lower.</summary>
    public double Lower { get; }

    /// <summary>The same with every figure at its upper end: no sum of these items can be higher.</summary>
    public double Upper { get; }

    /// <summary>Adds up items.</summary>
    /// <param name="items">The items; none is a cost of 0.</param>
    /// <returns>The sum.</returns>
    public static ProgramCost Of(IEnumerable<CostItem> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        return new ProgramCost([.. items]);
    }
}
