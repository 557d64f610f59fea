namespace ScreenStats.Evaluation.Cadence.Draws;

/// <summary>Random numbers of one assumption: a stream of its own by its name, so that one more assumption does not move the others.</summary>
/// <remarks>
/// SplitMix64 (Steele GL, Lea D, Flood CH, OOPSLA 2014, from memory), seeded by the seed and the name; normal values by Marsaglia's polar
/// method (Marsaglia G, Bray TA, SIAM Rev 1964;6:260), gamma values by rejection (Marsaglia G, Tsang WW, ACM Trans Math Softw 2000;26:363; both from memory).
/// </remarks>
internal sealed class ParameterStream
{
    private ulong state;
    private double? spare;

    public ParameterStream(ulong seed, string name)
    {
        // The name by FNV-1a.
        var hash = 0xCBF29CE484222325UL;
        foreach (var letter in name) hash = (hash ^ letter) * 0x100000001B3UL;
        state = seed;
        state = Next() ^ hash;
        state = Next();
    }

    /// <summary>A number in (0, 1).</summary>
    public double Uniform() => ((Next() >> 11) + 0.5) / (1UL << 53);

    public double Normal()
    {
        if (spare is { } kept)
        {
            spare = null;
            return kept;
        }

        while (true)
        {
            var (x, y) = ((2 * Uniform()) - 1, (2 * Uniform()) - 1);
            var r = (x * x) + (y * y);
            if (r >= 1 || r == 0) continue;
            var scale = Math.Sqrt(-2 * Math.Log(r) / r);
            spare = y * scale;
            return x * scale;
        }
    }

    /// <summary>A gamma value of a shape above 0, scale 1.</summary>
    public double Gamma(double shape)
    {
        if (shape < 1) return Gamma(shape + 1) * Math.Pow(Uniform(), 1 / shape);
        var d = shape - (1.0 / 3);
        var c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var x = Normal();
            var v = 1 + (c * x);
            if (v <= 0) continue;
            v = v * v * v;
            if (Math.Log(Uniform()) < (0.5 * x * x) + d - (d * v) + (d * Math.Log(v))) return d * v;
        }
    }

    /// <summary>How many of some trials succeed, by the gaps between successes.</summary>
    public int Binomial(int trials, double chance)
    {
        if (chance <= 0) return 0;
        if (chance >= 1) return trials;
        if (chance > 0.5) return trials - Binomial(trials, 1 - chance);
        var each = Math.Log(1 - chance);
        var (found, at) = (0, 0.0);
        while (true)
        {
            at += Math.Floor(Math.Log(Uniform()) / each) + 1;
            if (at > trials) return found;
            found++;
        }
    }

    public double Beta(double alpha, double beta)
    {
        var a = Gamma(alpha);
        var b = Gamma(beta);
        return a + b > 0 ? a / (a + b) : alpha / (alpha + beta);
    }

    private ulong Next()
    {
        state += 0x9E3779B97F4A7C15UL;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
