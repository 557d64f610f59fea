using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression.Ranks;

/// <summary>Draws from distributions, from one stream.</summary>
/// <remarks>Source: Marsaglia G, Tsang WW, ACM Trans Math Softw 2000;26:363-372, for the gamma distribution (from memory).</remarks>
internal sealed class RandomDraw(ReplicateStream stream)
{
    private ReplicateStream source = stream;

    /// <summary>A number in (0, 1).</summary>
    public double Uniform() => ((source.Next() >> 11) + 0.5) * (1.0 / (1UL << 53));

    public double Normal()
    {
        var radius = Math.Sqrt(-2 * Math.Log(Uniform()));
        return radius * Math.Cos(2 * Math.PI * Uniform());
    }

    /// <summary>The logarithm of a gamma variable of scale 1: finite where the variable itself is too small for a number.</summary>
    public double LogGamma(double shape)
    {
        if (shape < 1) return LogGamma(shape + 1) + (Math.Log(Uniform()) / shape);
        var d = shape - (1.0 / 3);
        var c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var x = Normal();
            var v = 1 + (c * x);
            if (v <= 0) continue;
            var log = 3 * Math.Log(v);
            if (Math.Log(Uniform()) < (0.5 * x * x) + d - (d * v * v * v) + (d * log)) return Math.Log(d) + log;
        }
    }
}
