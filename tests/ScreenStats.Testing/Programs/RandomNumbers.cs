namespace ScreenStats.Testing.Programs;

/// <summary>
/// Seeded random numbers, the same on every machine: SplitMix64 (Steele, Lea and Flood, OOPSLA 2014, from memory). Fast enough for a million runs
/// in a hundredth of a second.
/// </summary>
public sealed class RandomNumbers(ulong seed)
{
    private ulong state = Mixed(seed + 0x9E3779B97F4A7C15UL);

    /// <summary>A number in [0, 1).</summary>
    public double Next()
    {
        state += 0x9E3779B97F4A7C15UL;
        return (Mixed(state) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>A whole number from the first to the last, both included.</summary>
    public int Whole(int first, int last) => first + (int)(Next() * (last - first + 1));

    /// <summary>A number between two others, even on the logarithmic scale.</summary>
    public double Logarithmic(double least, double most) => least * Math.Pow(most / least, Next());

    /// <summary>A beta variable with a mean and the correlation of two trials that share it, 1 / (alpha + beta + 1); the mean itself at 0.</summary>
    public double Beta(double mean, double correlation)
    {
        if (correlation == 0) return mean;
        var weight = (1 / correlation) - 1;
        var (first, second) = (LogGamma(mean * weight), LogGamma((1 - mean) * weight));
        return 1 / (1 + Math.Exp(second - first));
    }

    /// <summary>The logarithm of a gamma variable: Marsaglia and Tsang's method (ACM Trans Math Softw 2000;26:363-372, from memory), at any shape.</summary>
    public double LogGamma(double shape)
    {
        if (shape < 1) return LogGamma(shape + 1) + (Math.Log(1 - Next()) / shape);
        var d = shape - (1.0 / 3);
        var c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var normal = Math.Sqrt(-2 * Math.Log(1 - Next())) * Math.Cos(2 * Math.PI * Next());
            var v = 1 + (c * normal);
            if (v <= 0) continue;
            v = v * v * v;
            if (Math.Log(1 - Next()) < (0.5 * normal * normal) + d - (d * v) + (d * Math.Log(v))) return Math.Log(d * v);
        }
    }

    private static ulong Mixed(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
