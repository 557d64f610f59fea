using System.Runtime.CompilerServices;

namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>The mean number of steps until a Markov chain leaves its states.</summary>
internal static class FirstPassage
{
    /// <summary>From the first state.</summary>
    /// <param name="matrix">The unit matrix less the chances of a step between states, by columns: column to, row from. Overwritten.</param>
    /// <param name="states">Number of states.</param>
    /// <returns>The mean; not finite where a state is never left.</returns>
    /// <remarks>
    /// Gaussian elimination with row exchange, column by column, each sum in the order of the columns. Most entries are 0: their columns are passed over.
    /// Written out here because a general solver looks at all of them, in code that is compiled again at each start.
    /// </remarks>
    // Compiled for good at once: all of its time is spent in one call.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Mean(double[] matrix, int states)
    {
        var sums = new double[states];
        for (var j = 0; j < states; j++)
        {
            var column = matrix.AsSpan(j * states, states);
            Array.Clear(sums);
            for (var k = 0; k < j; k++)
            {
                column[k] -= sums[k];
                var factor = column[k];
                if (factor == 0) continue;
                var left = matrix.AsSpan(k * states, states);
                for (var i = k + 1; i < left.Length; i++) sums[i] += left[i] * factor;
            }

            for (var i = j; i < column.Length; i++) column[i] -= sums[i];
            var pivot = j;
            for (var i = j + 1; i < column.Length; i++)
            {
                if (Math.Abs(column[i]) > Math.Abs(column[pivot])) pivot = i;
            }

            if (pivot != j)
            {
                for (var at = 0; at < matrix.Length; at += states) (matrix[at + pivot], matrix[at + j]) = (matrix[at + j], matrix[at + pivot]);
            }

            if (column[j] == 0) continue;
            for (var i = j + 1; i < column.Length; i++) column[i] /= column[j];
        }

        // One step is taken in each state: the right side is 1 throughout, whatever the order of its rows.
        Array.Fill(sums, 1.0);
        for (var k = 0; k < states; k++)
        {
            for (var i = k + 1; i < states; i++) sums[i] -= sums[k] * matrix[(k * states) + i];
        }

        for (var k = states - 1; k >= 0; k--)
        {
            sums[k] /= matrix[(k * states) + k];
            for (var i = 0; i < k; i++) sums[i] -= sums[k] * matrix[(k * states) + i];
        }

        return sums[0];
    }
}
