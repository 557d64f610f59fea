using MathNet.Numerics.LinearAlgebra;

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
        var numbers = new Dictionary<Memory, int> { [default] = 0 };
        var order = new List<Memory> { default };
        var moves = new List<(int From, int To, double Chance)>();
        var signals = new List<double>();
        for (var from = 0; from < order.Count; from++)
        {
            double signal = 0;
            foreach (var (side, zone, chance) in Zones(chances))
            {
                if (chance == 0) continue;
                if (Next(order[from], side, zone) is not { } next)
                {
                    signal += chance;
                    continue;
                }

                if (!numbers.TryGetValue(next, out var to))
                {
                    to = order.Count;
                    numbers.Add(next, to);
                    order.Add(next);
                }

                moves.Add((from, to, chance));
            }

            signals.Add(signal);
        }

        return signals.TrueForAll(chance => chance == 0) ? null : Solve(order.Count, moves, signals);
    }

    private static IEnumerable<(int Side, int Zone, double Chance)> Zones(ZoneChances chances)
    {
        yield return (-1, 0, chances.On);
        for (var side = 0; side < 2; side++)
        {
            yield return (side, 0, chances.Near[side]);
            yield return (side, 1, chances.Off[side]);
            yield return (side, 2, chances.Far[side]);
            yield return (side, 3, chances.Outside[side]);
        }
    }

    // The diagonal of I - Q as the sum of what leaves the state: no digit is lost where a signal is rare.
    private static double? Solve(int states, List<(int From, int To, double Chance)> moves, List<double> signals)
    {
        var matrix = Matrix<double>.Build.Dense(states, states);
        for (var state = 0; state < states; state++) matrix[state, state] = signals[state];
        foreach (var (from, to, chance) in moves)
        {
            if (from == to) continue;
            matrix[from, to] -= chance;
            matrix[from, from] += chance;
        }

        var mean = matrix.LU().Solve(Vector<double>.Build.Dense(states, 1.0))[0];
        return double.IsFinite(mean) && mean >= 1 ? mean : null;
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

    private record struct Memory(int FarBelow, int FarAbove, int OffBelow, int OffAbove, int Run);
}
