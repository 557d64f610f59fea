using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression.Fitting;

/// <summary>Binomial rows whose log rate is the predictor, below 0.</summary>
internal sealed class LogShareModel(double[] events, double[] trials, double[]? offsets = null) : RowModel(events, trials, offsets)
{
    public static LogShareModel Of(BinomialRow[] rows) => new(Array.ConvertAll(rows, row => row.Events), Array.ConvertAll(rows, row => row.Trials));

    /// <summary>How much the logarithm of the distance to a rate of 1 counts in rows that have nothing but events: holds the search inside; 0 for the likelihood itself.</summary>
    public double Barrier { get; set; }

    public override double Log(int row, double eta)
    {
        if (!(eta < 0)) return double.NegativeInfinity;
        var others = Sizes[row] - Events[row];
        return (Events[row] * eta) + (others == 0 ? Barrier == 0 ? 0 : Barrier * Math.Log(-eta) : others * LogOther(eta));
    }

    public override double Slope(int row, double eta)
    {
        var others = Sizes[row] - Events[row];
        return others == 0 ? Events[row] + (Barrier / eta) : Events[row] - (others * Math.Exp(eta) / Other(eta));
    }

    public override double Curvature(int row, double eta)
    {
        var others = Sizes[row] - Events[row];
        return others == 0 ? Barrier / (eta * eta) : others * Math.Exp(eta) / (Other(eta) * Other(eta));
    }

    public override double Information(int row, double eta) => Sizes[row] * Math.Exp(eta) / Other(eta);

    public override double Mean(int row, double eta) => Sizes[row] * Math.Exp(eta);

    public override (double Log, double Deviance, double Pearson) Fit(int row, double eta)
    {
        var (p, q) = (Math.Exp(eta), Other(eta));
        double y = Events[row], n = Sizes[row];
        var residual = (y * q) - ((n - y) * p);
        return (Binomial.LogProbability(y, n, p, q), 2 * (Binomial.Deviance(y, n * p) + Binomial.Deviance(n - y, n * q)), residual * residual / (n * p * q));
    }

    private static double Other(double eta) => -Precise.ExponentialMinusOne(eta);

    private static double LogOther(double eta) => eta > -0.5 ? Math.Log(Other(eta)) : Precise.LogOnePlus(-Math.Exp(eta));
}
