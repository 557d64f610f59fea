using System.Numerics;

namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>The chance that some window of a row of trials holds k events: all arrangements of the last trials of a window, trial by trial.</summary>
internal static class ScanRecursion
{
    public static double Chance(int k, int window, long trials, double rate)
    {
        var keep = window == 64 ? ulong.MaxValue >> 1 : (1UL << (window - 1)) - 1;
        var numbers = new Dictionary<ulong, int> { [0] = 0 };
        var states = new List<ulong> { 0 };
        var withoutEvent = new List<int>();
        var withEvent = new List<int>();
        int Number(ulong state)
        {
            if (numbers.TryGetValue(state, out var number)) return number;
            numbers[state] = states.Count;
            states.Add(state);
            return states.Count - 1;
        }

        for (var i = 0; i < states.Count; i++)
        {
            var state = states[i];
            withoutEvent.Add(Number((state << 1) & keep));
            withEvent.Add(BitOperations.PopCount(state) + 1 >= k ? -1 : Number(((state << 1) | 1) & keep));
        }

        var chances = new double[states.Count];
        var next = new double[states.Count];
        chances[0] = 1;
        double found = 0;
        for (long trial = 0; trial < trials; trial++)
        {
            Array.Clear(next);
            for (var i = 0; i < chances.Length; i++)
            {
                var chance = chances[i];
                if (chance == 0) continue;
                next[withoutEvent[i]] += chance * (1 - rate);
                if (withEvent[i] < 0) found += chance * rate;
                else next[withEvent[i]] += chance * rate;
            }

            (chances, next) = (next, chances);
        }

        return found;
    }
}
