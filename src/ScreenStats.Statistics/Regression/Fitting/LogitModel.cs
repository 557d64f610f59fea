using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Regression.Fitting;

/// <summary>Binomial rows whose log odds are the predictor.</summary>
internal sealed class LogitModel(double[] events, double[] trials, double[]? offsets = null) : RowModel(events, trials, offsets)
{
    public static LogitModel Of(BinomialRow[] rows) => new(Array.ConvertAll(rows, row => row.Events), Array.ConvertAll(rows, row => row.Trials));

    public override double Log(int row, double eta) =>
        -((Events[row] * LogisticRegression.SoftPlus(-eta)) + ((Sizes[row] - Events[row]) * LogisticRegression.SoftPlus(eta)));

    public override double Slope(int row, double eta) => (Events[row] * LogitScale.Fraction(-eta)) - ((Sizes[row] - Events[row]) * LogitScale.Fraction(eta));

    public override double Curvature(int row, double eta) => Sizes[row] * LogitScale.Fraction(eta) * LogitScale.Fraction(-eta);

    public override double Information(int row, double eta) => Curvature(row, eta);

    public override double Mean(int row, double eta) => Sizes[row] * LogitScale.Fraction(eta);

    public override (double Log, double Deviance, double Pearson) Fit(int row, double eta)
    {
        var (p, q) = (LogitScale.Fraction(eta), LogitScale.Fraction(-eta));
        double y = Events[row], n = Sizes[row];
        var residual = (y * q) - ((n - y) * p);
        return (Binomial.LogProbability(y, n, p, q), 2 * (Binomial.Deviance(y, n * p) + Binomial.Deviance(n - y, n * q)), residual * residual / (n * p * q));
    }
}
