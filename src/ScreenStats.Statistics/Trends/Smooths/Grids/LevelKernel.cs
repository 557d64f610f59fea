namespace ScreenStats.Statistics.Trends.Smooths.Grids;

/// <summary>A normal step on a lattice: what one point's density becomes after it.</summary>
internal sealed class LevelKernel
{
    // From here on the normal density itself, read at the points of the lattice, sums to 1 within 1e-18.
    private const double Sampled = 1.5;
    private const int Order = 8;
    private const double Substep = 0.25;

    private LevelKernel(double[] weights) => Weights = weights;

    /// <summary>Weights at distances -<see cref="Reach"/> to <see cref="Reach"/> of lattice points; they are the same on both sides.</summary>
    public double[] Weights { get; }

    /// <summary>How many points a step reaches to one side.</summary>
    public int Reach => Weights.Length / 2;

    /// <summary>The step with a standard deviation counted in lattice points.</summary>
    /// <remarks>
    /// Wide steps are the density itself. Narrow ones cannot be read off the lattice; they are powers of the series of exp(-r x² / 2), the
    /// step's characteristic function, in u = 4 sin²(x / 2), whose terms are second differences: exact for polynomials up to degree 17.
    /// </remarks>
    public static LevelKernel Of(double deviation)
    {
        if (deviation == 0) return new LevelKernel([1]);
        if (deviation >= Sampled)
        {
            var reach = (int)Math.Ceiling(12 * deviation);
            var weights = new double[(2 * reach) + 1];
            for (var j = -reach; j <= reach; j++) weights[reach + j] = Math.Exp(-0.5 * (j / deviation) * (j / deviation)) / (Math.Sqrt(2 * Math.PI) * deviation);
            return new LevelKernel(weights);
        }

        var steps = (int)Math.Ceiling(deviation * deviation / Substep);
        var once = Stencil(deviation * deviation / steps);
        var all = once;
        for (var step = 1; step < steps; step++) all = Convolved(all, once);
        var length = all.Length / 2;
        var last = length;
        while (last > 0 && Math.Abs(all[length + last]) < 1e-20) last--;
        return new LevelKernel(all[(length - last)..(length + last + 1)]);
    }

    private static double[] Stencil(double variance)
    {
        // x² = 2 Σ u^k / (k² C(2k, k)); then the coefficients of the exponential of -variance / 2 times it.
        var series = new double[Order + 1];
        double central = 1;
        for (var k = 1; k <= Order; k++)
        {
            central *= 2.0 * ((2 * k) - 1) / k;
            series[k] = -variance / (k * k * central);
        }

        var power = new double[Order + 1];
        power[0] = 1;
        for (var k = 1; k <= Order; k++)
        {
            for (var j = 1; j <= k; j++) power[k] += j * series[j] * power[k - j] / k;
        }

        var stencil = new double[(2 * Order) + 1];
        double[] differences = [1];
        for (var k = 0; k <= Order; k++)
        {
            for (var j = 0; j < differences.Length; j++) stencil[Order - k + j] += power[k] * differences[j];
            differences = Convolved(differences, [-1, 2, -1]);
        }

        return stencil;
    }

    private static double[] Convolved(double[] a, double[] b)
    {
        var product = new double[a.Length + b.Length - 1];
        for (var i = 0; i < a.Length; i++)
        {
            for (var j = 0; j < b.Length; j++) product[i + j] += a[i] * b[j];
        }

        return product;
    }
}
