namespace ScreenStats.Counting.Cubes;

/// <summary>Numbers for pairs of levels, so that a coordinate fits into 64 bits.</summary>
internal sealed class LevelPairs
{
    private readonly Dictionary<(string, string), int> numbers = [];
    private string? first;
    private string? second;
    private int number;

    /// <summary>A key of two levels, a day and a small number below 2,048.</summary>
    public ulong Key(string one, string other, DateOnly day, int rest)
    {
        if (!ReferenceEquals(one, first) || !ReferenceEquals(other, second))
        {
            if (!numbers.TryGetValue((one, other), out number))
            {
                number = numbers.Count;
                numbers.Add((one, other), number);
            }

            (first, second) = (one, other);
        }

        return ((((ulong)number << 22) | (uint)day.DayNumber) << 11) | (uint)rest;
    }
}
