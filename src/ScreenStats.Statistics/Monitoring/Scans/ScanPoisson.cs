using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>The exact chances that two and three windows' lengths hold no window with k events of a steady rate.</summary>
internal static class ScanPoisson
{
    public static (double Two, double Three) WithoutCluster(int k, double rate)
    {
        var point = new double[(2 * k) + 1];
        for (var i = 0; i < point.Length; i++) point[i] = Math.Exp((i * Math.Log(rate)) - rate - Rising.Logarithms(1, i));
        var below = new double[point.Length];
        double running = 0;
        for (var i = 0; i < point.Length; i++) below[i] = running += point[i];
        double P(int i) => i < 0 ? 0 : point[i];
        double F(int i) => i < 0 ? 0 : below[i];

        var two = (F(k - 1) * F(k - 1)) - ((k - 1) * P(k) * P(k - 2)) - ((k - 1 - rate) * P(k) * F(k - 3));
        var first = 2 * P(k) * F(k - 1) * (((k - 1) * F(k - 2)) - (rate * F(k - 3)));
        var second = 0.5 * P(k) * P(k) * (((k - 1.0) * (k - 2) * F(k - 3)) - (2 * (k - 2) * rate * F(k - 4)) + (rate * rate * F(k - 5)));
        double third = 0, fourth = 0;
        for (var r = 1; r < k; r++) third += P((2 * k) - r) * F(r - 1) * F(r - 1);
        for (var r = 2; r < k; r++) fourth += P((2 * k) - r) * P(r) * (((r - 1) * F(r - 2)) - (rate * F(r - 3)));
        return (two, (F(k - 1) * F(k - 1) * F(k - 1)) - first + second + third - fourth);
    }
}
