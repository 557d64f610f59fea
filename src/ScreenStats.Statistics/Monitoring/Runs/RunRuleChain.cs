namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>The Markov chain of what a chart must remember of its past points for the run rules.</summary>
internal sealed class RunRuleChain
{
    private readonly bool _outside;
    private readonly bool _far;
    private readonly bool _off;
    private readonly bool _side;

    public RunRuleChain(IReadOnlyCollection<RunRule> rules)
    {
        _outside = rules.Contains(RunRule.OutsideLimits);
        _far = rules.Contains(RunRule.TwoOfThreeFar);
        _off = rules.Contains(RunRule.FourOfFiveOff);
        _side = rules.Contains(RunRule.EightOnOneSide);
    }

    /// <summary>The mean number of points until the first signal, or null where none can come.</summary>
    public double? MeanLength(ZoneChances chances)
    {
        var zones = Zones(chances);
        var numbers = new Dictionary<int, int> { [default(Memory).Key] = 0 };
        var order = new List<Memory> { default };
        var (from, to, chance, signals) = (new List<int>(), new List<int>(), new List<double>(), new List<double>());
        var none = true;
        for (var state = 0; state < order.Count; state++)
        {
            double signal = 0;
            for (var at = 0; at < zones.Length; at++)
            {
                if (zones[at] == 0) continue;
                // The first stands on the centre; then four zones below and four above.
                if (Next(order[state], at == 0 ? -1 : (at - 1) / 4, at == 0 ? 0 : (at - 1) % 4) is not { } next)
                {
                    signal += zones[at];
                    continue;
                }

                if (!numbers.TryGetValue(next.Key, out var number))
                {
                    number = order.Count;
                    numbers.Add(next.Key, number);
                    order.Add(next);
                }

                if (number == state) continue;
                from.Add(state);
                to.Add(number);
                chance.Add(zones[at]);
            }

            none &= signal == 0;
            signals.Add(signal);
        }

        if (none) return null;
        // The diagonal as the sum of what leaves the state: no digit is lost where a signal is rare.
        var states = order.Count;
        var matrix = new double[states * states];
        for (var state = 0; state < states; state++) matrix[(state * states) + state] = signals[state];
        for (var move = 0; move < from.Count; move++)
        {
            matrix[(to[move] * states) + from[move]] -= chance[move];
            matrix[(from[move] * states) + from[move]] += chance[move];
        }

        var mean = FirstPassage.Mean(matrix, states);
        return double.IsFinite(mean) && mean >= 1 ? mean : null;
    }

    private static double[] Zones(ZoneChances chances)
    {
        var zones = new double[9];
        zones[0] = chances.On;
        for (var side = 0; side < 2; side++)
        {
            zones[(4 * side) + 1] = chances.Near[side];
            zones[(4 * side) + 2] = chances.Off[side];
            zones[(4 * side) + 3] = chances.Far[side];
            zones[(4 * side) + 4] = chances.Outside[side];
        }

        return zones;
    }

    /// <summary>What is remembered after one more point; null where a rule fires.</summary>
    private Memory? Next(Memory memory, int side, int zone)
    {
        if (_outside && zone == 3) return null;
        var next = default(Memory);
        if (_far)
        {
            next.FarBelow = Shift(memory.FarBelow, side == 0 && zone >= 2, 3);
            next.FarAbove = Shift(memory.FarAbove, side == 1 && zone >= 2, 3);
            if (Fires(next.FarBelow, 2) || Fires(next.FarAbove, 2)) return null;
            next.FarBelow = Forget(next.FarBelow, 2, 3);
            next.FarAbove = Forget(next.FarAbove, 2, 3);
        }

        if (_off)
        {
            next.OffBelow = Shift(memory.OffBelow, side == 0 && zone >= 1, 5);
            next.OffAbove = Shift(memory.OffAbove, side == 1 && zone >= 1, 5);
            if (Fires(next.OffBelow, 4) || Fires(next.OffAbove, 4)) return null;
            next.OffBelow = Forget(next.OffBelow, 4, 5);
            next.OffAbove = Forget(next.OffAbove, 4, 5);
        }

        if (_side)
        {
            next.Run = side < 0 ? 0 : side == 1 ? Math.Max(0, memory.Run) + 1 : Math.Min(0, memory.Run) - 1;
            if (Math.Abs(next.Run) >= 8) return null;
        }

        return next;
    }

    private static int Shift(int bits, bool hit, int window) => ((bits << 1) | (hit ? 1 : 0)) & ((1 << window) - 1);

    private static bool Fires(int bits, int wanted) => (bits & 1) == 1 && System.Numerics.BitOperations.PopCount((uint)bits) >= wanted;

    // Bit 0 is the last point. A hit matters only while the points up to it and those still to come in its window can reach the number.
    private static int Forget(int bits, int wanted, int window)
    {
        bits &= (1 << (window - 1)) - 1;
        for (var age = window - 2; age >= 0; age--)
        {
            var upTo = System.Numerics.BitOperations.PopCount((uint)(bits & ((1 << (age + 1)) - 1)));
            if ((bits >> age & 1) == 1 && upTo + (window - 1 - age) < wanted) bits &= ~(1 << age);
        }

        return bits;
    }

    private struct Memory
    {
        public int FarBelow, FarAbove, OffBelow, OffAbove, Run;

        /// <summary>A number of its own for each: two windows of three points, two of five, and a run of -7 to 7.</summary>
        public readonly int Key => FarBelow | (FarAbove << 3) | (OffBelow << 6) | (OffAbove << 11) | ((Run + 8) << 16);
    }
}
