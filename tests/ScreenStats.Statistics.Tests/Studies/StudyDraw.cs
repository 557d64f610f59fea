namespace ScreenStats.Statistics.Tests.Studies;

/// <summary>Draws of a study, from one seed.</summary>
internal sealed class StudyDraw(int seed)
{
    private readonly Random random = new(seed);

    public double Uniform() => 1 - random.NextDouble();

    public double Normal() => Math.Sqrt(-2 * Math.Log(Uniform())) * Math.Cos(2 * Math.PI * Uniform());

    /// <summary>Events of trials, from one to the next.</summary>
    public long Binomial(long trials, double rate)
    {
        if (rate <= 0) return 0;
        if (rate >= 1) return trials;
        long events = 0, at = 0;
        var scale = Math.Log(1 - rate);
        while (true)
        {
            var gap = Math.Log(Uniform()) / scale;
            if (gap >= trials - at) return events;
            at += (long)gap + 1;
            events++;
        }
    }

    public double Beta(double alpha, double beta)
    {
        double a = Gamma(alpha), b = Gamma(beta);
        return a + b == 0 ? 0 : a / (a + b);
    }

    private double Gamma(double shape)
    {
        if (shape < 1) return Gamma(shape + 1) * Math.Pow(Uniform(), 1 / shape);
        var d = shape - (1.0 / 3);
        var c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var x = Normal();
            var v = Math.Pow(1 + (c * x), 3);
            if (v > 0 && Math.Log(Uniform()) < (0.5 * x * x) + d - (d * v) + (d * Math.Log(v))) return d * v;
        }
    }
}
