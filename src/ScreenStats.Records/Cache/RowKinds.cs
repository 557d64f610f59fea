using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.Cache;

/// <summary>What many rows of an entry share: their shape and the expiry of the lot. A row has the number of its kind.</summary>
internal sealed class RowKinds
{
    private readonly ShapeTable shapes = new();
    private readonly Dictionary<(int Shape, DateOnly? Expiry), int> numbers = [];
    private readonly List<(RowShape Shape, DateOnly? Expiry)> kinds = [];
    private (DateOnly? Expiry, int Number)[] latest = [];

    public IReadOnlyList<(RowShape Shape, DateOnly? Expiry)> All => kinds;

    public int Number(in RunRow row)
    {
        var shape = shapes.Code(RowShape.Of(row));
        if (shape < latest.Length && latest[shape].Number > 0 && latest[shape].Expiry == row.LotExpiry) return latest[shape].Number - 1;
        if (shape >= latest.Length) Array.Resize(ref latest, Math.Max(shape + 1, Math.Max(256, 2 * latest.Length)));
        if (!numbers.TryGetValue((shape, row.LotExpiry), out var number))
        {
            number = kinds.Count;
            numbers.Add((shape, row.LotExpiry), number);
            kinds.Add((shapes[shape], row.LotExpiry));
        }

        latest[shape] = (row.LotExpiry, number + 1);
        return number;
    }
}
