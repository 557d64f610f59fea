using ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

namespace ScreenStats.Statistics.Monitoring.Sequential.CountSums;

/// <summary>
/// Exact average run lengths of a sum on a lattice with moves of any size, floor 0 and a signal at the limit. States are eliminated from the limit
/// down; what a state keeps is the chance of each state below it and of a signal, and nothing is subtracted (Grassmann, Taksar and Heyman 1985),
/// so that long run lengths keep their digits. The work is states times the widest rise times the widest fall.
/// </summary>
internal static class LatticeRunLength
{
    /// <summary>The first state that signals, from a limit in steps of the lattice; a limit within rounding of a step is that step.</summary>
    public static long FirstSignal(double steps, SignalRule rule)
    {
        var nearest = Math.Round(steps);
        if (Math.Abs(steps - nearest) <= 1e-9 * Math.Max(1, steps)) steps = nearest;
        return Math.Max(1, (long)(rule == SignalRule.AtOrAbove ? Math.Ceiling(steps) : Math.Floor(steps) + 1));
    }

    /// <summary>The average run length from each state below the limit.</summary>
    /// <param name="moves">Moves with their chances, which add up to 1.</param>
    /// <param name="states">The first state that signals.</param>
    public static double[] From(IReadOnlyList<(long Move, double Chance)> moves, long states)
    {
        var n = (int)states;
        var rise = (int)Math.Min(n, Math.Max(0, moves.Max(one => one.Move)));
        var fall = (int)Math.Min(n, Math.Max(0, -moves.Min(one => one.Move)));
        var width = rise + fall + 1;

        // chance[s, k] is the chance of going from s to s - fall + k; what lies below 0 is gathered at 0.
        var chance = new double[n][];
        var signal = new double[n];
        var time = new double[n];
        for (var s = 0; s < n; s++)
        {
            var row = chance[s] = new double[width];
            time[s] = 1;
            foreach (var (move, probability) in moves)
            {
                var to = Math.Max(0, s + move);
                if (to >= n) signal[s] += probability;
                else row[(int)(to - s) + fall] += probability;
            }
        }

        for (var s = n - 1; s >= 0; s--)
        {
            // Where it goes once it leaves: to a state below or a signal. Staying in place only takes time.
            var row = chance[s];
            var leave = signal[s];
            for (var k = 0; k < fall; k++) leave += row[k];
            if (leave == 0) continue;
            for (var k = 0; k < fall; k++) row[k] /= leave;
            signal[s] /= leave;
            time[s] /= leave;
            for (var from = Math.Max(0, s - rise); from < s; from++)
            {
                var source = chance[from];
                var up = source[s - from + fall];
                if (up == 0) continue;
                signal[from] += up * signal[s];
                time[from] += up * time[s];

                // Position k of row s is state s - fall + k, which is position k + (s - from) of row from.
                var target = source.AsSpan(s - from, fall);
                for (var k = 0; k < target.Length; k++) target[k] += up * row[k];
            }
        }

        // State 0 has nothing below it: its time is the average. The others add what they keep.
        var result = new double[n];
        for (var s = 0; s < n; s++)
        {
            var sum = time[s];
            for (var k = Math.Max(0, fall - s); k < fall; k++) sum += chance[s][k] * result[s - fall + k];
            result[s] = sum;
        }

        if (signal[0] == 0) Array.Fill(result, double.PositiveInfinity);
        return result;
    }
}
