namespace ScreenStats.Statistics.Economics.Yield;

/// <summary>One thing a program pays for: how many of it, at what price.</summary>
public sealed record CostItem
{
    /// <summary>Makes an item.</summary>
    /// <param name="name">What it is, not empty.</param>
    /// <param name="units">How many, with a range where that is not known exactly.</param>
    /// <param name="price">What one costs; null where no price is stated: it is never invented.</param>
    /// <exception cref="ArgumentException">No name.</exception>
    public CostItem(string name, StatedAmount units, StatedAmount? price)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        Name = name;
        Units = units;
        Price = price;
    }

    /// <summary>What it is.</summary>
    public string Name { get; }

    /// <summary>How many.</summary>
    public StatedAmount Units { get; }

    /// <summary>What one costs; null where no price is stated.</summary>
    public StatedAmount? Price { get; }

    /// <summary>Units times price; null where no price is stated, unless there are no units to pay for.</summary>
    public double? Cost => Price is { } price ? Units.Value * price.Value : Units.Upper == 0 ? 0 : null;
}
