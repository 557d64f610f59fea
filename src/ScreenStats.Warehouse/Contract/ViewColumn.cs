using System.Collections.Immutable;

namespace ScreenStats.Warehouse.Contract;

/// <summary>A column of a view.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Type">Its type.</param>
/// <param name="Required">True where the view must have it.</param>
internal sealed record ViewColumn(string Name, ViewType Type, bool Required = false)
{
    /// <summary>For a column of choices, its words; else none.</summary>
    public ImmutableArray<string> Words { get; init; } = [];
}
