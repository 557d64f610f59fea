namespace ScreenStats.Counting.Programs;

/// <summary>Finds the known name that a mistyped one most likely means.</summary>
public static class NearestName
{
    /// <summary>The known name with the smallest edit distance, ignoring case; ties go to the first.</summary>
    /// <param name="written">What was written.</param>
    /// <param name="known">The known names, at least one.</param>
    /// <returns>One of <paramref name="known"/>.</returns>
    public static string Of(string written, IReadOnlyList<string> known)
    {
        var best = known[0];
        var smallest = int.MaxValue;
        foreach (var name in known)
        {
            var distance = Distance(written.ToUpperInvariant(), name.ToUpperInvariant());
            if (distance >= smallest) continue;
            smallest = distance;
            best = name;
        }

        return best;
    }

    /// <summary>Edit distance with insertions, deletions, replacements and swaps of neighbours.</summary>
    internal static int Distance(string first, string second)
    {
        // A key of a thousand characters is no typing mistake: its tail cannot change which name is nearest.
        if (first.Length > 64) first = first[..64];
        var table = new int[first.Length + 1, second.Length + 1];
        for (var row = 0; row <= first.Length; row++) table[row, 0] = row;
        for (var column = 0; column <= second.Length; column++) table[0, column] = column;
        for (var row = 1; row <= first.Length; row++)
        {
            for (var column = 1; column <= second.Length; column++)
            {
                var replaced = table[row - 1, column - 1] + (first[row - 1] == second[column - 1] ? 0 : 1);
                var best = Math.Min(replaced, Math.Min(table[row - 1, column], table[row, column - 1]) + 1);
                if (row > 1 && column > 1 && first[row - 1] == second[column - 2] && first[row - 2] == second[column - 1])
                    best = Math.Min(best, table[row - 2, column - 2] + 1);
                table[row, column] = best;
            }
        }

        return table[first.Length, second.Length];
    }
}
