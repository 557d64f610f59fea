namespace ScreenStats.Records.Formats.Converting;

/// <summary>The cells of a sheet that hold an error, or a formula whose value was never worked out.</summary>
internal sealed class ErrorCells
{
    private readonly List<int> rows = [];

    /// <summary>Number of such cells.</summary>
    public long Count { get; private set; }

    /// <summary>The first row with one, from 1; 0 where there is none.</summary>
    public int First => rows.Count > 0 ? rows[0] : 0;

    /// <summary>Adds a cell; rows come in order.</summary>
    public void Add(int row)
    {
        Count++;
        if (rows.Count == 0 || rows[^1] != row) rows.Add(row);
    }

    /// <summary>True where the row has such a cell.</summary>
    public bool In(int row) => rows.BinarySearch(row) >= 0;
}
