using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>
/// A mixture of Beta(a + i, b + j) over a grid of weights. Along i the distribution functions follow from one another,
/// I(a + 1, b) = I(a, b) - x^a (1 - x)^b Γ(a + b)/(Γ(a + 1) Γ(b)), so that each row needs one of them only; along i + 1, j - 1 likewise.
/// </summary>
internal sealed class BetaMixture
{
    private readonly double _a;
    private readonly double _b;
    private readonly double[] _weights;
    private readonly long _rows;
    private readonly long _columns;
    private readonly bool _mirrored;
    private readonly bool _totals;
    private readonly double _all;

    /// <summary>Columns add to the first parameter and rows to the second; mirrored, what is left of them does.</summary>
    public BetaMixture(double a, double b, double[] weights, long rows, long columns, bool mirrored)
        : this(a, b, weights, rows, columns, mirrored, totals: false)
    {
    }

    private BetaMixture(double a, double b, double[] weights, long rows, long columns, bool mirrored, bool totals)
    {
        (_a, _b, _weights, _rows, _columns, _mirrored, _totals) = (a, b, weights, rows, columns, mirrored, totals);
        double sum = 0;
        foreach (var weight in weights) sum += weight;
        _all = sum;
    }

    /// <summary>The mixture of Beta(a + y, b + n - y) over one row of n + 1 weights.</summary>
    public static BetaMixture OfTotals(BetaPrior prior, double[] weights) =>
        new(prior.First, prior.Second, weights, 1, weights.Length, mirrored: false, totals: true);

    public PosteriorSummary Summary(double confidence)
    {
        var (mean, deviation) = Moments();
        return new PosteriorSummary(
            mean, Quantile(0.5, mean, deviation), Quantile((1 - confidence) / 2, mean, deviation), Quantile((1 + confidence) / 2, mean, deviation));
    }

    private double Quantile(double probability, double mean, double deviation)
    {
        // On the scale of logits, from a bracket around the mean that grows until it holds the quantile.
        var low = LogitScale.Logit(mean);
        var high = low;
        var stride = Math.Max(deviation / (mean * (1 - mean)), 1e-6);
        while (Below(low) >= probability && low > -700) low -= stride *= 1.6;
        stride = Math.Max(deviation / (mean * (1 - mean)), 1e-6);
        while (Below(high) < probability && high < 700) high += stride *= 1.6;
        return LogitScale.Fraction(Root.Between(u => Below(u) - probability, low, high));
    }

    private double Below(double logit)
    {
        var x = LogitScale.Fraction(logit);
        var y = LogitScale.Fraction(-logit);
        double sum = 0;
        for (long row = 0; row < _rows; row++) sum += Row(row, x, y);
        return sum / _all;
    }

    private double Row(long row, double x, double y)
    {
        var start = row * _columns;
        long first = 0;
        var last = _columns - 1;
        while (first <= last && _weights[start + first] == 0) first++;
        while (last >= first && _weights[start + last] == 0) last--;
        if (first > last) return 0;

        // i runs upwards over what is added to the first parameter.
        var low = _mirrored ? _columns - 1 - last : first;
        var high = _mirrored ? _columns - 1 - first : last;
        var (a, b) = Parameters(row, low);
        var value = Binomial.BetaLower(a, b, x, y);
        double step = 0;
        double sum = 0;
        for (var i = low; i <= high; i++)
        {
            (a, b) = Parameters(row, i);
            sum += _weights[start + (_mirrored ? _columns - 1 - i : i)] * value;
            if (i == high) break;
            step = step > 1e-290 ? step * Growth(a, b, x, y) : Math.Exp(LogStep(a, b, x, y));
            value = Math.Max(0, value - step);
        }

        return sum;
    }

    private (double First, double Second) Parameters(long row, long i) => _totals
        ? (_a + i, _b + (_columns - 1 - i))
        : (_a + i, _b + (_mirrored ? _rows - 1 - row : row));

    // From the step before (a - 1) to the one at a.
    private double Growth(double a, double b, double x, double y) => _totals ? x / y * b / a : x * (a - 1 + b) / a;

    private double LogStep(double a, double b, double x, double y) =>
        (a * Math.Log(x)) + ((_totals ? b - 1 : b) * Math.Log(y)) + GammaLogarithm.Of(a + b) - GammaLogarithm.Of(a + 1) - GammaLogarithm.Of(b);

    private (double Mean, double Deviation) Moments()
    {
        double first = 0, second = 0;
        for (long row = 0; row < _rows; row++)
        {
            for (long column = 0; column < _columns; column++)
            {
                var weight = _weights[(row * _columns) + column];
                if (weight == 0) continue;
                var (a, b) = Parameters(row, _mirrored ? _columns - 1 - column : column);
                var mean = a / (a + b);
                first += weight * mean;
                second += weight * mean * (a + 1) / (a + b + 1);
            }
        }

        first /= _all;
        return (first, Math.Sqrt(Math.Max(0, (second / _all) - (first * first))));
    }
}
